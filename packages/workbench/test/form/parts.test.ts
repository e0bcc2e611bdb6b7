import { type Study, study, studySprings } from "@armwright/engine";
import {
  applyOperations,
  type CarDocument,
  carJsonSchema,
  parsePath,
  readCarValue,
  sayFault,
  simplestDocument,
  startingDocument,
  valueAt,
} from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { newItems, startOfPart, takeOff, whyNotAdded } from "../../src/form/parts.ts";
import { type Field, fieldsAt, formsFrom } from "../../src/form/schema-fields.ts";
import { NOT_FORMS, STEPS } from "../../src/steps/steps.ts";

formsFrom(carJsonSchema());

const fieldsOf = (document: CarDocument): readonly Field[] =>
  STEPS.flatMap(({ places }) =>
    places.filter((place) => !NOT_FORMS.includes(place)).flatMap((place) => fieldsAt(place, document)),
  );

const itemsAt = (document: CarDocument, list: string) =>
  (valueAt(document, parsePath(list) ?? []) as readonly never[] | undefined) ?? [];

const faultsOf = (document: CarDocument): readonly string[] => {
  const reading = readCarValue(document);
  return reading.ok ? [] : reading.faults.map(sayFault);
};

/** Every value that a press of an Add button puts into the car, one press after the other, parts of parts too. */
function* presses(document: CarDocument): Generator<{ readonly path: string; readonly document: CarDocument }> {
  const seen = new Set<string>();
  for (let now = document, found = true; found; ) {
    found = false;
    for (const { path, kind } of fieldsOf(now)) {
      if (seen.has(path) || (kind !== "section" && kind !== "list") || whyNotAdded(path, now) !== undefined) continue;
      seen.add(path);
      found = true;
      if (kind === "section" && valueAt(now, parsePath(path) ?? []) === undefined) {
        now = applyOperations(now, [{ path, value: startOfPart(path, now) }]);
        yield { path, document: now };
      }
      if (kind !== "list") continue;
      for (const times of [1, 2])
        for (const { words } of newItems(path, now)) {
          const { value } = newItems(path, now).find((each) => each.words === words)!;
          now = applyOperations(now, [{ path, value: [...itemsAt(now, path), value] as never }]);
          yield { path: `${path}: ${words}, ${times}`, document: now };
        }
    }
  }
}

const KINDS = ["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const;

describe.each(KINDS)("a %s car", (kind) => {
  test.each(["inch-pound", "metric"] as const)("in %s can be read after any press of Add", (units) => {
    for (const start of [startingDocument(kind, units), simplestDocument(kind, units)]) {
      const pressed = [...presses(start)];
      for (const { path, document } of pressed)
        expect({ path, faults: faultsOf(document) }).toEqual({ path, faults: [] });
      const paths = pressed.map(({ path }) => path);
      for (const path of ["shock.springs", "shock.gas", "shock.springs.tender", "strap.stretch: a reading, 2"])
        expect(paths).toContain(path);
    }
  });
});

function studyOf(document: CarDocument): Study {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(reading.faults.map(sayFault).join("; "));
  return study(reading.car);
}

describe("what is added", () => {
  const car = startingDocument("h-arm", "inch-pound");

  test("a list of readings is given readings, each beyond the one before; a place has shapes", () => {
    expect(newItems("strap.stretch", car)).toEqual([{ words: "a reading", value: { percent: 7.5, force: 2000 } }]);
    const once = applyOperations(car, [{ path: "bumpStop.measured", value: [{ squeeze: "3/4", force: 400 }] }]);
    expect(newItems("bumpStop.measured", once)).toEqual([{ words: "a reading", value: { squeeze: 1.25, force: 900 } }]);
    expect(newItems("keepOuts", car).map(({ words }) => words)).toEqual(["a box", "a tube", "a flat face"]);
  });

  test("a spring holds its corner up about as drawn, and says nothing of a corner that was not weighed", () => {
    const made = studyOf(car);
    const springs = startOfPart("shock.springs", car, made);
    const { rest } = studySprings(studyOf(applyOperations(car, [{ path: "shock.springs", value: springs }])))!;
    expect(rest.on).toBe("springs");
    expect(Math.abs(rest.travel)).toBeLessThan(0.0254);
    const unweighed = applyOperations(car, [{ path: "weights", value: undefined }]);
    expect(startOfPart("shock.springs", unweighed, studyOf(unweighed))).toMatchObject({ main: { rate: 300 } });
  });

  test("the stop's push is told in one way", () => {
    const rubber = applyOperations(car, [{ path: "bumpStop.rubber", value: startOfPart("bumpStop.rubber", car) }]);
    expect(whyNotAdded("bumpStop.gas", rubber)).toMatch(/rubber already: take that off first/);
    expect(whyNotAdded("bumpStop.gas", car)).toBeUndefined();
  });

  test("a part taken off leaves a car that can be read, also where it ended the travel", () => {
    const stopped = applyOperations(car, [{ path: "stops.droop", value: "strap" }]);
    expect(faultsOf(stopped)).toEqual([]);
    for (const place of ["strap", "bumpStop", "shock", "driveshaft"])
      expect({ place, faults: faultsOf(applyOperations(stopped, takeOff(place, stopped))) }).toEqual({
        place,
        faults: [],
      });
  });
});
