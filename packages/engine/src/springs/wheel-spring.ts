import type { Shock, SpringSet } from "../car/car.ts";
import { type Corner, solveAt } from "../cycle/corner.ts";
import { ROW } from "../cycle/row.ts";
import { FAST, type GasSpring, gasAt, gasAtRest, gasSpringOf, SLOW } from "./gas-force.ts";
import { makeSpringStack, type SpringStack, type StackState, springStackAt } from "./spring-stack.ts";

/** What pushes the shock open: springs, gas, or both. */
export interface ShockSpring {
  /** Shock length fully open, m. */
  readonly longest: number;
  readonly stack: SpringStack;
  readonly gas?: GasSpring;
}

/** A shock's length and how it follows the wheel. */
export interface ShockPlace {
  readonly travel: number;
  readonly shockLength: number;
  /** −dL/dz */
  readonly motionRatio: number;
  /** dMR/dz, 1/m. */
  readonly motionRatioSlope: number;
}

export interface WheelSpringState extends ShockPlace {
  readonly springs: StackState;
  /** N, out. */
  readonly gasForce: number;
  readonly gasRate: number;
  /** Springs and gas together along the shock, N and N/m. */
  readonly shockForce: number;
  readonly shockRate: number;
  /** Up on the body, down on the wheel: F·MR, N. */
  readonly wheelForce: number;
  /** dF/dz at the wheel: k·MR² + F·dMR/dz, N/m. */
  readonly wheelRate: number;
  /** Of it the part that comes from the changing motion ratio, N/m. */
  readonly geometryRate: number;
}

/** How the gas takes it: slowly (the car settles), or fast about where it has rested, a shock length in m. */
export type Pace = { readonly pace: "slow" } | { readonly pace: "fast"; readonly restedAt: number };

export const SLOWLY: Pace = { pace: "slow" };

/** Null where the shock carries no spring. */
export const shockSpringOf = (shock: Shock | undefined): ShockSpring | null =>
  shock?.springs
    ? {
        longest: shock.longest,
        stack: makeSpringStack(shock.springs, shock.longest),
        ...(shock.gas && { gas: gasSpringOf(shock.gas) }),
      }
    : null;

export const withSprings = (shockSpring: ShockSpring, springs: SpringSet): ShockSpring => ({
  ...shockSpring,
  stack: makeSpringStack(springs, shockSpring.longest),
});

/** Null outside the linkage's range. `travel`: m, bump positive. */
export function shockPlaceAt(corner: Corner, travel: number): ShockPlace | null {
  const row = corner.shock && solveAt(corner, travel)?.row;
  if (!row) return null;
  return {
    travel,
    shockLength: row[ROW.shockLength]!,
    motionRatio: row[ROW.motionRatio]!,
    motionRatioSlope: row[ROW.motionRatioSlope]!,
  };
}

/**
 * Force and rate at the wheel by virtual work, F_w·dz = F·(−dL): F_w = F·MR, and its derivative by travel
 * dF_w/dz = k·MR² + F·dMR/dz. Taken at the wheel centre; friction, bushes, tyre, strap and bump stop left out.
 */
export function wheelSpringAt({ stack, gas, longest }: ShockSpring, place: ShockPlace, how: Pace): WheelSpringState {
  const { shockLength, motionRatio, motionRatioSlope } = place;
  const springs = springStackAt(stack, shockLength);
  const gasState = gas && gasNow(gas, longest, shockLength, how);
  const gasForce = gasState?.force ?? 0;
  const gasRate = gasState?.rate ?? 0;
  const shockForce = springs.force + gasForce;
  const shockRate = springs.rate + gasRate;
  const geometryRate = shockForce * motionRatioSlope;
  return {
    ...place,
    springs,
    gasForce,
    gasRate,
    shockForce,
    shockRate,
    wheelForce: shockForce * motionRatio,
    wheelRate: shockRate * motionRatio ** 2 + geometryRate,
    geometryRate,
  };
}

function gasNow(gas: GasSpring, longest: number, shockLength: number, how: Pace) {
  const s = longest - shockLength;
  return how.pace === "slow" ? gasAt(gas, s, SLOW) : gasAt(gasAtRest(gas, longest - how.restedAt), s, FAST);
}
