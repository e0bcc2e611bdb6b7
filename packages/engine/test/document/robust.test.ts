import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type CarReading,
  type Fault,
  formatPath,
  parsePath,
  readCarDocument,
  readCarValue,
  sayFault,
  setField,
  startingDocument,
  writeCarDocument,
} from "../../src/document/index.ts";
import { anyDocument } from "./typed-documents.ts";

function expectSound(reading: CarReading): void {
  if (reading.ok) {
    expectFinite(reading.car);
    return;
  }
  expect(reading.faults.length).toBeGreaterThan(0);
  for (const fault of reading.faults) {
    expect(fault.path).toBe(formatPath(parsePath(fault.path) ?? ["no path"]));
    expect(sayFault(withoutTyped(fault))).not.toMatch(/undefined|NaN|\[object/);
  }
}

/** The fault without what the document itself says, which may well be the word "undefined". */
function withoutTyped(fault: Fault): Fault {
  const ofNames = fault.code === "unknown-pivot" ? { options: ["a", "b"], suggestion: "a" } : {};
  return {
    ...fault,
    path: "x",
    ...(fault.found === undefined ? {} : { found: "typed" }),
    ...(fault.other === undefined ? {} : { other: "there" }),
    ...ofNames,
  };
}

function expectFinite(value: unknown): void {
  if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
  else if (typeof value === "object" && value !== null) Object.values(value).forEach(expectFinite);
  else expect(["string", "boolean"]).toContain(typeof value);
}

/** Every place of a document, as a path. */
function places(value: unknown, path: readonly (string | number)[] = []): readonly (readonly (string | number)[])[] {
  if (typeof value !== "object" || value === null) return [path];
  const inside = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return [path, ...inside.flatMap(([name, each]) => places(each, [...path, name]))];
}

describe("never throws, and always says what is wrong", () => {
  test("on any text", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.string({ unit: "binary" })), (text) =>
        expectSound(readCarDocument(text)),
      ),
      {
        numRuns: 1000,
      },
    );
  });

  test("on a car document cut off, doubled or damaged anywhere", () => {
    const text = writeCarDocument(startingDocument("five-link", "inch-pound"));
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(30), fc.string({ maxLength: 4 }), (at, length, put) => {
        expectSound(readCarDocument(text.slice(0, at) + put + text.slice(at + length)));
      }),
      { numRuns: 500 },
    );
  });

  test("on a car document with any value in any place", () => {
    const documents = ["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const;
    const values = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom(
        0,
        -0,
        1e-300,
        1e300,
        Number.NaN,
        Number.NEGATIVE_INFINITY,
        "12 3/17",
        "shock",
        "chassis",
        "h-arm",
        {},
        [],
      ),
    );
    fc.assert(
      fc.property(fc.constantFrom(...documents), fc.nat(), values, (kind, pick, value) => {
        const document = startingDocument(kind, "inch-pound");
        const all = places(document).filter((path) => path.length > 0);
        const path = all[pick % all.length] ?? ["name"];
        expectSound(readCarValue(setField(document, path, value as never)));
      }),
      { numRuns: 2000 },
    );
  });

  test("on any text as a path", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(() => parsePath(text)).not.toThrow();
      }),
    );
  });
});

describe("round trips", () => {
  test("what was written is read as it was typed, and written again byte for byte", () => {
    fc.assert(
      fc.property(anyDocument, (document) => {
        const text = writeCarDocument(document);
        const reading = readCarDocument(text);
        expect(reading.ok ? [] : reading.faults.map(sayFault)).toEqual([]);
        if (!reading.ok) return;
        expect(reading.document).toEqual(document);
        expect(writeCarDocument(reading.document)).toBe(text);
      }),
      { numRuns: 300 },
    );
  });
});
