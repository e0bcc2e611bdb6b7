import type { Vec3 } from "@armwright/engine";

// What drawing needs of vectors: metres, vehicle axes.

export const UP: Vec3 = { x: 0, y: 0, z: 1 };
export const OUT: Vec3 = { x: 0, y: 1, z: 0 };

export const along = (from: Vec3, direction: Vec3, distance: number): Vec3 => ({
  x: from.x + direction.x * distance,
  y: from.y + direction.y * distance,
  z: from.z + direction.z * distance,
});

export const less = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const dotOf = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const sizeOf = (a: Vec3): number => Math.sqrt(dotOf(a, a));
export const apart = (a: Vec3, b: Vec3): number => sizeOf(less(a, b));
export const midway = (a: Vec3, b: Vec3): Vec3 => along(a, less(b, a), 0.5);

export const crossOf = (a: Vec3, b: Vec3): Vec3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

/** Unit vector along `a`, or `otherwise` where it has no length. */
export function unitOr(a: Vec3, otherwise: Vec3): Vec3 {
  const size = sizeOf(a);
  return size > 1e-12 ? { x: a.x / size, y: a.y / size, z: a.z / size } : otherwise;
}

/** Unit vector of what is left of `a` square to the unit vector `axis`. */
export const squareOr = (a: Vec3, axis: Vec3, otherwise: Vec3): Vec3 =>
  unitOr(along(a, axis, -dotOf(a, axis)), otherwise);
