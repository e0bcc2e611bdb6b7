import { add, anySquareTo, cross, dot, scale, subtract, type Vec3, vec } from "./vec3.ts";

/** A right-handed rotation matrix, row by row. */
export type Rotation = readonly [number, number, number, number, number, number, number, number, number];

/**
 * Where a body is: takes a point or direction of the body, given in its design position, to where it is now.
 * point now = rotation · point in the design position + translation, both in vehicle axes, metres.
 */
export interface Pose {
  readonly rotation: Rotation;
  readonly translation: Vec3;
}

export const NO_ROTATION: Rotation = [1, 0, 0, 0, 1, 0, 0, 0, 1];
export const DESIGN_POSE: Pose = { rotation: NO_ROTATION, translation: vec(0, 0, 0) };

export const rotate = (r: Rotation, v: Vec3): Vec3 =>
  vec(r[0] * v.x + r[1] * v.y + r[2] * v.z, r[3] * v.x + r[4] * v.y + r[5] * v.z, r[6] * v.x + r[7] * v.y + r[8] * v.z);

export const placePoint = (pose: Pose, point: Vec3): Vec3 => add(rotate(pose.rotation, point), pose.translation);
export const placeDirection = (pose: Pose, direction: Vec3): Vec3 => rotate(pose.rotation, direction);

/** The pose that does `first`, then `then`. */
export function compose(then: Pose, first: Pose): Pose {
  return { rotation: multiply(then.rotation, first.rotation), translation: placePoint(then, first.translation) };
}

export function multiply(a: Rotation, b: Rotation): Rotation {
  return [
    a[0] * b[0] + a[1] * b[3] + a[2] * b[6],
    a[0] * b[1] + a[1] * b[4] + a[2] * b[7],
    a[0] * b[2] + a[1] * b[5] + a[2] * b[8],
    a[3] * b[0] + a[4] * b[3] + a[5] * b[6],
    a[3] * b[1] + a[4] * b[4] + a[5] * b[7],
    a[3] * b[2] + a[4] * b[5] + a[5] * b[8],
    a[6] * b[0] + a[7] * b[3] + a[8] * b[6],
    a[6] * b[1] + a[7] * b[4] + a[8] * b[7],
    a[6] * b[2] + a[7] * b[5] + a[8] * b[8],
  ];
}

export const transpose = (r: Rotation): Rotation => [r[0], r[3], r[6], r[1], r[4], r[7], r[2], r[5], r[8]];

export function invert(pose: Pose): Pose {
  const rotation = transpose(pose.rotation);
  return { rotation, translation: scale(rotate(rotation, pose.translation), -1) };
}

/** Rotation by `angle` (rad, right-handed) about the unit vector `axis`: Rodrigues' formula. */
export function rotationAbout(axis: Vec3, angle: number): Rotation {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const t = 1 - c;
  const { x, y, z } = axis;
  return [
    c + t * x * x,
    t * x * y - s * z,
    t * x * z + s * y,
    t * x * y + s * z,
    c + t * y * y,
    t * y * z - s * x,
    t * x * z - s * y,
    t * y * z + s * x,
    c + t * z * z,
  ];
}

/** Turning by `angle` (rad) about the line through `point` along the unit vector `axis`. */
export function turnAbout(point: Vec3, axis: Vec3, angle: number): Pose {
  const rotation = rotationAbout(axis, angle);
  return { rotation, translation: subtract(point, rotate(rotation, point)) };
}

/** The smallest rotation that takes the unit vector `from` onto the unit vector `to`. */
export function rotationBetween(from: Vec3, to: Vec3): Rotation {
  const axis = cross(from, to);
  const sine = Math.sqrt(dot(axis, axis));
  const cosine = dot(from, to);
  if (sine < 1e-15) return cosine > 0 ? NO_ROTATION : rotationAbout(anySquareTo(from), Math.PI);
  return rotationAbout(scale(axis, 1 / sine), Math.atan2(sine, cosine));
}
