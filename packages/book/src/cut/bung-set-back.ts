import { INCH, type RodEnd } from "@armwright/engine";

/** How far a tube with a bung ends short of the rod end's ball. */
export interface SetBack {
  /** From the ball's middle to the bung's face, in mid adjustment, m. */
  readonly length: number;
  /** Thread left in the bung in mid adjustment, m. */
  readonly engaged: number;
  /** What was put in because the document does not say it. */
  readonly assumed: readonly string[];
}

/** Thread in the bung in mid adjustment, of its diameter. Common practice: never under 1 1/2, so half a diameter to turn out. */
const ENGAGED = 2;
/**
 * Ball to end of thread, of the thread's diameter. From memory of ISO 12240-4, dimension series K, male: 66 mm at M16, 72 at
 * M18, 78 at M20. Inch rod ends are near it; it is assumed and said to be so until the builder has measured theirs.
 */
const LENGTH = 4;
const USUAL_THREAD = 0.75 * INCH;

/** Where the bung's face stands with the rod end in mid adjustment: half a diameter of thread to go either way. */
export function bungSetBack({ threadDiameter, length }: Pick<RodEnd, "threadDiameter" | "length">): SetBack {
  const diameter = threadDiameter ?? USUAL_THREAD;
  const whole = length ?? LENGTH * diameter;
  const engaged = ENGAGED * diameter;
  return {
    length: Math.max(whole - engaged, 0),
    engaged,
    assumed: [
      ...(threadDiameter === undefined ? ["a 3/4 in thread"] : []),
      ...(length === undefined
        ? ["rod end 4 thread diameters long, ball to end of thread (from memory): measure yours"]
        : []),
    ],
  };
}
