let waiting: (() => void) | null = null;
let frame = 0;

/** Time that the work of each of the last frames took, ms, the newest last: what a benchmark reads. */
export const frameTimes: number[] = [];

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
  const started = performance.now();
  work();
  frameTimes.push(performance.now() - started);
  if (frameTimes.length > 600) frameTimes.shift();
}
