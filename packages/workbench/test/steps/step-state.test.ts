import { applyOperations, type CarDocument, simplestDocument, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { startOfPart } from "../../src/form/parts.ts";
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

  test("the check is not done while an entry of any step cannot be read", () => {
    const broken = applyOperations(car, [{ path: "strap.length", value: "long" }]);
    expect(stateOf("travel", broken)).toMatchObject({ shape: "again", word: "1 entry to mend" });
    expect(stateOf("check", broken)).toMatchObject({ shape: "again", word: "1 entry to mend" });
  });
});
