import { bench } from "./bench.ts";
import { studied } from "./live-study.ts";

/** So often a browser has to run something before it runs it at full speed. */
const TIMES = 60;

/**
 * Studies the car now and then while nothing else is to be done, so that the first steps of a drag are as quick as the later
 * ones. What comes out is what is there already, and is let go.
 */
export function warmUp(left = TIMES): void {
  if (left <= 0 || typeof requestIdleCallback !== "function") return;
  requestIdleCallback((idle) => {
    const { document, live, moving, side } = bench.getState();
    let count = left - 1;
    // One at least: what the first one takes says nothing of the next.
    for (let took = 0; document && !moving && count >= 0 && idle.timeRemaining() > took; count -= 1) {
      took = 2 * studied(document, live, "moving", side).took;
    }
    warmUp(count);
  });
}
