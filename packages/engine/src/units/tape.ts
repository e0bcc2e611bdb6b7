import type { UnitSystem } from "../car/car.ts";
import { FOOT, fromUnit, INCH, MILLIMETRE, toUnit } from "./convert.ts";
import { formatLength } from "./format.ts";

/** What a typed length came to: metres, or a refusal with what was probably meant. */
export type ParsedLength =
  | { readonly ok: true; readonly metres: number }
  | { readonly ok: false; readonly suggestion?: string };

/**
 * Reads a length as typed: a number in the system's unit, or text as a tape is read:
 * `12 3/16`, `12-3/16`, `1' 4-1/2"`, `14.375 in`, `310mm`, `31 cm`, `-3 1/8`.
 * Fractions are of inches and only those on a tape: halves to sixty-fourths.
 */
export function parseLength(value: number | string, system: UnitSystem): ParsedLength {
  if (typeof value === "number") {
    return Number.isFinite(value) ? { ok: true, metres: fromUnit(value, "length", system) } : { ok: false };
  }
  const text = tidy(value);
  const minus = text.startsWith("-");
  const body = text.replace(/^[-+] ?/, "");
  const size = readSize(body, system);
  if (size.ok) return { ok: true, metres: minus && size.metres !== 0 ? -size.metres : size.metres };
  if (size.suggestion === undefined || !minus) return size;
  return { ok: false, suggestion: size.suggestion.replace(/(^| or )/g, "$1-") };
}

const TAPE_DENOMINATORS: readonly number[] = [2, 4, 8, 16, 32, 64];
const METRIC_UNITS: Readonly<Record<string, number>> = { mm: MILLIMETRE, cm: 0.01, m: 1 };
const DECIMAL = String.raw`(?:\d+(?:\.\d*)?|\.\d+)`;
const METRIC = new RegExp(`^(${DECIMAL}) ?(mm|cm|m)$`);
const FEET = new RegExp(`^(${DECIMAL}) ?(?:'|ft|feet|foot)(?: ?- ?| )?(.*)$`);
const INCHES = new RegExp(`^(?:(${DECIMAL})|(?:(\\d+)(?: | ?- ?))?(\\d+) ?/ ?(\\d+)) ?("|inches|inch|in)?$`);
const DECIMAL_COMMA = /^(\d+),(\d+) ?(mm|cm|m|in|inch|inches|")?$/;

const VULGAR: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** One spelling for each mark that keyboards and word processors write in several ways. */
function tidy(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (mark) => ` ${VULGAR[mark] ?? mark}`)
    .replace(/[\u2212\u2010-\u2014]/g, "-")
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/''|[\u2033\u201c\u201d\u02ba]/g, '"')
    .replace(/[\u2032\u2018\u2019\u02b9]/g, "'")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

function readSize(text: string, system: UnitSystem): ParsedLength {
  const metric = METRIC.exec(text);
  if (metric) return finite(Number(metric[1]) * (METRIC_UNITS[metric[2] ?? ""] ?? Number.NaN));

  const comma = DECIMAL_COMMA.exec(text);
  if (comma) return { ok: false, suggestion: `${comma[1]}.${comma[2]}${comma[3] ? ` ${comma[3]}` : ""}` };

  const feet = FEET.exec(text);
  const inches = readInches(feet ? (feet[2] ?? "") : text, feet !== null);
  if (inches === undefined) return { ok: false };

  const total = (feet ? Number(feet[1]) * 12 : 0) + inches.value;
  if (!Number.isFinite(total)) return { ok: false };
  if (inches.fault) return { ok: false, suggestion: nearestMark(total, system, inches.fraction) };
  if (feet || inches.unit)
    return { ok: true, metres: feet ? Number(feet[1]) * FOOT + inches.value * INCH : total * INCH };
  // Fractions of a millimetre are not read off any tape: a builder who types one is thinking in inches.
  if (system === "metric" && inches.fraction) return { ok: false, suggestion: nearestMark(total, system, true) };
  return { ok: true, metres: fromUnit(total, "length", system) };
}

interface Inches {
  readonly value: number;
  readonly unit: boolean;
  readonly fraction: boolean;
  /** Readable, but not as a tape is marked. */
  readonly fault: boolean;
}

function readInches(text: string, afterFeet: boolean): Inches | undefined {
  if (text === "") return afterFeet ? { value: 0, unit: false, fraction: false, fault: false } : undefined;
  const match = INCHES.exec(text);
  if (!match) return undefined;
  const unit = match[5] !== undefined;
  if (match[1] !== undefined) {
    const value = Number(match[1]);
    return { value, unit, fraction: false, fault: afterFeet && value >= 12 };
  }
  const whole = Number(match[2] ?? 0);
  const top = Number(match[3]);
  const bottom = Number(match[4]);
  if (bottom === 0) return undefined;
  const onTape = TAPE_DENOMINATORS.includes(bottom) && top < bottom;
  return { value: whole + top / bottom, unit, fraction: true, fault: !onTape || (afterFeet && whole >= 12) };
}

/** `12 3/16 or 12.19`: the nearest mark and its decimal; in a metric document with its unit. */
function nearestMark(inches: number, system: UnitSystem, fraction: boolean): string {
  const metres = inches * INCH;
  const mark = formatLength(metres, "inch-pound");
  if (system === "metric") return `${mark} in or ${formatLength(metres, "metric")}`;
  const decimal = Number(toUnit((Math.round(inches * 16) / 16) * INCH, "length", system).toFixed(2));
  return fraction && mark !== String(decimal) ? `${mark} or ${decimal}` : mark;
}

const finite = (metres: number): ParsedLength => (Number.isFinite(metres) ? { ok: true, metres } : { ok: false });
