import type { Car } from "../car/car.ts";
import { screwTogether } from "./adjusted.ts";
import type { Aim, Trial } from "./approach.ts";
import { effectPerLength, sumOf } from "./effect.ts";

export interface HalfTurns {
  /** By adjuster, in the order of the trial's changes. */
  readonly turns: readonly number[];
  readonly car: Car;
}

/**
 * Half turns next to an exact setting: an end goes back onto its bolt every half turn. Of all ways to round each adjuster
 * up or down, the one that comes nearest to the aims by the slopes at the exact setting; then the car with it, re-solved.
 * `advances`: m a turn, by change. Null where one is not known, or the car does not go together so.
 */
export function halfTurnsNear(
  car: Car,
  exact: Trial,
  advances: readonly (number | null)[],
  aims: readonly Pick<Aim, "angle" | "value">[],
): HalfTurns | null {
  const ends = exact.changes.map(({ adjuster, change }, i) => {
    const advance = advances[i];
    const effect = effectPerLength(exact.car, adjuster);
    return advance && effect ? { adjuster, advance, effect, turns: change / advance } : null;
  });
  const known = ends.filter((end) => end !== null);
  if (known.length < ends.length) return null;
  let best: readonly number[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const turns of choices(known.map((end) => halvesBeside(end.turns)))) {
    const shift = sumOf(known.map((end, i) => [end.effect, (turns[i]! - end.turns) * end.advance]));
    const miss = Math.hypot(...aims.map(({ angle, value }) => exact.car.wheel[angle] + shift[angle] - value));
    if (miss >= least) continue;
    least = miss;
    best = turns;
  }
  const changes = known.map(({ adjuster, advance }, i) => ({ adjuster, change: best[i]! * advance }));
  const { car: there, fraction } = screwTogether(car, changes, exact.steps);
  return fraction < 1 ? null : { turns: best, car: there };
}

/** Turns that are this near to a half turn are one. */
const ON_THE_HALF = 1e-6;

function halvesBeside(turns: number): readonly number[] {
  const nearest = Math.round(2 * turns) / 2;
  // Adding 0 makes 0 of −0.
  if (Math.abs(nearest - turns) < ON_THE_HALF) return [nearest + 0];
  return [Math.floor(2 * turns) / 2 + 0, Math.ceil(2 * turns) / 2 + 0];
}

/** Every way to take one from each list. */
const choices = (lists: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  lists.reduce<readonly (readonly number[])[]>(
    (taken, list) => taken.flatMap((before) => list.map((next) => [...before, next])),
    [[]],
  );
