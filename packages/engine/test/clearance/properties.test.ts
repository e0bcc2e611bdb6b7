import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Separation, separation } from "../../src/clearance/separation.ts";
import { mirroredSolid, placeSolid, type Solid } from "../../src/clearance/shapes.ts";
import { NO_ROTATION } from "../../src/geometry/pose.ts";
import { distance, isFiniteVec, length, scale } from "../../src/geometry/vec3.ts";
import { anyPair, anyPoint, anyPose } from "./solids.ts";

/** GJK stops at 1e-11 m, depth at 1e-10 m; solids that were turned are themselves rounded at 1e-16 of a metre. */
const SAME = 1e-9;
const ROUNDING = 1e-12;
const SEED = 4711;
const RUNS = { numRuns: 2000, seed: SEED };

const inflated = (solid: Solid, by: number): Solid =>
  solid.shape === "half-space" ? solid : { ...solid, radius: solid.radius + by };
const growing = (solid: Solid): number => (solid.shape === "half-space" ? 0 : 1);

describe(`properties of separation, seed ${SEED}`, () => {
  const holds = (name: string, check: (found: Separation, a: Solid, b: Solid) => void): void =>
    it(name, () =>
      fc.assert(
        fc.property(anyPair, ([a, b]) => check(separation(a, b), a, b)),
        RUNS,
      ),
    );

  holds("is finite, with a unit normal", ({ distance: gap, onA, onB, normal }) => {
    expect(Number.isFinite(gap) && isFiniteVec(onA) && isFiniteVec(onB)).toBe(true);
    expect(Math.abs(length(normal) - 1)).toBeLessThan(ROUNDING);
  });

  holds("is the distance between its two points", ({ distance: gap, onA, onB }) => {
    expect(Math.abs(distance(onA, onB) - Math.abs(gap))).toBeLessThan(ROUNDING);
  });

  holds("is the same from b to a", ({ distance: gap }, a, b) => {
    expect(Math.abs(separation(b, a).distance - gap)).toBeLessThan(SAME);
  });

  holds("falls by as much as the solids grow", ({ distance: gap }, a, b) => {
    const grown = separation(inflated(a, 0.013), inflated(b, 0.013)).distance;
    expect(Math.abs(gap - 0.013 * (growing(a) + growing(b)) - grown)).toBeLessThan(ROUNDING);
  });

  holds("is the same on the other side of the car", ({ distance: gap }, a, b) => {
    expect(Math.abs(separation(mirroredSolid(a), mirroredSolid(b)).distance - gap)).toBeLessThan(SAME);
  });

  it("is the same wherever the two are carried together", () => {
    const carried = fc.property(anyPair, anyPose, ([a, b], pose) => {
      const there = separation(placeSolid(pose, a), placeSolid(pose, b)).distance;
      expect(Math.abs(there - separation(a, b).distance)).toBeLessThan(SAME);
    });
    fc.assert(carried, RUNS);
  });

  it("changes by no more than one of the two is shifted, near or far, free or overlapping", () => {
    const sizes = fc.constantFrom(1e-6, 1e-3, 0.1, 1);
    const shifted = fc.property(anyPair, anyPoint, sizes, ([a, b], direction, size) => {
      const translation = scale(direction, size);
      const moved = placeSolid({ rotation: NO_ROTATION, translation }, b);
      const change = Math.abs(separation(a, moved).distance - separation(a, b).distance);
      expect(change).toBeLessThan(length(translation) + SAME);
    });
    fc.assert(shifted, RUNS);
  });

  it("is zero once an overlapping solid has been shifted free along the normal by the overlap", () => {
    const freed = fc.property(anyPair, ([a, b]) => {
      const { distance: gap, normal } = separation(a, b);
      fc.pre(gap < 0);
      const translation = scale(normal, -gap);
      const moved = placeSolid({ rotation: NO_ROTATION, translation }, b);
      expect(Math.abs(separation(a, moved).distance)).toBeLessThan(SAME);
    });
    fc.assert(freed, RUNS);
  });
});
