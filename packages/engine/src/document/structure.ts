import type { z } from "zod";
import type { UnitSystem } from "../car/car.ts";
import { type Fault, type FaultCode, quote } from "./fault.ts";
import { nearestWord } from "./nearest-word.ts";
import { formatPath, type Path, valueAt } from "./path.ts";
import { type CarDocument, carSchema } from "./schema.ts";

/** A fault that still knows its place as a path, so that its line can be found. */
export interface PlacedFault {
  readonly at: Path;
  readonly fault: Fault;
}

export const placed = (at: Path, code: FaultCode, facts: Omit<Fault, "code" | "path"> = {}): PlacedFault => ({
  at,
  fault: { code, path: formatPath(at), ...facts },
});

export type Structure =
  | { readonly ok: true; readonly document: CarDocument }
  | { readonly ok: false; readonly faults: readonly PlacedFault[] };

/** Checks every field by itself against the declaration: names, types, words, lengths. All faults at once. */
export function checkStructure(value: unknown, system: UnitSystem): Structure {
  const result = carSchema(system).safeParse(value);
  if (result.success) return { ok: true, document: result.data };
  return { ok: false, faults: result.error.issues.flatMap((issue) => faultsOf(issue, value)) };
}

/** The same for the survey by itself: it is solved before the rest is looked at. */
export function checkSurveySection(value: unknown, system: UnitSystem): readonly PlacedFault[] {
  const result = carSchema(system).shape.survey.safeParse(value);
  return result.success ? [] : result.error.issues.flatMap((issue) => faultsOf(issue, value));
}

const AN_OBJECT = "an object in braces";

function faultsOf(issue: z.core.$ZodIssue, root: unknown): readonly PlacedFault[] {
  const at = issue.path.filter((part): part is string | number => typeof part !== "symbol");
  // The schema puts the kind of thing expected, or the words to choose from, where zod has its sentence.
  const options = issue.message.split("|");
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) => placed([...at, key], "unknown-key", choice(key, options)));
  }
  const value = valueAt(root, at);
  if (issue.code === "custom")
    return [{ at, fault: { ...customFacts(issue.params), path: formatPath(at), found: quote(value) } }];
  const choosing = options.length > 1 && issue.code !== "invalid_type";
  const expected = options.length > 1 ? AN_OBJECT : issue.message;
  if (value === undefined) return [placed(at, "missing", choosing ? { options } : { expected })];
  if (choosing) {
    const typed = typeof value === "string" ? value : "";
    return [placed(at, "unknown-word", { found: quote(value), ...choice(typed, options) })];
  }
  return [placed(at, "wrong-type", { found: quote(value), expected })];
}

/** The checks in fields.ts hand over a fault's code and facts. */
function customFacts(params: Readonly<Record<string, unknown>> | undefined): Omit<Fault, "path"> {
  return params as unknown as Omit<Fault, "path">;
}

function choice(typed: string, options: readonly string[]): Pick<Fault, "options" | "suggestion"> {
  const suggestion = nearestWord(typed, options);
  return suggestion === undefined ? { options } : { options, suggestion };
}
