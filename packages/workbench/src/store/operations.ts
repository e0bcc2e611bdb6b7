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
    const steps = parsePath(path) ?? [];
    const absent = firstAbsent(now, steps);
    back.unshift(
      absent ? { path: formatPath(absent), value: undefined } : { path, value: valueAt(now, steps) as FieldValue },
    );
    now = setField(now, path, value);
  }
  return back;
}

/** The shortest part of the path at which nothing stands yet; undefined where the whole path leads somewhere. */
function firstAbsent(document: CarDocument, steps: Path): Path | undefined {
  for (let length = 1; length <= steps.length; length += 1) {
    if (valueAt(document, steps.slice(0, length)) === undefined) return steps.slice(0, length);
  }
  return undefined;
}

/** Of several edits of one field only the last, in the order of the first. */
export function merged(operations: readonly Operation[]): readonly Operation[] {
  return [...new Map(operations.map((operation) => [operation.path, operation])).values()];
}
