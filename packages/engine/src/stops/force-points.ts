/** A measured point of a force curve: how far (m or strain) and the force there, N. */
export interface ForcePoint {
  readonly at: number;
  readonly force: number;
}

/** Force of a curve at a place, its slope there and the work done from 0 up to it. */
export interface CurveState {
  /** N */
  readonly force: number;
  /** N per unit of `at`. */
  readonly rate: number;
  /** Area under the curve, N times the unit of `at`. */
  readonly energy: number;
}

export const NO_FORCE: CurveState = { force: 0, rate: 0, energy: 0 };

/**
 * Straight lines from (0, 0) through the points, on past the last with the last line's slope; the area is exact
 * (trapezoids). `points`: rising in `at`, one at least; a first point at 0 is a force that is there at the touch.
 */
export function curveAt(points: readonly ForcePoint[], at: number): CurveState {
  if (at <= 0) return NO_FORCE;
  let from: ForcePoint = { at: 0, force: points[0]?.at === 0 ? points[0].force : 0 };
  let energy = 0;
  let rate = 0;
  for (const point of points) {
    if (point.at <= from.at) continue;
    rate = (point.force - from.force) / (point.at - from.at);
    if (at <= point.at) break;
    energy += ((from.force + point.force) / 2) * (point.at - from.at);
    from = point;
  }
  const force = from.force + rate * (at - from.at);
  return { force, rate, energy: energy + ((from.force + force) / 2) * (at - from.at) };
}
