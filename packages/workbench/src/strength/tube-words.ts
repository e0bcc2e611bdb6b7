import { formatLength, INCH, MILLIMETRE, type TubeAlternative, type UnitSystem } from "@armwright/engine";
import { shownFigures } from "../words/three-figures.ts";

const MINUS = "\u2212";

/** A tube as it is asked for at the counter: `1 1/2 × .120 in`, `38 × 3 mm`. */
export const tubeWords = ({ diameter, wall }: TubeAlternative["size"], units: UnitSystem): string =>
  units === "metric"
    ? `${trim(diameter / MILLIMETRE, 1)} × ${trim(wall / MILLIMETRE, 1)} mm`
    : `${formatLength(diameter, units)} × ${(wall / INCH).toFixed(3).replace(/^0/, "")} in`;

/** A mass, and one against another: `+0.6 lb`. */
export const massWords = (kg: number, units: UnitSystem): string => shownFigures(kg, "mass", units);
export const massChange = (kg: number, units: UnitSystem): string => {
  const text = massWords(Math.abs(kg), units);
  return `${kg < 0 ? MINUS : "+"}${text}`;
};

const trim = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));
