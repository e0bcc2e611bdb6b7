import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { bench } from "../store/bench.ts";
import type { Between, CertaintyAnswer, CertaintyInput, LimitSure } from "./certainty-job.ts";

/** How sure the car on the bench is. */
interface Known {
  /** Null while the hand moves, and until it has been worked out. */
  readonly answer: CertaintyAnswer | null;
}

const known = createStore<Known>(() => ({ answer: null }));

/** Takes an answer, if the car that it is of is still the one on the bench. */
export function takeCertainty(of: CertaintyInput, answer: CertaintyAnswer): void {
  const { document, side } = bench.getState();
  if (of.document === document && of.side === side) known.setState({ answer });
}

// With the first movement of a point it holds no more.
bench.subscribe(({ document, side }, before) => {
  if ((document !== before.document || side !== before.side) && known.getState().answer)
    known.setState({ answer: null });
});

export const useCertainty = (): CertaintyAnswer | null => useStore(known, ({ answer }) => answer);

/** Between what a quantity lies at a travel (SI), on the straight between the heights that were worked out. */
export function betweenAt(
  answer: CertaintyAnswer,
  id: string,
  travel: number,
): { readonly low: number; readonly high: number; readonly nearest: Between } | null {
  const list = answer.quantities[id];
  const above = list?.findIndex((each) => each.travel >= travel - 1e-9) ?? -1;
  const [a, b] = [list?.[Math.max(above - 1, 0)], list?.[above]];
  if (!a || !b || a.low === null || a.high === null || b.low === null || b.high === null) return null;
  const share = b.travel > a.travel ? (travel - a.travel) / (b.travel - a.travel) : 1;
  return {
    low: a.low + (b.low - a.low) * share,
    high: a.high + (b.high - a.high) * share,
    nearest: share < 0.5 ? a : b,
  };
}

export const sureOf = (
  answer: CertaintyAnswer | null,
  direction: "bump" | "droop",
  id: string,
): LimitSure | undefined => answer?.limits.find((limit) => limit.direction === direction && limit.id === id);

/** Of a hundred cars so many, in words; none where it is under one. */
export const ofHundred = (chance: number): string | null =>
  chance < 0.005 ? null : `${Math.max(1, Math.round(100 * chance))} of 100 cars`;
