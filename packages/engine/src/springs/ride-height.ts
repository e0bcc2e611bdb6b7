import type { SpringSet } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { STANDARD_GRAVITY } from "../units/convert.ts";
import { findRisingRoot, type Sloped } from "./find-rising-root.ts";
import {
  type ShockSpring,
  SLOWLY,
  shockPlaceAt,
  type WheelSpringState,
  wheelSpringAt,
  withSprings,
} from "./wheel-spring.ts";

/** What one corner's springs carry. */
export interface CornerLoad {
  /** On the scale less what is not sprung, kg. */
  readonly sprungMass: number;
}

/** Between which travels the wheel can be, m; droop negative. */
export interface TravelStops {
  readonly droop: number;
  readonly bump: number;
}

/** Where a car comes to rest. */
export interface Rest {
  /** Wheel against body, m from the design position; positive: the car sits lower than drawn. */
  readonly travel: number;
  /** `droop-stop`: the springs hold the body up at the strap; `bump-stop`: they do not carry it. */
  readonly on: "springs" | "droop-stop" | "bump-stop";
  readonly state: WheelSpringState;
}

/** Travel to which rest is found, m. */
const FOUND = 1e-9;

/**
 * Static equilibrium: F·MR = sprung mass × gravity, gas slow (isothermal), between the stops. Both wheels
 * alike; the tyre's height does not enter, because it carries the same weight wherever the car sits. Null without a shock.
 */
export function findRest(
  corner: Corner,
  shockSpring: ShockSpring,
  { sprungMass }: CornerLoad,
  { droop, bump }: TravelStops,
): Rest | null {
  const weight = sprungMass * STANDARD_GRAVITY;
  const at = (travel: number): WheelSpringState | null => {
    const place = shockPlaceAt(corner, travel);
    return place && wheelSpringAt(shockSpring, place, SLOWLY);
  };
  const down = at(droop);
  const up = at(bump);
  if (!down || !up) return null;
  if (down.wheelForce >= weight) return { travel: droop, on: "droop-stop", state: down };
  if (up.wheelForce < weight) return { travel: bump, on: "bump-stop", state: up };
  const over = (travel: number): Sloped | null => {
    const here = at(travel);
    return here && { value: here.wheelForce - weight, slope: here.wheelRate };
  };
  const travel = findRisingRoot(over, droop, bump, FOUND);
  const state = travel === null ? null : at(travel);
  return state && { travel: state.travel, on: "springs", state };
}

/** No collar goes farther than this either way, m. */
const FARTHEST_PRELOAD = 0.3;

/**
 * Preload with which the car sits at `travel`, m; the crossover's shock length is kept (the stop is set anew). Null where
 * none does.
 */
export function preloadFor(
  corner: Corner,
  shockSpring: ShockSpring,
  springs: SpringSet,
  { sprungMass }: CornerLoad,
  travel: number,
): number | null {
  const place = shockPlaceAt(corner, travel);
  if (!place) return null;
  const weight = sprungMass * STANDARD_GRAVITY;
  const over = (preload: number): number =>
    wheelSpringAt(withSprings(shockSpring, { ...springs, preload }), place, SLOWLY).wheelForce - weight;
  let low = -FARTHEST_PRELOAD;
  let high = FARTHEST_PRELOAD;
  if (over(low) > 0 || over(high) < 0) return null;
  while (high - low > FOUND) {
    const middle = (low + high) / 2;
    if (over(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Undamped frequency of the body over one wheel, Hz: f = √(K/m)/2π, with the tyre's own rate in series where it is given
 * (OpenStax, College Physics, §16.3; the wheel's own mass is left out, which changes the body's mode by about 0.1 %).
 * 0 where the wheel rate is not positive: the body would not come back.
 */
export function rideFrequency(wheelRate: number, sprungMass: number, tyreRate?: number): number {
  if (wheelRate <= 0) return 0;
  const rate = tyreRate === undefined ? wheelRate : (wheelRate * tyreRate) / (wheelRate + tyreRate);
  return Math.sqrt(rate / sprungMass) / (2 * Math.PI);
}
