import type { SurveyResult, Vec3 } from "@armwright/engine";

/**
 * Radii of 95 % regions in standard deviations: square roots of the 95 % points of chi-square with three and two degrees of
 * freedom, 7.815 and 5.991 (any table of chi-square, e.g. NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4).
 */
const IN_SPACE = Math.sqrt(7.815);
const IN_PLANE = Math.sqrt(5.991);
/** Drawn so many times as large: a sixteenth would be a dot. */
export const ENLARGED = 10;

/** The 95 % region of a point, enlarged: three radii that go together as a sphere's three square ones do (m). */
export interface Ellipsoid {
  readonly name: string;
  readonly at: Vec3;
  readonly radii: readonly [Vec3, Vec3, Vec3];
}

/** Of every point that the readings tell in all directions. */
export function ellipsoidsOf({ points, covariance }: SurveyResult): readonly Ellipsoid[] {
  return points.flatMap(({ name, at, isUndetermined }, index) => {
    if (isUndetermined) return [];
    const c = (row: number, column: number): number => covariance[3 * index + row]?.[3 * index + column] ?? 0;
    const radii = columnsOf(choleskyOf(c), ENLARGED * IN_SPACE);
    return [{ name, at, radii }];
  });
}

/** An ellipse on a sheet: half its axes (m) and how far the first is turned from the sheet's right, downward, rad. */
export interface Ellipse {
  readonly major: number;
  readonly minor: number;
  readonly turn: number;
}

/** The 95 % region of a point as one view sees it, enlarged: `right` and `down` are the sheet's directions on the car. */
export function ellipseOf({ covariance }: SurveyResult, index: number, right: Vec3, down: Vec3): Ellipse {
  const along = (a: Vec3, b: Vec3): number => {
    const [p, q] = [
      [a.x, a.y, a.z],
      [b.x, b.y, b.z],
    ];
    return p.reduce(
      (sum, u, i) =>
        sum + q.reduce((inner, v, j) => inner + u * v * (covariance[3 * index + i]?.[3 * index + j] ?? 0), 0),
      0,
    );
  };
  // Eigenvalues of the plane's 2 × 2 covariance in closed form.
  const [xx, xy, yy] = [along(right, right), along(right, down), along(down, down)];
  const middle = (xx + yy) / 2;
  const half = Math.hypot((xx - yy) / 2, xy);
  const size = (variance: number): number => ENLARGED * IN_PLANE * Math.sqrt(Math.max(variance, 0));
  return { major: size(middle + half), minor: size(middle - half), turn: Math.atan2(2 * xy, xx - yy) / 2 };
}

type Rows = readonly [readonly number[], readonly number[], readonly number[]];

/** Lower triangle L with L·Lᵀ the covariance: L maps the unit sphere to the ellipsoid of one standard deviation. */
function choleskyOf(c: (row: number, column: number) => number): Rows {
  const root = (value: number): number => Math.sqrt(Math.max(value, 0));
  const over = (value: number, by: number): number => (by > 0 ? value / by : 0);
  const a = root(c(0, 0));
  const b = over(c(1, 0), a);
  const d = root(c(1, 1) - b * b);
  const e = over(c(2, 0), a);
  const f = over(c(2, 1) - e * b, d);
  const g = root(c(2, 2) - e * e - f * f);
  return [
    [a, 0, 0],
    [b, d, 0],
    [e, f, g],
  ];
}

function columnsOf([x, y, z]: Rows, by: number): Ellipsoid["radii"] {
  const column = (k: number): Vec3 => ({ x: by * (x[k] ?? 0), y: by * (y[k] ?? 0), z: by * (z[k] ?? 0) });
  return [column(0), column(1), column(2)];
}
