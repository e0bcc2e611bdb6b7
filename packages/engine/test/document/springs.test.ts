import { describe, expect, it, test } from "vitest";
import { type FieldValue, readCarValue, sayFault, setField, startingDocument } from "../../src/document/index.ts";
import { INCH, POUND_FORCE_PER_INCH, PSI } from "../../src/units/index.ts";

const SPRINGS = {
  main: { rate: 300, freeLength: 12, solidLength: 5 },
  tender: { rate: 250, freeLength: 10, solidLength: 4 },
  crossoverAt: 18,
  preload: "3/4",
  collarPitch: 0.1,
};

function read(changes: readonly (readonly [string, FieldValue])[], units: "inch-pound" | "metric" = "inch-pound") {
  let document = startingDocument("h-arm", units);
  for (const [path, value] of changes) document = setField(document, path, value);
  return readCarValue(document);
}

function carOf(...input: Parameters<typeof read>) {
  const reading = read(...input);
  if (!reading.ok) throw new Error(reading.faults.map(sayFault).join("\n"));
  return reading.car;
}

describe("springs in a document", () => {
  it("are read in the document's units, nothing assumed that was given", () => {
    const { shock, assumed } = carOf([["shock.springs", SPRINGS]]);
    const { main, tender, crossoverAt, preload, collarPitch } = shock!.springs!;
    expect(main.rate).toBeCloseTo(300 * POUND_FORCE_PER_INCH, 6);
    expect(tender!.freeLength).toBeCloseTo(10 * INCH, 12);
    expect(crossoverAt).toBeCloseTo(18 * INCH, 12);
    expect(preload).toBeCloseTo(0.75 * INCH, 12);
    expect(collarPitch).toBeCloseTo(0.1 * INCH, 12);
    expect(assumed.filter(({ path }) => path.startsWith("shock.springs"))).toEqual([]);
  });

  it("are read in metric", () => {
    const springs = { main: { rate: 52.5, freeLength: 300 } };
    const { main } = carOf([["shock.springs", springs]], "metric").shock!.springs!;
    expect(main.rate).toBeCloseTo(52_500, 6);
    expect(main.solidLength).toBeCloseTo(0.126, 12);
  });

  it("list what is assumed for them", () => {
    const springs = { main: { rate: 300, freeLength: 12 }, tender: { rate: 250, freeLength: 10 } };
    const { shock, assumed } = carOf([["shock.springs", springs]]);
    expect(assumed.map(({ path }) => path).filter((path) => path.startsWith("shock.springs"))).toEqual([
      "shock.springs.main.solidLength",
      "shock.springs.tender.solidLength",
      "shock.springs.crossoverAt",
      "shock.springs.preload",
      "shock.springs.collarPitch",
    ]);
    expect(shock!.springs!.crossoverAt).toBeUndefined();
  });

  it("take the stop by its gap: 0.6 of what the shock goes in for 300 under 200 lb/in", () => {
    const springs = {
      main: { rate: 300, freeLength: 12 },
      tender: { rate: 200, freeLength: 10 },
      crossoverGap: 3,
    };
    // The starting shock is 25 in open.
    expect(carOf([["shock.springs", springs]]).shock!.springs!.crossoverAt).toBeCloseTo((25 - 3 / 0.6) * INCH, 12);
  });

  it("stand on the right shock by that shock's own entry", () => {
    const document = startingDocument("h-arm", "inch-pound");
    const { upper, lower, shortest, longest } = document.shock!;
    const mirror = (point: typeof upper) => ({ ...point, y: -Number(point.y) });
    const right = { upper: mirror(upper), lower: mirror(lower), shortest, longest, springs: SPRINGS };
    const car = carOf([["right", { shock: right } as FieldValue]]);
    expect(car.shock!.springs).toBeUndefined();
    expect(car.right!.shock!.springs!.main.rate).toBeCloseTo(300 * POUND_FORCE_PER_INCH, 6);
  });
});

test("gas is read, or assumed from the rod's own stroke", () => {
  const given = { kind: "reservoir", pressure: "150 psi", rodDiameter: 1, volume: 30 };
  const gas = carOf([["shock.gas", given]]).shock!.gas!;
  expect(gas.pressure).toBeCloseTo(150 * PSI, 6);
  expect(gas.volume).toBeCloseTo(30 * INCH ** 3, 12);
  const assumed = carOf([["shock.gas", { kind: "emulsion" }]]).shock!.gas!;
  expect(assumed.pressure).toBeCloseTo(200 * PSI, 6);
  expect(assumed.volume).toBeCloseTo(3 * (Math.PI / 4) * (0.875 * INCH) ** 2 * 9.75 * INCH, 12);
});

test.each<readonly [string, FieldValue, string]>([
  ["shock.springs.main.solidLength", 12, "shock.springs.main.solidLength: 12 has to be less than"],
  ["shock.springs.crossoverAt", 26, "shock.springs.crossoverAt: 26 has to be less than the 25 of shock.longest"],
  ["shock.springs.crossoverGap", 3, "shock.springs.crossoverGap: shock.springs.crossoverAt is given as well"],
  [
    "shock.springs.main.rate",
    "stiff",
    'shock.springs.main.rate: "stiff" is not a rate: write a number, or text such as',
  ],
  ["shock.springs.main.rate", 60_000, "is beyond 1 000 N/mm (5 700 lb/in)"],
  ["shock.springs.main.rate", 0, "has to be more than 0"],
])("refuses %s of %j", (path, value, sentence) => {
  const reading = read([
    ["shock.springs", SPRINGS],
    [path, value],
  ]);
  expect(reading.ok ? [] : reading.faults.map(sayFault)).toEqual([expect.stringContaining(sentence)]);
});
