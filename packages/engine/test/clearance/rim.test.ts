import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clearanceInsideRim, type RimBarrel } from "../../src/clearance/rim.ts";
import { placeDirection, placePoint } from "../../src/geometry/pose.ts";
import { add, distance, LEFT, type Vec3, vec } from "../../src/geometry/vec3.ts";
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
