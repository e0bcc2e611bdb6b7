import { type Dimension, formatValue, toUnit, type UnitSystem, unitOf } from "@armwright/engine";

const MINUS = "\u2212";

/** Less than this would be shown as nothing but noughts. */
const NOTHING = 5e-4;

/** Three figures of a number, thousands parted: `169,000`, `4.25`, `0.182`. */
export function threeFigures(value: number): string {
  const rounded = Math.abs(value) < NOTHING ? 0 : Number(value.toPrecision(3));
  const size = Math.abs(rounded);
  const decimals = size === 0 || size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
  const text = size.toLocaleString("en", { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  return rounded < 0 ? `${MINUS}${text}` : text;
}

/** Loads and stresses are never known better than to three figures. SI in; number and unit keep together. */
export function shownFigures(value: number, dimension: Dimension, units: UnitSystem): string {
  // The engine's own reading: thousands of psi.
  if (dimension === "stress") return formatValue(value, dimension, units).replace(/ /g, "\u00a0");
  const unit = unitOf(dimension, units);
  const number = threeFigures(toUnit(value, dimension, units));
  return unit === "" ? number : `${number}\u00a0${unit.replace(/ /g, "\u00a0")}`;
}
