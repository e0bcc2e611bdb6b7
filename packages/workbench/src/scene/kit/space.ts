import type { Vec3 } from "@armwright/engine";

// Vectors in vehicle axes; points and lengths in metres.

export const INCH = 0.0254;
export const FORWARD: Vec3 = { x: 1, y: 0, z: 0 };
export const LEFT: Vec3 = { x: 0, y: 1, z: 0 };
export const UP: Vec3 = { x: 0, y: 0, z: 1 };

export const add = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const subtract = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const scale = (a: Vec3, factor: number): Vec3 => ({ x: a.x * factor, y: a.y * factor, z: a.z * factor });
/** a + factor · b */
export const along = (a: Vec3, b: Vec3, factor: number): Vec3 => ({
  x: a.x + b.x * factor,
  y: a.y + b.y * factor,
  z: a.z + b.z * factor,
});
export const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vec3, b: Vec3): Vec3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
export const length = (a: Vec3): number => Math.sqrt(dot(a, a));
export const apart = (a: Vec3, b: Vec3): number => length(subtract(a, b));
export const midway = (a: Vec3, b: Vec3, fraction = 0.5): Vec3 => along(a, subtract(b, a), fraction);
/** Unit vector along a; a itself where it has no length. */
export const unit = (a: Vec3): Vec3 => {
  const size = length(a);
  return size > 0 ? scale(a, 1 / size) : a;
};
/** The part of a that is square to the unit vector `axis`. */
export const squareTo = (a: Vec3, axis: Vec3): Vec3 => along(a, axis, -dot(a, axis));

/** A unit vector square to the unit vector `axis`, as near to `wanted` as can be; another where they are in line. */
export function squareUnit(wanted: Vec3, axis: Vec3): Vec3 {
  const square = squareTo(wanted, axis);
  if (length(square) > 1e-6) return unit(square);
  return unit(squareTo(Math.abs(axis.x) < 0.6 ? FORWARD : UP, axis));
}

/** a turned by `angle` (rad, right-handed) about the unit vector `axis`: Rodrigues' formula. */
export function turned(a: Vec3, axis: Vec3, angle: number): Vec3 {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const k = dot(axis, a) * (1 - c);
  const n = cross(axis, a);
  return {
    x: a.x * c + n.x * s + axis.x * k,
    y: a.y * c + n.y * s + axis.y * k,
    z: a.z * c + n.z * s + axis.z * k,
  };
}

/** a carried by the smallest rotation that takes the unit vector `from` onto the unit vector `to` (not its opposite). */
export function carried(a: Vec3, from: Vec3, to: Vec3): Vec3 {
  const axis = cross(from, to);
  const cosine = dot(from, to);
  const k = dot(axis, a) / (1 + cosine);
  const n = cross(axis, a);
  return {
    x: a.x * cosine + n.x + axis.x * k,
    y: a.y * cosine + n.y + axis.y * k,
    z: a.z * cosine + n.z + axis.z * k,
  };
}
