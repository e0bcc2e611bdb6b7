/**
 * Columns: what a straight bar bears in compression. L effective length (end condition × length), r = √(I/A) radius of
 * gyration. Consistent units; SI in the engine.
 */
export interface Column {
  readonly area: number;
  /** Least second moment of area. */
  readonly inertia: number;
  /** K · L */
  readonly effectiveLength: number;
  readonly young: number;
  readonly yield: number;
}

export const slenderness = ({ area, inertia, effectiveLength }: Column): number =>
  effectiveLength / Math.sqrt(inertia / area);

/** Slenderness at which Johnson's parabola goes over into Euler's curve: √(2 π² E / yield). */
export const transitionSlenderness = (young: number, yieldStress: number): number =>
  Math.sqrt((2 * Math.PI ** 2 * young) / yieldStress);

/** Force at which it gives way: Euler's π² E I / L² where slender, Johnson's parabola where stocky. */
export function columnForce(column: Column): { readonly force: number; readonly by: "euler" | "johnson" } {
  const { area, young } = column;
  const ratio = slenderness(column);
  const limit = transitionSlenderness(young, column.yield);
  if (ratio >= limit) return { force: (area * Math.PI ** 2 * young) / ratio ** 2, by: "euler" };
  return { force: area * column.yield * (1 - 0.5 * (ratio / limit) ** 2), by: "johnson" };
}

/**
 * Greatest stress of a column whose force acts off its middle line: the secant formula
 * σ = P/A · (1 + e c / r² · sec(L/2r · √(P/EA))). Infinite at and beyond Euler's load.
 * `eccentricity` e from the middle line, `outside` c from there to the outermost fibre.
 */
export function secantStress(column: Column, eccentricity: number, outside: number, force: number): number {
  const { area, inertia, effectiveLength, young } = column;
  const half = (effectiveLength / 2) * Math.sqrt(force / (young * inertia));
  if (half >= Math.PI / 2) return Number.POSITIVE_INFINITY;
  return (force / area) * (1 + (eccentricity * outside * area) / inertia / Math.cos(half));
}

/** Sideways movement of its middle under an off-centre force: e (sec − 1). */
export function secantDeflection(
  { inertia, effectiveLength, young }: Column,
  eccentricity: number,
  force: number,
): number {
  return eccentricity * (1 / Math.cos((effectiveLength / 2) * Math.sqrt(force / (young * inertia))) - 1);
}

/**
 * Force at which the greatest stress of an off-centre column comes to its yield, and never more than what it bears
 * straight. By halving: the stress rises with the force.
 */
export function eccentricColumnForce(column: Column, eccentricity: number, outside: number): number {
  const most = columnForce(column).force;
  if (eccentricity <= 0) return most;
  let low = 0;
  let high = most;
  if (secantStress(column, eccentricity, outside, high) <= column.yield) return high;
  for (let i = 0; i < 200 && high - low > 1e-13 * most; i += 1) {
    const middle = (low + high) / 2;
    if (secantStress(column, eccentricity, outside, middle) > column.yield) high = middle;
    else low = middle;
  }
  return low;
}

/** How much more a bar bends that is pressed too: 1 / (1 − P/Euler), half-sine; sec for equal end moments is within 4 %. */
export const amplification = (shareOfEuler: number): number =>
  shareOfEuler < 1 ? 1 / (1 - shareOfEuler) : Number.POSITIVE_INFINITY;

/**
 * Allowable column stress of round 4130 tube, normalised, by slenderness, psi: Bruhn, Analysis and Design of Flight Vehicle
 * Structures, Table C4.1 (after ANC-5 / MIL-HDBK-5). To compare Johnson's curve with.
 */
export const bruhnColumnPsi = (ratio: number): number =>
  ratio <= 91.5 ? 79_500 - 51.9 * ratio ** 1.5 : 286e6 / ratio ** 2;
