import type { Car, Linkage } from "../car/car.ts";
import type { Adjuster } from "../linkage/kind.ts";
import { kindOf } from "../linkage/kinds.ts";
import { type Effect, sumOf, worthFor } from "./effect.ts";
import { type TurnEffect, turnEffects } from "./turn-effects.ts";

/** Adjusters that are changed together: each by `ratio` times the group's own change of length. */
export interface AdjusterGroup {
  readonly parts: readonly { readonly adjuster: string; readonly ratio: number }[];
}

/** Which adjusters camber and toe are set with; null where the car has none that could. */
export interface TurnPlan {
  readonly camber: AdjusterGroup | null;
  readonly toe: AdjusterGroup | null;
}

/**
 * The plan by sensitivity: of all single adjusters, and of all pairs that can be moved together or against each other (both
 * ends of one hinge line, two links), the group that changes the wanted angle most for its movement, and the other angle
 * and the track least. On an H-arm that is the upper link for camber and the outer pair, one out and one in, for toe.
 */
export function defaultPlan(car: Car, effects: readonly TurnEffect[] = turnEffects(car)): TurnPlan {
  const groups = candidates(
    car,
    effects.filter(({ perLength, advance }) => perLength && advance !== 0),
  );
  const best = (wanted: "camber" | "toe"): AdjusterGroup | null => {
    let chosen: AdjusterGroup | null = null;
    let most = 0;
    for (const { parts, effect, weight } of groups) {
      const worth = weight * worthFor(wanted, effect, car.wheel.loadedRadius);
      if (worth <= most) continue;
      most = worth;
      chosen = { parts };
    }
    return chosen;
  };
  return { camber: best("camber"), toe: best("toe") };
}

interface Candidate extends AdjusterGroup {
  /** By a metre of the group's change. */
  readonly effect: Effect;
  /** 1 ÷ the group's movement; half of it where its turns cannot be counted because a thread is not given. */
  readonly weight: number;
}

function candidates(car: Car, effects: readonly TurnEffect[]): readonly Candidate[] {
  const together = partners(car);
  const pairs = effects.flatMap((first, index) =>
    effects
      .slice(index + 1)
      .filter((second) => together(first.adjuster, second.adjuster))
      .flatMap((second) => [candidate([first, second], [1, 1]), candidate([first, second], [1, -1])]),
  );
  return [...effects.map((effect) => candidate([effect], [1])), ...pairs];
}

function candidate(effects: readonly TurnEffect[], ratios: readonly number[]): Candidate {
  const movement = Math.sqrt(ratios.reduce((total, ratio) => total + ratio * ratio, 0));
  return {
    parts: effects.map(({ adjuster }, i) => ({ adjuster: adjuster.id, ratio: ratios[i]! })),
    effect: sumOf(effects.map(({ perLength }, i) => [perLength!, ratios[i]!])),
    weight: (effects.some(({ advance }) => advance === null) ? 0.5 : 1) / movement,
  };
}

/** Whether two adjusters make a pair: two links, or the two ends of one hinge line. */
function partners(car: Car): (a: Adjuster, b: Adjuster) => boolean {
  const pivots = new Map(
    kindOf<Linkage>(car.linkage)
      .pivots(car.linkage)
      .map((pivot) => [pivot.id, pivot]),
  );
  return (a, b) => {
    if (a.action !== b.action) return false;
    if (a.action === "turnbuckle") return true;
    const one = pivots.get(a.id);
    const two = pivots.get(b.id);
    if (!one || !two || one.shank.body === "link" || one.shank.body !== two.shank.body) return false;
    return one.boltSide === two.boltSide && "hinge" in one.shank && "hinge" in two.shank;
  };
}
