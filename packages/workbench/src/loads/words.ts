import type { LoadCase } from "@armwright/engine";

const MINUS = "\u2212";

/** A factor in g as it stands in a table; nothing for none. */
export const factorWords = (factor: number): string =>
  factor === 0 ? "" : `${factor < 0 ? MINUS : ""}${Number(Math.abs(factor).toFixed(2))}`;

const PLACES: Readonly<Record<Extract<LoadCase["at"], string>, string>> = {
  ride: "ride height",
  "half-bump": "half bump",
  "full-bump": "full bump",
  "half-droop": "half droop",
  "full-droop": "full droop",
};
export const placeWords = (at: Extract<LoadCase["at"], string>): string => PLACES[at];

export const TURNING_WORDS: Readonly<Record<LoadCase["turning"], string>> = {
  rolling: "rolls free",
  brake: "is braked",
  shaft: "is driven by its shaft",
};
