import type { z } from "zod";
import { type Path, parsePath } from "./path.ts";
import { type CarDocument, carSchema } from "./schema.ts";
import { fieldsOf, formFor, isList, itemOf, required } from "./schema-walk.ts";

/**
 * The text of a document: fields in the declared order, two blanks of indent, every value as it was typed,
 * flat objects such as points on one line. What it wrote it writes again byte for byte.
 */
export function writeCarDocument(document: CarDocument): string {
  return `${write(ordered(document, carSchema(document.units)), "")}\n`;
}

/** A field's new value: anything that JSON can hold, or undefined to take the field out. */
export type FieldValue = number | string | boolean | null | undefined | readonly FieldValue[] | FieldObject;
export interface FieldObject {
  readonly [name: string]: FieldValue;
}

/**
 * A copy of the document with one value put in, changed or (undefined) taken out; sections on the way are made where absent.
 * The result may be faulty: read it with `readCarValue`. Throws RangeError where the path is no path.
 */
export function setField(document: CarDocument, path: string | Path, value: FieldValue): CarDocument {
  const steps = typeof path === "string" ? parsePath(path) : path;
  if (!steps || steps.length === 0) throw new RangeError(`no place in a car document: ${JSON.stringify(path)}`);
  return replaced(document, steps, value) as CarDocument;
}

function replaced(node: unknown, path: Path, value: FieldValue): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (Array.isArray(node) || (node === undefined && typeof step === "number")) {
    const list: readonly unknown[] = Array.isArray(node) ? node : [];
    const at = Number(step);
    const next = replaced(list[at], rest, value);
    if (next === undefined) return list.filter((_, index) => index !== at);
    return at >= list.length ? [...list, next] : list.map((item, index) => (index === at ? next : item));
  }
  const entries = new Map(isObject(node) ? Object.entries(node) : []);
  const next = replaced(entries.get(String(step)), rest, value);
  if (next === undefined) entries.delete(String(step));
  else entries.set(String(step), next);
  return Object.fromEntries(entries);
}

/** The same value with its fields in declared order; fields that are not declared keep theirs, after the others. */
function ordered(value: unknown, schema: z.core.$ZodType | undefined): unknown {
  const inner = schema && required(schema).schema;
  if (Array.isArray(value)) {
    const item = inner && isList(inner) ? itemOf(inner) : undefined;
    return value.map((each) => ordered(each, item));
  }
  if (!isObject(value)) return value;
  const form = inner && formFor(inner, value);
  const fields = form ? fieldsOf(form) : undefined;
  const item = form ? itemOf(form) : undefined;
  // Coordinates of a surveyed point are computed: what is kept is the name.
  const isDerived = typeof value["surveyed"] === "string";
  const names = Object.keys(value).filter((name) => !(isDerived && ["x", "y", "z"].includes(name)));
  const declared = [...(fields?.keys() ?? [])].filter((name) => names.includes(name));
  const others = names.filter((name) => !fields?.has(name));
  return Object.fromEntries(
    [...declared, ...others].map((name) => [name, ordered(value[name], fields?.get(name) ?? item)]),
  );
}

const WIDEST_LINE = 120;

function write(value: unknown, indent: string): string {
  if (Array.isArray(value)) {
    if (value.length === 0) return "[]";
    const deeper = `${indent}  `;
    return `[\n${value.map((item) => deeper + write(item, deeper)).join(",\n")}\n${indent}]`;
  }
  if (!isObject(value)) return JSON.stringify(value) ?? "null";
  const entries = Object.entries(value).filter(([, field]) => field !== undefined);
  if (entries.length === 0) return "{}";
  const flat = `{ ${entries.map(([name, field]) => `${JSON.stringify(name)}: ${JSON.stringify(field)}`).join(", ")} }`;
  // The document itself is never one line; a point, or a point with a name, is.
  const plain = entries.every(([, field]) => typeof field !== "object" || field === null);
  if (indent !== "" && plain && indent.length + flat.length < WIDEST_LINE - 20) return flat;
  const deeper = `${indent}  `;
  const lines = entries.map(([name, field]) => `${deeper}${JSON.stringify(name)}: ${write(field, deeper)}`);
  return `{\n${lines.join(",\n")}\n${indent}}`;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
