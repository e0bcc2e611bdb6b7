import { parseLength, type ShockOption, type UnitSystem } from "@armwright/engine";
import { Refusal } from "./refusal.ts";

const DEGREE = Math.PI / 180;
const LENGTHS = ["shortest", "longest", "bodyDiameter", "springDiameter", "eyeWidth", "eyeDiameter", "tabGap"] as const;
const NEEDED: readonly string[] = ["name", "shortest", "longest", "bodyDiameter"];

/**
 * A shelf of shocks: JSON `{ "units": …, "shocks": [ … ] }`, or CSV with the same names in its first line. Lengths as on a tape,
 * the misalignment limit in degrees. `units` are taken where the file names none. Throws Refusal.
 */
export function readShelf(text: string, file: string, units: UnitSystem): readonly ShockOption[] {
  const { rows, system } = text.trimStart().startsWith("{")
    ? jsonRows(text, file, units)
    : { rows: csvRows(text), system: units };
  if (rows.length === 0) throw new Refusal(`${file} holds no shock.`);
  return rows.map((row, i) => shockFrom(row, `${file}, shock ${i + 1}`, system));
}

type Row = Readonly<Record<string, unknown>>;

function jsonRows(
  text: string,
  file: string,
  units: UnitSystem,
): { readonly rows: readonly Row[]; readonly system: UnitSystem } {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new Refusal(`${file} is not JSON.`);
  }
  const { shocks, units: named } = value as { shocks?: unknown; units?: unknown };
  if (!Array.isArray(shocks)) throw new Refusal(`${file} needs a list called "shocks".`);
  if (named !== undefined && named !== "inch-pound" && named !== "metric")
    throw new Refusal(`${file}: units are inch-pound or metric, found ${JSON.stringify(named)}.`);
  return {
    rows: shocks.map((row) => (typeof row === "object" && row !== null ? (row as Row) : {})),
    system: named ?? units,
  };
}

function csvRows(text: string): readonly Row[] {
  const [head = "", ...lines] = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const names = cells(head);
  return lines.map((line) => Object.fromEntries(cells(line).map((cell, i) => [names[i] ?? "", cell])));
}

const cells = (line: string): readonly string[] =>
  line.split(/[,;\t]/).map((cell) => cell.trim().replace(/^"(.*)"$/, "$1"));

function shockFrom(row: Row, place: string, units: UnitSystem): ShockOption {
  const has = (name: string): boolean => row[name] !== undefined && row[name] !== "";
  for (const name of NEEDED) if (!has(name)) throw new Refusal(`${place}: ${name} is missing.`);
  const length = (name: (typeof LENGTHS)[number]): number => {
    const typed = row[name];
    const parsed = typeof typed === "number" || typeof typed === "string" ? parseLength(typed, units) : null;
    if (parsed?.ok && parsed.metres >= 0) return parsed.metres;
    throw new Refusal(`${place}: ${name} ${JSON.stringify(typed)} is not a length such as 15 1/4.`);
  };
  const [shortest, longest] = [length("shortest"), length("longest")];
  if (!(shortest > 0 && longest > shortest)) throw new Refusal(`${place}: longest has to be more than shortest.`);
  const limit = has("misalignmentLimit") ? Number(row["misalignmentLimit"]) : null;
  if (limit !== null && !(limit > 0 && limit < 90))
    throw new Refusal(
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
