import type { Dimension, UnitSystem } from "../car/car.ts";
import { csvRows, refuseStrange, ShelfFault, type ShelfRow } from "../document/shelf-rows.ts";
import { parseQuantity } from "../units/quantity.ts";
import type { ShelfSpring } from "./spring-choice.ts";

/** A builder's own list of springs. */
export interface SpringShelf {
  readonly file: string;
  readonly springs: readonly ShelfSpring[];
}

export type SpringShelfReading =
  | { readonly ok: true; readonly shelf: SpringShelf }
  /** Where, what was found, what would be right. */
  | { readonly ok: false; readonly words: string };

/** Without a figure of its own a spring is taken to go solid at this share of its free length: from memory. */
const SOLID_SHARE = 0.42;
/** More springs than this are no shelf: every two are tried together. */
const MOST = 500;

/**
 * Reads the springs that a builder can have: `{ "units": "inch-pound", "springs": [{ "rate": 250, "freeLength": 12,
 * "solidLength": 5, "name": "…" }] }`, or CSV with the same names in its first line, in the units given; name and solid
 * length may be left out. Tells the place of the first fault.
 */
export function readSpringShelf(text: string, file: string, units: UnitSystem): SpringShelfReading {
  try {
    const isCsv = /^\s*["\w]+\s*[,;\t]/.test(text);
    const { rows, system } = isCsv ? { rows: csvRows(text), system: units } : jsonRows(text, file);
    if (rows.length === 0) throw new ShelfFault(`${file} holds no spring.`);
    if (rows.length > MOST) throw new ShelfFault(`${file}: springs: found ${rows.length}, at most ${MOST} are read.`);
    const springs = rows.map((row, i) => readSpring(row, `${file}: springs[${i}]`, system));
    return { ok: true, shelf: { file, springs } };
  } catch (error) {
    if (error instanceof ShelfFault) return { ok: false, words: error.message };
    throw error;
  }
}

function jsonRows(text: string, file: string): { readonly rows: readonly unknown[]; readonly system: UnitSystem } {
  const { units, springs } = record(parse(text, file), file, "an object with units and springs");
  if (units !== "inch-pound" && units !== "metric")
    throw new ShelfFault(`${file}: units: write "inch-pound" or "metric".`);
  if (!Array.isArray(springs) || springs.length === 0)
    throw new ShelfFault(`${file}: springs: expected a list of springs in square brackets.`);
  return { rows: springs, system: units };
}

const FIELDS = ["name", "rate", "freeLength", "solidLength"];

function readSpring(typed: unknown, place: string, units: UnitSystem): ShelfSpring {
  const fields = record(typed, place, "a spring in braces");
  refuseStrange(fields, place, FIELDS);
  const rate = quantity(fields["rate"], "rate", `${place}.rate`, units);
  const freeLength = quantity(fields["freeLength"], "length", `${place}.freeLength`, units);
  const { name, solidLength: solid } = fields;
  const solidLength =
    solid === undefined ? SOLID_SHARE * freeLength : quantity(solid, "length", `${place}.solidLength`, units);
  if (solidLength >= freeLength) throw new ShelfFault(`${place}.solidLength: has to be less than the free length.`);
  if (name !== undefined && typeof name !== "string") throw new ShelfFault(`${place}.name: expected text.`);
  return { name: name ?? "", rate, freeLength, solidLength };
}

function quantity(typed: unknown, dimension: Dimension, place: string, units: UnitSystem): number {
  if (typeof typed !== "number" && typeof typed !== "string")
    throw new ShelfFault(`${place}: missing, or not a number: write a number.`);
  const parsed = parseQuantity(typed, dimension, units);
  if (!parsed.ok) {
    const meant = parsed.suggestion === undefined ? "write a number" : `write ${parsed.suggestion}`;
    throw new ShelfFault(`${place}: ${JSON.stringify(typed)} cannot be read: ${meant}.`);
  }
  if (parsed.value <= 0) throw new ShelfFault(`${place}: has to be more than 0.`);
  return parsed.value;
}

function parse(text: string, file: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new ShelfFault(`${file}: not JSON: ${error instanceof Error ? error.message : "it cannot be read"}`);
  }
}

function record(value: unknown, place: string, expected: string): ShelfRow {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return value as ShelfRow;
  throw new ShelfFault(`${place}: expected ${expected}.`);
}
