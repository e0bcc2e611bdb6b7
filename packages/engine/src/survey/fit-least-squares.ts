import { Matrix, QrDecomposition } from "ml-matrix";
import { solvePositive } from "./solve-positive.ts";

/** One equation at a trial solution. */
export interface Equation {
  /** (model - observed) / standard deviation. */
  readonly misfit: number;
  /** Which unknowns it depends on. */
  readonly unknowns: readonly number[];
  /** Change of the misfit by each of those. */
  readonly slopes: readonly number[];
}

export type Model = (unknowns: Float64Array) => readonly Equation[];

export interface Fit {
  /** `stalled`: no step lowers the sum, or an unknown has run to where nothing tells it. */
  readonly status: "converged" | "stalled" | "too-many-steps";
  readonly unknowns: Float64Array;
  readonly equations: readonly Equation[];
  /** Sum of squared misfits. */
  readonly sum: number;
  readonly steps: number;
}

export interface FitOptions {
  /**
   * `even`: all unknowns are of one kind and damped alike, so that no step has a part in the null space and a net with
   * too few readings moves least. `own`: each by its own slope (Marquardt), for unknowns of different kinds. `relative`:
   * each by its own size, so that steps are shares of it (J. E. Dennis, R. B. Schnabel, Numerical Methods for Unconstrained
   * Optimization, 1983, 7.1: scaling by typical size), for unknowns of any size from a far start.
   */
  readonly damping?: "even" | "own" | "relative";
  readonly most?: number;
}

/**
 * Nonlinear least squares after Levenberg and Marquardt (D. W. Marquardt, J. SIAM 11, 1963): smallest sum of squared
 * misfits from a start. Damping "even" solves normal equations by Cholesky's method, "own" the stacked system by QR.
 */
export function fitLeastSquares(model: Model, start: Float64Array, options: FitOptions = {}): Fit {
  const { damping = "even", most = 200 } = options;
  const same = damping === "even" ? SAME_EVEN : SAME;
  const least = damping === "even" ? LEAST_STEP : 1e-16;
  let unknowns = start;
  let equations = model(unknowns);
  let sum = sumOf(equations);
  let mu = damping === "even" ? 1e-3 : 1;
  let grow = 2;
  const size = new Float64Array(start.length);
  for (let steps = 0; steps < most; steps += 1) {
    if (sum === 0 || unknowns.length === 0) return { status: "converged", unknowns, equations, sum, steps };
    const step =
      damping === "even"
        ? dampedStep(equations, unknowns.length, mu)
        : scaledStep(equations, scaleFor(damping, equations, size, unknowns), mu);
    const trial = unknowns.map((value, i) => value + step[i]!);
    const next = model(trial);
    const nextSum = sumOf(next);
    const expected = sum - linearSum(equations, step);
    const small = isSmall(step, unknowns, least);
    if (Number.isFinite(nextSum) && nextSum <= sum) {
      const gained = sum - nextSum;
      unknowns = trial;
      equations = next;
      sum = nextSum;
      mu = Math.max(LEAST_MU, mu * eased(damping, expected > 0 ? gained / expected : 1));
      grow = 2;
      if (small || (gained <= same * sum && expected <= same * sum && mu <= 1e-6)) {
        return { status: ended(equations, size), unknowns, equations, sum, steps: steps + 1 };
      }
    } else {
      if (small || expected <= same * sum) {
        return { status: ended(equations, size), unknowns, equations, sum, steps: steps + 1 };
      }
      mu *= grow;
      if (damping !== "relative") grow *= 2;
      if (!(mu < 1e30)) return { status: "stalled", unknowns, equations, sum, steps: steps + 1 };
    }
  }
  return { status: "too-many-steps", unknowns, equations, sum, steps: most };
}

/**
 * From a far start, for unknowns of different kinds: damped relatively, and where that runs to where nothing tells an
 * unknown, by their own slopes. The first that converges; otherwise the one with the smaller sum, with its status.
 */
export function fitFromFar(model: Model, start: Float64Array, most: number): Fit {
  const relative = fitLeastSquares(model, start, { damping: "relative", most });
  if (relative.status === "converged") return relative;
  const own = fitLeastSquares(model, start, { damping: "own", most });
  return own.status === "converged" || own.sum < relative.sum ? own : relative;
}

/** Where an unknown's slopes have died away on the way, nothing tells it any more: that is no solution. */
function ended(equations: readonly Equation[], shown: Float64Array): "converged" | "stalled" {
  const now = new Float64Array(shown.length);
  for (const { unknowns, slopes } of equations) {
    for (let k = 0; k < unknowns.length; k += 1) now[unknowns[k]!]! += slopes[k]! ** 2;
  }
  return now.some((square, k) => Math.sqrt(square) < DEAD * shown[k]!) ? "stalled" : "converged";
}

const DEAD = 1e-8;
const LEAST_MU = 1e-12;
/** Sums that agree to this, relatively, are the same. */
const SAME = 1e-15;
/** The same for a net: places are then sure to far less than a thousandth of their spread. */
const SAME_EVEN = 1e-9;
/** A step shorter than this, m, moves nothing. */
const LEAST_STEP = 1e-10;

