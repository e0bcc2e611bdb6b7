import { useSyncExternalStore } from "react";

/** Whether a media query holds, followed live. */
export function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = listOf(query);
      list.addEventListener("change", changed);
      return () => list.removeEventListener("change", changed);
    },
    () => listOf(query).matches,
  );
}

const lists = new Map<string, MediaQueryList>();

/** Asked for by every field of a form, so each query is made once. */
function listOf(query: string): MediaQueryList {
  const known = lists.get(query);
  if (known) return known;
  const made = matchMedia(query);
  lists.set(query, made);
  return made;
}

/** One hand, one thumb: the layout for a phone under the car. */
export const PHONE = "(max-width: 719px)";
/** No room for charts beside the drawing: they stand in the bench. */
export const NARROW = "(max-width: 1199px)";
/** Room for the sheet at its full height and for the charts beside the drawing. */
export const WIDE = "(min-width: 1860px)";
/** A finger rather than a mouse: readings are keyed in on the tape keypad. */
export const FINGER = "(pointer: coarse)";
export const STILL = "(prefers-reduced-motion: reduce)";
