/** A vector or a point in vehicle axes: x forward, y left, z up (ISO 8855), metres unless said otherwise. */
export interface Vec3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export const ORIGIN: Vec3 = { x: 0, y: 0, z: 0 };
export const FORWARD: Vec3 = { x: 1, y: 0, z: 0 };
export const LEFT: Vec3 = { x: 0, y: 1, z: 0 };
export const UP: Vec3 = { x: 0, y: 0, z: 1 };

export const vec = (x: number, y: number, z: number): Vec3 => ({ x, y, z });
export const add = (a: Vec3, b: Vec3): Vec3 => vec(a.x + b.x, a.y + b.y, a.z + b.z);
export const subtract = (a: Vec3, b: Vec3): Vec3 => vec(a.x - b.x, a.y - b.y, a.z - b.z);
export const scale = (a: Vec3, factor: number): Vec3 => vec(a.x * factor, a.y * factor, a.z * factor);
/** a + factor·b */
export const addScaled = (a: Vec3, b: Vec3, factor: number): Vec3 =>
  vec(a.x + b.x * factor, a.y + b.y * factor, a.z + b.z * factor);
export const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vec3, b: Vec3): Vec3 =>
  vec(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
export const length = (a: Vec3): number => Math.sqrt(dot(a, a));
export const distance = (a: Vec3, b: Vec3): number => length(subtract(a, b));
export const midpoint = (a: Vec3, b: Vec3): Vec3 => between(a, b, 0.5);
/** The point a fraction of the way from a (0) to b (1). */
export const between = (a: Vec3, b: Vec3, fraction: number): Vec3 => addScaled(a, subtract(b, a), fraction);
/** Unit vector along a. A zero vector has no direction: the caller has to rule it out. */
export const unit = (a: Vec3): Vec3 => scale(a, 1 / length(a));
/** The part of a that is square to the unit vector `axis`. */
export const squareTo = (a: Vec3, axis: Vec3): Vec3 => addScaled(a, axis, -dot(a, axis));
/** Angle between two directions, 0…π rad; accurate near 0 and π, where acos of the dot product is not. */
export const angleBetween = (a: Vec3, b: Vec3): number => Math.atan2(length(cross(a, b)), dot(a, b));
/** A unit vector square to a, chosen from the vehicle axis that a is farthest from. */
export function anySquareTo(a: Vec3): Vec3 {
  const ax = Math.abs(a.x);
  const ay = Math.abs(a.y);
  const az = Math.abs(a.z);
  const helper = ax <= ay && ax <= az ? FORWARD : ay <= az ? LEFT : UP;
  return unit(squareTo(helper, unit(a)));
}
/** The same point on the other side of the car. */
export const mirrored = (a: Vec3): Vec3 => vec(a.x, -a.y, a.z);
export const isFiniteVec = (a: Vec3): boolean => Number.isFinite(a.x) && Number.isFinite(a.y) && Number.isFinite(a.z);
