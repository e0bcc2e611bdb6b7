/** The first primes: a base for each dimension. */
const PRIMES: readonly number[] = (() => {
  const primes: number[] = [];
  for (let n = 2; primes.length < 79; n += 1) if (primes.every((prime) => n % prime !== 0)) primes.push(n);
  return primes;
})();

/**
 * A quasi-random sequence in [0, 1): every 409th member of Halton's, which keeps the high bases from running in step (Kocis
 * and Whiten, Computational Investigations of Low-Discrepancy Sequences, ACM TOMS 23, 1997: leaped Halton). `index` from 1.
 */
export function halton(index: number, dimension: number): number {
  const base = PRIMES[dimension % PRIMES.length]!;
  let value = 0;
  let scale = 1 / base;
  for (let rest = LEAP * index; rest > 0; rest = Math.floor(rest / base)) {
    value += (rest % base) * scale;
    scale /= base;
  }
  return value;
}

/** Prime, and none of the bases in use. */
const LEAP = 409;

/** The standard normal deviate below which a share `p` lies: Acklam's rational approximation, good to 1.2e-9 (from memory). */
export function normalDeviate(p: number): number {
  const a = [
    -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716, 2.506628277459239,
  ];
  const b = [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572];
  const c = [
    -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
    2.938163982698783,
  ];
  const d = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416];
  const tail = 0.02425;
  const poly = (k: readonly number[], x: number): number => k.reduce((sum, each) => sum * x + each, 0);
  if (p < tail) {
    const q = Math.sqrt(-2 * Math.log(p));
    return poly(c, q) / (poly(d, q) * q + 1);
  }
  if (p > 1 - tail) return -normalDeviate(1 - p);
  const q = p - 0.5;
  const r = q * q;
  return (poly(a, r) * q) / (poly(b, r) * r + 1);
}
