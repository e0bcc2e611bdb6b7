import type { Dimension, UnitSystem } from "../car/car.ts";

// The one place of conversion. Exact factors after NIST Special Publication 811, Appendix B:
// 1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s²; the others are their products.
export const INCH = 0.0254;
export const FOOT = 12 * INCH;
export const MILLIMETRE = 0.001;
export const DEGREE = Math.PI / 180;
export const POUND_MASS = 0.45359237;
/** m/s² */
export const STANDARD_GRAVITY = 9.80665;
/** N in a pound-force. */
export const POUND_FORCE = 4.4482216152605;
/** N/m in a pound-force an inch. */
export const POUND_FORCE_PER_INCH = POUND_FORCE / INCH;
/** N·m in a pound-force inch. */
export const POUND_FORCE_INCH = POUND_FORCE * INCH;
/** Pa in a pound-force a square inch. */
export const PSI = POUND_FORCE / (INCH * INCH);
/** Pa in a bar. */
export const BAR = 100_000;
/** Pa: the standard atmosphere. */
export const ATMOSPHERE = 101_325;
/** m³ in a cubic inch. */
export const CUBIC_INCH = INCH ** 3;
/** m³ in a cubic centimetre. */
export const CUBIC_CENTIMETRE = 1e-6;
/** J in a foot pound-force. */
export const FOOT_POUND_FORCE = POUND_FORCE * FOOT;

interface Unit {
  /** SI value of one of it. */
  readonly si: number;
  /** As written after a number; empty where the number stands alone. */
  readonly symbol: string;
}

const SAME_IN_BOTH = {
  angle: { si: DEGREE, symbol: "deg" },
  ratio: { si: 1, symbol: "" },
  "angle-per-turn": { si: DEGREE, symbol: "deg/turn" },
  turns: { si: 1, symbol: "turns" },
  percent: { si: 0.01, symbol: "%" },
  frequency: { si: 1, symbol: "Hz" },
  count: { si: 1, symbol: "" },
  word: { si: 1, symbol: "" },
} as const;

const UNITS: Record<UnitSystem, Record<Dimension, Unit>> = {
  "inch-pound": {
    ...SAME_IN_BOTH,
    length: { si: INCH, symbol: "in" },
    mass: { si: POUND_MASS, symbol: "lb" },
    force: { si: POUND_FORCE, symbol: "lb" },
    rate: { si: POUND_FORCE_PER_INCH, symbol: "lb/in" },
    "ratio-per-length": { si: 1 / INCH, symbol: "/in" },
    "angle-per-length": { si: DEGREE / INCH, symbol: "deg/in" },
    pressure: { si: PSI, symbol: "psi" },
    stress: { si: PSI, symbol: "psi" },
    torque: { si: FOOT_POUND_FORCE, symbol: "lb ft" },
    volume: { si: CUBIC_INCH, symbol: "in3" },
    energy: { si: FOOT_POUND_FORCE, symbol: "ft-lb" },
    damping: { si: POUND_FORCE_PER_INCH, symbol: "lb s/in" },
    speed: { si: INCH, symbol: "in/s" },
  },
  metric: {
    ...SAME_IN_BOTH,
    length: { si: MILLIMETRE, symbol: "mm" },
    mass: { si: 1, symbol: "kg" },
    force: { si: 1, symbol: "N" },
    rate: { si: 1 / MILLIMETRE, symbol: "N/mm" },
    "ratio-per-length": { si: 1 / 0.1, symbol: "/100 mm" },
    "angle-per-length": { si: DEGREE / 0.1, symbol: "deg/100 mm" },
    pressure: { si: BAR, symbol: "bar" },
    stress: { si: 1e6, symbol: "MPa" },
    torque: { si: 1, symbol: "N m" },
    volume: { si: CUBIC_CENTIMETRE, symbol: "cm3" },
    energy: { si: 1, symbol: "J" },
    damping: { si: 1, symbol: "N s/m" },
    speed: { si: 1, symbol: "m/s" },
  },
};

/** Symbol of the unit that the system uses for the dimension, e.g. `lb/in`; empty for plain ratios, counts and words. */
export const unitOf = (dimension: Dimension, system: UnitSystem): string => UNITS[system][dimension].symbol;

/** From SI to the system's unit. A percent is a fraction (0.4) in SI and 40 outside. */
export const toUnit = (value: number, dimension: Dimension, system: UnitSystem): number =>
  value / UNITS[system][dimension].si;

/** From the system's unit to SI. */
export const fromUnit = (value: number, dimension: Dimension, system: UnitSystem): number =>
  value * UNITS[system][dimension].si;
