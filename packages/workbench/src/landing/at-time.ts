import type { LandingHistory } from "@armwright/engine";

/** Where in a history a time falls: the step at or before it, and how far on to the next, 0…1. */
export function placeInTime(time: Float64Array, at: number): { readonly index: number; readonly share: number } {
  let low = 0;
  let high = time.length - 1;
  if (at <= time[0]!) return { index: 0, share: 0 };
  if (at >= time[high]!) return { index: high, share: 0 };
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time[middle]! <= at) low = middle;
    else high = middle;
  }
  const span = time[high]! - time[low]!;
  return { index: low, share: span > 0 ? (at - time[low]!) / span : 0 };
}

/** A value of the history at a time, between its steps in proportion. */
export function valueAt(history: LandingHistory, values: Float64Array, at: number): number {
  const { index, share } = placeInTime(history.time, at);
  const here = values[index]!;
  return share === 0 ? here : here + share * (values[index + 1]! - here);
}

export const endOf = ({ time }: LandingHistory): number => time[time.length - 1]!;
