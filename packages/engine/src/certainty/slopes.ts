import type { Car } from "../car/car.ts";
import { type Inputs, movedBy, type WhatMoves } from "./inputs.ts";

/** Half of the step of a difference, m and rad: small against a part or a turn, large against rounding. */
const STEP = 5e-4;

/** How results follow each input: a row an input, a column a result. Results that do not exist stay out (0). */
export interface Response {
  /** Result's unit per m or rad. */
  readonly slopes: readonly Float64Array[];
  /** Second derivatives; infinite where the result exists on one side only. */
  readonly bends: readonly Float64Array[];
}

/**
 * Slopes and bends by central differences; by the one side that exists where the linkage does not go together on the
 * other. Where a result turns back in the middle, as an angle does that cannot be less than nothing, the slope is nothing
 * and the bend large.
 */
export function responseOf(
  car: Car,
  inputs: readonly WhatMoves[],
  resultsOf: (car: Car) => readonly (number | null)[],
): Response {
  const middle = resultsOf(car);
  const slopes: Float64Array[] = [];
  const bends: Float64Array[] = [];
  for (const input of inputs) {
    const up = resultsOf(movedBy(car, input, STEP));
    const down = resultsOf(movedBy(car, input, -STEP));
    const slope = new Float64Array(middle.length);
    const bend = new Float64Array(middle.length);
    middle.forEach((at, k) => {
      const [high, low] = [up[k] ?? null, down[k] ?? null];
      if (at === null) return;
      if (high !== null && low !== null) {
        slope[k] = (high - low) / (2 * STEP);
        bend[k] = (high - 2 * at + low) / STEP ** 2;
        return;
      }
      slope[k] = high !== null ? (high - at) / STEP : low === null ? 0 : (at - low) / STEP;
      bend[k] = Number.POSITIVE_INFINITY;
    });
    slopes.push(slope);
    bends.push(bend);
  }
  return { slopes, bends };
}

/** The slopes alone, for results that are known to follow smoothly. */
export const slopesOf = (
  car: Car,
  inputs: readonly WhatMoves[],
  resultsOf: (car: Car) => readonly (number | null)[],
): readonly Float64Array[] => responseOf(car, inputs, resultsOf).slopes;

/** Share of the linear standard deviation from which on what a bend adds counts. */
const BENT = 0.1;
/** Less than this, SI, is rounding. */
const ROUNDING = 1e-9;

/**
 * Whether a result bends so much over its inputs' spread that the linear ± is not enough: its mean is shifted by, or its
 * spread grows by second-order terms (JCGM 100:2008, 5.1.2 note; with the inputs' own variances) that are more than a tenth
 * of it. JCGM 101:2008, 8, then asks for the simulation.
 */
export function isBent({ bends }: Response, { list }: Pick<Inputs, "list">, result: number, sd: number): boolean {
  let shift = 0;
  let square = 0;
  for (let i = 0; i < bends.length; i += 1) {
    const term = bends[i]![result]! * list[i]!.sd ** 2;
    if (list[i]!.sd === 0) continue;
    shift += 0.5 * term;
    square += 0.5 * term * term;
  }
  return !(Math.max(Math.abs(shift), Math.sqrt(square)) <= Math.max(BENT * sd, ROUNDING));
}

/** Variance of each result, slopes · covariance · slopes, and what part of it each input brings. */
export function spreadOf(
  slopes: readonly Float64Array[],
  covariance: readonly Float64Array[],
): readonly { readonly sd: number; readonly shares: Float64Array }[] {
  const results = slopes[0]?.length ?? 0;
  const filled = covariance.map((row) => [...row.keys()].filter((j) => row[j] !== 0));
  return Array.from({ length: results }, (_, k) => {
    const shares = Float64Array.from(slopes, (row, i) => {
      let sum = 0;
      for (const j of filled[i]!) sum += covariance[i]![j]! * slopes[j]![k]!;
      return row[k]! * sum;
    });
    const variance = shares.reduce((sum, share) => sum + share, 0);
    return {
      sd: Math.sqrt(Math.max(variance, 0)),
      shares: variance > 0 ? shares.map((share) => share / variance) : shares,
    };
  });
}
