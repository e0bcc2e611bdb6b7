/** A point of a damper's curve: shaft speed m/s, force N, both as sizes. */
export interface CurvePoint {
  readonly speed: number;
  readonly force: number;
}

/** How a shock damps, one entry each way: points as measured, or a share of critical where the car rides. */
export interface DamperEntry {
  readonly bump: DamperWay;
  readonly rebound: DamperWay;
}

export type DamperWay =
  | { readonly by: "curve"; readonly points: readonly CurvePoint[] }
  | { readonly by: "ratio"; readonly ratio: number };

/** Points of one way; a share of critical (`critical`: N·s/m of shaft speed) is a straight line. */
export const curveOf = (way: DamperWay, critical: number): readonly CurvePoint[] =>
  way.by === "curve" ? way.points : [{ speed: 1, force: way.ratio * critical }];

/** Force at a shaft speed (m/s, ≥ 0): straight from nothing through the points, on past the last as before it. */
export function curveForce(points: readonly CurvePoint[], speed: number): number {
  let from: CurvePoint = { speed: 0, force: 0 };
  let slope = 0;
  for (const point of points) {
    if (point.speed <= from.speed) continue;
    slope = (point.force - from.force) / (point.speed - from.speed);
    if (speed <= point.speed) break;
    from = point;
  }
  return from.force + slope * (speed - from.speed);
}
