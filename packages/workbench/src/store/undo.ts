import type { Operation } from "@armwright/engine/document";

/** What one movement of the hand did: done and undone as a whole. */
export interface Gesture {
  /** In words, e.g. `Upper link, inner end moved`. */
  readonly words: string;
  readonly forth: readonly Operation[];
  readonly back: readonly Operation[];
}

export interface Undoing {
  readonly done: readonly Gesture[];
  readonly undone: readonly Gesture[];
}

export const NOTHING_DONE: Undoing = { done: [], undone: [] };

/** More than this nobody takes back one by one. */
const MOST = 500;

export const recorded = (undoing: Undoing, gesture: Gesture): Undoing => ({
  done: [...undoing.done.slice(-MOST + 1), gesture],
  undone: [],
});

/** The gesture to undo and what is left; null where there is none. */
export function takeBack({ done, undone }: Undoing): { readonly gesture: Gesture; readonly left: Undoing } | null {
  const gesture = done.at(-1);
  return gesture ? { gesture, left: { done: done.slice(0, -1), undone: [...undone, gesture] } } : null;
}

export function doAgain({ done, undone }: Undoing): { readonly gesture: Gesture; readonly left: Undoing } | null {
  const gesture = undone.at(-1);
  return gesture ? { gesture, left: { done: [...done, gesture], undone: undone.slice(0, -1) } } : null;
}
