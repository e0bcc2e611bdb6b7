import {
  type Dimension,
  formatLength,
  formatValue,
  parseQuantity,
  typedLength,
  type UnitSystem,
  unitOf,
} from "@armwright/engine";
import type { Typed } from "@armwright/engine/document";
import { unitShown } from "../words/shown.ts";

/**
 * What a builder typed into a field, as the document keeps it: as typed, a plain number as a number. Where the shown unit
 * is not the document's own, a bare number carries its unit, so that it means what was read beside it.
 */
export function typedValue(
  text: string,
  dimension: Dimension | undefined,
  shown: UnitSystem,
  own: UnitSystem,
): Typed | undefined {
  const trimmed = text.replace(/\u2212/g, "-").trim();
  if (trimmed === "") return undefined;
  const isBare = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)$/.test(trimmed);
  const needsUnit = dimension !== undefined && unitOf(dimension, shown) !== unitOf(dimension, own);
  if (needsUnit && (isBare || (dimension === "length" && /^[-+]?(?:\d+[ -])?\d+\/\d+$/.test(trimmed)))) {
    return `${trimmed} ${unitOf(dimension, shown)}`;
  }
  // 14 stays a number, 14.50 stays as it was written.
  return isBare && String(Number(trimmed)) === trimmed ? Number(trimmed) : trimmed;
}

/** A length made by the page (a drag, a key) as a builder would type it: on a sixteenth or on half a millimetre. */
export function lengthAsTyped(metres: number, shown: UnitSystem, own: UnitSystem): Typed {
  return shown === own ? typedLength(metres, own) : `${formatLength(metres, shown)} ${unitOf("length", shown)}`;
}

/** What stands in the field, as typed; with its unit only where the builder wrote one. */
export const typedText = (value: unknown): string =>
  typeof value === "number" || typeof value === "string" ? String(value) : "";

/** One of the document's own words, as it is read: `bump stop`. A number keeps its sign. */
export const wordShown = (word: string): string =>
  word === "u-joint" ? "U-joint" : word.replace(/(?<=[a-z])-(?=[a-z])/g, " ");

/** The unit that a bare number in this field means. */
export function unitOfTyped(value: unknown, dimension: Dimension, own: UnitSystem): string {
  if (typeof value === "string" && /[a-z"'%°]/i.test(value)) return "";
  return unitShown(dimension, own);
}

/** A typed value in the other reading: `12 3/16` in a document of inches, shown in millimetres; empty where it says no more. */
export function converted(value: unknown, dimension: Dimension, shown: UnitSystem, own: UnitSystem): string {
  if (typeof value !== "number" && typeof value !== "string") return "";
  const parsed = parseQuantity(value, dimension, own);
  if (!parsed.ok) return "";
  const writtenElsewhere = typeof value === "string" && /[a-z"']/i.test(value);
  if (shown === own && !writtenElsewhere) return "";
  return formatValue(parsed.value, dimension, shown);
}
