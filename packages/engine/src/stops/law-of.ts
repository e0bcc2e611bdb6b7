import type { BumpStop } from "../car/car.ts";
import { INCH } from "../units/convert.ts";
import { type BumpStopLaw, modulusAfterGent, modulusAfterRuess, type RubberLaw } from "./bump-stop-law.ts";

/** A pad where nothing is said: common practice, no source. */
export const USUAL_PAD = { diameter: 2 * INCH, hardness: 60 };

/** A rubber pad as tall as the stop reaches. */
export function rubberLaw(
  { reach, solid }: Pick<BumpStop, "reach" | "solid">,
  { diameter, hardness }: { readonly diameter: number; readonly hardness: number },
): RubberLaw {
  return {
    kind: "rubber",
    stroke: reach - solid,
    diameter,
    height: reach,
    modulus: modulusAfterGent(hardness),
    modulusUpTo: modulusAfterRuess(hardness),
  };
}

/** The stop's own law, or the usual pad's. */
export const lawOf = (stop: Pick<BumpStop, "reach" | "solid" | "law">): BumpStopLaw =>
  stop.law ?? rubberLaw(stop, USUAL_PAD);
