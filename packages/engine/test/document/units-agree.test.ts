import fc from "fast-check";
import { expect, test } from "vitest";
import type { Car } from "../../src/car/car.ts";
import { type CarDocument, readCarValue, sayFault, startingDocument } from "../../src/document/index.ts";
import { parseLength } from "../../src/units/index.ts";
import { anyDocument, KINDS, retyped } from "./typed-documents.ts";

/** m and kg: a length of metres held in a double is good to 1e-15; adding up inches and sixteenths loses a few of those. */
const SAME = 1e-12;

function carOf(document: CarDocument): Car {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(reading.faults.map(sayFault).join("\n"));
  return reading.car;
}

/** Largest difference of any number in the two cars; infinite where anything else differs. */
function difference(a: unknown, b: unknown): number {
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b);
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null)
    return a === b ? 0 : Number.POSITIVE_INFINITY;
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return Math.max(0, ...names.map((name) => difference(Reflect.get(a, name), Reflect.get(b, name))));
}

const withoutUnits = (car: Car): Car => ({ ...car, units: "metric" });

const inMetres =
  (document: CarDocument) =>
  (typed: number | string): number => {
    const parsed = parseLength(typed, document.units);
    if (!parsed.ok) throw new Error(`no length: ${typed}`);
    return parsed.metres;
  };

test("the same car in inches and in millimetres is the same car", () => {
  const massOf = (document: CarDocument, typed: number | string) =>
    document.units === "metric" ? Number(typed) : Number(typed) * 0.45359237;
  fc.assert(
    fc.property(anyDocument, (document) => {
      const metres = inMetres(document);
      const metric = retyped(
        document,
        (typed) => metres(typed) * 1000,
        (typed) => massOf(document, typed),
        "metric",
      );
      const inch = retyped(
        document,
        (typed) => metres(typed) / 0.0254,
        (typed) => massOf(document, typed) / 0.45359237,
        "inch-pound",
      );
      const car = withoutUnits(carOf(document));
      expect(difference(withoutUnits(carOf(metric)), car)).toBeLessThan(SAME);
      expect(difference(withoutUnits(carOf(inch)), car)).toBeLessThan(SAME);
    }),
    { numRuns: 200 },
  );
});

test.each(KINDS)("%s: millimetres typed in an inch document, and inches in a metric one", (kind) => {
  const metric = startingDocument(kind, "metric");
  const mixed = retyped(
    metric,
    (typed) => `${typed} mm`,
    (typed) => `${typed} kg`,
    "inch-pound",
  );
  expect(difference(withoutUnits(carOf(mixed)), withoutUnits(carOf(metric)))).toBeLessThan(SAME);
  const inch = startingDocument(kind, "inch-pound");
  const other = retyped(
    inch,
    (typed) => `${typed} in`,
    (typed) => `${typed} lb`,
    "metric",
  );
  expect(difference(withoutUnits(carOf(other)), withoutUnits(carOf(inch)))).toBeLessThan(SAME);
});
