import { addScaled, dot, lengthOf, type Vec3 } from "@armwright/engine";

// Directions where a vector may have none: a tube seen along its length has no side.

/** Unit vector along `a`, or `otherwise` where it has no length. */
export function unitOr(a: Vec3, otherwise: Vec3): Vec3 {
  const size = lengthOf(a);
  return size > 1e-12 ? { x: a.x / size, y: a.y / size, z: a.z / size } : otherwise;
}

/** Unit vector of what is left of `a` square to the unit vector `axis`. */
export const squareOr = (a: Vec3, axis: Vec3, otherwise: Vec3): Vec3 =>
  unitOr(addScaled(a, axis, -dot(a, axis)), otherwise);
