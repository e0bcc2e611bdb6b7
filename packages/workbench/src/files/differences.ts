import { type CarDocument, type FieldValue, formatPath, type Operation, type Path } from "@armwright/engine/document";

/** The field edits that turn one document into another; lists are exchanged whole. */
export const differences = (from: CarDocument, to: CarDocument): readonly Operation[] => between([], from, to);

function between(path: Path, from: unknown, to: unknown): readonly Operation[] {
  if (JSON.stringify(from) === JSON.stringify(to)) return [];
  if (!isSection(from) || !isSection(to)) return [{ path: formatPath(path), value: to as FieldValue }];
  const names = new Set([...Object.keys(from), ...Object.keys(to)]);
  return [...names].flatMap((name) => between([...path, name], from[name], to[name]));
}

const isSection = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
