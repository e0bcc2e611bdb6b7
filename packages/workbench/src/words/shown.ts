import {
  type Dimension,
  formatLength,
  formatValue,
  type LengthStyle,
  type UnitSystem,
  unitOf,
} from "@armwright/engine";

import { spoken } from "./fractions.ts";

const MINUS = "\u2212";

/** A value as the page shows it: the engine's own format, with the printer's minus and the degree sign. SI in. */
export function shown(
  value: number | null | undefined,
  dimension: Dimension,
  units: UnitSystem,
  style: LengthStyle = {},
): string {
  if (value === null || value === undefined) return "none";
  return tidy(formatValue(value, dimension, units, style));
}

/** A length without its unit, e.g. on the tape or beside a unit that is written once. */
export const shownLength = (metres: number, units: UnitSystem, style: LengthStyle = {}): string =>
  tidy(formatLength(metres, units, style));

/** A travel: bump carries +, droop −. */
export const shownTravel = (metres: number, units: UnitSystem): string => shownLength(metres, units, { sign: true });

/** A value without its unit. */
export function bare(value: number | null, dimension: Dimension, units: UnitSystem, style: LengthStyle = {}): string {
  if (value === null) return "none";
  if (dimension === "length") return shownLength(value, units, style);
  const text = shown(value, dimension, units, style);
  if (dimension === "angle") return text;
  const unit = unitOf(dimension, units);
  return text.endsWith(unit) ? text.slice(0, text.length - unit.length).trimEnd() : text;
}

/** `in`, `°`, … as written after a number. */
export const unitShown = (dimension: Dimension, units: UnitSystem): string =>
  unitOf(dimension, units)
    .replace("deg", "°")
    .replace(/(?<=n|m)3$/, "³");

/** Text made by the engine, as the page sets it. */
export const tidy = (text: string): string =>
  text.replace(/(^|[^\w-])-(?=\d)/g, `$1${MINUS}`).replace(/(\d) deg\b/g, "$1°");

/** The step by which points and the wheel are moved: a sixteenth, or a millimetre. */
export const stepOf = (units: UnitSystem): number => (units === "metric" ? 0.001 : 0.0254 / 16);

/** Ten steps of a hand in a hurry: an inch, or ten millimetres. */
export const bigStepOf = (units: UnitSystem): number => (units === "metric" ? 0.01 : 0.0254);

export const snapped = (metres: number, units: UnitSystem): number => {
  const step = stepOf(units);
  return Math.round(metres / step) * step;
};

/** A travel within a sentence, with its unit: `ride height`, `+6 13/16 in`. */
export const travelSaid = (travel: number, units: UnitSystem): string =>
  Math.abs(travel) < 1e-6 ? "ride height" : shown(travel, "length", units, { sign: true });

/** A travel as it is read aloud. */
export const travelWords = (travel: number, units: UnitSystem): string =>
  travel === 0
    ? "ride height"
    : `${spoken(shownTravel(travel, units))} ${units === "metric" ? "millimetres" : "inches"}`;

/** With a capital to begin with. */
export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
