import { dot, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import type { GroundUnder } from "./ground.ts";

export interface RollCentre {
  /** From the body's centreline, m, positive to the left. */
  readonly outOfCentre: number;
  /** Above the ground, square to it, m. */
  readonly height: number;
}

/** A contact point and its velocity by the travel of its own wheel, carried by the spindle with the wheel locked to it. */
export interface ContactPath {
  readonly point: Vec3;
  readonly velocity: Vec3;
}

/** Lines that lie within this angle (rad) are parallel: they would meet beyond any distance that means something on a car. */
const PARALLEL = 1e-6;

/** A contact point slower than this, m per m of travel, has no direction. */
const STILL = 1e-9;

/**
 * Roll centre in this position: where the two lines meet that run through each contact point square to its path, seen in
 * the plane across the car (the front-view construction of Milliken and Milliken, Race Car Vehicle Dynamics, ch. 17, from memory, drawn for both wheels).
 * Null where the lines are parallel, or where a contact point does not move in this view. Where they are one and the same line (a square trailing arm in heave: both lie in
 * the ground) every point of it would do, and the one on the centreline is given, which is where lines that are all but
 * the same meet on a car that is alike on both sides.
 */
export function rollCentreOf(left: ContactPath, right: ContactPath, ground: GroundUnder): RollCentre | null {
  const u = squareTo(left.velocity);
  const v = squareTo(right.velocity);
  if (!u || !v) return null;
  const apart = subtract(left.point, right.point);
  const sine = u.y * v.z - u.z * v.y;
  if (Math.abs(sine) >= PARALLEL) {
    // left + t·u lies on the right line.
    const t = (v.y * apart.z - v.z * apart.y) / sine;
    return over(vec(0, left.point.y + t * u.y, left.point.z + t * u.z), ground);
  }
  const offset = u.y * apart.z - u.z * apart.y;
  if (Math.abs(offset) > PARALLEL * ground.trackWidth || u.y === 0) return null;
  const onCentre = (point: Vec3, line: Vec3) => point.z - (point.y * line.z) / line.y;
  return over(vec(0, 0, 0.5 * (onCentre(left.point, u) + onCentre(right.point, v))), ground);
}

/** Unit vector across the car, square to a velocity as seen from the front; null where it does not move in that view. */
function squareTo(velocity: Vec3): Vec3 | null {
  const size = Math.hypot(velocity.y, velocity.z);
  return size > STILL ? vec(0, velocity.z / size, -velocity.y / size) : null;
}

const over = (centre: Vec3, ground: GroundUnder): RollCentre => ({
  outOfCentre: centre.y,
  height: dot(subtract(centre, ground.point), ground.normal),
});
