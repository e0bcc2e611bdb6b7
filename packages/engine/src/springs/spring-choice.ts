import type { Spring, SpringSet } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { INCH, STANDARD_GRAVITY } from "../units/convert.ts";
import { gasAt, SLOW } from "./gas-force.ts";
import { rideFrequency, type TravelStops } from "./ride-height.ts";
import { makeSpringStack, seriesRate, springStackAt } from "./spring-stack.ts";
import type { FrequencyBand } from "./use-band.ts";
import { type Sitting, WEIGHT_ERROR, type WeightEffect, weightEffect } from "./weight-error.ts";
import { type ShockPlace, type ShockSpring, shockPlaceAt, wheelSpringAt } from "./wheel-spring.ts";

/** A spring that can be had. */
export interface ShelfSpring extends Spring {
  readonly name: string;
}

/** What the springs have to do. SI. */
export interface SpringWish {
  readonly sprungMass: number;
  readonly tyreRate?: number;
  readonly stops: TravelStops;
  /** Wheel travel at which the car is to sit; 0 is as drawn. */
  readonly rideTravel: number;
  readonly band: FrequencyBand;
  /** Shock travel from ride to crossover. */
  readonly crossoverPast: number;
  readonly collarPitch: number;
}

/** Common practice: crossover 1 to 3 in of shock past ride. */
export const USUAL_CROSSOVER_PAST = 2 * INCH;
/** Common practice: 1/2 to 2 in of preload are usual, more than 3 in (or less than none) is the wrong spring. */
export const USUAL_PRELOAD = { from: 0.5 * INCH, to: 2 * INCH, most: 3 * INCH } as const;
/** Common practice: left before coil lies on coil. */
export const LEFT_TO_SOLID = 0.5 * INCH;
/** Between both eyes' centres, what seats and eyes take from the springs' room: from memory. */
export const SEAT_ROOM = 3 * INCH;

export interface SpringChoice {
  readonly main: ShelfSpring;
  /** Left out for a single spring. */
  readonly tender?: ShelfSpring;
  readonly springs: SpringSet;
  /** Hz about ride, and at the bump stop. */
  readonly frequency: number;
  readonly frequencyAtBump: number;
  readonly preloadTurns: number;
  /** Least left to solid of any spring at the bump stop, m. */
  readonly leftToSolid: number;
  /** Where the car sits when it is 5 % heavier or lighter, m of wheel travel from where it is to sit; and turns that mend it. */
  readonly heavier: WeightEffect;
  readonly lighter: WeightEffect;
  /** Smaller is better: see `rankOf`. */
  readonly rank: number;
}

/** Why a set was turned down, in the order in which it is asked. */
export type Refused = "main-softer" | "preload" | "room" | "frequency" | "tender-solid" | "main-solid";

export interface SpringChoices {
  readonly sets: number;
  readonly refused: Readonly<Record<Refused, number>>;
  /** Best first. */
  readonly fitting: readonly SpringChoice[];
}

/** What of the motion every set is judged with. */
interface Ground {
  readonly corner: Corner;
  readonly shockSpring: ShockSpring;
  readonly wish: SpringWish;
  readonly ride: ShockPlace;
  readonly bump: ShockPlace;
  /** What the springs have to carry along the shock at ride, N. */
  readonly carried: number;
}

/**
 * Every spring of the shelf alone, and every two of them as tender over main: each so preloaded that the car sits as wished
 * and its stop set for the wished crossover; those that then break no rule, ranked. Preload is never negative, so that no
 * spring is loose at the strap. Deterministic; every set is tried.
 * Null where the wheel does not reach one of the travels or the shock does not move there.
 */
