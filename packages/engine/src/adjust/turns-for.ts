import type { Car } from "../car/car.ts";
import { solveLinear } from "../geometry/solve-linear.ts";
import { adjustersOf, type Change, screwTogether, stepsFor } from "./adjusted.ts";
import { advancePerTurn } from "./thread-advance.ts";
import { type Effect, effectBetween, effectPerLength, sumOf } from "./effect.ts";
import { type AdjusterGroup, defaultPlan, type TurnPlan } from "./turn-plan.ts";

/** Camber and toe to reach, rad. What is left out may go where it goes; give the present value to hold it. */
export interface WantedAlignment {
  readonly camber?: number;
  readonly toe?: number;
}

export interface AdjusterTurns {
  readonly adjuster: string;
  readonly label: string;
  /** How much longer it is made, m. */
  readonly change: number;
  /** Turns that make it longer, and the same to the nearest half turn; null where a thread is not given. */
  readonly turns: number | null;
  readonly halfTurns: number | null;
}

/** Where the wheel comes to stand, and how far the half-track moves from before, m. */
export interface Reached {
  readonly camber: number;
  readonly toe: number;
  readonly halfTrackChange: number;
  readonly car: Car;
}

export interface TurnsResult {
  /** Whether the wanted angles are met; if not, `exact` is the nearest that was found. */
  readonly reachable: boolean;
  readonly plan: TurnPlan;
  readonly turns: readonly AdjusterTurns[];
  readonly exact: Reached;
  /** With every adjuster at its nearest half turn; null where turns cannot be counted or it does not go together. */
  readonly rounded: Reached | null;
}

/**
 * The turns that bring the wheel to the wanted camber and toe at ride height: Newton's method on the exact re-solve, damped
 * (Levenberg–Marquardt) where a full step leads astray.
 */
export function turnsFor(car: Car, wanted: WantedAlignment, plan: TurnPlan = defaultPlan(car)): TurnsResult {
  const aims = (["camber", "toe"] as const).flatMap((angle) => {
    const value = wanted[angle];
    return value === undefined ? [] : [{ angle, value, group: plan[angle] }];
  });
  const possible = aims.flatMap((aim) => (aim.group ? [{ ...aim, group: aim.group }] : []));
  const found = approach(car, possible);
  const turns = adjusterTurns(car, found.changes);
  return {
    reachable: possible.length === aims.length && found.miss < ANGLE_TOLERANCE,
    plan,
    turns,
    exact: reached(car, found.car),
    rounded: roundedCar(car, turns, found.steps),
  };
}

interface Aim {
  readonly angle: "camber" | "toe";
  readonly value: number;
  readonly group: AdjusterGroup;
}

interface Trial {
  readonly amounts: readonly number[];
  readonly changes: readonly Change[];
  readonly car: Car;
  /** Largest miss of an aim, rad. */
  readonly miss: number;
  readonly steps: number;
}

/** rad: a millionth of what a string or an angle finder can tell. */
const ANGLE_TOLERANCE = 1e-10;
/** m: longer than the threaded shank of any rod end on a car. */
const MOST_CHANGE = 0.1;
const MOST_ITERATIONS = 40;
const MOST_DAMPING = 1e4;

function approach(car: Car, aims: readonly Aim[]): Trial {
  let best = trial(
    car,
    aims,
    aims.map(() => 0),
    1,
  )!;
  let slopes = slopesAt(best.car, aims);
  let damping = 0;
  for (let i = 0; i < MOST_ITERATIONS && best.miss >= ANGLE_TOLERANCE && damping < MOST_DAMPING; i += 1) {
    const better = improved(car, aims, best, slopes, damping);
    if (better) {
      best = better;
      slopes = slopesAt(best.car, aims);
      damping = damping > 1e-3 ? damping / 10 : 0;
    } else damping = Math.max(1e-3, damping * 10);
  }
  return best;
}

const slopesAt = (car: Car, aims: readonly Aim[]) => aims.map(({ group }) => groupEffect(car, group));

