import { designState } from "../linkage/motion-state.ts";
import { type Corner, writeRow } from "./corner.ts";

/** The wheel moved through a list of travels: one row of numbers each. Read it with the corner's quantities. */
export interface Cycle {
  /** m, those asked for that lie within the linkage's range. */
  readonly travels: Float64Array;
  /** travels.length rows of corner.width numbers, see row.ts. */
  readonly table: Float64Array;
  readonly width: number;
  /** Travels asked for at which the linkage does not assemble, m. */
  readonly outside: readonly number[];
}

/** Moves the wheel through `travels` (m, any order; nearby ones in a row are fastest). */
export function moveThrough(corner: Corner, travels: ArrayLike<number>): Cycle {
  const width = corner.width;
  const table = new Float64Array(travels.length * width);
  const reached = new Float64Array(travels.length);
  const outside: number[] = [];
  const state = designState();
  const row = new Float64Array(width);
  let count = 0;
  for (let i = 0; i < travels.length; i += 1) {
    const travel = travels[i]!;
    if (corner.mechanism.solve(travel, state) < 0) {
      outside.push(travel);
      continue;
    }
    writeRow(corner, state, row);
    table.set(row, count * width);
    reached[count] = travel;
    count += 1;
  }
  return { travels: reached.subarray(0, count), table: table.subarray(0, count * width), width, outside };
}

/** One position's row of a cycle. */
export const rowAt = (cycle: Cycle, index: number): Float64Array =>
  cycle.table.subarray(index * cycle.width, (index + 1) * cycle.width);

/** Evenly spaced travels from `droop` (negative) to `bump`, both included, m. */
export const stations = (droop: number, bump: number, count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => (i === count - 1 ? bump : droop + ((bump - droop) * i) / (count - 1)));
