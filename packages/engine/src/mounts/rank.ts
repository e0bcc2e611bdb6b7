import { distance } from "../geometry/vec3.ts";
import type { Feasible } from "./feasible.ts";
import { upperAt } from "./grid.ts";
import type { MountRequirements } from "./request.ts";
import { SCORES } from "./scan.ts";
import type { Search } from "./search.ts";

/** What the order of the short list looks at. */
export interface Merits {
  readonly strokeUsed: number;
  readonly motionRatio: number;
  /** Motion ratio at full bump less that at ride height. */
  readonly ratioRise: number;
  readonly lean: number;
  readonly offSquare: number;
  /** From the upper mount to the nearest tube of the frame, m; 0 where none is known. */
  readonly loadPath: number;
}

/** Off square by this at full bump costs as much as a stroke used at the edge of its window; so does the most lean. */
const OFF_SQUARE = Math.PI / 6;

/** A tab that reaches this far from the frame's tube costs as much as a low motion ratio, m. */
const LONG_PATH = 6 * 0.0254;

/**
 * How far from ideal, 0 best: the stroke used in the middle of its window, square to the arm at full bump, upright, a high
 * motion ratio that does not fall, close to a tube of the frame. Common practice; the weights are ours.
 */
export function demerit({ strokeUsed, motionRatio }: MountRequirements, merits: Merits): number {
  const window = 0.5 * (strokeUsed.most - strokeUsed.least);
  const stroke = (merits.strokeUsed - strokeUsed.least - window) / Math.max(window, 1e-9);
  const ratio = (motionRatio.most - merits.motionRatio) / Math.max(motionRatio.most - motionRatio.least, 1e-9);
  const fall = Math.max(0, -merits.ratioRise) / 0.05;
  const square = merits.offSquare / OFF_SQUARE;
  const path = merits.loadPath / LONG_PATH;
  return (
    stroke * stroke + square * square + 0.5 * (ratio * ratio + merits.lean * merits.lean + fall * fall + path * path)
  );
}

/** Of entry `i` of what was found. */
export function meritsAt({ scores }: Feasible, i: number): Merits {
  const at = SCORES.length * i;
  return {
    strokeUsed: scores[at]!,
    motionRatio: scores[at + 1]!,
    ratioRise: scores[at + 2]!,
    lean: scores[at + 3]!,
    offSquare: scores[at + 4]!,
    loadPath: scores[at + 6]!,
  };
}

/** The best of what was found, each at least `spread` (m, both mounts' distances added) from those before, or another shock. */
export function spreadBest(search: Search, found: Feasible, count: number, spread: number): readonly number[] {
  const { shock, lower, upper } = found;
  const demerits = Float64Array.from(shock, (_, i) => demerit(search.request.requirements, meritsAt(found, i)));
  const chosen: number[] = [];
  const isOpen = new Uint8Array(shock.length).fill(1);
  while (chosen.length < count) {
    let best = -1;
    for (let i = 0; i < demerits.length; i += 1)
      if (isOpen[i] === 1 && (best < 0 || demerits[i]! < demerits[best]!)) best = i;
    if (best < 0) break;
    chosen.push(best);
    const top = upperAt(search.upper, upper[best]!);
    const foot = search.lower[lower[best]!]!.point;
    for (let i = 0; i < demerits.length; i += 1) {
      if (isOpen[i] === 0 || shock[i] !== shock[best]) continue;
      const apart = distance(top, upperAt(search.upper, upper[i]!)) + distance(foot, search.lower[lower[i]!]!.point);
      if (apart < spread) isOpen[i] = 0;
    }
  }
  return chosen;
}
