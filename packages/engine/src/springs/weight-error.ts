import type { Corner } from "../cycle/corner.ts";
import { STANDARD_GRAVITY } from "../units/convert.ts";
import { findRest, type TravelStops } from "./ride-height.ts";
import type { ShockPlace, ShockSpring } from "./wheel-spring.ts";

/** The scale and the guess of what is not sprung are off by so much: common practice, no source. */
export const WEIGHT_ERROR = 0.05;

/** What it does when the car weighs more or less than was reckoned with. */
export interface WeightEffect {
  /** m of wheel travel, positive when the car sits lower. */
  readonly lower: number;
  /** Of the collar, positive: squeeze more. */
  readonly turns: number;
}

/** A car that sits somewhere on its springs. */
export interface Sitting {
  readonly corner: Corner;
  readonly shockSpring: ShockSpring;
  readonly stops: TravelStops;
  readonly sprungMass: number;
  readonly rest: ShockPlace;
  /** Of the springs along the shock, N/m. */
  readonly rate: number;
  /** m a turn. */
  readonly collarPitch: number;
}

/** Where it sits with the same springs under `share` of its sprung weight, and the turns that bring it back. */
export function weightEffect(sitting: Sitting, share: number): WeightEffect {
  const { corner, shockSpring, stops, rest, rate, collarPitch } = sitting;
  const sprungMass = sitting.sprungMass * share;
  const found = findRest(corner, shockSpring, { sprungMass }, stops);
  const more = ((sprungMass - sitting.sprungMass) * STANDARD_GRAVITY) / rest.motionRatio;
  return { lower: (found?.travel ?? rest.travel) - rest.travel, turns: more / rate / collarPitch };
}