export const sumOf = (equations: readonly Equation[]): number =>
  equations.reduce((sum, { misfit }) => sum + misfit * misfit, 0);

function linearSum(equations: readonly Equation[], step: ArrayLike<number>): number {
  let sum = 0;
  for (const { misfit, unknowns, slopes } of equations) {
    let value = misfit;
    for (let k = 0; k < unknowns.length; k += 1) value += slopes[k]! * step[unknowns[k]!]!;
    sum += value * value;
  }
  return sum;
}

function isSmall(step: ArrayLike<number>, unknowns: Float64Array, least: number): boolean {
  for (let i = 0; i < unknowns.length; i += 1) {
    if (Math.abs(step[i]!) > 1e-13 * Math.abs(unknowns[i]!) + least) return false;
  }
  return true;
}

/** Normal matrix of the equations, n by n. */
export function normalMatrix(equations: readonly Equation[], n: number): Matrix {
  const normal = Array.from({ length: n }, () => new Float64Array(n));
  for (const { unknowns, slopes } of equations) {
    for (let a = 0; a < unknowns.length; a += 1) {
      const row = normal[unknowns[a]!]!;
      for (let b = 0; b < unknowns.length; b += 1) row[unknowns[b]!]! += slopes[a]! * slopes[b]!;
    }
  }
  return new Matrix(normal);
}

function dampedStep(equations: readonly Equation[], n: number, mu: number): ArrayLike<number> {
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (const { misfit, unknowns, slopes } of equations) {
    for (let a = 0; a < unknowns.length; a += 1) {
      const row = unknowns[a]! * n;
      right[unknowns[a]!]! -= slopes[a]! * misfit;
      for (let b = 0; b < unknowns.length; b += 1) normal[row + unknowns[b]!]! += slopes[a]! * slopes[b]!;
    }
  }
  let largest = 0;
  for (let i = 0; i < n; i += 1) largest = Math.max(largest, normal[i * n + i]!);
  const lift = Math.max(mu, 1e-13) * (largest || 1);
  for (let i = 0; i < n; i += 1) normal[i * n + i]! += lift;
  return solvePositive(normal, right);
}

/** Each unknown's largest slope that it has shown so far (J. J. Moré, 1978), kept in `size`. */
function largestSlopes(equations: readonly Equation[], size: Float64Array): Float64Array {
  const now = new Float64Array(size.length);
  for (const { unknowns, slopes } of equations) {
    for (let k = 0; k < unknowns.length; k += 1) now[unknowns[k]!]! += slopes[k]! ** 2;
  }
  for (let k = 0; k < size.length; k += 1) size[k] = Math.max(size[k]!, Math.sqrt(now[k]!));
  return size;
}

/** What each unknown is damped in proportion to. The largest slopes are kept either way: they tell what has died away. */
function scaleFor(
  damping: "own" | "relative",
  equations: readonly Equation[],
  size: Float64Array,
  unknowns: Float64Array,
): Float64Array {
  const largest = largestSlopes(equations, size);
  return damping === "own" ? largest : perSize(unknowns);
}

/**
 * How the damping eases after a step that lowers the sum, by the gain over what the straight model foretold (K. Madsen,
 * H. B. Nielsen, O. Tingleff, Methods for Non-Linear Least Squares Problems, 2004). Relative damping eases and grows by
 * Marquardt's fixed factors: in a narrow bent valley the gain is always far from foretold, and the other rule stands still.
 */
function eased(damping: NonNullable<FitOptions["damping"]>, ratio: number): number {
  if (damping === "relative") return 1 / 3;
  return Math.max(damping === "even" ? 0.05 : 1 / 3, 1 - (2 * ratio - 1) ** 3);
}

/** One over each unknown. */
const perSize = (unknowns: Float64Array): Float64Array =>
  unknowns.map((value) => 1 / Math.max(Math.abs(value), LEAST_SIZE));

const LEAST_SIZE = 1e-12;

/** The step with each unknown damped in proportion to `size`. */
function scaledStep(equations: readonly Equation[], size: Float64Array, mu: number): ArrayLike<number> {
  const n = size.length;
  const m = equations.length;
  const scale = size.map((each) => (each > 0 ? 1 / each : 1));
  const stacked = Matrix.zeros(m + n, n);
  const right = Matrix.zeros(m + n, 1);
  for (const [i, { misfit, unknowns, slopes }] of equations.entries()) {
    for (let k = 0; k < unknowns.length; k += 1) stacked.set(i, unknowns[k]!, slopes[k]! * scale[unknowns[k]!]!);
    right.set(i, 0, -misfit);
  }
  for (let k = 0; k < n; k += 1) stacked.set(m + k, k, Math.sqrt(mu));
  const solution = new QrDecomposition(stacked).solve(right).to1DArray();
  return solution.map((value, k) => value * scale[k]!);
}
