import type { UnitSystem } from "../car/car.ts";
import { csvRows, refuseStrange, ShelfFault, type ShelfRow } from "../document/shelf-rows.ts";
import { DEGREE } from "../units/convert.ts";
import { parseLength } from "../units/tape.ts";
import type { ShockOption } from "./request.ts";

/** A builder's own list of shocks. */
export interface ShockShelf {
  readonly file: string;
  readonly shocks: readonly ShockOption[];
}

export type ShockShelfReading =
  | { readonly ok: true; readonly shelf: ShockShelf }
  /** Where, what was found, what would be right. */
  | { readonly ok: false; readonly words: string };

const NEEDED = ["name", "shortest", "longest", "bodyDiameter"] as const;
const FIELDS = [...NEEDED, "springDiameter", "eyeWidth", "eyeDiameter", "tabGap", "misalignmentLimit"];

/**
 * JSON `{ "units": …, "shocks": [ … ] }`, or CSV with the same names in its first line. Lengths as on a tape, the
 * misalignment limit in degrees. `units` are taken where the file names none.
 */
export function readShockShelf(text: string, file: string, units: UnitSystem): ShockShelfReading {
  try {
    const { rows, system } = text.trimStart().startsWith("{")
      ? jsonRows(text, file, units)
      : { rows: csvRows(text), system: units };
    if (rows.length === 0)
      throw new ShelfFault(
        `${file} holds no shock: write { "shocks": [ … ] }, or a first line with ${NEEDED.join(", ")} and a line for each shock.`,
      );
    const shocks = rows.map((row, i) => shockFrom(row, `${file}, shock ${i + 1}`, system));
    const twice = shocks.find(({ name }, i) => shocks.findIndex((other) => other.name === name) < i);
    if (twice) throw new ShelfFault(`${file} has two shocks called ${twice.name}: give each a name of its own.`);
    return { ok: true, shelf: { file, shocks } };
  } catch (error) {
    if (error instanceof ShelfFault) return { ok: false, words: error.message };
    throw error;
  }
}

function jsonRows(text: string, file: string, units: UnitSystem) {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new ShelfFault(`${file} is not JSON.`);
  }
  const { shocks, units: named } = value as { shocks?: unknown; units?: unknown };
  if (!Array.isArray(shocks)) throw new ShelfFault(`${file} needs a list called "shocks".`);
  if (named !== undefined && named !== "inch-pound" && named !== "metric")
    throw new ShelfFault(`${file}: units are inch-pound or metric, found ${JSON.stringify(named)}.`);
  const rows = shocks.map((row: unknown) => (typeof row === "object" && row !== null ? (row as ShelfRow) : {}));
  return { rows, system: named ?? units } as const;
}

function shockFrom(row: ShelfRow, place: string, units: UnitSystem): ShockOption {
  const has = (name: string): boolean => row[name] !== undefined && row[name] !== "";
  refuseStrange(row, place, FIELDS);
  for (const name of NEEDED) if (!has(name)) throw new ShelfFault(`${place}: ${name} is missing.`);
  const length = (name: string): number => {
    const typed = row[name];
    const parsed = typeof typed === "number" || typeof typed === "string" ? parseLength(typed, units) : null;
    if (parsed?.ok && parsed.metres >= 0) return parsed.metres;
    throw new ShelfFault(`${place}: ${name} ${JSON.stringify(typed)} is not a length such as 15 1/4.`);
  };
  const [shortest, longest] = [length("shortest"), length("longest")];
  if (!(shortest > 0 && longest > shortest))
    throw new ShelfFault(`${place}: longest has to be more than shortest, and both above zero.`);
  const limit = has("misalignmentLimit") ? Number(row["misalignmentLimit"]) : null;
  if (limit !== null && !(limit > 0 && limit < 90))
    throw new ShelfFault(
      `${place}: misalignmentLimit ${JSON.stringify(row["misalignmentLimit"])} is not an angle in degrees.`,
    );
  return {
    name: String(row["name"]),
    shortest,
    longest,
    bodyDiameter: length("bodyDiameter"),
    springDiameter: has("springDiameter") ? length("springDiameter") : 0,
    ...(has("eyeWidth") && { eyeWidth: length("eyeWidth") }),
    ...(has("eyeDiameter") && { eyeDiameter: length("eyeDiameter") }),
    ...(has("tabGap") && { tabGap: length("tabGap") }),
    ...(limit !== null && { misalignmentLimit: limit * DEGREE }),
  };
}
