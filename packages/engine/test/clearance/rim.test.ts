import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clearanceInsideRim, type RimBarrel, tubeInsideRim } from "../../src/clearance/rim.ts";
import { placeDirection, placePoint } from "../../src/geometry/pose.ts";
import { add, between, distance, LEFT, type Vec3, vec } from "../../src/geometry/vec3.ts";
import { anyPoint, anyPose } from "./solids.ts";

const rim: RimBarrel = { wheelCentre: vec(1, 2, 3), spinAxis: LEFT, insideRadius: 0.18, rimWidth: 0.2 };
/** From a pivot `axial` out along the spin axis and `radial` off it, head of 20 mm. */
const at = (axial: number, radial: number): number =>
  clearanceInsideRim({ pivot: add(rim.wheelCentre, vec(radial * 0.6, axial, radial * 0.8)), headRadius: 0.02 }, rim);

describe("rod end's head to the inside of the rim", () => {
  it.each([
    ["on the spin axis", 0, 0, 0.16],
    ["in the barrel", 0.05, 0.13, 0.03],
    ["in the barrel, touching it", -0.05, 0.16, 0],
    ["at the barrel's end", -0.1, 0.13, 0.03],
    ["inboard of the barrel: to the edge", -0.14, 0.15, 0.03],
    ["beside the rim, farther out than the barrel", -0.15, 0.25, 0.03],
    ["in the tyre, nearer to the barrel", 0, 0.2, -0.04],
    ["in the tyre, nearer to the side", 0.09, 0.25, -0.03],
  ])("%s", (_, axial, radial, expected) => {
    expect(at(axial, radial)).toBeCloseTo(expected, 12);
  });

  it("changes by no more than the pivot moves", () => {
    const check = fc.property(anyPoint, anyPoint, (p, q) => {
      const here = (pivot: Vec3): number =>
        clearanceInsideRim({ pivot, headRadius: 0.02 }, { ...rim, wheelCentre: vec(0, 0, 0) });
      expect(Math.abs(here(p) - here(q))).toBeLessThan(distance(p, q) + 1e-12);
    });
    fc.assert(check, { numRuns: 1000, seed: 12 });
  });

  it("is the same wherever wheel and pivot are carried together", () => {
    const check = fc.property(anyPoint, anyPose, (pivot, pose) => {
      const there = clearanceInsideRim(
        { pivot: placePoint(pose, pivot), headRadius: 0.02 },
        { ...rim, wheelCentre: placePoint(pose, rim.wheelCentre), spinAxis: placeDirection(pose, rim.spinAxis) },
      );
      expect(Math.abs(there - clearanceInsideRim({ pivot, headRadius: 0.02 }, rim))).toBeLessThan(1e-12);
    });
    fc.assert(check, { numRuns: 500, seed: 13 });
  });
});

describe("a tube into the rim", () => {
  it("is as near as the nearest of a thousand balls along it", () => {
    const coordinate = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
    const spot = fc.record({ x: coordinate(0.15), y: coordinate(0.15), z: coordinate(0.15) });
    fc.assert(
      fc.property(spot, spot, (inner, outer) => {
        const rim = { wheelCentre: vec(0, 0.8, 0.4), spinAxis: vec(0, 1, 0), insideRadius: 0.17, rimWidth: 0.2 };
        const from = add(inner, vec(0, 0.3, 0.4));
        const to = add(outer, vec(0, 0.72, 0.4));
        const { gap, fraction } = tubeInsideRim({ from, to, radius: 0.02, headRadius: 0.025 }, rim);
        const ballAt = (t: number, headRadius: number) =>
          clearanceInsideRim({ pivot: between(from, to, t), headRadius }, rim);
        const balls = Array.from({ length: 1001 }, (_, i) => ballAt(i / 1000, 0.02));
        const nearest = Math.min(...balls, ballAt(1, 0.025));
        // A thousandth of the tube between balls is at most 0.6 mm, and the gap changes by no more.
        if (nearest < 0) {
          // Overlapping: only that it does is told for sure.
          expect(gap).toBeLessThan(1e-8);
          return;
        }
        // On the axis itself the distance from it keeps only half its figures: 1e-8 m.
        expect(gap).toBeLessThanOrEqual(nearest + 1e-8);
        expect(gap).toBeGreaterThan(nearest - 6e-4);
        expect(Math.min(ballAt(fraction, 0.02), ballAt(1, 0.025))).toBeCloseTo(gap, 7);
      }),
      { numRuns: 500 },
    );
  });
});
