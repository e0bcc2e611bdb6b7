import { type Dimension, toUnit, type UnitSystem, unitOf } from "@armwright/engine";

/** Units that files for other programs are written in. */
export type OutUnits = UnitSystem | "SI";

const SI_NAMES: Record<Dimension, string> = {
  length: "m",
  angle: "rad",
  mass: "kg",
  force: "N",
  rate: "N/m",
  ratio: "",
  "ratio-per-length": "1/m",
  "angle-per-length": "rad/m",
  "angle-per-turn": "rad/turn",
  turns: "turns",
  percent: "1",
  pressure: "Pa",
  stress: "Pa",
  torque: "N m",
  volume: "m3",
  energy: "J",
  frequency: "Hz",
  damping: "N s/m",
  speed: "m/s",
  count: "",
  word: "",
};

export const unitName = (dimension: Dimension, units: OutUnits): string =>
  units === "SI" ? SI_NAMES[dimension] : unitOf(dimension, units);

export const DIMENSIONS = Object.keys(SI_NAMES) as readonly Dimension[];

/** Less than this in SI is rounding of a zero. */
const NOTHING = 1e-12;

/** SI into the unit, to twelve figures: more than any result carries, and none of the noise of conversion. */
export function numberOut(value: number, dimension: Dimension, units: OutUnits): number {
  if (Math.abs(value) < NOTHING) return 0;
  const there = units === "SI" ? value : toUnit(value, dimension, units);
  return Number(there.toPrecision(12));
}
