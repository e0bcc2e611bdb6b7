import { applyOperations, type Operation, startingDocument } from "@armwright/engine/document";
import { beforeEach, describe, expect, test } from "vitest";
import {
  beginMove,
  bench,
  edit,
  endMove,
  giveUpMove,
  move,
  redo,
  sendEditsTo,
  setTravel,
  showCar,
  showChangedElsewhere,
  undo,
} from "../../src/store/bench.ts";

const sent: (readonly Operation[])[] = [];
const length = () => bench.getState().document?.strap?.length;

beforeEach(() => {
  showCar(startingDocument("h-arm", "inch-pound"));
  sent.length = 0;
  sendEditsTo((operations) => sent.push(operations));
});

describe("a movement of the hand", () => {
  test("shows at once, is sent once, and is undone as a whole", () => {
    beginMove("strap moved");
    for (const value of ["17", "16 1/2", "16"]) move([{ path: "strap.length", value }]);
    expect(length()).toBe("16");
    expect(bench.getState().live.study?.car.strap?.length).toBeCloseTo(16 * 0.0254, 12);
    expect(sent).toEqual([]);
    endMove();
    expect(sent).toEqual([[{ path: "strap.length", value: "16" }]]);
    undo();
    expect(length()).toBe(18);
    redo();
    expect(length()).toBe("16");
    expect(sent).toHaveLength(3);
  });

  test("given up, it leaves no trace", () => {
    beginMove("strap moved");
    move([{ path: "strap.length", value: "16" }]);
    giveUpMove();
    expect(length()).toBe(18);
    expect(bench.getState().undoing.done).toEqual([]);
    expect(sent).toEqual([]);
  });

  test("a change from elsewhere does not tear the point out of the hand", () => {
    beginMove("strap moved");
    move([{ path: "strap.length", value: "16" }]);
    const other = applyOperations(startingDocument("h-arm", "inch-pound"), [{ path: "targets.bump", value: "9" }]);
    showChangedElsewhere(other);
    expect(length()).toBe("16");
    expect(bench.getState().document?.targets?.bump).toBe("9");
    giveUpMove();
    expect(length()).toBe(18);
    expect(bench.getState().document?.targets?.bump).toBe("9");
  });
});

describe("faults", () => {
  test("keep what was typed, keep the last good study, and say so", () => {
    const before = bench.getState().live.study;
    edit([{ path: "shock.shortest", value: "abc" }], "typed");
    const { live, document } = bench.getState();
    expect(document?.shock?.shortest).toBe("abc");
    expect(live.study).toBe(before);
    expect(live.isOlder).toBe(true);
    expect(live.faults.map(({ path, code }) => [path, code])).toEqual([["shock.shortest", "bad-quantity"]]);
    edit([{ path: "shock.shortest", value: "15 1/4" }], "mended");
    expect(bench.getState().live.isOlder).toBe(false);
  });
});

describe("travel", () => {
  test("stays where the linkage reaches and the tape shows it", () => {
    setTravel(99);
    const { travel, live } = bench.getState();
    expect(travel).toBeGreaterThan(live.study?.travel.bump.stop.travel ?? 0);
    expect(travel).toBeLessThanOrEqual(live.study?.range.bump.travel ?? 0);
  });
});
