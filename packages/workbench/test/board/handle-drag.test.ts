import { positionOf, solveAt, study } from "@armwright/engine";
import { applyOperations, readCarValue, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { gripOf, inCar, locked, moveBy } from "../../src/board/handle-drag.ts";
import { stopAt } from "../../src/board/stop-drag.ts";

const document = startingDocument("h-arm", "inch-pound");
const reading = readCarValue(document);
if (!reading.ok) throw new Error("the starting car cannot be read");
const made = study(reading.car);
const at = (travel: number) => {
  const solved = solveAt(made.corner, travel);
  if (!solved) throw new Error("out of range");
  return positionOf(made.corner, solved.state);
};
const INCH = 0.0254;

describe("a point in the hand", () => {
  test("moves in the view's plane and snaps to a sixteenth", () => {
    const grip = gripOf("linkage.upperLink.inner", document, made, at(0));
    if (!grip) throw new Error("no grip");
    expect(moveBy(grip, inCar("rear", -1.03 * INCH, -0.27 * INCH), "inch-pound")).toEqual([
      { path: "linkage.upperLink.inner.y", value: "13 1/2" },
      { path: "linkage.upperLink.inner.z", value: "21 1/2" },
    ]);
    expect(moveBy(grip, inCar("top", 0, -0.5 * INCH), "inch-pound")).toEqual([
      { path: "linkage.upperLink.inner.x", value: "1/2" },
    ]);
    expect(moveBy(grip, inCar("left", 0, 0.25 * INCH), "inch-pound")).toEqual([
      { path: "linkage.upperLink.inner.z", value: 21 },
    ]);
  });

  test("moved less than half a step it stays as it was typed", () => {
    const grip = gripOf("linkage.upperLink.inner", document, made, at(0));
    expect(grip && moveBy(grip, inCar("rear", 0.02 * INCH, 0.01 * INCH), "inch-pound")).toEqual([]);
  });

  test("a locked axis lets only the longer way through", () => {
    expect(locked(0.3, -0.2)).toEqual([0.3, 0]);
    expect(locked(0.1, -0.2)).toEqual([0, -0.2]);
  });

  test("on a part that has turned, the point follows the hand, not the drawing board", () => {
    const travel = 5 * INCH;
    const position = at(travel);
    const grip = gripOf("shock.lower", document, made, position);
    if (!grip) throw new Error("no grip");
    const moved = applyOperations(document, moveBy(grip, inCar("rear", 0, -2 * INCH), "metric"));
    const after = readCarValue(moved);
    if (!after.ok) throw new Error("faults");
    const arm = position.poses["lower-arm"];
    const d = {
      y: (after.car.shock?.lower.point.y ?? 0) - grip.start.y,
      z: (after.car.shock?.lower.point.z ?? 0) - grip.start.z,
    };
    const r = arm?.rotation ?? [];
    // Turned with the arm, the change is two inches up, to half a millimetre of snap.
    expect(Math.abs((r[7] ?? 0) * d.y + (r[8] ?? 0) * d.z - 2 * INCH)).toBeLessThan(0.001);
    expect(Math.abs((r[4] ?? 0) * d.y + (r[5] ?? 0) * d.z)).toBeLessThan(0.001);
  });
});

describe("a chosen stop in the hand", () => {
  test("dragging the strap's block gives the strap that is taut there", () => {
    const change = stopAt("droop", -5 * INCH, document, made, "inch-pound");
    if (!change) throw new Error("no change");
    const after = readCarValue(applyOperations(document, change.operations));
    if (!after.ok) throw new Error("faults");
    // The strap is typed to a sixteenth; the wheel then stops within that, times its lever.
    expect(Math.abs(study(after.car).travel.droop.stop.travel + 5 * INCH)).toBeLessThan(INCH / 16);
    expect(change.words).toMatch(/^strap 1\d/);
  });

  test("dragging the bump stop's block builds its foot up or down", () => {
    const change = stopAt("bump", 6 * INCH, document, made, "inch-pound");
    if (!change) throw new Error("no change");
    const after = readCarValue(applyOperations(document, change.operations));
    if (!after.ok) throw new Error("faults");
    expect(Math.abs(study(after.car).travel.bump.stop.travel - 6 * INCH)).toBeLessThan(INCH / 16);
    expect(change.words).toContain("built up");
  });

  test("a stop that no part makes is a travel aimed at", () => {
    const { strap: _, ...without } = document;
    const now = readCarValue(without);
    if (!now.ok) throw new Error("faults");
    const change = stopAt("droop", -4 * INCH, now.document, study(now.car), "inch-pound");
    expect(change?.operations).toEqual([{ path: "targets.droop", value: 4 }]);
  });
});
