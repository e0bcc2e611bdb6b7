import { type Dimension, parseQuantity, type ShelfSpring, type UnitSystem } from "@armwright/engine";
import type { Io } from "./io.ts";
import { Refusal } from "./refusal.ts";

/** Without a figure of its own a spring is taken to go solid at this share of its free length: from memory. */
const SOLID_SHARE = 0.42;
/** More springs than this are no shelf: every two are tried together. */
const MOST = 500;

/**
 * Reads the springs that a builder can have: `{ "units": "inch-pound", "springs": [{ "rate": 250, "freeLength": 12,
 * "solidLength": 5, "name": "…" }] }`; name and solid length may be left out. Refuses with the place of the first fault.
 */
export function readSpringShelf(path: string, io: Io): readonly ShelfSpring[] {
  const root = record(parse(io.read(path), path), path, "an object with units and springs");
  const { units, springs } = root;
  if (units !== "inch-pound" && units !== "metric") {
    throw new Refusal(`${path}: units: write "inch-pound" or "metric".`);
  }
  if (!Array.isArray(springs) || springs.length === 0) {
    throw new Refusal(`${path}: springs: expected a list of springs in square brackets.`);
  }
  if (springs.length > MOST) throw new Refusal(`${path}: springs: found ${springs.length}, at most ${MOST} are read.`);
  return springs.map((typed, index) => readSpring(typed, `${path}: springs[${index}]`, units));
}

const FIELDS = ["name", "rate", "freeLength", "solidLength"];

function readSpring(typed: unknown, place: string, units: UnitSystem): ShelfSpring {
  const fields = record(typed, place, "a spring in braces");
  const strange = Object.keys(fields).find((name) => !FIELDS.includes(name));
  if (strange !== undefined) {
    throw new Refusal(`${place}.${strange}: there is no such field here: the fields are ${FIELDS.join(", ")}.`);
  }
  const rate = quantity(fields["rate"], "rate", `${place}.rate`, units);
  const freeLength = quantity(fields["freeLength"], "length", `${place}.freeLength`, units);
  const { name, solidLength: solid } = fields;
  const solidLength =
    solid === undefined ? SOLID_SHARE * freeLength : quantity(solid, "length", `${place}.solidLength`, units);
  if (solidLength >= freeLength) throw new Refusal(`${place}.solidLength: has to be less than the free length.`);
  if (name !== undefined && typeof name !== "string") throw new Refusal(`${place}.name: expected text.`);
  return { name: name ?? "", rate, freeLength, solidLength };
}

function quantity(typed: unknown, dimension: Dimension, place: string, units: UnitSystem): number {
  if (typeof typed !== "number" && typeof typed !== "string") {
    throw new Refusal(`${place}: missing, or not a number: write a number.`);
  }
  const parsed = parseQuantity(typed, dimension, units);
  if (!parsed.ok) {
    const meant = parsed.suggestion === undefined ? "write a number" : `write ${parsed.suggestion}`;
    throw new Refusal(`${place}: ${JSON.stringify(typed)} cannot be read: ${meant}.`);
  }
  if (parsed.value <= 0) throw new Refusal(`${place}: has to be more than 0.`);
  return parsed.value;
}

function parse(text: string, path: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Refusal(`${path}: not JSON: ${error instanceof Error ? error.message : "it cannot be read"}`);
  }
}

function record(value: unknown, place: string, expected: string): Readonly<Record<string, unknown>> {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return value as Record<string, unknown>;
  throw new Refusal(`${place}: expected ${expected}.`);
}
