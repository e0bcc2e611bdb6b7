import type { CarDocument } from "./schema.ts";
import { type FieldValue, setField } from "./write.ts";

/** One edit: a field's place and its new value; undefined takes the field out. */
export interface Operation {
  readonly path: string;
  readonly value: FieldValue;
}

/** The document with the edits made; those before stay as they were. Throws RangeError where a path is no path. */
export const applyOperations = (document: CarDocument, operations: readonly Operation[]): CarDocument =>
  operations.reduce((made, { path, value }) => setField(made, path, value), document);
