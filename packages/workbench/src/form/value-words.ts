import { parseQuantity, type UnitSystem } from "@armwright/engine";
import type { CarDocument } from "@armwright/engine/document";
import { shown, tidy } from "../words/shown.ts";
import { fieldAt } from "./schema-fields.ts";
import { wordShown } from "./typed.ts";

const WAYS = { x: ["forward", "back"], y: ["out", "past the centreline"], z: ["up", "below the ground"] } as const;

/** A value of the document as one says it: `5 5/8 in back, 20 1/2 in out, 17 3/16 in up, bolted to the chassis`. */
export function valueInWords(path: string, value: unknown, document: CarDocument, units: UnitSystem): string {
  if (value === undefined || value === null) return "none";
  if (typeof value !== "object") return plain(path, value, document, units);
  if (Array.isArray(value)) return value.length === 1 ? "1 entry" : `${value.length} entries`;
  return Object.entries(value)
    .map(([name, each]) => {
      const way = WAYS[name as keyof typeof WAYS];
      const metres = way ? read(each, "length", document) : undefined;
      if (way && metres !== undefined) return `${shown(Math.abs(metres), "length", units)} ${way[metres < 0 ? 1 : 0]}`;
      const said = valueInWords(`${path}.${name}`, each, document, units);
      if (name === "on") return `bolted to the ${said}`;
      return `${fieldAt(`${path}.${name}`, document)?.label.toLowerCase() ?? name} ${said}`;
    })
    .join(", ");
}

function plain(path: string, value: unknown, document: CarDocument, units: UnitSystem): string {
  const dimension = fieldAt(path, document)?.dimension;
  const si = dimension && read(value, dimension, document);
  return si === undefined || !dimension ? tidy(wordShown(String(value))) : shown(si, dimension, units);
}

function read(value: unknown, dimension: Parameters<typeof parseQuantity>[1], { units }: CarDocument) {
  if (typeof value !== "number" && typeof value !== "string") return undefined;
  const parsed = parseQuantity(value, dimension, units);
  return parsed.ok ? parsed.value : undefined;
}