/** One damped step; null where it does not lead nearer. */
function improved(
  car: Car,
  aims: readonly Aim[],
  from: Trial,
  slopes: readonly (Effect | null)[],
  damping: number,
): Trial | null {
  const misses = aims.map(({ angle, value }) => value - from.car.wheel[angle]);
  // Columns are groups, rows are aims.
  const matrix = aims.map(({ angle }) => slopes.map((slope) => slope?.[angle] ?? 0));
  const size = matrix.flat().reduce((sum, value) => sum + value * value, 0);
  const normal = aims.map((_, i) =>
    aims.map((_, j) => matrix.reduce((sum, row) => sum + row[i]! * row[j]!, i === j ? damping * size : 0)),
  );
  const right = aims.map((_, i) => matrix.reduce((sum, row, k) => sum + row[i]! * misses[k]!, 0));
  const step = solveLinear(normal, right);
  if (!step) return null;
  const amounts = from.amounts.map((amount, i) => amount + step[i]!);
  const next = trial(car, aims, amounts, from.steps);
  return next && next.miss < from.miss ? next : null;
}

/** The car with each aim's group changed by its amount; as many steps as before or more, so that trials compare exactly. */
function trial(car: Car, aims: readonly Aim[], amounts: readonly number[], leastSteps: number): Trial | null {
  const changes = changesOf(aims, amounts);
  const most = Math.max(0, ...changes.map(({ change }) => Math.abs(change)));
  if (!(most <= MOST_CHANGE)) return null;
  const steps = Math.max(leastSteps, stepsFor(most));
  const { car: there, fraction } = screwTogether(car, changes, steps);
  if (fraction < 1) return null;
  const miss = Math.max(0, ...aims.map(({ angle, value }) => Math.abs(value - there.wheel[angle])));
  return { amounts, changes, car: there, miss, steps };
}

function changesOf(aims: readonly Aim[], amounts: readonly number[]): readonly Change[] {
  const changes = new Map<string, number>();
  aims.forEach(({ group }, i) => {
    for (const { adjuster, ratio } of group.parts) {
      changes.set(adjuster, (changes.get(adjuster) ?? 0) + ratio * amounts[i]!);
    }
  });
  return [...changes].map(([adjuster, change]) => ({ adjuster, change }));
}

function groupEffect(car: Car, group: AdjusterGroup): Effect | null {
  const parts: [Effect, number][] = [];
  for (const { adjuster, ratio } of group.parts) {
    const effect = effectPerLength(car, adjuster);
    if (!effect) return null;
    parts.push([effect, ratio]);
  }
  return sumOf(parts);
}

function adjusterTurns(car: Car, changes: readonly Change[]): readonly AdjusterTurns[] {
  const adjusters = new Map(adjustersOf(car).map((adjuster) => [adjuster.id, adjuster]));
  return changes.map(({ adjuster: id, change }) => {
    const adjuster = adjusters.get(id)!;
    const advance = advancePerTurn(car, adjuster);
    const turns = advance ? change / advance : null;
    // Adding 0 turns −0 into 0.
    const halfTurns = turns === null ? null : Math.round(2 * turns) / 2 + 0;
    return { adjuster: id, label: adjuster.label, change, turns, halfTurns };
  });
}

function roundedCar(car: Car, turns: readonly AdjusterTurns[], steps: number): Reached | null {
  const changes: Change[] = [];
  for (const { adjuster, change, turns: exact, halfTurns } of turns) {
    if (exact === null || halfTurns === null) return null;
    changes.push({ adjuster, change: exact === 0 ? 0 : (change / exact) * halfTurns });
  }
  const { car: there, fraction } = screwTogether(car, changes, steps);
  return fraction < 1 ? null : reached(car, there);
}

const reached = (before: Car, after: Car): Reached => ({
  camber: after.wheel.camber,
  toe: after.wheel.toe,
  halfTrackChange: effectBetween(before, after).halfTrack,
  car: after,
});
