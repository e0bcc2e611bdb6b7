import { type Dimension, formatLength, formatNumber, toUnit, type UnitSystem, unitOf } from "@armwright/engine";

const MINUS = "\u2212";

/** Part of a text: plain, or a fraction to be set as one. */
export interface TextPart {
  readonly text: string;
  readonly fraction: boolean;
  /** A fraction that stands behind its whole number: a renderer sets a narrow space before it, GAP_SIZE of the text's size. */
  readonly isBehindWhole?: boolean;
}

/** Fractions as on a tape: halves to sixty-fourths, whole number before them or not. */
const FRACTION = /(?<![\d/])(\d{1,2})\/(2|4|8|16|32|64)(?![\d/])/g;

/** Splits `12 3/16 slack` into `12`, `3⁄16` (a fraction behind its whole number) and ` slack`. */
export function textParts(words: string): readonly TextPart[] {
  const parts: TextPart[] = [];
  let from = 0;
  for (const match of words.matchAll(FRACTION)) {
    const before = words.slice(from, match.index);
    const isBehindWhole = /\d $/.test(before);
    const plain = isBehindWhole ? before.slice(0, -1) : before;
    if (plain !== "") parts.push({ text: plain, fraction: false });
    const text = `${match[1]}\u2044${match[2]}`;
    parts.push(isBehindWhole ? { text, fraction: true, isBehindWhole } : { text, fraction: true });
    from = match.index + match[0].length;
  }
  if (from < words.length || parts.length === 0) parts.push({ text: words.slice(from), fraction: false });
  return parts;
}

export const withMinus = (number: string): string => number.replace(/^-/, MINUS);

/** A value as it stands in a drawing: the sheet says the unit, so lengths carry none; angles carry their degree. */
export function reading(value: number | null, dimension: Dimension, system: UnitSystem, sign = false): string {
  if (value === null || !Number.isFinite(value)) return "—";
  if (dimension === "length") return withMinus(formatLength(value, system, { sign }));
  const number = withMinus(formatNumber(toUnit(value, dimension, system), DECIMALS[dimension] ?? 1, sign));
  return dimension === "angle" ? `${number}°` : number;
}

/** A travel: bump carries +, droop −, ride height is 0. */
export const travelReading = (travel: number, system: UnitSystem): string => reading(travel, "length", system, true);

const DECIMALS: Partial<Record<Dimension, number>> = {
  ratio: 2,
  "ratio-per-length": 3,
  "angle-per-length": 2,
  percent: 0,
  count: 0,
};

/** Unit of a dimension as it stands in a chart's head: `in`, `mm`, `°`, `%`; empty for plain ratios. */
export function headUnit(dimension: Dimension, system: UnitSystem): string {
  if (dimension === "angle") return "°";
  return unitOf(dimension, system).replace("deg", "°");
}
