import type { Assumption } from "@armwright/engine";
import { type Fault, type Path, parsePath, sayFault, valueAt } from "@armwright/engine/document";
import { useBench } from "../app/use-bench.ts";
import { edit, hold } from "../store/bench.ts";
import { tidy } from "../words/shown.ts";
import type { Field } from "./schema-fields.ts";

/** What a form needs of one field of the document on the bench. */
export function useField(path: string) {
  const value = useBench(({ document }) => valueAt(document, pathOf(path)));
  const fault = useBench(({ live }) => live.faults.find((each) => each.path === path));
  const assumed = useBench(({ live }) => live.car?.assumed.find((each) => each.path === path));
  const isHeld = useBench(({ held }) => held?.place === path);
  const own = useBench(({ document }) => document?.units ?? "inch-pound");
  const units = useBench((state) => state.units);
  return { value, fault, assumed, isHeld, own, units };
}

/** Asked for by every field at every step of a drag. */
function pathOf(text: string): Path {
  const known = paths.get(text);
  if (known) return known;
  const made = parsePath(text) ?? [];
  paths.set(text, made);
  return made;
}
const paths = new Map<string, Path>();

export type FieldUse = ReturnType<typeof useField>;

export const holdField = (path: string): void => hold({ place: path, as: "field" });

/** Puts a value into a field, and says so. */
export function enter(field: Field, value: Parameters<typeof edit>[0][number]["value"]): void {
  const name = field.group === "" ? field.label : `${field.group}, ${field.label.toLowerCase()}`;
  edit([{ path: field.path, value }], value === undefined ? `${name} cleared` : `${name}: ${said(value)}`);
}

const said = (value: unknown): string => (typeof value === "object" ? "entered" : String(value));

/** The engine's sentence without the place, which the field itself tells. */
export const faultWords = (fault: Fault): string => {
  const sentence = tidy(sayFault(fault));
  return fault.path !== "" && sentence.startsWith(`${fault.path}: `) ? sentence.slice(fault.path.length + 2) : sentence;
};

export const isAssumed = (assumed: Assumption | undefined, value: unknown): assumed is Assumption =>
  assumed !== undefined && value === undefined;
