import type { Car, UnitSystem } from "../car/car.ts";
import type { CarSurvey } from "../survey/car-survey.ts";
import { assemble } from "./assemble.ts";
import { crossCheck } from "./checks/cross-checks.ts";
import { type Fault, quote } from "./fault.ts";
import { type Place, readJsonText } from "./json-text.ts";
import { migrate } from "./migrate.ts";
import { type Path, valueAt } from "./path.ts";
import { resolveCar } from "./resolve/car.ts";
import { ownTolerancesOf } from "./resolve/own-tolerances.ts";
import { type CarDocument, FORMAT_VERSION, UNIT_SYSTEMS } from "./schema.ts";
import { checkStructure, type PlacedFault, placed } from "./structure.ts";
import { fillSurveyed, isBelow } from "./surveyed.ts";

export type CarReading =
  | { readonly ok: true; readonly document: CarDocument; readonly car: Car; readonly warnings: readonly Fault[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Reads a car document out of its text: the document as typed, and the car in SI with what was assumed;
 * or every fault at once, each with its line. Never throws, whatever the text.
 */
export function readCarDocument(text: string): CarReading {
  const json = readJsonText(text);
  if (json.value === undefined) return { ok: false, faults: json.faults };
  return readValue(json.value, json.faults, json.locate);
}

/** The same for a document that is already in memory, e.g. while it is edited; faults then carry no lines. */
export function readCarValue(value: unknown): CarReading {
  return readValue(value, [], undefined);
}

type Locate = (path: Path, what?: "key" | "value") => Place;

function readValue(value: unknown, earlier: readonly Fault[], locate: Locate | undefined): CarReading {
  const inPlace = ({ at, fault }: PlacedFault): Fault =>
    locate ? { ...fault, ...locate(at, fault.code === "unknown-key" ? "key" : "value") } : fault;
  const refuse = (faults: readonly PlacedFault[]): CarReading => ({
    ok: false,
    faults: inOrder([...earlier, ...faults.map(inPlace)]),
  });

  const version = versionOf(value);
  if (!version.ok) return refuse([version.fault]);
  const { document: asWritten, says } = migrate(version.fields, version.number);
  const system = systemOf(asWritten);
  const surveyed = fillSurveyed(asWritten, system);
  const present = surveyed.fields;
  const structure = checkStructure(present, system);
  const crossed = crossCheck(present, system);
  if (!structure.ok) {
    const own = structure.faults.filter(({ at }) => !isBelow(at, surveyed.unfilled));
    return refuse(withoutEchoes([...own, ...surveyed.faults], crossed));
  }
  if (crossed.length > 0 || earlier.length > 0) return refuse(crossed);

  const from = { found: String(version.number), expected: String(FORMAT_VERSION), options: says };
  const migrated = says.length === 0 ? [] : [placed(["armwright"], "migrated", from)];
  const assembly = assemble(
    structure.document,
    withCertainty(resolveCar(structure.document), structure.document, surveyed.survey),
  );
  if (!assembly.ok) return refuse(assembly.faults);
  const warnings = [...migrated, ...assembly.warnings].map(inPlace);
  return { ok: true, document: structure.document, car: assembly.car, warnings };
}

const RIGHT = "right.";

/** The car with what is known of how sure its points are: the survey's readings, and points with a ± of their own. */
function withCertainty(car: Car, document: CarDocument, survey: CarSurvey | undefined): Car {
  const all = ownTolerancesOf(document);
  const isOnRight = ({ path }: { readonly path: string }): boolean => path.startsWith(RIGHT);
  const ownTolerances = all.filter((each) => !isOnRight(each));
  // What is entered for the right side stands there in place of the left one's.
  const onRight = [...ownTolerances, ...all.filter(isOnRight)].map(({ path, plusMinus }) => ({
    path: path.replace(RIGHT, ""),
    plusMinus,
  }));
  const right = car.right && { ...car.right, ...(onRight.length > 0 && { ownTolerances: onRight }) };
  return {
    ...car,
    ...(ownTolerances.length > 0 && { ownTolerances }),
    ...(right && { right }),
    ...(survey && { survey, assumed: [...car.assumed, ...survey.assumed] }),
  };
}

type Version =
  | { readonly ok: true; readonly number: number; readonly fields: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly fault: PlacedFault };

function versionOf(value: unknown): Version {
  const number = valueAt(value, ["armwright"]);
  if (typeof value !== "object" || value === null || Array.isArray(value) || number === undefined) {
    return { ok: false, fault: placed([], "not-a-car") };
  }
  const expected = String(FORMAT_VERSION);
  const facts = { found: quote(number), expected };
  if (typeof number !== "number" || !Number.isInteger(number) || number < 0) {
    return { ok: false, fault: placed(["armwright"], "bad-version", facts) };
  }
  if (number > FORMAT_VERSION) return { ok: false, fault: placed(["armwright"], "newer-version", facts) };
  return { ok: true, number, fields: value as Readonly<Record<string, unknown>> };
}

/** Where the unit system itself is at fault, the rest is looked at in inches. */
const systemOf = (fields: Readonly<Record<string, unknown>>): UnitSystem =>
  UNIT_SYSTEMS.find((system) => system === fields["units"]) ?? "inch-pound";

/** A value that is wrong by itself needs no second fault from a comparison. */
function withoutEchoes(first: readonly PlacedFault[], second: readonly PlacedFault[]): readonly PlacedFault[] {
  const told = new Set(first.map(({ fault }) => fault.path));
  return [...first, ...second.filter(({ fault }) => !told.has(fault.path))];
}

/** In the order of the text, where that is known. */
const inOrder = (faults: readonly Fault[]): readonly Fault[] =>
  [...faults].sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
