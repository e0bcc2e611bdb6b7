import type { Car } from "../car/car.ts";
import { movedBy, type UncertainInput } from "./inputs.ts";

/** Half of the step of a difference, m: small against a part, large against rounding. */
const STEP = 5e-4;

/**
 * How results follow each input: a row an input, a column a result, by central differences; by the one side that exists where
 * the linkage does not go together on the other. Results that do not exist are null and stay out (0).
 */
export function slopesOf(
  car: Car,
  inputs: readonly Pick<UncertainInput, "place" | "axis">[],
  resultsOf: (car: Car) => readonly (number | null)[],
): readonly Float64Array[] {
  const middle = resultsOf(car);
  return inputs.map((input) => {
    const up = resultsOf(movedBy(car, input, STEP));
    const down = resultsOf(movedBy(car, input, -STEP));
    return Float64Array.from(middle, (at, k) => {
      const [high, low] = [up[k] ?? null, down[k] ?? null];
      if (at === null) return 0;
      if (high !== null && low !== null) return (high - low) / (2 * STEP);
      if (high !== null) return (high - at) / STEP;
      return low === null ? 0 : (at - low) / STEP;
    });
  });
}

/** Variance of each result, slopes · covariance · slopes, and what part of it each input brings. */
export function spreadOf(
  slopes: readonly Float64Array[],
  covariance: readonly Float64Array[],
): readonly { readonly sd: number; readonly shares: Float64Array }[] {
  const results = slopes[0]?.length ?? 0;
  return Array.from({ length: results }, (_, k) => {
    const shares = Float64Array.from(slopes, (row, i) => {
      let sum = 0;
      for (let j = 0; j < slopes.length; j += 1) sum += covariance[i]![j]! * slopes[j]![k]!;
      return row[k]! * sum;
    });
    const variance = shares.reduce((sum, share) => sum + share, 0);
    return {
      sd: Math.sqrt(Math.max(variance, 0)),
      shares: variance > 0 ? shares.map((share) => share / variance) : shares,
    };
  });
}
