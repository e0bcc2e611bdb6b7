import {
  type CarDocument,
  type FieldValue,
  formatPath,
  type Path,
  parsePath,
  setField,
  valueAt,
} from "@armwright/engine/document";
import { sameValue } from "./same-value.ts";

/** One field's change: the smallest edit, so that two people at two fields both keep their work. */
export interface FieldOperation {
  /** Made up by the client; an operation that comes again under its id is not done again. */
  readonly id: string;
  readonly path: string;
  /** The new value; absent where `remove`. */
  readonly value?: FieldValue;
  readonly remove?: boolean;
  /** What the client saw there; absent where it saw nothing. */
  readonly was?: FieldValue;
  /** Name of the list item the path leads through, as the client saw it: items may have moved since. */
  readonly item?: string;
}

export type Edited =
  | {
      readonly ok: true;
      readonly document: CarDocument;
      /** Where it was put: list items may have moved. */
      readonly path: Path;
      /** Whether it went over a value that the client had not seen. */
      readonly unseen: boolean;
      readonly before: FieldValue;
    }
  | { readonly ok: false; readonly because: string };

const DEEPEST_PATH = 12;
const LONGEST_LIST = 1000;

/** The document with the operation done. A value that makes the car faulty is no reason to refuse. */
export function edited(document: CarDocument, operation: FieldOperation): Edited {
  const refuse = (because: string): Edited => ({ ok: false, because: `${operation.path}: ${because}` });
  const asked = parsePath(operation.path);
  if (!asked || asked.length === 0 || asked.length > DEEPEST_PATH) return refuse("this is no place in a car document");
  if (asked.some((step) => typeof step === "string" && isDangerous(step))) return refuse("this name is not allowed");
  if (asked.some((step) => typeof step === "number" && step >= LONGEST_LIST)) {
    return refuse(`a list has ${LONGEST_LIST} items at most`);
  }
  if (asked[0] === "armwright") return refuse("only the program changes the version of the form");
  const path = whereNow(document, asked, operation);
  if (path === undefined) return refuse(`${operation.item} is not in the list any more`);
  const wrong = wrongStep(document, path);
  if (wrong !== undefined) return refuse(wrong);
  const before = valueAt(document, path) as FieldValue;
  const value = operation.remove ? undefined : operation.value;
  const unseen = !sameValue(before, operation.was) && !sameValue(before, value);
  return { ok: true, document: setField(document, path, value), path, unseen, before };
}

/** Follows a list item that has moved by its name; puts a new item behind one that another hand put there first. */
function whereNow(document: CarDocument, path: Path, { item, was, remove }: FieldOperation): Path | undefined {
  const at = path.findIndex((step) => typeof step === "number");
  if (at === -1) return path;
  const list = valueAt(document, path.slice(0, at));
  if (!Array.isArray(list)) return path;
  const isWhole = at === path.length - 1;
  const moved = (index: number): Path => [...path.slice(0, at), index, ...path.slice(at + 1)];
  if (isWhole && was === undefined && !remove) return list[Number(path[at])] === undefined ? path : moved(list.length);
  if (item === undefined || valueAt(list, [path[at]!, "name"]) === item) return path;
  const found = list.findIndex((each) => valueAt(each, ["name"]) === item);
  if (found !== -1) return moved(found);
  // Renamed, perhaps: then what stands at the place is what the client saw there.
  return was !== undefined && sameValue(valueAt(document, path), was) ? path : undefined;
}

/** Says where a path does not fit what stands there. */
function wrongStep(document: CarDocument, path: Path): string | undefined {
  let value: unknown = document;
  for (const [index, step] of path.entries()) {
    if (value === undefined || value === null) return undefined;
    const place = formatPath(path.slice(0, index)) || "the document";
    if (typeof value !== "object") return `${place} holds one value, with nothing inside it to change`;
    if (Array.isArray(value) !== (typeof step === "number")) {
      return Array.isArray(value) ? `${place} is a list: its items go by count` : `${place} is no list`;
    }
    value = valueAt(value, [step]);
  }
  return undefined;
}

const DANGEROUS: ReadonlySet<string> = new Set(["__proto__", "prototype", "constructor"]);
export const isDangerous = (name: string): boolean => DANGEROUS.has(name);
