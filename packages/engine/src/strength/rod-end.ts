import type { Thread } from "../units/thread.ts";
import { rootDiameter, shankArea } from "./screw-thread.ts";

/** What the builder knows of a rod end's strength, N. */
export interface RodEndRating {
  /** Static, straight pull or push square to the bolt, as quoted: the breaking load. */
  readonly radial: number;
  /** Along the bolt; left out: a share of the radial one. */
  readonly axial?: number;
}

/** Quoted ratings are breaking loads; it yields at about 80 % (common practice, no source). */
export const YIELD_OF_RATING = 0.8;
/** Along the bolt it bears 10 to 20 % of the quoted one (common practice, no source): the low end. */
export const AXIAL_OF_RADIAL = 0.1;

/** Share of what it bears that radial and axial force use up together, added: on the safe side. 1 = its limit. */
export function rodEndUse(
  { radial, axial = AXIAL_OF_RADIAL * radial }: RodEndRating,
  across: number,
  along: number,
): number {
  return (across / radial + along / axial) / YIELD_OF_RATING;
}

/**
 * Share of what the shank bears that its pull and its bending use up, at the root of the thread. The shank carries at least
 * the quoted radial load, so its strength is taken as that over 0.78 root². `lever`: from the ball's middle to where the
 * shank is held.
 */
export function shankUse(thread: Thread, { radial }: RodEndRating, pull: number, side: number, lever: number): number {
  const strength = radial / shankArea(thread);
  const root = rootDiameter(thread);
  const bending = (32 * side * lever) / (Math.PI * root ** 3);
  return (Math.abs(pull) / shankArea(thread) + bending) / (YIELD_OF_RATING * strength);
}

/** Shank's rating as two rod-end makers' engineering pages give it (read second-hand): see `shankArea`; same units. */
export const shankRating = (thread: Thread, bore: number, stress: number): number =>
  0.78 * (rootDiameter(thread) ** 2 - bore ** 2) * stress;
