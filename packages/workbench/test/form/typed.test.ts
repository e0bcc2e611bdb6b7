import { parseQuantity } from "@armwright/engine";
import { describe, expect, test } from "vitest";
import { converted, lengthAsTyped, typedValue } from "../../src/form/typed.ts";

describe("what is typed is kept as typed", () => {
  test.each([
    ["14", "inch-pound", "inch-pound", 14],
    ["14.50", "inch-pound", "inch-pound", "14.50"],
    ["12 3/16", "inch-pound", "inch-pound", "12 3/16"],
    [" ", "inch-pound", "inch-pound", undefined],
    ["310", "metric", "inch-pound", "310 mm"],
    ["12 3/16", "inch-pound", "metric", "12 3/16 in"],
    ["310 mm", "inch-pound", "inch-pound", "310 mm"],
    ["\u22123", "inch-pound", "inch-pound", -3],
  ] as const)("%s shown in %s of a document in %s", (text, shown, own, wanted) =>
    expect(typedValue(text, "length", shown, own)).toBe(wanted),
  );

  test("a drag is typed on the marks of the tape that is shown", () => {
    expect(lengthAsTyped(0.3095625, "inch-pound", "inch-pound")).toBe("12 3/16");
    expect(lengthAsTyped(0.3048, "inch-pound", "inch-pound")).toBe(12);
    expect(lengthAsTyped(0.31, "metric", "inch-pound")).toBe("310 mm");
  });

  test("the other unit's reading stands beside it", () => {
    expect(converted("12 3/16", "length", "metric", "inch-pound")).toBe("309.5 mm");
    expect(converted("12 3/16", "length", "inch-pound", "inch-pound")).toBe("");
    expect(converted("310 mm", "length", "inch-pound", "inch-pound")).toBe("12 3/16 in");
  });

  test.each([
    ["52.5", "rate", "metric", "52.5 N/mm", 52500],
    ["14", "pressure", "metric", "14 bar", 1.4e6],
    ["390", "volume", "metric", "390 cm3", 390e-6],
    ["200", "torque", "metric", "200 N m", 200],
    ["0.5", "speed", "metric", "0.5 m/s", 0.5],
    ["350", "stress", "metric", "350 MPa", 350e6],
    ["1200", "force", "metric", "1200 N", 1200],
    ["0.6", "ratio", "metric", 0.6, 0.6],
    ["35", "percent", "metric", 35, 0.35],
  ] as const)("%s typed as %s in the other units is read as it was meant", (text, dimension, shown, kept, si) => {
    const typed = typedValue(text, dimension, shown, "inch-pound");
    expect(typed).toBe(kept);
    const parsed = parseQuantity(typed ?? "", dimension, "inch-pound");
    expect(parsed.ok && parsed.value).toBeCloseTo(si, 9);
  });
});
