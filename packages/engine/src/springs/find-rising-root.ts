/** A function's value and slope at a place. */
export interface Sloped {
  readonly value: number;
  readonly slope: number;
}

/** Steps after which halving alone would have come down from a metre to 1e-15 of it. */
const MOST_STEPS = 60;

/**
 * Where a function that rises from below 0 at `low` to 0 or more at `high` is 0, to `found`: Newton's step where it stays
 * between the two, halving where it does not (at kinks and where the slope is none). Null where `at` gives none.
 */
export function findRisingRoot(
  at: (x: number) => Sloped | null,
  low: number,
  high: number,
  found: number,
): number | null {
  let from = low;
  let to = high;
  let x = (from + to) / 2;
  for (let step = 0; step < MOST_STEPS && to - from > found; step += 1) {
    const here = at(x);
    if (!here) return null;
    if (here.value < 0) from = x;
    else to = x;
    const newton = x - here.value / here.slope;
    const isInside = newton > from && newton < to;
    if (isInside && Math.abs(newton - x) < found) return newton;
    x = isInside ? newton : (from + to) / 2;
  }
  return (from + to) / 2;
}
