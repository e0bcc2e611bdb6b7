import {
  type CarDocument,
  type CarReading,
  FORMAT_VERSION,
  migrate,
  readCarDocument,
  readCarValue,
  sayFault,
  setField,
} from "@armwright/engine/document";
import type { CarState, Condition, Edit, SaidFault } from "./source.ts";

/** A document's text, read once. */
export interface Base {
  readonly text: string;
  readonly condition: Condition;
  readonly reading: CarReading;
  readonly document: CarDocument | undefined;
  readonly faults: readonly SaidFault[];
}

/** Reads a text; `condition` and `faults` are what the server says of it, where it is the server's. */
export function baseOf(text: string, condition?: Condition, faults?: readonly SaidFault[]): Base {
  const reading = readCarDocument(text);
  if (reading.ok) return { text, condition: condition ?? "sound", reading, document: reading.document, faults: [] };
  const document = condition === "broken" ? undefined : editable(text);
  return {
    text,
    condition: condition ?? (document ? "faulty" : "broken"),
    reading,
    document,
    faults: faults ?? reading.faults.map(said),
  };
}

/** The base with the edits laid over it. */
export function viewOf(name: string, base: Base, edits: readonly Edit[]): CarState {
  const { condition, reading, document, faults } = base;
  const waiting = edits.length;
  if (!document || waiting === 0) return { name, condition, document, reading, faults, waiting };
  const edited = edits.reduce(withEdit, document);
  const now = readCarValue(edited);
  return {
    name,
    condition: condition === "gone" ? "gone" : now.ok ? "sound" : "faulty",
    document: now.ok ? now.document : edited,
    reading: now,
    faults: now.ok ? [] : now.faults.map(said),
    waiting,
  };
}

/** The document with the edit made; as it was, where the place does not fit it. */
export function withEdit(document: CarDocument, { path, value }: Edit): CarDocument {
  try {
    return setField(document, path, value);
  } catch (error) {
    if (error instanceof RangeError) return document;
    throw error;
  }
}

/** A document with faults, brought to the present form; undefined where it is none at all. */
function editable(text: string): CarDocument | undefined {
  try {
    const value: unknown = JSON.parse(text.replace(/^\ufeff/, ""));
    if (typeof value !== "object" || value === null || !("armwright" in value)) return undefined;
    const { document } = migrate(value as Readonly<Record<string, unknown>>, Number(value.armwright));
    return document["armwright"] === FORMAT_VERSION ? (document as unknown as CarDocument) : undefined;
  } catch {
    return undefined;
  }
}

const said = (fault: Parameters<typeof sayFault>[0]): SaidFault => ({
  path: fault.path,
  says: sayFault(fault),
  ...(fault.line === undefined ? {} : { line: fault.line }),
});
