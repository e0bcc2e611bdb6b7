import { type Pose, placeDirection, placePoint } from "../geometry/pose.ts";
import { mirrored, type Vec3 } from "../geometry/vec3.ts";

/**
 * The parts of a car as clearances see them. Each but the half-space is a rounded solid: a convex core plus everything
 * within `radius` of it. Points and lengths in metres, vehicle axes; directions are unit vectors.
 */
export type Solid = RoundedSolid | HalfSpace;
export type RoundedSolid = Capsule | Box | WheelSolid;

/** A straight round bar with ball ends: tube, link, shaft, shock. The core is the segment; from = to is a ball. */
export interface Capsule {
  readonly shape: "capsule";
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}

/** An oriented box, its edges rounded outward by `radius` (0: sharp). */
export interface Box {
  readonly shape: "box";
  readonly centre: Vec3;
  /** Its own first and second axis, square to each other; the third is their cross product. */
  readonly axisX: Vec3;
  readonly axisY: Vec3;
  /** Half of the core's size along its own three axes, none negative. */
  readonly half: Vec3;
  readonly radius: number;
}

/** A disc with rounded shoulders: outside radius = coreRadius + radius, half of its width = coreHalfWidth + radius. */
export interface WheelSolid {
  readonly shape: "wheel";
  readonly centre: Vec3;
  readonly axis: Vec3;
  readonly coreRadius: number;
  readonly coreHalfWidth: number;
  readonly radius: number;
}

/** Everything behind a plane. */
export interface HalfSpace {
  readonly shape: "half-space";
  readonly point: Vec3;
  /** Out of the solid, toward the free side. */
  readonly normal: Vec3;
}

/** The solid of a tyre whose shoulders are arcs of `shoulderRadius`, all in metres; `spinAxis` is a unit vector. */
export function tyreSolid(
  centre: Vec3,
  spinAxis: Vec3,
  freeRadius: number,
  sectionWidth: number,
  shoulderRadius: number,
): WheelSolid {
  const coreRadius = freeRadius - shoulderRadius;
  const coreHalfWidth = sectionWidth / 2 - shoulderRadius;
  if (!(shoulderRadius >= 0 && coreRadius >= 0 && coreHalfWidth >= 0)) {
    throw new RangeError(
      `bug in the caller: a tyre's shoulder radius lies between 0 and half of its section width and its free radius; found ${shoulderRadius} m`,
    );
  }
  return { shape: "wheel", centre, axis: spinAxis, coreRadius, coreHalfWidth, radius: shoulderRadius };
}

/** The solid where its body is now, given where it is in the design position. */
export function placeSolid(pose: Pose, solid: RoundedSolid): RoundedSolid;
export function placeSolid(pose: Pose, solid: Solid): Solid;
export function placeSolid(pose: Pose, solid: Solid): Solid {
  switch (solid.shape) {
    case "capsule":
      return { ...solid, from: placePoint(pose, solid.from), to: placePoint(pose, solid.to) };
    case "box":
      return {
        ...solid,
        centre: placePoint(pose, solid.centre),
        axisX: placeDirection(pose, solid.axisX),
        axisY: placeDirection(pose, solid.axisY),
      };
    case "wheel":
      return { ...solid, centre: placePoint(pose, solid.centre), axis: placeDirection(pose, solid.axis) };
    case "half-space":
      return { ...solid, point: placePoint(pose, solid.point), normal: placeDirection(pose, solid.normal) };
  }
}

/** The same solid on the other side of the car. */
export function mirroredSolid(solid: RoundedSolid): RoundedSolid;
export function mirroredSolid(solid: Solid): Solid;
export function mirroredSolid(solid: Solid): Solid {
  switch (solid.shape) {
    case "capsule":
      return { ...solid, from: mirrored(solid.from), to: mirrored(solid.to) };
    case "box":
      // The third axis comes out turned round, which a box does not notice.
      return {
        ...solid,
        centre: mirrored(solid.centre),
        axisX: mirrored(solid.axisX),
        axisY: mirrored(solid.axisY),
      };
    case "wheel":
      return { ...solid, centre: mirrored(solid.centre), axis: mirrored(solid.axis) };
    case "half-space":
      return { ...solid, point: mirrored(solid.point), normal: mirrored(solid.normal) };
  }
}
