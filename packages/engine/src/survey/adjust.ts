import { EigenvalueDecomposition } from "ml-matrix";
import type { Vec3 } from "../geometry/vec3.ts";
import { equationsAt, placesFrom, type Unknowns, unknownsOf, valuesOf } from "./equations.ts";
import { type Equation, type Fit, fitLeastSquares, normalMatrix } from "./fit-least-squares.ts";
import type { Survey } from "./survey.ts";

/** A net adjusted: where the points came to, and how sure each direction is. */
export interface Adjustment {
  readonly status: Fit["status"];
  readonly at: readonly Vec3[];
  readonly sum: number;
  readonly unknowns: Unknowns;
  readonly equations: readonly Equation[];
}

/** Least-squares places of the points from the readings named, from a start. Readings of nothing leave it there. */
export function adjust(survey: Survey, readings: readonly number[], start: readonly Vec3[]): Adjustment {
  const unknowns = unknownsOf(survey);
  const model = (values: Float64Array): readonly Equation[] =>
    equationsAt(survey, readings, unknowns, placesFrom(values, unknowns, start));
  const fit = fitLeastSquares(model, valuesOf(start, unknowns), { most: 100 });
  const at = placesFrom(fit.unknowns, unknowns, start);
  return { status: fit.status, at, sum: fit.sum, unknowns, equations: fit.equations };
}

/** Spread of the unknowns, and the directions that no reading tells. */
export interface Spread {
  /** Pseudo-inverse of the normal matrix: covariance of the unknowns, n by n. */
  readonly covariance: readonly Float64Array[];
  /** Unit vectors over the unknowns that change no reading. */
  readonly free: readonly Float64Array[];
}

/** A direction whose spread is this many times that of the best one is not told at all. */
const BLIND = 1e5;

/**
 * Null space and pseudo-inverse by the eigenvectors of the normal matrix: minimum-norm (inner-constraint) covariance where
 * the net is free (E. Grafarend, B. Schaffrin 1974 and textbooks of adjustment). Unknowns are all of one kind.
 */
export function spreadOf(equations: readonly Equation[], count: number): Spread {
  if (count === 0) return { covariance: [], free: [] };
  const eigen = new EigenvalueDecomposition(normalMatrix(equations, count), { assumeSymmetric: true });
  const values = eigen.realEigenvalues;
  const vectors = eigen.eigenvectorMatrix;
  const least = Math.max(...values) / BLIND ** 2;
  const covariance = Array.from({ length: count }, () => new Float64Array(count));
  const free: Float64Array[] = [];
  for (let k = 0; k < count; k += 1) {
    const vector = new Float64Array(vectors.getColumn(k));
    if (!(values[k]! > least)) {
      free.push(vector);
      continue;
    }
    const weight = 1 / values[k]!;
    for (let i = 0; i < count; i += 1) {
      const row = covariance[i]!;
      const share = vector[i]! * weight;
      if (share === 0) continue;
      for (let j = 0; j < count; j += 1) row[j]! += share * vector[j]!;
    }
  }
  return { covariance, free };
}

/** Variance of a number that changes with the unknowns as the equation's slopes say (its own unit: standard deviations). */
export function varianceOf({ unknowns, slopes }: Equation, covariance: readonly Float64Array[]): number {
  let sum = 0;
  for (let a = 0; a < unknowns.length; a += 1) {
    const row = covariance[unknowns[a]!]!;
    for (let b = 0; b < unknowns.length; b += 1) sum += slopes[a]! * slopes[b]! * row[unknowns[b]!]!;
  }
  return Math.max(0, sum);
}

/** Covariance of two such numbers. */
export function covarianceOf(one: Equation, other: Equation, covariance: readonly Float64Array[]): number {
  let sum = 0;
  for (let a = 0; a < one.unknowns.length; a += 1) {
    const row = covariance[one.unknowns[a]!]!;
    for (let b = 0; b < other.unknowns.length; b += 1) {
      sum += one.slopes[a]! * other.slopes[b]! * row[other.unknowns[b]!]!;
    }
  }
  return sum;
}

/** How much a number changes along the directions that nothing tells, as a length over the unknowns. */
export function blindPart({ unknowns, slopes }: Equation, free: readonly Float64Array[]): number {
  let square = 0;
  for (const vector of free) {
    let part = 0;
    for (let k = 0; k < unknowns.length; k += 1) part += slopes[k]! * vector[unknowns[k]!]!;
    square += part * part;
  }
  return Math.sqrt(square);
}
