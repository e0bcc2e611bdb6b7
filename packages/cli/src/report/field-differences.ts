import { formatPath } from "@armwright/engine/document";

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

/** As written in the document; a whole section in brief, since its fields would fill the page. */
function typed(value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (typeof value === "string") return value;
  const text = JSON.stringify(value);
  return text.length <= 40 ? text : Array.isArray(value) ? `a list of ${value.length}` : "given";
}
