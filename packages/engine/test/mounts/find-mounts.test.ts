import { describe, expect, it } from "vitest";
import { makeCorner } from "../../src/cycle/corner.ts";
import { stations } from "../../src/cycle/cycle.ts";
import { add, dot, scale, unit, vec } from "../../src/geometry/vec3.ts";
import { AT } from "../../src/linkage/motion-state.ts";
import { lengthExtremes, lengthTerms } from "../../src/mounts/arm-lengths.ts";
import { trialOf } from "../../src/mounts/candidate.ts";
import { findMounts, findMountsPart, mergeParts } from "../../src/mounts/find-mounts.ts";
import { upperAt } from "../../src/mounts/grid.ts";
import { REQUIREMENTS } from "../../src/mounts/request.ts";
import { makeSearch } from "../../src/mounts/search.ts";
import { tryUpper } from "../../src/mounts/trial.ts";
import { whatWouldOpen, withChange } from "../../src/mounts/what-would-open.ts";
import { judgePlainly } from "./plain-judge.ts";
import { exampleCar, INCH, ownShock, smallRequest } from "./request-for.ts";

const NAMES = ["saltbush", "greasewood", "rabbitbrush", "catclaw"] as const;
/** Flat kernels and generic solids agree to this, m. */
const ROUNDING = 1e-7;

/** A small generator with its seed, so that a failure can be had again (Park and Miller 1988). */
function randoms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

describe.each(NAMES)("mounts of %s", (name) => {
  const { corner, request } = smallRequest(name, name === "saltbush" ? INCH : 1.5 * INCH);
  const found = findMounts(corner, request);
  const { search } = found;
  const key = (lower: number, upper: number): number => lower * search.upper.x.length + upper;
  const feasible = new Set(Array.from(found.feasible.upper, (upper, i) => key(found.feasible.lower[i]!, upper)));

  it("finds something, and counts each candidate once", () => {
    const killed = Object.values(found.killedBy).reduce((a, b) => a + b, 0);
    expect(found.tested).toBe(search.lower.length * search.upper.x.length);
    expect(killed + found.feasible.count).toBe(found.tested);
    expect(found.feasible.count).toBeGreaterThan(0);
  });

  it("is the same as one candidate after the other", () => {
    const counts = new Array<number>(REQUIREMENTS.length).fill(0);
    search.lower.forEach((lower, j) => {
      const trial = trialOf(search, request.shocks[0]!, lower);
      for (let i = 0; i < search.upper.x.length; i += 1) {
        const killer = tryUpper(trial, search.upper.x[i]!, search.upper.y[i]!, search.upper.z[i]!);
        if (killer >= 0) counts[killer]! += 1;
        expect(killer < 0).toBe(feasible.has(key(j, i)));
      }
    });
    expect(counts).toEqual(Object.values(found.killedBy));
  });

  it("agrees candidate by candidate with rows and solids looked at station by station", () => {
    const travels = [...search.movement.travels];
    const random = randoms(7);
    let both = 0;
    search.lower.forEach((lower, j) => {
      const trial = trialOf(search, request.shocks[0]!, lower);
      const bend = trial.shock.longest - request.reserve.droop - trial.most;
      for (let i = 0; i < search.upper.x.length; i += 1) {
        const isFeasible = feasible.has(key(j, i));
        // All that fit, and some of those that do not.
        if (!isFeasible && random() > 0.02) continue;
        const plain = judgePlainly(corner, request, request.shocks[0]!, upperAt(search.upper, i), lower, travels);
        const dips = trial.obstacles.map(
          ({ id, radius, wanted }, n) => (plain.gaps.get(id) ?? 0) - (trial.needs[n]! - trial.radius - radius - wanted),
        );
        const least = Math.min(plain.margin, ...dips);
        if (isFeasible) {
          both += 1;
          expect(least).toBeGreaterThan(-ROUNDING);
        } else expect(least).toBeLessThan(Math.max(bend, 0) + ROUNDING);
      }
    });
    expect(both).toBe(found.feasible.count);
  });

  it("holds every clearance and length between the stations too", () => {
    const travels = [...stations(request.travel.droop, request.travel.bump, 201)];
    const nearest = travels.reduce((best, t, i) => (Math.abs(t) < Math.abs(travels[best]!) ? i : best), 0);
    travels[nearest] = 0;
    const every = Math.max(1, Math.floor(found.feasible.count / 25));
    for (let n = 0; n < found.feasible.count; n += every) {
      const lower = search.lower[found.feasible.lower[n]!]!;
      const upper = upperAt(search.upper, found.feasible.upper[n]!);
      const { margin, gaps } = judgePlainly(corner, request, request.shocks[0]!, upper, lower, travels);
      expect(Math.min(margin, ...gaps.values())).toBeGreaterThan(-ROUNDING);
    }
  });

  it("tells a slack within which nothing breaks", () => {
    const travels = [...search.movement.travels];
    const random = randoms(11);
    const direction = () => unit(vec(random() - 0.5, random() - 0.5, random() - 0.5));
    for (const best of found.best) {
      expect(best.fails).toBeNull();
      for (let n = 0; n < 25; n += 1) {
        const off = { ...best.lower, point: add(best.lower.point, scale(direction(), best.slack)) };
        const upper = add(best.upper, scale(direction(), best.slack));
        const { margin, gaps } = judgePlainly(corner, request, best.shock, upper, off, travels);
        expect(Math.min(margin, ...gaps.values())).toBeGreaterThan(-ROUNDING);
      }
    }
  });

  it("is the same again, and in parts", () => {
    const parts = [0, 1, 2].map((part) => findMountsPart(corner, request, part, 3));
    const { search: _, ...whole } = found;
    const { search: __, ...merged } = mergeParts(corner, request, parts);
    expect(merged).toEqual(whole);
  });

  it("lists places that truly differ", () => {
    for (const [i, a] of found.best.entries())
      for (const b of found.best.slice(i + 1)) {
        const up = Math.sqrt(dot(diff(a.upper, b.upper), diff(a.upper, b.upper)));
        const down = Math.sqrt(dot(diff(a.lower.point, b.lower.point), diff(a.lower.point, b.lower.point)));
        expect(up + down).toBeGreaterThan(1 * INCH);
      }
  });
});

