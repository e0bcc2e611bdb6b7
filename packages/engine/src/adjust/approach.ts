import type { Car } from "../car/car.ts";
import { solveLinear } from "../geometry/solve-linear.ts";
import { type Change, screwTogether, stepsFor } from "./adjusted.ts";
import { type Effect, effectPerLength, sumOf } from "./effect.ts";
import type { AdjusterGroup } from "./turn-plan.ts";

/** An angle of the wheel, the value it shall have (rad), and what it is set with. */
export interface Aim {
  readonly angle: "camber" | "toe";
  readonly value: number;
  readonly group: AdjusterGroup;
}

/** The car as one try at the aims leaves it. */
export interface Trial {
  readonly amounts: readonly number[];
  readonly changes: readonly Change[];
  readonly car: Car;
  /** Largest miss of an aim, rad. */
  readonly miss: number;
  readonly steps: number;
}

/** m: longer than the threaded shank of any rod end on a car. */
const MOST_CHANGE = 0.1;
const MOST_ITERATIONS = 40;
const MOST_DAMPING = 1e4;

/**
 * Brings the aims to within `tolerance` (rad), or as near as it gets: Newton's method on the exact re-solve, damped
 * (Levenberg–Marquardt) where a full step leads astray or the slopes do not tell the groups apart.
 */
export function approach(car: Car, aims: readonly Aim[], tolerance: number): Trial {
  let best = trial(
    car,
    aims,
    aims.map(() => 0),
    1,
  )!;
  let slopes = slopesAt(best.car, aims);
  let damping = 0;
  for (let i = 0; i < MOST_ITERATIONS && best.miss >= tolerance && damping < MOST_DAMPING; i += 1) {
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
