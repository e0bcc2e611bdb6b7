/**
 * Normal, Student, chi-square and Pope's tau: two-sided limits for tests of residuals. Series and continued fractions
 * after M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 6.5 and 26.5; quantiles by halving.
 */

/** The u with P(|U| > u) = rate, U standard normal. */
export const normalLimit = (rate: number): number => bisect((u) => gammaUpper(0.5, (u * u) / 2) - rate, 0, 40);

/** The t with P(|T| > t) = rate, on `freedom` degrees of freedom. */
export const studentLimit = (rate: number, freedom: number): number =>
  bisect((t) => betaShare(freedom / (freedom + t * t), freedom / 2, 0.5) - rate, 0, 1e6);

/** The value that chi-square on `freedom` degrees of freedom passes with probability `rate`. */
export const chiSquareLimit = (rate: number, freedom: number): number =>
  bisect((x) => gammaUpper(freedom / 2, x / 2) - rate, 0, 1e4 + 100 * freedom);

/** P(chi-square > value). */
export const chiSquareTail = (value: number, freedom: number): number => gammaUpper(freedom / 2, value / 2);

/**
 * Pope's tau (A. J. Pope, NOAA Technical Report NOS 65 NGS 1, 1976): limit of a residual over its standard deviation where
 * both rest on the same residuals. Null where there are too few for it.
 */
export function tauLimit(rate: number, freedom: number): number | null {
  if (freedom < 2) return null;
  const t = studentLimit(rate, freedom - 1);
  return (t * Math.sqrt(freedom)) / Math.sqrt(freedom - 1 + t * t);
}

function bisect(falling: (x: number) => number, low: number, high: number): number {
  let from = low;
  let to = high;
  for (let i = 0; i < 200 && to - from > 1e-13 * to; i += 1) {
    const middle = (from + to) / 2;
    if (falling(middle) > 0) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** Regularised upper incomplete gamma Q(a, x). */
function gammaUpper(a: number, x: number): number {
  if (x <= 0) return 1;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < 1000 && Math.abs(term) > 1e-17 * Math.abs(sum); n += 1) {
      term *= x / (a + n);
      sum += term;
    }
    return 1 - front * sum;
  }
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 1000; i += 1) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / away(an * d + b);
    c = away(b + an / c);
    const change = d * c;
    h *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return front * h;
}

/** Regularised incomplete beta I_x(a, b). */
function betaShare(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(x, a, b)) / a : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 1000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    h *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return h;
}

const TINY = 1e-300;
const away = (value: number): number => (Math.abs(value) < TINY ? TINY : value);

/** C. Lanczos's series with g = 7 and nine terms. */
function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const LANCZOS = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const y = x - 1;
  const t = y + 7.5;
  const sum = LANCZOS.reduce((total, each, i) => (i === 0 ? each : total + each / (y + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
}