const diff = (a: { x: number; y: number; z: number }, b: { x: number; y: number; z: number }) =>
  vec(a.x - b.x, a.y - b.y, a.z - b.z);

it("has extreme lengths in closed form that dense sampling never passes and all but reaches", () => {
  const random = randoms(3);
  const point = () => vec(random() - 0.5, random() - 0.5, random() - 0.5);
  for (let n = 0; n < 200; n += 1) {
    const terms = lengthTerms(point(), point(), point(), unit(point()));
    const from = -3 * random();
    const to = 3 * random();
    const { shortest, longest, falls } = lengthExtremes(terms, from, to);
    const sampled = Array.from({ length: 2001 }, (_, i) => {
      const t = from + ((to - from) * i) / 2000;
      return Math.sqrt(Math.max(0, terms.a + terms.b * Math.cos(t) + terms.c * Math.sin(t)));
    });
    expect(Math.min(...sampled)).toBeGreaterThan(shortest - 1e-9);
    expect(Math.min(...sampled)).toBeLessThan(shortest + 5e-3);
    expect(Math.max(...sampled)).toBeLessThan(longest + 1e-9);
    expect(Math.max(...sampled)).toBeGreaterThan(longest - 1e-5);
    if (falls) for (let i = 1; i < sampled.length; i += 1) expect(sampled[i]!).toBeLessThan(sampled[i - 1]! + 1e-12);
  }
});

it("writes the shock's length on an arm as the cycle does", () => {
  const { corner, request } = smallRequest("saltbush");
  const search = makeSearch(corner, request);
  const arm = corner.arms[0]!;
  const lower = search.lower[3]!;
  const upper = upperAt(search.upper, 5);
  const { a, b, c } = lengthTerms(upper, lower.point, arm.point, arm.axis);
  search.movement.states.forEach((state, k) => {
    const t = state[AT.firstArm + 2]!;
    const at = search.paths[3]!.at.subarray(3 * k, 3 * k + 3);
    const length = Math.hypot(upper.x - at[0]!, upper.y - at[1]!, upper.z - at[2]!);
    expect(Math.sqrt(a + b * Math.cos(t) + c * Math.sin(t))).toBeCloseTo(length, 12);
  });
});

describe("where a larger fuel tank blocks every place", () => {
  const demo = exampleCar("saltbush");
  const car = {
    ...demo,
    keepOuts: demo.keepOuts.map((each) =>
      each.name === "fuel tank" && each.shape === "box"
        ? { ...each, centre: vec(4 * INCH, 0, 26 * INCH), half: vec(15 * INCH, 20 * INCH, 5 * INCH) }
        : each,
    ),
  };
  const { request: small } = smallRequest("saltbush");
  const corner = makeCorner(car);
  const request = { ...small, shocks: [ownShock(car)] };

  it("proposes changes, each of which opens a place when it is made, and not when less of it is made", () => {
    expect(findMounts(corner, request).feasible.count).toBe(0);
    const openings = whatWouldOpen(corner, request);
    expect(openings.map(({ change }) => change.kind)).toContain("notch-keep-out");
    for (const { change, by, notBy, proposal } of openings) {
      const made = withChange(corner, request, change, by)!;
      const then = findMounts(made.corner, made.request);
      expect(then.feasible.count).toBeGreaterThan(0);
      expect(proposal.fails).toBeNull();
      if (notBy > 0) {
        const less = withChange(corner, request, change, notBy)!;
        expect(findMounts(less.corner, less.request).feasible.count).toBe(0);
      }
    }
  });

  it("has nothing to open where places are left", () => {
    const { corner: free, request: asked } = smallRequest("saltbush");
    expect(whatWouldOpen(free, asked)).toEqual([]);
  });
});
