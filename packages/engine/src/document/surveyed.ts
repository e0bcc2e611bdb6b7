import type { UnitSystem } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { CarSurvey } from "../survey/car-survey.ts";
import { solveSurvey } from "../survey/solve-survey.ts";
import { toUnit } from "../units/convert.ts";
import { lookAt } from "./checks/look.ts";
import { checkSurvey, knownPoint } from "./checks/survey.ts";
import { formatPath, type Path } from "./path.ts";
import { makeResolver } from "./resolve/resolver.ts";
import { resolveSurvey } from "./resolve/survey.ts";
import type { SurveyDocument } from "./schema.ts";
import { checkSurveySection, type PlacedFault } from "./structure.ts";

type Fields = Readonly<Record<string, unknown>>;

/** A document with the coordinates of its surveyed points filled in. */
export interface Surveyed {
  readonly fields: Fields;
  readonly survey: CarSurvey | undefined;
  readonly faults: readonly PlacedFault[];
  /** Points that could not be filled in: faults below them are echoes. */
  readonly unfilled: readonly Path[];
}

/**
 * Fills x, y and z into every point that is given as `{ "surveyed": name }`. What stood there is passed over: the survey
 * decides, and writing leaves the three out again.
 */
export function fillSurveyed(document: Fields, system: UnitSystem): Surveyed {
  const uses: { readonly at: Path; readonly name: string }[] = [];
  findUses(document, [], uses);
  const section = document["survey"];
  if (section === undefined && uses.length === 0)
    return { fields: document, survey: undefined, faults: [], unfilled: [] };
  const solved = section === undefined ? undefined : solvedOf(document, system);
  const names = solved?.survey.points.map(({ name }) => name) ?? [];
  const isReadable = section === undefined || solved !== undefined;
  const faults = isReadable ? uses.flatMap(({ at, name }) => knownPoint([...at, "surveyed"], name, names)) : [];
  const unfilled = uses.filter(({ name }) => !names.includes(name)).map(({ at }) => at);
  if (!solved) return { fields: document, survey: undefined, faults, unfilled };
  const places = new Map(solved.result.points.map(({ name, at }) => [name, at]));
  const fields = fill(document, [], places, system) as Fields;
  const survey: CarSurvey = { ...solved, uses: uses.map(({ at, name }) => ({ path: formatPath(at), point: name })) };
  return { fields, survey, faults, unfilled };
}

export const isBelow = (path: Path, places: readonly Path[]): boolean =>
  places.some((place) => place.every((step, i) => path[i] === step) && path[place.length] !== "surveyed");

/** Solved before, for the same section: while a hand drags a point the survey stays as it is. */
let last: { readonly key: string; readonly solved: Omit<CarSurvey, "uses"> | undefined } | undefined;

function solvedOf(document: Fields, system: UnitSystem): Omit<CarSurvey, "uses"> | undefined {
  const section = document["survey"];
  const key = `${system} ${JSON.stringify(section)}`;
  if (last?.key !== key) last = { key, solved: solve(section, document, system) };
  return last.solved;
}

function solve(section: unknown, document: Fields, system: UnitSystem): Omit<CarSurvey, "uses"> | undefined {
  if (checkSurveySection(section, system).length > 0 || checkSurvey(lookAt(document, system)).length > 0)
    return undefined;
  const r = makeResolver(system, "left");
  const survey = resolveSurvey(section as SurveyDocument, r);
  const { result, adjustment, spread } = solveSurvey(survey, { units: system });
  return { survey, result, solved: { result, adjustment, spread }, assumed: r.assumed };
}

function findUses(node: unknown, at: Path, uses: { at: Path; name: string }[]): void {
  if (Array.isArray(node)) {
    for (const [i, each] of node.entries()) findUses(each, [...at, i], uses);
    return;
  }
  if (!isFields(node)) return;
  const name = node["surveyed"];
  if (typeof name === "string" && at.length > 0) uses.push({ at, name });
  for (const [key, each] of Object.entries(node))
    if (at.length > 0 || key !== "survey") findUses(each, [...at, key], uses);
}

function fill(node: unknown, at: Path, places: ReadonlyMap<string, Vec3>, system: UnitSystem): unknown {
  if (Array.isArray(node)) return node.map((each, i) => fill(each, [...at, i], places, system));
  if (!isFields(node)) return node;
  const entries = Object.entries(node).map(([key, each]) =>
    at.length === 0 && key === "survey" ? [key, each] : [key, fill(each, [...at, key], places, system)],
  );
  const filled = Object.fromEntries(entries) as Fields;
  const name = node["surveyed"];
  const place = typeof name === "string" && at.length > 0 ? places.get(name) : undefined;
  return place
    ? { ...filled, x: typed(place.x, system), y: typed(place.y, system), z: typed(place.z, system) }
    : filled;
}

/** Finer than any tape by far, and short enough to be shown. */
const typed = (metres: number, system: UnitSystem): number => Number(toUnit(metres, "length", system).toFixed(6));

const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);
