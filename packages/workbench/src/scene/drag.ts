import type { Vec3 } from "@armwright/engine";
import type { Eye } from "./eye.ts";
import type { Axis, DragWay } from "./types.ts";

export const AXES: Readonly<Record<Axis, Vec3>> = {
  x: { x: 1, y: 0, z: 0 },
  y: { x: 0, y: 1, z: 0 },
  z: { x: 0, y: 0, z: 1 },
};

/** A plane or axis that lies closer to the line of sight than this cannot be dragged in with any feeling. */
const EDGE_ON = 0.12;

/** Where a point goes when the hand moves by px: along one axis, or in a plane of two. Null where it is seen edge on. */
export function dragged(eye: Eye, from: Vec3, dx: number, dy: number, way: Exclude<DragWay, "view">): Vec3 | null {
  const right = dx / eye.scale;
  const up = -dy / eye.scale;
  if (way.length === 1) {
    const axis = AXES[way as Axis];
    const u = seen(eye, axis);
    const size = u.x * u.x + u.y * u.y;
    if (size < EDGE_ON * EDGE_ON) return null;
    const by = (u.x * right + u.y * up) / size;
    return { x: from.x + axis.x * by, y: from.y + axis.y * by, z: from.z + axis.z * by };
  }
  const a = AXES[way[0] as Axis];
  const b = AXES[way[1] as Axis];
  const u = seen(eye, a);
  const v = seen(eye, b);
  const determinant = u.x * v.y - v.x * u.y;
  if (Math.abs(determinant) < EDGE_ON) return null;
  const s = (right * v.y - v.x * up) / determinant;
  const t = (u.x * up - right * u.y) / determinant;
  return { x: from.x + a.x * s + b.x * t, y: from.y + a.y * s + b.y * t, z: from.z + a.z * s + b.z * t };
}

/** The plane of two vehicle axes that is seen flattest. */
export function flattest(eye: Eye): "xy" | "xz" | "yz" {
  const { x, y, z } = eye.back;
  const [ax, ay, az] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  return ax >= ay && ax >= az ? "yz" : ay >= az ? "xz" : "xy";
}

/** An axis as it runs on the screen: to the right and up, shortened as it is seen. */
export const seen = ({ right, up }: Eye, a: Vec3): { readonly x: number; readonly y: number } => ({
  x: right.x * a.x + right.y * a.y + right.z * a.z,
  y: up.x * a.x + up.y * a.y + up.z * a.z,
});
