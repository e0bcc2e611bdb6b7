import type { Car } from "../car/car.ts";
import { adjustersOf, type Change } from "./adjusted.ts";
import { approach } from "./approach.ts";
import { effectBetween } from "./effect.ts";
import { halfTurnsNear } from "./half-turns.ts";
import { advancePerTurn } from "./thread-advance.ts";
import { defaultPlan, type TurnPlan } from "./turn-plan.ts";

/** Camber and toe to reach, rad. What is left out may go where it goes; give the present value to hold it. */
export interface WantedAlignment {
  readonly camber?: number;
  readonly toe?: number;
}

export interface TurnsResult {
  /** Whether the wanted angles are met; if not, `exact` is the nearest that was found. */
  readonly reachable: boolean;
  readonly plan: TurnPlan;
  readonly turns: readonly AdjusterTurns[];
  readonly exact: Reached;
  /** With every adjuster at its half turns; null where turns cannot be counted or it does not go together. */
  readonly rounded: Reached | null;
}

export interface AdjusterTurns {
  readonly adjuster: string;
  readonly label: string;
  /** How much longer it is made, m. */
  readonly change: number;
  /** Turns that make it longer; null where a thread is not given. */
  readonly turns: number | null;
  /** Whole or half turns next to that, chosen for all adjusters together so that the wheel comes nearest. */
  readonly halfTurns: number | null;
}

/** Where the wheel comes to stand, rad, and how far the half-track moves from before, m. */
export interface Reached {
  readonly camber: number;
  readonly toe: number;
  readonly halfTrackChange: number;
  readonly car: Car;
}

/** rad: a millionth of what a string or an angle finder can tell. */
const ANGLE_TOLERANCE = 1e-10;

/** The turns that bring the wheel to the wanted camber and toe at ride height, on the exact re-solve. */
export function turnsFor(car: Car, wanted: WantedAlignment, plan: TurnPlan = defaultPlan(car)): TurnsResult {
  const aims = (["camber", "toe"] as const).flatMap((angle) => {
    const value = wanted[angle];
    return value === undefined ? [] : [{ angle, value, group: plan[angle] }];
  });
  const possible = aims.flatMap((aim) => (aim.group ? [{ ...aim, group: aim.group }] : []));
  const found = approach(car, possible, ANGLE_TOLERANCE);
  const advances = found.changes.map(({ adjuster }) => advanceOf(car, adjuster));
  const half = halfTurnsNear(car, found, advances, aims);
  return {
    reachable: aims.every(({ angle, value }) => Math.abs(value - found.car.wheel[angle]) < ANGLE_TOLERANCE),
    plan,
    turns: found.changes.map((change, i) => adjusterTurns(car, change, advances[i]!, half?.turns[i] ?? null)),
    exact: reached(car, found.car),
    rounded: half && reached(car, half.car),
  };
}

/** A turn's advance, m; null where turning does nothing or is not known. */
function advanceOf(car: Car, adjusterId: string): number | null {
  return advancePerTurn(car, adjusterOf(car, adjusterId)) || null;
}

const adjusterOf = (car: Car, id: string) => adjustersOf(car).find((adjuster) => adjuster.id === id)!;

const adjusterTurns = (
  car: Car,
  { adjuster, change }: Change,
  advance: number | null,
  halfTurns: number | null,
): AdjusterTurns => ({
  adjuster,
  label: adjusterOf(car, adjuster).label,
  change,
  turns: advance === null ? null : change / advance,
  halfTurns,
});

const reached = (before: Car, after: Car): Reached => ({
  camber: after.wheel.camber,
  toe: after.wheel.toe,
  halfTrackChange: effectBetween(before, after).halfTrack,
  car: after,
});
