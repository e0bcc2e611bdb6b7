import type { Car } from "../car/car.ts";
import type { Adjuster } from "../linkage/kind.ts";
import { adjustersOf } from "./adjusted.ts";
import { contactOf } from "./carried-car.ts";
import { screwStep } from "./screw-step.ts";
import { advancePerTurn } from "./thread-advance.ts";

/** What an adjuster does to the wheel at ride height. */
export interface Effect {
  /** Camber and toe, rad. */
  readonly camber: number;
  readonly toe: number;
  /** Half-track at the contact point, m. */
  readonly halfTrack: number;
}

/** What one turn does while a second adjuster is turned along so that camber stays. */
export interface HeldEffect {
  /** The adjuster that holds it, and its turns to one turn of the first; positive makes it longer. */
  readonly by: string;
  readonly turns: number;
  readonly toe: number;
  readonly halfTrack: number;
}

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

/**
 * What each adjuster of the car does: slopes in the design position, by a turn and by length. Central differences of exact
 * re-solves, see `effectPerLength`.
 */
export function turnEffects(car: Car): readonly TurnEffect[] {
  const effects = adjustersOf(car).map((adjuster) => {
    const advance = advancePerTurn(car, adjuster);
    const perLength = effectPerLength(car, adjuster.id);
    const perTurn = advance === null || !perLength ? null : times(perLength, advance);
    return { adjuster, advance, perLength, perTurn };
  });
  const holder = camberHolder(effects);
  return effects.map((effect) => ({ ...effect, camberHeld: holder ? heldBy(holder, effect) : null }));
}

/**
 * Length change of the differences, m: about a hundredth of a turn. The third-order error is (h/L)² ≈ 1e-8 of the slope
 * on a link of 0.2 m, and rounding of the re-solve 1e-15/h ≈ 1e-10 rad/m: both far below what a builder can measure.
 */
const DIFFERENCE = 2e-5;

/** Slopes by an adjuster's length (rad/m, m/m) in the design position; null where it cannot be moved both ways. */
export function effectPerLength(car: Car, adjusterId: string): Effect | null {
  const longer = screwStep(car, adjusterId, DIFFERENCE);
  const shorter = screwStep(car, adjusterId, -DIFFERENCE);
  return longer && shorter ? times(effectBetween(shorter, longer), 1 / (2 * DIFFERENCE)) : null;
}

/** What differs at the wheel from one car to an adjusted one. */
export const effectBetween = (before: Car, after: Car): Effect => ({
  camber: after.wheel.camber - before.wheel.camber,
  toe: after.wheel.toe - before.wheel.toe,
  halfTrack: contactOf(after.wheel).y - contactOf(before.wheel).y,
});

const times = ({ camber, toe, halfTrack }: Effect, factor: number): Effect => ({
  camber: camber * factor,
  toe: toe * factor,
  halfTrack: halfTrack * factor,
});

type Turning = Omit<TurnEffect, "camberHeld">;

/** The adjuster that changes camber most while it leaves toe alone. */
function camberHolder(effects: readonly Turning[]): Turning | null {
  let best: Turning | null = null;
  for (const effect of effects) {
    if (effect.perTurn && worth(effect.perTurn) > (best?.perTurn ? worth(best.perTurn) : 0)) best = effect;
  }
  return best;
}

const worth = ({ camber, toe }: Effect): number => {
  const size = Math.hypot(camber, toe);
  return size > 0 ? (camber * camber) / size : 0;
};

function heldBy(holder: Turning, effect: Turning): HeldEffect | null {
  if (effect === holder || !effect.perTurn || !holder.perTurn) return null;
  const turns = -effect.perTurn.camber / holder.perTurn.camber;
  return {
    by: holder.adjuster.id,
    turns,
    toe: effect.perTurn.toe + turns * holder.perTurn.toe,
    halfTrack: effect.perTurn.halfTrack + turns * holder.perTurn.halfTrack,
  };
}
