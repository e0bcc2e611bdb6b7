import type { Car, Linkage } from "../car/car.ts";
import type { Adjuster } from "../linkage/kind.ts";
import { kindOf } from "../linkage/kinds.ts";
import { screwStep } from "./screw-step.ts";

export type AdjustResult =
  | { readonly ok: true; readonly car: Car }
  /** `reach`: the most of the change, m, with its sign, that the linkage can follow at ride height. */
  | { readonly ok: false; readonly reach: number };

/**
 * The car with one adjuster made longer by `change` (m), standing at the same wheel-centre height: its new design position.
 * A car that is alike on both sides is adjusted on both; of one with its own right side, the left is. Throws where the
 * linkage has no such adjuster.
 */
export function adjusted(car: Car, adjusterId: string, change: number): AdjustResult {
  const result = screwTogether(car, [{ adjuster: adjusterId, change }]);
  return result.fraction === 1 ? { ok: true, car: result.car } : { ok: false, reach: result.fraction * change };
}

export const adjustersOf = (car: Car): readonly Adjuster[] => kindOf<Linkage>(car.linkage).adjusters(car.linkage);

/** One adjuster and how much longer it is made, m. */
export interface Change {
  readonly adjuster: string;
  readonly change: number;
}

export interface Screwed {
  /** The car as far as it could be brought. */
  readonly car: Car;
  /** How much of all the changes that is, 0…1. */
  readonly fraction: number;
}

/** Largest change in one step, m: small beside any arm, so that the same branch is followed. */
export const LARGEST_STEP = 0.005;
/** How finely the end of the possible is found, m. */
const REACH_RESOLUTION = 1e-6;

/** Several adjusters changed side by side, in steps of an equal share each: at least `leastSteps` of them. */
export function screwTogether(car: Car, changes: readonly Change[], leastSteps = 1): Screwed {
  const known = new Set(adjustersOf(car).map(({ id }) => id));
  for (const { adjuster } of changes) {
    if (!known.has(adjuster)) throw new Error(`bug in armwright: this ${car.linkage.kind} has no adjuster ${adjuster}`);
  }
  const most = Math.max(0, ...changes.map(({ change }) => Math.abs(change)));
  let step = 1 / Math.max(leastSteps, stepsFor(most));
  let here = car;
  let fraction = most > 0 ? 0 : 1;
  while (fraction < 1) {
    // The last step takes what rounding has left over.
    const last = 1 - fraction <= step * (1 + 1e-9);
    const share = last ? 1 - fraction : step;
    const next = screwAll(here, changes, share);
    if (next) {
      here = next;
      fraction = last ? 1 : fraction + share;
      continue;
    }
    step = share / 2;
    if (step * most < REACH_RESOLUTION) break;
  }
  return { car: here, fraction };
}

export const stepsFor = (change: number): number => Math.ceil(Math.abs(change) / LARGEST_STEP);

function screwAll(car: Car, changes: readonly Change[], share: number): Car | null {
  let here: Car | null = car;
  for (const { adjuster, change } of changes) {
    if (here && change !== 0) here = screwStep(here, adjuster, change * share);
  }
  return here;
}
