import { study } from "@armwright/engine";
import { readCarValue, setField, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { cornerPlace, mirrored, negated, placeOnSide, RIGHT_SECTIONS } from "../../src/store/sides.ts";

describe("a length on the other side", () => {
  test.each([
    [11, -11],
    [0, 0],
    ["12 3/16", "-12 3/16"],
    ["-12 3/16", "12 3/16"],
    ["+3 in", "-3 in"],
    ["310 mm", "-310 mm"],
  ] as const)("%s is %s", (typed, other) => {
    expect(negated(typed)).toBe(other);
    if (other !== -11 && other !== "-3 in") expect(negated(other)).toBe(typed);
  });
});

describe("a right side of its own, mirrored from the left", () => {
  test.each(["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const)("studies as the left does: %s", (kind) => {
    const document = startingDocument(kind, "inch-pound");
    const both = RIGHT_SECTIONS.reduce(
      (made, section) =>
        made[section] === undefined ? made : setField(made, `right.${section}`, mirrored(made[section] as never)),
      document,
    );
    const reading = readCarValue(both);
    if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
    const { car } = reading;
    expect(car.right).toBeDefined();
    const [left, right] = [study(car), study(car.right!)];
    expect(right.travel.bump.stop.travel).toBeCloseTo(left.travel.bump.stop.travel, 12);
    for (const direction of ["bump", "droop"] as const) {
      const limits = (each: typeof left) =>
        each.travel[direction].limits.map(({ id, travel }) => `${id} ${travel.toFixed(9)}`);
      expect(limits(right)).toEqual(limits(left));
    }
  });

  test("a section that is the right one's own stands below right, every other where the left one's stands", () => {
    const document = setField(startingDocument("h-arm", "inch-pound"), "right.strap.length", 20);
    expect(placeOnSide("strap.length", "right", document)).toBe("right.strap.length");
    expect(placeOnSide("shock.upper.y", "right", document)).toBe("shock.upper.y");
    expect(placeOnSide("strap.length", "left", document)).toBe("strap.length");
    expect(cornerPlace("right.strap.length")).toBe("strap.length");
    expect(cornerPlace("strap.length")).toBe("strap.length");
  });
});
