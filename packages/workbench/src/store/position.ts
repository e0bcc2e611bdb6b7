import { type MotionState, type Position, positionOf, type Quantity, type Study, solveAt } from "@armwright/engine";

/** One solved position of the wheel: bodies and numbers. */
export interface Solved {
  readonly travel: number;
  readonly state: MotionState;
  readonly row: Float64Array;
  readonly position: Position;
}

let last: { readonly study: Study; readonly solved: Solved } | undefined;

/** The position at a travel, solved once however many parts of the page ask for it. Null outside the linkage's range. */
export function solvedAt(study: Study, travel: number): Solved | null {
  if (last && last.study === study && last.solved.travel === travel) return last.solved;
  const near = last && last.study === study ? last.solved.state : undefined;
  const found = solveAt(study.corner, travel, near) ?? solveAt(study.corner, travel);
  if (!found) return null;
  const solved = { travel, ...found, position: positionOf(study.corner, found.state) };
  last = { study, solved };
  return solved;
}

/** A quantity's value in a solved position; null where it does not exist. */
export const valueIn = (study: Study, quantity: Quantity, solved: Solved | null): number | null =>
  solved ? quantity.read(solved.row, study.corner) : null;
