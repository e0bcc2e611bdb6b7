import { type Cycle, rowAt } from "../cycle/cycle.ts";

/** Smallest and largest of one place of the rows over a cycle, with their travels, m; null for an empty cycle. */
export function extremesOf(cycle: Cycle, place: number): Extremes | null {
  if (cycle.travels.length === 0) return null;
  let low = 0;
  let high = 0;
  for (let i = 1; i < cycle.travels.length; i += 1) {
    if (rowAt(cycle, i)[place]! < rowAt(cycle, low)[place]!) low = i;
    if (rowAt(cycle, i)[place]! > rowAt(cycle, high)[place]!) high = i;
  }
  return {
    least: rowAt(cycle, low)[place]!,
    leastAt: cycle.travels[low]!,
    most: rowAt(cycle, high)[place]!,
    mostAt: cycle.travels[high]!,
  };
}

export interface Extremes {
  readonly least: number;
  readonly leastAt: number;
  readonly most: number;
  readonly mostAt: number;
}
