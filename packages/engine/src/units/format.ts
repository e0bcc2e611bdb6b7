import type { Dimension, UnitSystem } from "../car/car.ts";
import { toUnit, unitOf } from "./convert.ts";

export interface LengthStyle {
  /** Inches are rounded to one of this many parts: 16 unless said, 32 for toe. */
  readonly denominator?: 2 | 4 | 8 | 16 | 32 | 64;
  /** Write the plus before a positive length. */
  readonly sign?: boolean;
  /** Add the decimal in brackets: `12 3/16 (12.19)`. Inches only. */
  readonly decimal?: boolean;
}

/** Shown where there is no number. */
export const NO_VALUE = "—";

/**
 * A length without its unit, as a builder reads it: inches as a tape is marked (`12 3/16`), millimetres to 0.5.
 * metres in, text out; minus is the plain hyphen; never `-0` or `NaN`.
 */
export function formatLength(metres: number, system: UnitSystem, style: LengthStyle = {}): string {
  const value = toUnit(metres, "length", system);
  // Finite in parts too: the largest doubles overflow when counted in sixteenths.
  if (!Number.isFinite(value * 64)) return NO_VALUE;
  if (system === "metric") {
    const halves = Math.round(Math.abs(value) * 2) / 2;
    return signed(halves === 0, value, String(halves), style.sign);
  }
  const denominator = style.denominator ?? 16;
  const parts = Math.round(Math.abs(value) * denominator);
  const text = signed(parts === 0, value, tapeMark(parts, denominator), style.sign);
  return style.decimal ? `${text} (${plain(value, 2)})` : text;
}

const DECIMALS: Record<Exclude<Dimension, "length" | "word">, number> = {
  angle: 1,
  mass: 0,
  force: 0,
  rate: 0,
  ratio: 2,
  "ratio-per-length": 3,
  "angle-per-length": 2,
  "angle-per-turn": 2,
  turns: 1,
  percent: 0,
  pressure: 0,
  stress: 0,
  torque: 0,
  volume: 1,
  energy: 0,
  frequency: 2,
  damping: 1,
  speed: 0,
  count: 0,
};

/** A value with its unit, e.g. `12 3/16 in`, `1.5 deg`, `40 %`. SI in; a word is given back as it is. */
export function formatValue(
  value: number | string,
  dimension: Dimension,
  system: UnitSystem,
  style: LengthStyle = {},
): string {
  if (typeof value === "string") return value;
  if (dimension === "stress") return formatStress(value, system);
  if (dimension === "word") return Number.isFinite(value) ? String(value) : NO_VALUE;
  const number =
    dimension === "length"
      ? formatLength(value, system, style)
      : rounded(toUnit(value, dimension, system), decimalsOf(value, dimension, system), style.sign);
  const symbol = unitOf(dimension, system);
  if (symbol === "" || number === NO_VALUE) return number;
  return symbol.startsWith("/") ? `${number}${symbol}` : `${number} ${symbol}`;
}

/** A stress is never known to more than three figures: `169 ksi`, `48 ksi`, `331 MPa`. Typed in psi, read in thousands. */
function formatStress(pascals: number, system: UnitSystem): string {
  const number = toUnit(pascals, "stress", system) / (system === "metric" ? 1 : 1000);
  if (!Number.isFinite(number)) return NO_VALUE;
  return `${String(Number(number.toPrecision(3)) + 0)} ${system === "metric" ? "MPa" : "ksi"}`;
}

/** A number with a fixed count of decimals, never `-0.0`. */
export function formatNumber(value: number, decimals: number, sign = false): string {
  return rounded(value, decimals, sign);
}

function decimalsOf(value: number, dimension: Exclude<Dimension, "length" | "word">, system: UnitSystem): number {
  // A newton-per-millimetre is 5.7 lb/in, so whole ones would be coarser than springs are sold.
  if (dimension === "rate" && system === "metric") return 1;
  // A bar is 14.5 psi, a metre a second 39 in/s.
  if ((dimension === "pressure" || dimension === "speed") && system === "metric") return dimension === "speed" ? 2 : 1;
  if ((dimension === "damping" || dimension === "volume") && system === "metric") return 0;
  // A few tenths of a percent of speed ripple are felt.
  if (dimension === "percent" && value !== 0 && Math.abs(value) < 0.1) return 1;
  return DECIMALS[dimension];
}

function rounded(value: number, decimals: number, sign?: boolean): string {
  if (!Number.isFinite(value)) return NO_VALUE;
  const text = Math.abs(value).toFixed(decimals);
  return signed(Number(text) === 0, value, text, sign);
}

const plain = (value: number, decimals: number): string => rounded(value, decimals);

function signed(isZero: boolean, value: number, text: string, sign?: boolean): string {
  if (isZero) return text;
  if (value < 0) return `-${text}`;
  return sign ? `+${text}` : text;
}

/** `12 3/16` out of a count of sixteenths (or other parts), the fraction in lowest terms. */
function tapeMark(parts: number, denominator: number): string {
  const whole = Math.floor(parts / denominator);
  let top = parts % denominator;
  if (top === 0) return String(whole);
  let bottom = denominator;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
