import type { LinkageKindName } from "@armwright/engine";
import { type CarDocument, type FieldValue, startingDocument } from "@armwright/engine/document";

/** Parts that a car may do without, as they stand on an invented car of the same kind: a start for the builder's own numbers. */
export function startOfPart(section: string, document: CarDocument): FieldValue {
  if (section === "tolerances") return { tacked: document.units === "metric" ? 1.5 : "1/16" };
  const start = startingDocument(document.linkage.kind as LinkageKindName, document.units);
  return (start as unknown as Readonly<Record<string, FieldValue>>)[section] ?? {};
}

export type NewItem = { readonly words: string; readonly value: FieldValue };

/** What can be added to a list. */
export function newItems(list: string, document: CarDocument): readonly NewItem[] {
  const start = startingDocument(document.linkage.kind as LinkageKindName, document.units);
  const size = (inches: number): number => (document.units === "metric" ? Math.round(inches * 25.4) : inches);
  if (list === "underbody") {
    return [{ words: "a low point", value: { name: "low point", x: size(0), y: size(10), z: size(11) } }];
  }
  const [tube, wall] = (start.keepOuts ?? []) as unknown as readonly FieldValue[];
  return [
    {
      words: "a box",
      value: {
        shape: "box",
        name: "tank",
        centre: { x: size(10), y: size(8), z: size(34) },
        size: { x: size(12), y: size(12), z: size(10) },
      },
    },
    { words: "a tube", value: tube ?? {} },
    { words: "a flat face", value: wall ?? {} },
  ];
}
