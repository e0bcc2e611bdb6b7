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
});
