import { parseQuantity, typedLength, type Vec3 } from "@armwright/engine";
import { type CarDocument, type FieldValue, type Operation, parsePath, valueAt } from "@armwright/engine/document";

/** A point of the car and where its coordinates come from. */
export interface PointSource {
  readonly path: string;
  /** Name of the survey's point; null where it is typed. */
  readonly surveyed: string | null;
}

export function sourceOf(document: CarDocument, path: string): PointSource {
  const name: unknown = valueAt(document, [...(parsePath(path) ?? []), "surveyed"]);
  return { path, surveyed: typeof name === "string" ? name : null };
}

/** What else a point says, such as the part that it is bolted to. */
function restOf(document: CarDocument, path: string): Readonly<Record<string, FieldValue>> {
  const value = valueAt(document, parsePath(path) ?? []);
  if (typeof value !== "object" || value === null || Array.isArray(value)) return {};
  return Object.fromEntries(
    Object.entries(value).filter(([field]) => !["x", "y", "z", "surveyed"].includes(field)),
  ) as Readonly<Record<string, FieldValue>>;
}

/** Its ± then comes from the survey, too. */
const withoutOwn = ({ plusMinus: _, ...rest }: Readonly<Record<string, FieldValue>>) => rest;

/** The edit that lets a point follow from the readings. */
export const toSurveyed = (document: CarDocument, path: string, name: string): readonly Operation[] => [
  { path, value: { surveyed: name, ...withoutOwn(restOf(document, path)) } },
];

/** The edit that types a point where the survey has it now, as a tape reads. */
export const toTyped = (document: CarDocument, path: string, { x, y, z }: Vec3): readonly Operation[] => [
  {
    path,
    value: {
      x: typedLength(x, document.units),
      y: typedLength(y, document.units),
      z: typedLength(z, document.units),
      ...restOf(document, path),
    },
  },
];

/** Typed coordinates, m; null where one is missing. */
export function typedAt(document: CarDocument, path: string): Vec3 | null {
  const at = (axis: string): number => {
    const typed: unknown = valueAt(document, [...(parsePath(path) ?? []), axis]);
    if (typeof typed !== "number" && typeof typed !== "string") return Number.NaN;
    const parsed = parseQuantity(typed, "length", document.units);
    return parsed.ok ? parsed.value : Number.NaN;
  };
  const point = { x: at("x"), y: at("y"), z: at("z") };
  return [point.x, point.y, point.z].every(Number.isFinite) ? point : null;
}