export function chooseSprings(
  corner: Corner,
  shockSpring: ShockSpring,
  shelf: readonly ShelfSpring[],
  wish: SpringWish,
): SpringChoices | null {
  const ride = shockPlaceAt(corner, wish.rideTravel);
  const bump = shockPlaceAt(corner, wish.stops.bump);
  if (!ride || !bump || ride.motionRatio <= 0) return null;
  const gas = shockSpring.gas ? gasAt(shockSpring.gas, shockSpring.longest - ride.shockLength, SLOW).force : 0;
  const carried = (wish.sprungMass * STANDARD_GRAVITY) / ride.motionRatio - gas;
  const ground: Ground = { corner, shockSpring, wish, ride, bump, carried };
  const refused = { "main-softer": 0, preload: 0, room: 0, frequency: 0, "tender-solid": 0, "main-solid": 0 };
  const fitting: SpringChoice[] = [];
  let sets = 0;
  for (const main of shelf) {
    for (const tender of [undefined, ...shelf]) {
      sets += 1;
      const judged = judgeSet(ground, main, tender);
      if (typeof judged === "string") refused[judged] += 1;
      else fitting.push(judged);
    }
  }
  const order = fitting.map((choice, index) => ({ choice, index }));
  order.sort((a, b) => a.choice.rank - b.choice.rank || a.index - b.index);
  return { sets, refused, fitting: order.map(({ choice }) => choice) };
}

function judgeSet(ground: Ground, main: ShelfSpring, tender: ShelfSpring | undefined): SpringChoice | Refused {
  const { wish, shockSpring, ride, bump, carried } = ground;
  if (tender && tender.rate > main.rate) return "main-softer";
  const { longest } = shockSpring;
  const rate = tender ? seriesRate(main.rate, tender.rate) : main.rate;
  const preload = carried / rate - (longest - ride.shockLength);
  if (preload < 0 || preload > USUAL_PRELOAD.most) return "preload";
  if (main.freeLength + (tender?.freeLength ?? 0) - preload > longest - SEAT_ROOM) return "room";
  const crossoverAt = ride.shockLength - wish.crossoverPast;
  const springs: SpringSet = {
    main,
    ...(tender && { tender, crossoverAt }),
    preload,
    collarPitch: wish.collarPitch,
  };
  const fitted: ShockSpring = { ...shockSpring, stack: makeSpringStack(springs, longest) };
  const pace = { pace: "fast", restedAt: ride.shockLength } as const;
  const frequencyAt = (place: ShockPlace): number =>
    rideFrequency(wheelSpringAt(fitted, place, pace).wheelRate, wish.sprungMass, wish.tyreRate);
  const frequency = frequencyAt(ride);
  if (frequency < wish.band.from || frequency > wish.band.to) return "frequency";
  const atBump = springStackAt(fitted.stack, bump.shockLength).members;
  const leftOf = (name: "main" | "tender"): number =>
    atBump.find((member) => member.name === name)?.leftToSolid ?? Number.POSITIVE_INFINITY;
  if (leftOf("tender") < LEFT_TO_SOLID) return "tender-solid";
  if (leftOf("main") < LEFT_TO_SOLID) return "main-solid";
  const { corner } = ground;
  const { stops, sprungMass, collarPitch } = wish;
  const sitting: Sitting = { corner, shockSpring: fitted, stops, sprungMass, rest: ride, rate, collarPitch };
  return {
    main,
    ...(tender && { tender }),
    springs,
    frequency,
    frequencyAtBump: frequencyAt(bump),
    preloadTurns: preload / wish.collarPitch,
    leftToSolid: Math.min(leftOf("main"), leftOf("tender")),
    heavier: weightEffect(sitting, 1 + WEIGHT_ERROR),
    lighter: weightEffect(sitting, 1 - WEIGHT_ERROR),
    rank: rankOf(frequency, preload, wish.band),
  };
}

/**
 * How far from the middle of the frequency band (0 there, 1 at its edge), and how far the preload is from what is usual (0
 * within, 1 for each inch outside).
 */
function rankOf(frequency: number, preload: number, { from, to }: FrequencyBand): number {
  const middle = (from + to) / 2;
  const outside = Math.max(0, USUAL_PRELOAD.from - preload, preload - USUAL_PRELOAD.to);
  return Math.abs(frequency - middle) / (to - middle) + outside / INCH;
}
