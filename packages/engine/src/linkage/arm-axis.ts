import { cross, dot, scale, squareTo, subtract, UP, unit, type Vec3 } from "../geometry/vec3.ts";

/**
 * The line through two hinge points, with its unit direction so turned that a small positive turn lifts `outer`
 * (right-handed; m). The two points must differ.
 */
export function liftingAxis(from: Vec3, to: Vec3, outer: Vec3): { readonly point: Vec3; readonly axis: Vec3 } {
  const axis = unit(subtract(to, from));
  const lifts = dot(cross(axis, subtract(outer, from)), UP) >= 0;
  return { point: from, axis: lifts ? axis : scale(axis, -1) };
}

/** Direction in which an arm reaches from its hinge line to a point: square to the line, unit. */
export const reachDirection = (point: Vec3, axis: Vec3, outer: Vec3): Vec3 =>
  unit(squareTo(subtract(outer, point), axis));
