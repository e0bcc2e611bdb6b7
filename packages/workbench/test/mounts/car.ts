import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Car, type Corner, makeCorner } from "@armwright/engine";
import { type CarDocument, readCarValue } from "@armwright/engine/document";

export const INCH = 0.0254;

const EXAMPLES = fileURLToPath(new URL("../../../../examples/", import.meta.url));

/** One of the example cars, as typed and as computed with. */
export function exampleCar(name: string): {
  readonly document: CarDocument;
  readonly car: Car;
  readonly corner: Corner;
} {
  const document = JSON.parse(readFileSync(`${EXAMPLES}${name}.car.json`, "utf8")) as CarDocument;
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(`${name} does not read`);
  return { document, car: reading.car, corner: makeCorner(reading.car) };
}

export const exampleFile = (file: string): string => readFileSync(`${EXAMPLES}${file}`, "utf8");
