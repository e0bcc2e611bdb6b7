import { type CarDocument, type FieldValue, valueAt } from "@armwright/engine/document";

export type Side = "left" | "right";

/** Sections in which the right side may differ from the left one's mirror image. */
export const RIGHT_SECTIONS = ["wheel", "linkage", "rodEnds", "driveshaft", "shock", "strap", "bumpStop"] as const;
export type RightSection = (typeof RIGHT_SECTIONS)[number];

const sectionOf = (place: string): string => /^\w+/.exec(place)?.[0] ?? "";

/** Whether the right side has a section of its own at this place of a corner. */
export const hasOwnRight = (place: string, document: CarDocument | null): boolean =>
  document !== null && valueAt(document, ["right", sectionOf(place)]) !== undefined;

/** Where a place of the corner that is shown stands in the document: the right one's own sections are below `right`. */
export const placeOnSide = (place: string, side: Side, document: CarDocument | null): string =>
  side === "right" && hasOwnRight(place, document) ? `right.${place}` : place;

/** The place as a corner names it, whichever side it is of. */
export const cornerPlace = (place: string): string => place.replace(/^right\./, "");

/** A section seen in the mirror: every y changes its sign, left is right. Everything else stays as it was typed. */
export function mirrored(value: FieldValue): FieldValue {
  if (value === "left") return "right";
  if (value === "right") return "left";
  if (Array.isArray(value)) return value.map((each) => mirrored(each as FieldValue));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [
      name,
      name === "y" && (typeof each === "number" || typeof each === "string")
        ? negated(each)
        : // A rod end's hand is a word of its thread, not of the car's side.
          name === "hand"
          ? each
          : mirrored(each as FieldValue),
    ]),
  );
}

/** The same length on the other side of the centreline, as typed. */
export function negated(typed: number | string): number | string {
  if (typeof typed === "number") return typed === 0 ? 0 : -typed;
  const text = typed.trim();
  return text.startsWith("-") ? text.slice(1).trimStart() : `-${text.replace(/^\+\s*/, "")}`;
}
