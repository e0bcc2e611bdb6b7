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
  const share = 1 / base;
  let value = 0;
  let scale = share;
  for (let rest = LEAP * index; rest > 0; ) {
    const next = Math.floor(rest / base);
    value += (rest - next * base) * scale;
    scale *= share;
    rest = next;
  }
  return value;
}

/** Prime, and none of the bases in use. */
const LEAP = 409;

/** Where the tails begin. */
const TAIL = 0.02425;

/** The standard normal deviate below which a share `p` lies: Acklam's rational approximation, good to 1.2e-9 (from memory). */
export function normalDeviate(p: number): number {
  if (p < TAIL) return tailDeviate(p);
  if (p > 1 - TAIL) return -tailDeviate(1 - p);
  const q = p - 0.5;
  const r = q * q;
  const above =
    ((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r + 138.357751867269) * r -
      30.66479806614716) *
      r +
    2.506628277459239;
  const below =
    ((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r + 66.80131188771972) * r -
      13.28068155288572) *
      r +
    1;
  return (above * q) / below;
}

function tailDeviate(p: number): number {
  const q = Math.sqrt(-2 * Math.log(p));
  const above =
    ((((-0.007784894002430293 * q - 0.3223964580411365) * q - 2.400758277161838) * q - 2.549732539343734) * q +
      4.374664141464968) *
      q +
    2.938163982698783;
  const below =
    (((0.007784695709041462 * q + 0.3224671290700398) * q + 2.445134137142996) * q + 3.754408661907416) * q + 1;
  return above / below;
}
