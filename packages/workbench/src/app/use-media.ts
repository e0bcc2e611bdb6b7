import { useSyncExternalStore } from "react";

/** Whether a media query holds, followed live. */
export function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = matchMedia(query);
      list.addEventListener("change", changed);
      return () => list.removeEventListener("change", changed);
    },
    () => matchMedia(query).matches,
  );
}

/** One hand, one thumb: the layout for a phone under the car. */
export const PHONE = "(max-width: 719px)";
/** No room for charts beside the drawing: they stand in the bench. */
export const NARROW = "(max-width: 1199px)";
/** A finger rather than a mouse: readings are keyed in on the tape keypad. */
export const FINGER = "(pointer: coarse)";
export const STILL = "(prefers-reduced-motion: reduce)";
