import { describe, expect, test } from "vitest";
import { meaningOf, readCarValue, startingDocument } from "../../src/document/index.ts";
import { KINDS } from "./typed-documents.ts";

describe("what the form says of a field", () => {
  test.each([
    ["wheel.toe", "Toe at ride height, this wheel alone, positive toe-in."],
    ['rodEnds["lowerArm.innerFront"].boltOn', "The part that holds the bolt; the shank is then on the other one."],
    // Found in the second form of its section, and in a list.
    ["linkage.upperArm.diameter", "Outside diameter of its tubes."],
    ["linkage.links[3].diameter", "Outside diameter of its tube."],
    ["keepOuts[0].clearance", "Gap wanted round it."],
    ["right.shock.upper.on", "The part that it is bolted to."],
  ])("%s", (path, meaning) => expect(meaningOf(path)).toBe(meaning));

  test.each(["wheel.colour", "nothing", "shock[0]", "..", "wheel.toe.x"])("%s is no field", (path) =>
    expect(meaningOf(path)).toBeUndefined(),
  );

  test.each(KINDS)("every value assumed for a %s has one", (kind) => {
    const reading = readCarValue(startingDocument(kind, "metric"));
    if (!reading.ok) throw new Error("the starting document does not read");
    expect(reading.car.assumed.length).toBeGreaterThan(0);
    for (const { path } of reading.car.assumed) expect(meaningOf(path), path).toBeTruthy();
  });
});
