/** Places lo…hi of a row, both counted; empty where hi < lo. Written by insideOf: no allocation in the hot loop. */
export const found = { lo: 0, hi: -1 };

/**
 * Which places k = 0…n − 1 of a row have a squared distance a + 2·b·k + c·k² of at most `most`: an interval, because it is
 * a parabola that opens upward. The ends are right to rounding of the parabola: the caller moves them onto its own numbers.
 */
export function insideOf(a: number, b: number, c: number, n: number, most: number): void {
  const under = b * b - c * (a - most);
  if (under < 0) {
    found.lo = 0;
    found.hi = -1;
    return;
  }
  const root = Math.sqrt(under);
  const lo = Math.ceil((-b - root) / c - 1e-9);
  const hi = Math.floor((-b + root) / c + 1e-9);
  found.lo = Math.max(lo, 0);
  found.hi = Math.min(hi, n - 1);
  if (found.hi >= found.lo) return;
  // Wholly beyond an end of the row.
  found.lo = 0;
  found.hi = -1;
}
