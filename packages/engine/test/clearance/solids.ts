import fc from "fast-check";
import type { RoundedSolid, Solid } from "../../src/clearance/shapes.ts";
import { type Pose, type Rotation, rotate, rotationAbout } from "../../src/geometry/pose.ts";
import {
  addScaled,
  cross,
  dot,
  FORWARD,
  LEFT,
  length,
  scale,
  subtract,
  UP,
  type Vec3,
  vec,
} from "../../src/geometry/vec3.ts";

/** Whole millimetres and eighths of a turn turn up often, so that parallel, touching and coincident parts do too. */
const coordinate = fc.oneof(
  fc.double({ min: -0.9, max: 0.9, noNaN: true }),
  fc.integer({ min: -8, max: 8 }).map((n) => n * 0.1),
);
const angle = fc.oneof(
  fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
  fc.integer({ min: -4, max: 4 }).map((n) => (n * Math.PI) / 4),
);
const size = (max: number): fc.Arbitrary<number> =>
  fc.oneof(fc.double({ min: 0.001, max, noNaN: true }), fc.constantFrom(0, max / 4, max / 2, max));

export const anyPoint: fc.Arbitrary<Vec3> = fc
  .tuple(coordinate, coordinate, coordinate)
  .map(([x, y, z]) => vec(x, y, z));
const anyRotation: fc.Arbitrary<Rotation> = fc
  .tuple(anyPoint, angle)
  .map(([axis, turn]) => rotationAbout(length(axis) > 1e-6 ? scale(axis, 1 / length(axis)) : UP, turn));
export const anyPose: fc.Arbitrary<Pose> = fc
  .tuple(anyRotation, anyPoint)
  .map(([rotation, translation]) => ({ rotation, translation }));

const anyCapsule: fc.Arbitrary<RoundedSolid> = fc
  .tuple(anyPoint, anyPoint, size(0.1), fc.boolean())
  .map(([from, to, radius, ball]) => ({ shape: "capsule", from, to: ball ? from : to, radius }));
const anyBox: fc.Arbitrary<RoundedSolid> = fc
  .tuple(anyPoint, anyRotation, size(0.5), size(0.5), size(0.5), size(0.05))
  .map(([centre, turn, x, y, z, radius]) => ({
    shape: "box",
    centre,
    axisX: rotate(turn, FORWARD),
    axisY: rotate(turn, LEFT),
    half: vec(x, y, z),
    radius,
  }));
const anyWheel: fc.Arbitrary<RoundedSolid> = fc
  .tuple(anyPoint, anyRotation, size(0.4), size(0.15), size(0.06))
  .map(([centre, turn, coreRadius, coreHalfWidth, radius]) => ({
    shape: "wheel",
    centre,
    axis: rotate(turn, LEFT),
    coreRadius,
    coreHalfWidth,
    radius,
  }));
const anyHalfSpace: fc.Arbitrary<Solid> = fc
  .tuple(anyPoint, anyRotation)
  .map(([point, turn]) => ({ shape: "half-space", point, normal: rotate(turn, UP) }));

export const anyRounded = fc.oneof(anyCapsule, anyBox, anyWheel);
export const anyPair: fc.Arbitrary<readonly [Solid, Solid]> = fc.oneof(
  { weight: 5, arbitrary: fc.tuple(anyRounded, anyRounded) },
  { weight: 1, arbitrary: fc.tuple(anyRounded, anyHalfSpace) },
  { weight: 1, arbitrary: fc.tuple(anyHalfSpace, anyRounded) },
);

export const radiusOf = (solid: Solid): number => (solid.shape === "half-space" ? 0 : solid.radius);

/** Greatest n·x over the core, from each shape's own formula: a second route beside the engine's sums of segments. */
export function reachOfCore(solid: RoundedSolid, n: Vec3): number {
  switch (solid.shape) {
    case "capsule":
      return Math.max(dot(n, solid.from), dot(n, solid.to));
    case "box":
      return (
        dot(n, solid.centre) + boxAxes(solid).reduce((sum, [axis, half]) => sum + half * Math.abs(dot(n, axis)), 0)
      );
    case "wheel":
      return (
        dot(n, solid.centre) +
        solid.coreHalfWidth * Math.abs(dot(n, solid.axis)) +
        solid.coreRadius * length(cross(n, solid.axis))
      );
  }
}

/** How far a point is outside the core along the core's own axes, 0 inside: whether it is a point of it. */
export function outsideCore(solid: RoundedSolid, point: Vec3): number {
  switch (solid.shape) {
    case "capsule": {
      const along = subtract(solid.to, solid.from);
      const t = dot(along, along) > 0 ? dot(subtract(point, solid.from), along) / dot(along, along) : 0;
      return length(subtract(point, addScaled(solid.from, along, Math.min(1, Math.max(0, t)))));
    }
    case "box":
      return Math.max(
        0,
        ...boxAxes(solid).map(([axis, half]) => Math.abs(dot(subtract(point, solid.centre), axis)) - half),
      );
    case "wheel": {
      const from = subtract(point, solid.centre);
      return Math.max(
        0,
        Math.abs(dot(from, solid.axis)) - solid.coreHalfWidth,
        length(cross(from, solid.axis)) - solid.coreRadius,
      );
    }
  }
}

export const boxAxes = (box: Extract<RoundedSolid, { shape: "box" }>): readonly (readonly [Vec3, number])[] => [
  [box.axisX, box.half.x],
  [box.axisY, box.half.y],
  [cross(box.axisX, box.axisY), box.half.z],
];
