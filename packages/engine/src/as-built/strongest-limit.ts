import { inner } from "./whitened.ts";

/** Honest cars that are drawn: they tell a share of 5 % to 0.35 %. */
const DRAWS = 4000;

/**
 * What the strongest of many tests passes on an honest car at the stated rate. Each test is the projection of the whitened
 * misfits, independent and standard normal, on its own unit vector; tests that go hand in hand count as one, which is why
 * the limit is drawn and not had from Bonferroni's bound (as P. H. Westfall and S. S. Young, Resampling-Based Multiple
 * Testing, 1993, for the maximum of dependent tests). The same numbers on every run.
 */
export function strongestLimit(ways: readonly Float64Array[], rate: number): number {
  const size = ways[0]?.length ?? 0;
  if (size === 0) return Number.POSITIVE_INFINITY;
  const normal = normals();
  const honest = new Float64Array(size);
  const strongest = Float64Array.from({ length: DRAWS }, () => {
    for (let i = 0; i < size; i += 1) honest[i] = normal();
    let most = 0;
    for (const way of ways) most = Math.max(most, Math.abs(inner(way, honest)));
    return most;
  }).sort();
  return strongest[Math.min(DRAWS - 1, Math.round((1 - rate) * DRAWS))]!;
}

/** Standard normal numbers, the same from the start each time: a 32-bit generator, two by two after Box and Muller. */
function normals(): () => number {
  let state = 1;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  let kept: number | null = null;
  return () => {
    if (kept !== null) {
      const value = kept;
      kept = null;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    kept = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
