import { armFrames, study, studyStrength } from "@armwright/engine";
import { type CarDocument, type FieldValue, readCarValue, setField } from "@armwright/engine/document";
import { expect, test } from "vitest";
import { typedFrame } from "../../src/strength/own-frame.ts";
import { startOfStrength } from "../../src/strength/start-strength.ts";
import { exampleCar } from "../mounts/car.ts";

const CARS = ["saltbush", "juniper", "catclaw", "greasewood", "rabbitbrush", "brittlebush"] as const;

function carOf(document: CarDocument) {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.car;
}

test.each(CARS)("the usual parts can be read on %s, and are judged", (name) => {
  const { document, car } = exampleCar(name);
  const begun = carOf(setField(document, "strength", startOfStrength(car, document.units) as FieldValue));
  const found = studyStrength(study(begun));
  const checks = new Set(found?.checks.map(({ check }) => check));
  expect([...checks]).toEqual(expect.arrayContaining(["bolt-shear", "tab-bearing", "tab-weld"]));
  expect(found?.notEntered.join()).not.toMatch(/tube walls|bolts|tabs|welds/);
});

// To a sixteenth of an inch where nodes are no pivots: that much the stress of a short piece can differ.
const ROUNDED = 0.06;

test.each(["saltbush", "greasewood", "rabbitbrush"] as const)(
  "a starting frame written down on %s bears what the starting frame bore",
  (name) => {
    const { document, car } = exampleCar(name);
    const frame = armFrames(car)[0]!;
    const written = carOf(setField(document, ["strength", "frames", frame.arm], typedFrame(frame, document.units)));
    const least = (of: typeof car): number => {
      const { arms } = studyStrength(study(of))!;
      const { analysis } = arms.find((each) => each.frame.arm === frame.arm)!;
      if (!analysis.ok) throw new Error(JSON.stringify(analysis.fault));
      return Math.max(...analysis.cases.flatMap(({ uses }) => uses.map(({ use }) => use)));
    };
    expect(
      carOf(setField(document, ["strength", "frames", frame.arm], typedFrame(frame, document.units))).strength?.frames[
        frame.arm
      ],
    ).toBeDefined();
    expect(Math.abs(least(written) / least(car) - 1)).toBeLessThan(ROUNDED);
  },
);
