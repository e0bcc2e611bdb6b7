import type { UnitSystem } from "@armwright/engine";
import { shownFigures } from "../words/three-figures.ts";

const MINUS = "\u2212";

/** A mass, and one against another: `+0.6 lb`. */
export const massWords = (kg: number, units: UnitSystem): string => shownFigures(kg, "mass", units);
export const massChange = (kg: number, units: UnitSystem): string => {
  const text = massWords(Math.abs(kg), units);
  return `${kg < 0 ? MINUS : "+"}${text}`;
};
