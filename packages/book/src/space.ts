import type { Vec3 } from "@armwright/engine";

// What templates need of vectors: metres, vehicle axes.

export const along = (from: Vec3, direction: Vec3, distance: number): Vec3 => ({
  x: from.x + direction.x * distance,
  y: from.y + direction.y * distance,
  z: from.z + direction.z * distance,
});
export const less = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vec3, b: Vec3): Vec3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
export const size = (a: Vec3): number => Math.sqrt(dot(a, a));
export const unit = (a: Vec3): Vec3 => {
  const length = size(a);
  return { x: a.x / length, y: a.y / length, z: a.z / length };
};
