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
/** Between the distance of two points of the cores and the distance of two planes between them, m. */
const PROOF = 1e-9;
/** The normal comes from two points that are themselves rounded: 1e-16 m each, over the distance between them. */
const NORMAL_ROUNDING = 1e-15;
/** GJK aims at 1e-11 m; on round edges its triangles get too thin for rounding now and then (worst seen 5e-11 m). */
const GJK_BOUND = 1e-10;
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
      expect(Math.abs(separation(a, b).distance + a.radius + b.radius - general.distance)).toBeLessThan(GJK_BOUND);
    }
  });

  it("GJK's bounds are as close as it says, in far fewer steps than it may take", () => {
    for (const type of ["bb", "bw", "ww"]) {
      for (const { a, b } of oraclePairs(type)) {
        if (b.shape === "half-space") continue;
        const found = distanceOfCores(coreOf(a), coreOf(b));
        expect(found.distance - found.atLeast).toBeLessThan(GJK_BOUND);
        expect(found.steps).toBeLessThan(60);
      }
    }
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
