import type { Dimension, UnitSystem } from "../car/car.ts";
import {
  BAR,
  CUBIC_CENTIMETRE,
  CUBIC_INCH,
  DEGREE,
  FOOT_POUND_FORCE,
  fromUnit,
  INCH,
  POUND_FORCE,
  POUND_FORCE_PER_INCH,
  POUND_MASS,
  PSI,
} from "./convert.ts";
import { type ParsedLength, parseLength } from "./tape.ts";

/** A typed value in SI, or a refusal with what was probably meant. */
export type ParsedQuantity =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly suggestion?: string };

/** Units that may be written after a number, with the SI value of one. */
const WRITTEN_UNITS: Partial<Record<Dimension, Readonly<Record<string, number>>>> = {
  angle: { deg: DEGREE, degree: DEGREE, degrees: DEGREE, "°": DEGREE },
  mass: { lb: POUND_MASS, lbs: POUND_MASS, kg: 1 },
  percent: { "%": 0.01 },
  rate: { "lb/in": POUND_FORCE_PER_INCH, "lbs/in": POUND_FORCE_PER_INCH, "n/mm": 1000 },
  pressure: { psi: PSI, bar: BAR },
  stress: { psi: PSI, ksi: 1000 * PSI, mpa: 1e6 },
  torque: {
    "lb-ft": FOOT_POUND_FORCE,
    "ft-lb": FOOT_POUND_FORCE,
    lbft: FOOT_POUND_FORCE,
    ftlb: FOOT_POUND_FORCE,
    nm: 1,
  },
  force: { lb: POUND_FORCE, lbs: POUND_FORCE, n: 1, kn: 1000 },
  volume: { in3: CUBIC_INCH, cm3: CUBIC_CENTIMETRE, cc: CUBIC_CENTIMETRE },
  speed: { "in/s": INCH, "m/s": 1 },
};

/** Reads any value of a document: a length as a tape is read, others as a number with or without its unit. */
export function parseQuantity(value: number | string, dimension: Dimension, system: UnitSystem): ParsedQuantity {
  if (dimension === "length") return fromLength(parseLength(value, system));
  if (typeof value === "number") {
    return Number.isFinite(value) ? { ok: true, value: fromUnit(value, dimension, system) } : { ok: false };
  }
  const match = /^([-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)) ?((?:[a-z°%][a-z°%/0-9 -]*)?)$/.exec(
    value
      .replace(/\u2212/g, "-")
      .replace(/³/g, "3")
      .trim()
      .toLowerCase(),
  );
  const digits = match?.[1];
  if (digits === undefined) return { ok: false };
  if (digits.includes(",")) return { ok: false, suggestion: digits.replace(",", ".") };
  const number = Number(digits);
  const symbol = (match?.[2] ?? "").replace(/ /g, "");
  if (symbol === "") return finite(fromUnit(number, dimension, system));
  const units = WRITTEN_UNITS[dimension];
  if (units && Object.hasOwn(units, symbol)) return finite(number * (units[symbol] ?? Number.NaN));
  return { ok: false, suggestion: String(number) };
}

function fromLength(parsed: ParsedLength): ParsedQuantity {
  return parsed.ok ? { ok: true, value: parsed.metres } : parsed;
}

const finite = (value: number): ParsedQuantity => (Number.isFinite(value) ? { ok: true, value } : { ok: false });
