import type { UnitSystem } from "../car/car.ts";
import type { CarSurvey } from "../survey/car-survey.ts";
import { readJsonText } from "./json-text.ts";
import { UNIT_SYSTEMS } from "./schema.ts";
import { fillSurveyed } from "./surveyed.ts";

/** A survey by itself, with what its report needs of the document round it. */
export interface SurveyReport {
  readonly name: string;
  readonly units: UnitSystem;
  readonly survey: CarSurvey;
}

/**
 * The survey out of a document's text, also where the rest of it makes no car yet: coordinates come before the car.
 * Undefined where there is none, or where the survey itself has faults (`readCarDocument` tells them).
 */
export function readSurvey(text: string): SurveyReport | undefined {
  const { value } = readJsonText(text);
  if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
  const fields = value as Readonly<Record<string, unknown>>;
  const units = UNIT_SYSTEMS.find((system) => system === fields["units"]);
  if (!units || fields["survey"] === undefined) return undefined;
  const { survey } = fillSurveyed(fields, units);
  return survey && { name: typeof fields["name"] === "string" ? fields["name"] : "", units, survey };
}
