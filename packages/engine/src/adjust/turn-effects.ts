import type { Car } from "../car/car.ts";
import type { Adjuster } from "../linkage/kind.ts";
import { adjustersOf } from "./adjusted.ts";
import { type Effect, effectPerLength, sumOf, worthFor } from "./effect.ts";
import { advancePerTurn } from "./thread-advance.ts";

export interface TurnEffect {
  readonly adjuster: Adjuster;
  /** How much longer a turn makes it, m; 0: turning does nothing; null: a thread is not given. */
  readonly advance: number | null;
  /** By a metre of length; null where the linkage stands at its very limit and cannot be adjusted either way. */
  readonly perLength: Effect | null;
  /** By a turn that makes it longer; null where `advance` or `perLength` is. */
  readonly perTurn: Effect | null;
  /** Null for the adjuster that holds camber itself, and where there is none or turns cannot be counted. */
  readonly camberHeld: HeldEffect | null;
}

/** What one turn does while a second adjuster is turned along so that camber stays. */
export interface HeldEffect {
  /** The adjuster that holds it, and its turns to one turn of the first; positive makes it longer. */
  readonly by: string;
  readonly turns: number;
  readonly toe: number;
  readonly halfTrack: number;
}

/** What each adjuster of the car does: slopes in the design position, by length and by turn. */
export function turnEffects(car: Car): readonly TurnEffect[] {
  const effects = adjustersOf(car).map((adjuster): Turning => {
    const advance = advancePerTurn(car, adjuster);
    const perLength = effectPerLength(car, adjuster.id);
    const perTurn = advance === null || !perLength ? null : sumOf([[perLength, advance]]);
    return { adjuster, advance, perLength, perTurn };
  });
  const holder = camberHolder(effects, car.wheel.loadedRadius);
  return effects.map((effect) => ({ ...effect, camberHeld: holder ? heldBy(holder, effect) : null }));
}

type Turning = Omit<TurnEffect, "camberHeld">;

/** The adjuster that serves best to set camber. */
function camberHolder(effects: readonly Turning[], wheelRadius: number): Turning | null {
  let best: Turning | null = null;
  let most = 0;
  for (const effect of effects) {
    const { perLength, advance } = effect;
    if (!perLength || !advance) continue;
    const worth = worthFor("camber", perLength, wheelRadius);
    if (worth <= most) continue;
    most = worth;
    best = effect;
  }
  return best;
}

function heldBy(holder: Turning, effect: Turning): HeldEffect | null {
  if (effect === holder || !effect.perTurn || !holder.perTurn) return null;
  const turns = -effect.perTurn.camber / holder.perTurn.camber;
  const { toe, halfTrack } = sumOf([
    [effect.perTurn, 1],
    [holder.perTurn, turns],
  ]);
  return { by: holder.adjuster.id, turns, toe, halfTrack };
}
