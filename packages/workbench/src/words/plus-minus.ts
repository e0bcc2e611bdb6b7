import { type Dimension, formatNumber, INCH, toUnit, type UnitSystem } from "@armwright/engine";
import { bare, shown, shownLength, tidy } from "./shown.ts";

/**
 * A ±, finer than the value that it stands behind: thirty-seconds of an inch (sixty-fourths below that), tenths of a
 * millimetre and of a degree. Never none: what is smaller is shown as the smallest. SI in, two standard deviations.
 */
export function shownPlusMinus(value: number, dimension: Dimension, units: UnitSystem): string {
  if (dimension === "length") return `${plusMinusLength(value, units)} ${units === "metric" ? "mm" : "in"}`;
  if (dimension === "angle") return tidy(`${formatNumber(Math.max(toUnit(value, "angle", units), 0.1), 1)} deg`);
  return shown(value, dimension, units);
}

/** The same without its unit, beside a value that has it. */
export const barePlusMinus = (value: number, dimension: Dimension, units: UnitSystem): string =>
  dimension === "length" ? plusMinusLength(value, units) : bare(value, dimension, units);

/** Of a length, without its unit. */
export function plusMinusLength(metres: number, units: UnitSystem): string {
  if (units === "metric") return formatNumber(Math.max(metres * 1000, 0.1), 1);
  const inches = metres / INCH;
  return inches < 3 / 128 ? "1/64" : shownLength(metres, units, { denominator: 32 });
}
