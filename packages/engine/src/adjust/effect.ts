import type { Car } from "../car/car.ts";
import { contactOf } from "./carried-car.ts";
import { screwStep } from "./screw-step.ts";

/** What an adjuster does to the wheel at ride height. */
export interface Effect {
  /** Camber and toe, rad. */
  readonly camber: number;
  readonly toe: number;
  /** Half-track at the contact point, m. */
  readonly halfTrack: number;
}

/**
 * Length change of the differences, m: about a hundredth of a turn. The third-order error is (h/L)² ≈ 1e-8 of the slope
 * on a link of 0.2 m, and rounding of the re-solve 1e-15/h ≈ 1e-10 rad/m: both far below what a builder can measure.
 */
const DIFFERENCE = 2e-5;

/**
 * Slopes by an adjuster's length (rad/m, m/m) in the design position: central differences of exact re-solves. Null where
 * it cannot be moved both ways.
 */
export function effectPerLength(car: Car, adjusterId: string): Effect | null {
  const longer = screwStep(car, adjusterId, DIFFERENCE);
  const shorter = screwStep(car, adjusterId, -DIFFERENCE);
  return longer && shorter ? sumOf([[effectBetween(shorter, longer), 1 / (2 * DIFFERENCE)]]) : null;
}

/** What differs at the wheel from one car to an adjusted one. */
export const effectBetween = (before: Car, after: Car): Effect => ({
  camber: after.wheel.camber - before.wheel.camber,
  toe: after.wheel.toe - before.wheel.toe,
  halfTrack: contactOf(after.wheel).y - contactOf(before.wheel).y,
});

/** Effects taken together, each so many times. */
export function sumOf(parts: readonly (readonly [effect: Effect, times: number])[]): Effect {
  const sum = (key: keyof Effect) => parts.reduce((total, [effect, times]) => total + effect[key] * times, 0);
  return { camber: sum("camber"), toe: sum("toe"), halfTrack: sum("halfTrack") };
}

/** rad/m: with less than this, a tenth of a metre of thread gives about a degree, which is no way to set a wheel. */
const LEAST_SLOPE = 0.2;
/** Of the other angle's slope: what moves camber less than this beside toe is a toe adjuster, and the other way round. */
const LEAST_SHARE = 0.5;

/**
 * How well slopes by length serve to set one angle: that angle's slope, times its share of all that moves. Track counts as
 * the angle that it is over the wheel's radius (m). 0 where they do not serve.
 */
export function worthFor(wanted: "camber" | "toe", effect: Effect, wheelRadius: number): number {
  const slope = Math.abs(effect[wanted]);
  const other = Math.abs(effect[wanted === "camber" ? "toe" : "camber"]);
  if (!(slope >= LEAST_SLOPE && slope >= LEAST_SHARE * other)) return 0;
  return slope ** 2 / Math.hypot(slope, other, effect.halfTrack / wheelRadius);
}
