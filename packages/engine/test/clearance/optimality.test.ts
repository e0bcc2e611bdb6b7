import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coreOf } from "../../src/clearance/core.ts";
import { distanceOfCores } from "../../src/clearance/gjk.ts";
import { separation } from "../../src/clearance/separation.ts";
import type { RoundedSolid } from "../../src/clearance/shapes.ts";
import { addScaled, cross, dot, length, scale, type Vec3, vec } from "../../src/geometry/vec3.ts";
import { oraclePairs } from "./oracle.ts";
import { anyRounded, boxAxes, outsideCore, reachOfCore } from "./solids.ts";

/** A point of a core may lie this far outside by rounding, m. */
const ON_CORE = 1e-12;
/** Where cores overlap, the points follow a normal that is known to the root of the depth's tolerance of 1e-10 m. */
const ON_OVERLAPPING_CORE = 1e-5;
/**
 * Between the distance of two points of the cores and the distance of two planes between them, m. Distance changes with
 * the square of a tilt of the normal: the last bit of it (1e-16 m) leaves a tilt of 1e-8, and planes tilted by that are
 * as much nearer over a core of up to a metre. So this is the proof's sharpness; the distance is far better than that.
 */
const PROOF = 2e-8;
/** The normal comes from two points that are themselves rounded: 1e-16 m each, over the distance between them. */
const NORMAL_ROUNDING = 1e-15;
/** GJK's own bounds aim at 1e-11 m and mostly meet it; the rest are held up by the same rounding as PROOF. */
const GJK_BOUND = 2e-8;
const GJK_BOUND_MOSTLY = 2e-11;
/** Worst seen: 1.2e-10 m. */
const PROVED_WHERE_LIBRARY_DIFFERS = 2e-10;
/** Two routes to one distance, m: GJK stops at 1e-11, the worst seen is 4e-11. */
const ROUTES = 1e-10;
/** Overlap depth stops at 1e-10 m; twice that. */
const DEPTH = 2e-10;
const SEED = 1907;

/** Free gap between the cores along a direction: a lower bound of their distance, and minus an upper bound of depth. */
const gapAlong = (a: RoundedSolid, b: RoundedSolid, n: Vec3): number =>
  -reachOfCore(b, scale(n, -1)) - reachOfCore(a, n);

/**
 * A distance between convex solids proves itself: the two points lie in the solids, so it is no more than theirs, and
 * two planes square to the normal keep the solids apart, so it is no less than theirs.
 */
function checkProof(a: RoundedSolid, b: RoundedSolid): void {
  const found = separation(a, b);
  const coreGap = found.distance + a.radius + b.radius;
  const onCore = coreGap > ON_CORE ? ON_CORE : ON_OVERLAPPING_CORE;
  expect(outsideCore(a, addScaled(found.onA, found.normal, -a.radius))).toBeLessThan(onCore);
  expect(outsideCore(b, addScaled(found.onB, found.normal, b.radius))).toBeLessThan(onCore);
  expect(Math.abs(gapAlong(a, b, found.normal) - coreGap)).toBeLessThan(
    PROOF + (coreGap > ON_CORE ? NORMAL_ROUNDING / coreGap : 0),
  );
}

describe("every answer is proved by its own points and planes", () => {
  it.each(["cc", "cb", "cw", "bb", "bw", "ww"])("pairs of the library, %s", (type) => {
    for (const { a, b } of oraclePairs(type)) if (b.shape !== "half-space") checkProof(a, b);
  });

  it(`random pairs, seed ${SEED}`, () => {
    fc.assert(fc.property(anyRounded, anyRounded, checkProof), { numRuns: 3000, seed: SEED });
  });
});

describe("second routes", () => {
  it.each(["cc", "cb", "cw"])("closed form and GJK agree, %s", (type) => {
    for (const { a, b, distance } of oraclePairs(type)) {
      if (b.shape === "half-space" || distance === null) continue;
      const general = distanceOfCores(coreOf(a), coreOf(b));
      expect(Math.abs(separation(a, b).distance + a.radius + b.radius - general.distance)).toBeLessThan(ROUTES);
    }
  });

  it("GJK's bounds are as close as it says, in far fewer steps than it may take", () => {
    let wide = 0;
    for (const type of ["bb", "bw", "ww"]) {
      for (const { a, b } of oraclePairs(type)) {
        if (b.shape === "half-space") continue;
        const found = distanceOfCores(coreOf(a), coreOf(b));
        const bound = found.distance - found.atLeast;
        if (bound > GJK_BOUND_MOSTLY) wide += 1;
        expect(bound).toBeLessThan(GJK_BOUND);
        expect(found.steps).toBeLessThan(60);
      }
    }
    expect(wide).toBeLessThan(10);
  });

  it("where the library differs on two wheels, GJK's bounds leave no room for its answer", () => {
    let differing = 0;
    for (const { a, b, distance } of oraclePairs("ww")) {
      if (b.shape === "half-space" || distance === null) continue;
      const library = distance + a.radius + b.radius;
      const { atLeast, distance: atMost } = distanceOfCores(coreOf(a), coreOf(b));
      if (Math.abs(library - atMost) < ROUTES) continue;
      differing += 1;
      expect(library > atMost || library < atLeast).toBe(true);
      expect(atMost - atLeast).toBeLessThan(PROVED_WHERE_LIBRARY_DIFFERS);
    }
    expect(differing).toBeGreaterThan(0);
  });

  it("depth of two boxes is the least over the fifteen axes that can separate them", () => {
    // Gottschalk, Lin, Manocha, OBBTree, SIGGRAPH 1996: faces' normals and products of edges suffice for boxes.
    let overlapping = 0;
    for (const { a, b, distance } of oraclePairs("bb")) {
      if (distance !== null || a.shape !== "box" || b.shape !== "box") continue;
      overlapping += 1;
      const axesA = boxAxes(a).map(([axis]) => axis);
      const axesB = boxAxes(b).map(([axis]) => axis);
      const products = axesA.flatMap((p) => axesB.map((q) => cross(p, q)));
      const candidates = [
        ...axesA,
        ...axesB,
        ...products.filter((p) => length(p) > 1e-9).map((p) => scale(p, 1 / length(p))),
      ];
      const depth = Math.min(...candidates.flatMap((n) => [-gapAlong(a, b, n), -gapAlong(a, b, scale(n, -1))]));
      expect(Math.abs(-separation(a, b).distance - a.radius - b.radius - depth)).toBeLessThan(DEPTH);
    }
    expect(overlapping).toBeGreaterThan(100);
  });

  it("no direction parts overlapping wheels sooner than the one found", () => {
    const directions = spreadDirections(4000);
    for (const type of ["cw", "bw", "ww"]) {
      for (const { a, b, distance } of oraclePairs(type)) {
        if (distance !== null || b.shape === "half-space") continue;
        const depth = -separation(a, b).distance - a.radius - b.radius;
        for (const n of directions)
          if (-gapAlong(a, b, n) < depth - DEPTH) expect.unreachable(`${type} along ${JSON.stringify(n)}`);
      }
    }
  });
});

/** Directions spread evenly over the sphere: a spiral in steps of the golden angle. */
function spreadDirections(count: number): readonly Vec3[] {
  return Array.from({ length: count }, (_, i) => {
    const z = 1 - (2 * i + 1) / count;
    const turn = i * Math.PI * (3 - Math.sqrt(5));
    const radius = Math.sqrt(1 - z * z);
    return vec(radius * Math.cos(turn), radius * Math.sin(turn), z);
  }).map((n) => scale(n, 1 / Math.sqrt(dot(n, n))));
}
