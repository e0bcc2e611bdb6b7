import { study } from "@armwright/engine";
import { readCarValue, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { stepOfPlace } from "../../src/steps/step-of-place.ts";

describe("the order of work", () => {
  test.each([
    ["wheel.toe", "stance"],
    ["wheel.hubFace.y", "spindle"],
    ["linkage.upperLink.outer", "spindle"],
    ["linkage.upperLink.inner.z", "arms"],
    ["linkage.links[3].outer.x", "spindle"],
    ["linkage", "arms"],
    ['rodEnds["upperLink.inner"].misalignmentLimit', "arms"],
    ["driveshaft.outer.angleLimit", "driveshaft"],
    ["strap.length", "travel"],
    ["targets.droop", "travel"],
    ["targets.trackWidth", "stance"],
    ["stops.bump", "travel"],
    ["shock.longest", "shock"],
    ["keepOuts[2]", "room"],
    ["underbody", "room"],
    ["", "check"],
  ])("%s is entered at %s", (place, step) => expect(stepOfPlace(place)).toBe(step));

  test("every finding of the starting cars that has a place leads to a step with fields", () => {
    for (const kind of ["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const) {
      const reading = readCarValue(startingDocument(kind, "metric"));
      if (!reading.ok) throw new Error("the starting car cannot be read");
      const lost = study(reading.car).findings.filter(({ place }) => place !== "" && stepOfPlace(place) === "check");
      expect(lost.map(({ code, place }) => [code, place])).toEqual([]);
    }
  });
});
