import {
  type CarDocument,
  type FieldValue,
  formatPath,
  type Operation,
  type Path,
  parsePath,
  setField,
  valueAt,
} from "@armwright/engine/document";

/** The edits that undo these, in the order in which they have to be made. */
export function inverseOf(document: CarDocument, operations: readonly Operation[]): readonly Operation[] {
  const back: Operation[] = [];
  let now = document;
  for (const { path, value } of operations) {
    const next = setField(now, path, value);
    const place = placeChanged(now, next, parsePath(path) ?? []);
    back.unshift({ path: formatPath(place), value: valueAt(now, place) as FieldValue });
    now = next;
  }
  return back;
}

/**
 * The place whose former value undoes an edit: the field itself; the first section on the way that was not there; the end
 * of a list that became longer; a list that became shorter, since its items then stand in other places.
 */
function placeChanged(before: CarDocument, after: CarDocument, steps: Path): Path {
  for (let length = 1; length < steps.length; length += 1) {
    const place = steps.slice(0, length);
    const was = valueAt(before, place);
    const is = valueAt(after, place);
    if (was === undefined) return place;
    if (!Array.isArray(was) || !Array.isArray(is)) continue;
    if (is.length > was.length) return [...place, was.length];
    if (is.length < was.length) return place;
  }
  return steps;
}

/** Of several edits of one field only the last, in the order of the first. */
export function merged(operations: readonly Operation[]): readonly Operation[] {
  return [...new Map(operations.map((operation) => [operation.path, operation])).values()];
}
