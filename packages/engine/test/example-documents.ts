import { readFileSync } from "node:fs";
import { type CarDocument, type CarReading, readCarDocument, readCarValue, sayFault } from "../src/document/index.ts";
import type { Car } from "../src/index.ts";

export const EXAMPLES = ["saltbush", "greasewood", "rabbitbrush", "catclaw", "juniper"] as const;
export type ExampleName = (typeof EXAMPLES)[number];
/** The surveyed example is no such car of typed points alone. */
type AnyExample = ExampleName | "brittlebush";

export const exampleText = (name: AnyExample): string =>
  readFileSync(new URL(`../../../examples/${name}.car.json`, import.meta.url), "utf8");

/** The document of an example as typed; free to be changed. */
export const exampleDocument = (name: AnyExample): EditableDocument => JSON.parse(exampleText(name));

export const exampleCar = (name: AnyExample): Car => carOfReading(readCarDocument(exampleText(name)));

/** A car out of a document put together in a test, which must have no faults. */
export const carOfDocument = (document: unknown): Car => carOfReading(readCarValue(document));

function carOfReading(reading: CarReading): Car {
  if (!reading.ok) throw new Error(reading.faults.map((fault) => JSON.stringify(sayFault(fault))).join("\n"));
  return reading.car;
}

/** A car document that a test may write into. */
export type EditableDocument = Editable<CarDocument>;
type Editable<T> = T extends object ? { -readonly [K in keyof T]: Editable<T[K]> } : T;
