import { type Pose, rotate, rotationBetween } from "../geometry/pose.ts";
import { addScaled, midpoint, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import { reachDirection } from "./arm-axis.ts";
import type { Adjuster } from "./kind.ts";

/** A link whose tube is turned between a right-hand and a left-hand end. */
export const turnbuckle = (id: string, label: string): Adjuster => ({
  id,
  label,
  rodEnds: [`${id}.inner`, `${id}.outer`],
  action: "turnbuckle",
});

/** One rod end of an arm, taken off, screwed, and put back. */
export const screwedEnd = (pivot: string, label: string): Adjuster => ({
  id: pivot,
  label,
  rodEnds: [pivot],
  action: "end",
});

/** A rod end's centre after it is screwed out by `change` (m) along its shank, square to the arm's other hinge line. */
export const screwOut = (end: Vec3, base: { readonly point: Vec3; readonly axis: Vec3 }, change: number): Vec3 =>
  addScaled(end, reachDirection(base.point, base.axis, end), change);

/** The smallest movement that lays the line through one pair of points onto another, middle on middle. */
export function fitLine(from: readonly [Vec3, Vec3], to: readonly [Vec3, Vec3]): Pose {
  const rotation = rotationBetween(unit(subtract(from[1], from[0])), unit(subtract(to[1], to[0])));
  const middle = midpoint(from[0], from[1]);
  return { rotation, translation: subtract(midpoint(to[0], to[1]), rotate(rotation, middle)) };
}
