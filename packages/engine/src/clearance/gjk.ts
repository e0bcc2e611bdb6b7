import { addScaled, dot, length, ORIGIN, scale, subtract, type Vec3 } from "../geometry/vec3.ts";
import { type Core, type DifferencePoint, farthestDifference, type PointPair } from "./core.ts";
import { type NearestOfSimplex, nearestWith } from "./simplex.ts";

/** Stops when the distance is known to this, m. */
export const GJK_TOLERANCE = 1e-11;
/** Cores nearer than this (m) count as touching: the direction between them would be rounding. */
export const TOUCHING = 1e-12;
/** Far above what was seen on random and on degenerate pairs; the bounds stay true if it is ever reached. */
const MOST_STEPS = 100;

export interface CoreDistance extends PointPair {
  /** Between a and b, m: never less than the true distance. 0 when they touch or overlap: no plane parts them. */
  readonly distance: number;
  /** Never more than the true distance, m: a plane between the cores proves it. 0 when the cores overlap. */
  readonly atLeast: number;
  readonly steps: number;
}

/**
 * Nearest points of two convex cores, after Gilbert, Johnson and Keerthi (A fast procedure for computing the distance
 * between complex objects in three-dimensional space, IEEE J. Robotics and Automation 4, 1988): the distance is that of
 * the origin from the difference a − b; a simplex of its points is moved toward the origin until its nearest point
 * v fits the plane square to v through the difference's nearest point w, v·w/|v|, which is a lower bound at any step.
 */
export function distanceOfCores(coreA: Core, coreB: Core): CoreDistance {
  let nearest = nearestWith(farthestDifference(coreA, coreB, subtract(coreB.centre, coreA.centre)), []);
  let distance = length(nearest.point);
  let atLeast = 0;
  let steps = 0;
  for (; steps < MOST_STEPS && distance > TOUCHING; steps++) {
    const next = farthestDifference(coreA, coreB, scale(nearest.point, -1));
    atLeast = Math.max(atLeast, dot(nearest.point, next.difference) / distance);
    if (distance - atLeast <= GJK_TOLERANCE || isOneOf(next, nearest.corners)) break;
    const moved = nearestWith(next, nearest.corners);
    // Once a plane between the cores is known they do not overlap, and the distance only falls: anything else is rounding.
    const movedTo = length(moved.point);
    if (movedTo >= distance || (moved.corners.length === 0 && atLeast > 0)) break;
    distance = movedTo;
    if (moved.corners.length === 0) break;
    nearest = moved;
  }
  const pair = pointsOf(nearest);
  const apart = distance > TOUCHING && atLeast > 0;
  return apart ? { ...pair, distance, atLeast, steps } : { ...pair, distance: 0, atLeast: 0, steps };
}

const isOneOf = ({ difference: d }: DifferencePoint, corners: readonly DifferencePoint[]): boolean =>
  corners.some(({ difference: c }) => c.x === d.x && c.y === d.y && c.z === d.z);

function pointsOf({ corners, shares }: NearestOfSimplex): PointPair {
  let a: Vec3 = ORIGIN;
  let b: Vec3 = ORIGIN;
  corners.forEach((corner, i) => {
    const share = shares[i] ?? 0;
    a = addScaled(a, corner.a, share);
    b = addScaled(b, corner.b, share);
  });
  return { a, b };
}
