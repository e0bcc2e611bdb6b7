import { flushSync } from "react-dom";
import { bench } from "../store/bench.ts";

let waiting: (() => void) | null = null;
let frame = 0;
let count = 0;

/** Name of the measurements that a benchmark reads: script time of each step of a drag, ms, and of that the newest study. */
export const DRAG_STEP = "armwright-drag-step";

/** Does the newest of several calls once, before the next frame is drawn: a mouse reports faster than a screen shows. */
export function oncePerFrame(work: () => void): void {
  waiting = work;
  if (frame === 0) frame = requestAnimationFrame(run);
}

/** Does what is waiting at once, e.g. before the hand lets go. */
oncePerFrame.now = (): void => {
  if (frame !== 0) cancelAnimationFrame(frame);
  run();
};

function run(): void {
  frame = 0;
  const work = waiting;
  waiting = null;
  if (!work) return;
  const start = performance.now();
  // Numbers, charts and drawing are all new before the frame is shown, and before the clock is stopped.
  flushSync(work);
  count += 1;
  if (count % 2000 === 0) performance.clearMeasures(DRAG_STEP);
  performance.measure(DRAG_STEP, { start, detail: { study: bench.getState().live.took } });
}
