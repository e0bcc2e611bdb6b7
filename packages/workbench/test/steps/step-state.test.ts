import { applyOperations, type CarDocument, simplestDocument, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { scaledStart } from "../../src/files/new-car.ts";
import { startOfPart } from "../../src/form/parts.ts";
import { guessedPoints } from "../../src/steps/guessed-points.ts";
import { stepState } from "../../src/steps/step-state.ts";
import { type StepId, stepOfId } from "../../src/steps/steps.ts";
import { NOT_READ, studied } from "../../src/store/live-study.ts";

const car = startingDocument("h-arm", "inch-pound");
const stateOf = (id: StepId, document: CarDocument) =>
  stepState(
    stepOfId(id),
    document,
    studied(document, studied(car, NOT_READ, "at rest", "left"), "at rest", "left"),
    false,
  );

describe("how far a step is", () => {
  test("springs are open until they are entered, on a car without a shock too", () => {
    expect(stateOf("springs", car)).toMatchObject({ shape: "open", word: "open" });
    expect(stateOf("springs", simplestDocument("h-arm", "inch-pound"))).toMatchObject({ shape: "open" });
    const sprung = applyOperations(car, [{ path: "shock.springs", value: startOfPart("shock.springs", car) }]);
    expect(stateOf("springs", sprung).word).toMatch(/^done|^look again/);
  });

  test("a new car's points are to be measured until they are typed, one by one", () => {
    const made = scaledStart({
      name: "",
      kind: "h-arm",
      units: "inch-pound",
      tyreDiameter: "35",
      tyreWidth: "12 1/2",
      trackWidth: "80",
      clearance: "12",
      bump: "7",
      droop: "6",
    });
    if ("fault" in made) throw new Error(made.fault);
    const inner = (name: string, point: object) => ({ path: `linkage.${name}`, value: point as never });
    const begun = guessedPoints("arms", made);
    expect(begun).toBe(3);
    expect(guessedPoints("spindle", made)).toBeGreaterThan(0);
    // A point drawn elsewhere from behind has not been measured forward; a measured one is done.
    const up = { path: "linkage.upperLink.inner.z", value: 23 };
    expect(guessedPoints("arms", applyOperations(made, [up]))).toBe(3);
    const front = inner("lowerArm.innerFront", { x: "8 3/16", y: 11, z: 13 });
    expect(guessedPoints("arms", applyOperations(made, [up, front]))).toBe(2);
    const sameForward = inner("lowerArm.innerFront", { x: 8, y: "11 3/16", z: "13 1/16" });
    expect(guessedPoints("arms", applyOperations(made, [sameForward]))).toBe(2);
    // Another tyre moves no point, and makes none measured.
    expect(guessedPoints("arms", applyOperations(made, [{ path: "wheel.freeRadius", value: 17 }]))).toBe(3);
    const rear = inner("lowerArm.innerRear", { x: "-7 7/8", y: 11, z: 13 });
    const link = inner("upperLink.inner", { x: "1/2", y: 12, z: 22 });
    expect(guessedPoints("arms", applyOperations(made, [front, rear, link]))).toBe(0);
    expect(guessedPoints("arms", applyOperations(made, [{ path: "datum", value: "rail end" }]))).toBe(0);
    expect(stateOf("arms", made)).toMatchObject({ shape: "begun", word: "3 to measure" });
  });

  test("the check is not done while an entry of any step cannot be read", () => {
    const broken = applyOperations(car, [{ path: "strap.length", value: "long" }]);
    expect(stateOf("travel", broken)).toMatchObject({ shape: "again", word: "1 entry to mend" });
    expect(stateOf("check", broken)).toMatchObject({ shape: "again", word: "1 entry to mend" });
  });
});
