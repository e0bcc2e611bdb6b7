import type { Opening, RequirementCode, UnitSystem } from "@armwright/engine";
import { shown } from "../words/shown.ts";

/** What rules a place out, as the sheet says it. */
export const RULED_OUT: Readonly<Record<RequirementCode, string>> = {
  "too-long-at-droop": "longer than the shock at full droop",
  "too-short-at-bump": "shorter than the shock at full bump",
  "stroke-used": "too little or too much of the stroke used",
  "turns-back": "the shock turns back on the way",
  "motion-ratio": "motion ratio at ride outside its window",
  "motion-ratio-falls": "motion ratio falls toward bump",
  lean: "leans too far",
  "eye-misalignment": "an eye tilts too far on its bolt",
  "off-square": "too far off square at full bump",
  clearance: "something in the way",
  wrench: "no room for a wrench at a bolt",
};

/** A change, and by how much, as advice. */
export function openingWords({ change, by }: Pick<Opening, "change" | "by">, units: UnitSystem): string {
  const amount = shown(by, "length", units);
  switch (change.kind) {
    case "longer-shock":
      return `A shock with ${amount} more stroke: that much longer closed, twice that open.`;
    case "shorter-shock":
      return `A shock with ${amount} less stroke: that much shorter closed, twice that open.`;
    case "less-bump":
      return `${amount} less travel in bump.`;
    case "less-droop":
      return `${amount} less travel in droop.`;
    case "wider-stroke-window":
      return `The stroke window wider by ${(100 * by).toFixed(1)} % at either end.`;
    case "shorter-wrench":
      return `A socket and ratchet shorter by ${amount}.`;
    case "lower-keep-out":
      return `The ${change.keepOut} lower by ${amount}.`;
    case "notch-keep-out":
      return `The shock nearer to the ${change.keepOut} by ${amount} than its clearance.`;
  }
}

/** `1 178 100`: thousands apart. */
export const counted = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, "\u202f");
