import { addScaled, cross, dot, ORIGIN, scale, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { DifferencePoint } from "./core.ts";

/** Below this height over a face (m), a tetrahedron counts as flat: which side a point is on is rounding. */
const FLAT = 1e-13;

/** The point of a simplex (point, segment, triangle or tetrahedron) that is nearest to the origin. */
export interface NearestOfSimplex {
  /** From the origin, m. */
  readonly point: Vec3;
  /** Corners that the point rests on, and their shares in it, which add up to 1. */
  readonly corners: readonly DifferencePoint[];
  readonly shares: readonly number[];
}

/**
 * Nearest point of the simplex of a new corner and one to three old ones that rests on the new corner; it is the
 * nearest of all when the new corner lies nearer to the origin, along the old nearest point, than that point itself.
 * A tetrahedron round the origin gives a point at the origin and keeps no corner.
 */
export function nearestWith(newest: DifferencePoint, old: readonly DifferencePoint[]): NearestOfSimplex {
  const [p, q, r] = old;
  if (p === undefined) return ofPoint(newest);
  if (q === undefined) return ofSegment(newest, p);
  if (r === undefined) return ofTriangle(newest, p, q);
  let best: NearestOfSimplex | undefined;
  if (isOutside(newest.difference, p.difference, q.difference, r.difference)) best = ofTriangle(newest, p, q);
  if (isOutside(newest.difference, q.difference, r.difference, p.difference)) {
    best = nearer(best, ofTriangle(newest, q, r));
  }
  if (isOutside(newest.difference, r.difference, p.difference, q.difference)) {
    best = nearer(best, ofTriangle(newest, r, p));
  }
  return best ?? AROUND;
}

const AROUND: NearestOfSimplex = { point: ORIGIN, corners: [], shares: [] };

const ofPoint = (p: DifferencePoint): NearestOfSimplex => ({ point: p.difference, corners: [p], shares: [1] });

function ofSegment(newest: DifferencePoint, p: DifferencePoint): NearestOfSimplex {
  const along = subtract(p.difference, newest.difference);
  const share = -dot(newest.difference, along) / dot(along, along);
  if (!(share > 0)) return ofPoint(newest);
  if (share >= 1) return ofPoint(p);
  return { point: addScaled(newest.difference, along, share), corners: [newest, p], shares: [1 - share, share] };
}

function ofTriangle(newest: DifferencePoint, p: DifferencePoint, q: DifferencePoint): NearestOfSimplex {
  const from = newest.difference;
  const toP = subtract(p.difference, from);
  const toQ = subtract(q.difference, from);
  const square = cross(toP, toQ);
  const square2 = dot(square, square);
  // Shares of the origin's foot on the plane, as ratios of areas.
  const shareP = dot(cross(toQ, from), square) / square2;
  const shareQ = dot(cross(from, toP), square) / square2;
  const shareNewest = 1 - shareP - shareQ;
  if (shareNewest > 0 && shareP > 0 && shareQ > 0) {
    const point = scale(square, dot(from, square) / square2);
    return { point, corners: [newest, p, q], shares: [shareNewest, shareP, shareQ] };
  }
  return nearer(ofSegment(newest, p), ofSegment(newest, q));
}

/** Whether the origin and the apex are on different sides of the face; also true where the tetrahedron is flat. */
function isOutside(a: Vec3, b: Vec3, c: Vec3, apex: Vec3): boolean {
  const square = cross(subtract(b, a), subtract(c, a));
  const apexSide = dot(subtract(apex, a), square);
  const originSide = -dot(a, square);
  return apexSide * originSide <= 0 || apexSide * apexSide <= FLAT * FLAT * dot(square, square);
}

const nearer = (m: NearestOfSimplex | undefined, n: NearestOfSimplex): NearestOfSimplex =>
  m !== undefined && dot(m.point, m.point) <= dot(n.point, n.point) ? m : n;
