import { study } from "@armwright/engine";
import { readCarValue, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { type NewCarAnswers, scaledStart } from "../../src/files/new-car.ts";

const ANSWERS: NewCarAnswers = {
  name: "Dust",
  kind: "h-arm",
  units: "inch-pound",
  tyreDiameter: "35",
  tyreWidth: "12 1/2",
  trackWidth: "80",
  clearance: "12",
  bump: "8",
  droop: "7",
};

describe("a new car", () => {
  test.each(["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const)(
    "a %s car is whole and stands as asked",
    (kind) => {
      const made = scaledStart({ ...ANSWERS, kind });
      if ("fault" in made) throw new Error(made.fault);
      const reading = readCarValue(made);
      expect(reading.ok ? [] : reading.faults).toEqual([]);
      if (!reading.ok) return;
      const { corner, findings } = study(reading.car);
      expect(2 * corner.attitude.designContact.y).toBeCloseTo(80 * 0.0254, 2);
      expect(reading.car.wheel.freeRadius).toBeCloseTo(17.5 * 0.0254, 9);
      expect(corner.attitude.designContact.z).toBeCloseTo(0, 2);
      // Fitting it to the answers brings nothing past its limit that was not so in the layout it came from.
      const start = readCarValue(startingDocument(kind, "inch-pound"));
      if (!start.ok) throw new Error("the starting car cannot be read");
      const past = (found: typeof findings) =>
        found.filter(({ code }) => code === "past-at-ride").map(({ place }) => place);
      expect(past(findings)).toEqual(past(study(start.car).findings));
    },
  );

  test("metric answers give a metric car", () => {
    const made = scaledStart({
      ...ANSWERS,
      units: "metric",
      tyreDiameter: "840",
      tyreWidth: "320",
      trackWidth: "1830",
      clearance: "265",
      bump: "180",
      droop: "150",
    });
    if ("fault" in made) throw new Error(made.fault);
    expect(made.units).toBe("metric");
    expect(made.wheel.freeRadius).toBe(420);
  });

  test("an answer that is no length is told by its question", () => {
    expect(scaledStart({ ...ANSWERS, trackWidth: "wide" })).toEqual({
      fault: 'Track width wanted, middle of tyre to middle of tyre: "wide" is not a length',
    });
  });
});
