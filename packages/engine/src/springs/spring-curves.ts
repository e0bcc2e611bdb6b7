import type { Corner } from "../cycle/corner.ts";
import { stations } from "../cycle/cycle.ts";
import { criticalDamping } from "./damping.ts";
import { FAST, gasAt, gasAtRest } from "./gas-force.ts";
import { springStackAt } from "./spring-stack.ts";
import type { SpringStudy } from "./spring-study.ts";
import { shockPlaceAt, type WheelSpringState, wheelSpringAt } from "./wheel-spring.ts";

/** What pushes the shock open at one length of it, springs and gas together. */
export interface SpringPoint {
  /** Eye to eye, m. */
  readonly shockLength: number;
  /** Out, N, N/m, and what the springs hold since they were fitted, J. */
  readonly force: number;
  readonly rate: number;
  readonly energy: number;
}

const POINTS = 49;
/** Either side of a place where the rate changes at once, so that the step is drawn as one, m. */
const BESIDE = 1e-7;

/**
 * Over the shock's whole length, longest first, as far in as the springs go before they are solid; gas fast about where the
 * car sits. Where the rate changes at once there is a point on either side.
 */
export function springOverLength({ shockSpring, rest }: SpringStudy, shortest: number): readonly SpringPoint[] {
  const { stack, gas, longest } = shockSpring;
  const lengths = [...stations(shortest, longest, POINTS), ...kinksOf(stack.stretches, longest + stack.preload)]
    .filter((length) => length >= shortest && length <= longest)
    .sort((a, b) => b - a);
  const rested = gas && gasAtRest(gas, longest - rest.state.shockLength);
  return lengths.flatMap((shockLength) => {
    const springs = springStackAt(stack, shockLength);
    if (springs.isSolid) return [];
    const pushed = rested && gasAt(rested, longest - shockLength, FAST);
    return [
      {
        shockLength,
        force: springs.force + (pushed?.force ?? 0),
        rate: springs.rate + (pushed?.rate ?? 0),
        energy: springs.energy,
      },
    ];
  });
}

const kinksOf = (stretches: readonly { readonly from: number }[], open: number): readonly number[] =>
  stretches.flatMap(({ from }) => [open - from + BESIDE, open - from - BESIDE]);

/** What the springs are at the wheel, at one travel. */
export interface WheelSpringPoint {
  readonly travel: number;
  /** N and N/m. */
  readonly wheelForce: number;
  readonly wheelRate: number;
}

/** From full droop to full bump, a point on either side of crossover; where the springs are solid there is none. */
export const wheelSpringOverTravel = (corner: Corner, springs: SpringStudy): readonly WheelSpringPoint[] =>
  statesOver(corner, springs).map(({ travel, wheelForce, wheelRate }) => ({ travel, wheelForce, wheelRate }));

/** Critical damping at one travel. */
export interface DampingPoint {
  readonly travel: number;
  /** N·s/m of wheel speed, and of shaft speed. */
  readonly atWheel: number;
  readonly atShock: number;
}

/** From full droop to full bump; where nothing can be critical (no rate, a shock that stands still) there is no point. */
export const dampingOverTravel = (corner: Corner, springs: SpringStudy): readonly DampingPoint[] =>
  statesOver(corner, springs).flatMap(({ travel, wheelRate, motionRatio }) => {
    const critical = criticalDamping(wheelRate, springs.sprungMass, motionRatio);
    return critical ? [{ travel, ...critical }] : [];
  });

function statesOver(corner: Corner, springs: SpringStudy): readonly WheelSpringState[] {
  const { stops, crossover, shockSpring, rest } = springs;
  const kink = crossover?.travel ?? null;
  const travels = [
    ...stations(stops.droop, stops.bump, POINTS),
    ...(kink === null ? [] : [kink - JUST_BESIDE, kink + JUST_BESIDE]),
  ]
    .filter((travel) => travel >= stops.droop && travel <= stops.bump)
    .sort((a, b) => a - b);
  const pace = { pace: "fast", restedAt: rest.state.shockLength } as const;
  return travels.flatMap((travel) => {
    const place = shockPlaceAt(corner, travel);
    const state = place && wheelSpringAt(shockSpring, place, pace);
    return state && !state.springs.isSolid ? [state] : [];
  });
}

/** The travel of crossover is found to a nanometre; this is surely past it, m. */
const JUST_BESIDE = 1e-6;
