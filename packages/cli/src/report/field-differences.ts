import { formatPath } from "@armwright/engine/document";
import { plain, shortened } from "../text/plain.ts";

/** A place at which two documents do not say the same, with what stands there as typed; undefined where nothing does. */
export interface FieldDifference {
  readonly path: string;
  readonly a: string | undefined;
  readonly b: string | undefined;
}

/** Two documents laid side by side, field by field, in the order of the first. */
export function fieldDifferences(
  a: unknown,
  b: unknown,
  path: readonly (string | number)[] = [],
): readonly FieldDifference[] {
  if (!isNode(a) || !isNode(b) || Array.isArray(a) !== Array.isArray(b)) {
    if (a === b) return [];
    return [{ path: formatPath(path), a: typed(a), b: typed(b) }];
  }
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].flatMap((name) => {
    if (path.length === 0 && name === "$schema") return [];
    return fieldDifferences(a[name], b[name], [...path, Array.isArray(a) ? Number(name) : name]);
  });
}

const isNode = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

/** A longer text than this would push the numbers off the page. */
const MOST_LETTERS = 48;

/** As written in the document, a long text cut short; a whole section in a word, since its fields would fill the page. */
function typed(value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (typeof value === "string") return shortened(plain(value), MOST_LETTERS);
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  return isNode(value) ? "given" : String(value);
}
