import type { Strap } from "../car/car.ts";
import { type CurveState, curveAt, type ForcePoint } from "./force-points.ts";

/** How a strap pulls as it stretches: shares of its length (0.05 is 5 %) and the pull at each, N. */
export type StrapStretch = readonly ForcePoint[];

/** Common practice, no source: 5 to 10 % under a snatch; the pull at which, from memory. */
export const USUAL_STRETCH: StrapStretch = [{ at: 0.075, force: 2000 * 4.4482216152605 }];

export const stretchOf = ({ stretch }: Pick<Strap, "stretch">): StrapStretch => stretch ?? USUAL_STRETCH;

/** Pull of a strap, N, with its holes `apart` m; 0 while it is slack. */
export const strapForce = (strap: Pick<Strap, "length" | "stretch">, apart: number): number =>
  strapAt(strap, apart).force;

/** Pull, its slope (N/m) and the work stored in the strap (J), holes `apart` m. */
export function strapAt(strap: Pick<Strap, "length" | "stretch">, apart: number): CurveState {
  const { force, rate, energy } = curveAt(stretchOf(strap), apart / strap.length - 1);
  return { force, rate: rate / strap.length, energy: energy * strap.length };
}
