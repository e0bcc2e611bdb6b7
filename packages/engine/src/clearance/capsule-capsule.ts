import { addScaled, cross, distance, dot, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { PointPair } from "./core.ts";
import type { Capsule } from "./shapes.ts";

/**
 * Nearest points of the two segments. They lie either inside both segments, on the common perpendicular of the two
 * lines, or at an end of one of them: so the five candidates are all there are, and parallel segments need no threshold.
 */
export function nearestOfSegments(a: Capsule, b: Capsule): PointPair {
  const alongA = subtract(a.to, a.from);
  const alongB = subtract(b.to, b.from);
  // Common perpendicular by cross products: the usual form with dot products loses half of the digits when the
  // segments are nearly parallel, as the arms of a car often are.
  const square = cross(alongA, alongB);
  const square2 = dot(square, square);
  const offset = subtract(b.from, a.from);
  const s = dot(cross(offset, alongB), square) / square2;
  const t = dot(cross(offset, alongA), square) / square2;
  if (s >= 0 && s <= 1 && t >= 0 && t <= 1) {
    return { a: addScaled(a.from, alongA, s), b: addScaled(b.from, alongB, t) };
  }
  let best = { a: a.from, b: nearestOnSegment(a.from, b.from, alongB) };
  best = nearer(best, { a: a.to, b: nearestOnSegment(a.to, b.from, alongB) });
  best = nearer(best, { a: nearestOnSegment(b.from, a.from, alongA), b: b.from });
  return nearer(best, { a: nearestOnSegment(b.to, a.from, alongA), b: b.to });
}

function nearestOnSegment(point: Vec3, from: Vec3, along: Vec3): Vec3 {
  const length2 = dot(along, along);
  if (length2 === 0) return from;
  const fraction = dot(subtract(point, from), along) / length2;
  return addScaled(from, along, Math.min(1, Math.max(0, fraction)));
}

const nearer = (p: PointPair, q: PointPair): PointPair => (distance(q.a, q.b) < distance(p.a, p.b) ? q : p);
