import type { Car, SpringSet } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import { type CriticalDamping, criticalDamping } from "./damping.ts";
import { findRisingRoot, type Sloped } from "./find-rising-root.ts";
import { findRest, preloadFor, type Rest, rideFrequency, type TravelStops } from "./ride-height.ts";
import { type Crossover, springStackAt } from "./spring-stack.ts";
import { type Sitting, WEIGHT_ERROR, type WeightEffect, weightEffect } from "./weight-error.ts";
import { type ShockSpring, shockPlaceAt, shockSpringOf, type WheelSpringState, wheelSpringAt } from "./wheel-spring.ts";

/** All that is known of a corner's springs: what findings and commands are made from. */
export interface SpringStudy {
  readonly springs: SpringSet;
  readonly shockSpring: ShockSpring;
  readonly stops: TravelStops;
  readonly sprungMass: number;
  readonly rest: Rest;
  /** Wheel travel left from where the car sits, m, none negative. */
  readonly left: { readonly bump: number; readonly droop: number };
  /** Of the whole travel, what the car's weight uses up, 0…1. */
  readonly sagShare: number;
  /** Full droop, where the car sits, full bump. Gas fast about where the car sits. */
  readonly positions: readonly SpringPosition[];
  /** Frequencies about rest and just past crossover, Hz; the latter null where there is none within the travel. */
  readonly frequency: { readonly ride: number | null; readonly beyondCrossover: number | null };
  /** Where the main spring goes on alone; `travel` null where the wheel does not get there. */
  readonly crossover: (Crossover & { readonly travel: number | null }) | null;
  /** Preload with which the car would sit as drawn, m, the crossover kept; null where none does. */
  readonly preloadForDesign: number | null;
  /** Gap at the seats with the wheel at the droop stop, m; 0 where they are held. */
  readonly looseAtDroop: number;
  /** What a weight that is 5 % more or less does; null where the car does not sit on its springs. */
  readonly weightError: { readonly heavier: WeightEffect; readonly lighter: WeightEffect } | null;
}

export interface SpringPosition {
  readonly name: "droop" | "ride" | "bump";
  readonly state: WheelSpringState;
  /** Null where the springs are solid: there is then no rate. */
  readonly frequency: number | null;
  readonly damping: CriticalDamping | null;
}

/** What springs need to be studied; the first that is missing is named. */
export type SpringNeed = "shock" | "springs" | "corner-weight" | "unsprung-weight";

export function springNeed({ shock, chassis }: Car): SpringNeed | null {
  if (!shock) return "shock";
  if (!shock.springs) return "springs";
  if (chassis.cornerMass === undefined) return "corner-weight";
  return chassis.unsprungMass === undefined ? "unsprung-weight" : null;
}

/** What of the scale's reading is sprung, kg; null where weights are not given or leave nothing. */
export function sprungMassOf({ chassis: { cornerMass, unsprungMass } }: Car): number | null {
  if (cornerMass === undefined || unsprungMass === undefined) return null;
  return cornerMass > unsprungMass ? cornerMass - unsprungMass : null;
}

/** Null where shock, springs or weights are missing, or the shock cannot hold a car up. */
export function studySprings({
  car,
  corner,
  travel,
}: {
  readonly car: Car;
  readonly corner: Corner;
  readonly travel: TravelReport;
}): SpringStudy | null {
  const springs = car.shock?.springs;
  const shockSpring = shockSpringOf(car.shock);
  const sprungMass = sprungMassOf(car);
  if (!springs || !shockSpring || sprungMass === null) return null;
  const stops: TravelStops = { droop: travel.droop.stop.travel, bump: travel.bump.stop.travel };
  const rest = findRest(corner, shockSpring, { sprungMass }, stops);
  if (!rest) return null;
  const pace = { pace: "fast", restedAt: rest.state.shockLength } as const;
  const { tyreRate } = car.wheel;
  const at = (z: number): WheelSpringState => wheelSpringAt(shockSpring, shockPlaceAt(corner, z)!, pace);
  const position = (name: SpringPosition["name"], z: number): SpringPosition => {
    const state = at(z);
    return {
      name,
      state,
      frequency: state.springs.isSolid ? null : rideFrequency(state.wheelRate, sprungMass, tyreRate),
      damping: state.springs.isSolid ? null : criticalDamping(state.wheelRate, sprungMass, state.motionRatio),
    };
  };
  const positions = [position("droop", stops.droop), position("ride", rest.travel), position("bump", stops.bump)];
  const crossover = placeCrossover(corner, shockSpring, stops);
  const past =
    crossover?.travel === null || crossover === null ? null : at(Math.min(crossover.travel + JUST, stops.bump));
  return {
    springs,
    shockSpring,
    stops,
    sprungMass,
    rest,
    left: { bump: Math.max(0, stops.bump - rest.travel), droop: Math.max(0, rest.travel - stops.droop) },
    sagShare: (rest.travel - stops.droop) / (stops.bump - stops.droop),
    positions,
    frequency: {
      ride: positions[1]!.frequency,
      beyondCrossover: past && !past.springs.isSolid ? rideFrequency(past.wheelRate, sprungMass, tyreRate) : null,
    },
    crossover,
    preloadForDesign: preloadFor(corner, shockSpring, springs, { sprungMass }, 0),
    looseAtDroop: springStackAt(shockSpring.stack, positions[0]!.state.shockLength).loose,
    weightError: weightErrorOf({ corner, shockSpring, stops, sprungMass, collarPitch: springs.collarPitch }, rest),
  };
}

function weightErrorOf(sitting: Omit<Sitting, "rest" | "rate">, { on, state }: Rest): SpringStudy["weightError"] {
  if (on !== "springs") return null;
  const rested: Sitting = { ...sitting, rest: state, rate: state.springs.rate };
  return { heavier: weightEffect(rested, 1 + WEIGHT_ERROR), lighter: weightEffect(rested, 1 - WEIGHT_ERROR) };
}

/** So far past crossover, m of wheel travel, that the main spring surely is alone. */
const JUST = 1e-6;

function placeCrossover(
  corner: Corner,
  { stack }: ShockSpring,
  { droop, bump }: TravelStops,
): SpringStudy["crossover"] {
  const { crossover } = stack;
  if (!crossover) return null;
  const travel = travelAtShockLength(corner, crossover.shockLength, droop, bump);
  return { ...crossover, travel };
}

/** Travel at which the shock has a length, m; null where it has not between the two travels. */
export function travelAtShockLength(corner: Corner, length: number, droop: number, bump: number): number | null {
  const atDroop = shockPlaceAt(corner, droop);
  const atBump = shockPlaceAt(corner, bump);
  if (!atDroop || !atBump || atDroop.shockLength < length || atBump.shockLength > length) return null;
  const over = (z: number): Sloped | null => {
    const place = shockPlaceAt(corner, z);
    return place && { value: length - place.shockLength, slope: place.motionRatio };
  };
  return findRisingRoot(over, droop, bump, 1e-9);
}
