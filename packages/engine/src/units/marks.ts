import type { UnitSystem } from "../car/car.ts";
import { fromUnit, INCH, MILLIMETRE, toUnit } from "./convert.ts";

/** What a tape can be set to, m: a sixteenth of an inch or half a millimetre. */
export const markOf = (units: UnitSystem): number => (units === "metric" ? 0.5 * MILLIMETRE : INCH / 16);

/** How far a point may lie off where it was wanted once a tape has set all three of its coordinates to a mark, m. */
export const offMarks = (units: UnitSystem): number => Math.hypot(1, 1, 1) * (markOf(units) / 2);

/** A length on the nearest mark, m: the very number that the typed text reads as. */
export function onMark(metres: number, units: UnitSystem, round: (x: number) => number = Math.round): number {
  const parts = units === "metric" ? 2 : 16;
  const value = toUnit(metres, "length", units) * parts;
  // What lies on a mark but for rounding of the conversion stays on it.
  const whole = Math.abs(value - Math.round(value)) < 1e-6 ? Math.round(value) : round(value);
  return fromUnit(whole / parts, "length", units);
}
