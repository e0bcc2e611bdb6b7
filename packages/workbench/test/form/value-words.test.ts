import { carJsonSchema, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { formsFrom } from "../../src/form/schema-fields.ts";
import { valueInWords } from "../../src/form/value-words.ts";

formsFrom(carJsonSchema());
const car = startingDocument("h-arm", "inch-pound");
const base = { x: "-5 5/8", y: "20 1/2", z: "17 3/16", on: "chassis" };

describe("a value is said in words", () => {
  test.each([
    ["bumpStop.base", base, "5 5/8 in back, 20 1/2 in out, 17 3/16 in up, bolted to the chassis"],
    ["bumpStop.strikes", { ...base, on: "lower-arm" }, /up, bolted to the lower arm$/],
    ["strap.length", "23 9/16", "23 9/16 in"],
    ["stops.bump", "bump-stop", "bump stop"],
    ["stops.bump", "-3 1/2", "\u22123 1/2 in"],
    ["wheel.camber", -1.5, "\u22121.5°"],
    ["underbody", [1, 2], "2 entries"],
  ] as const)("%s", (path, value, said) => {
    const words = valueInWords(path, value, car, "inch-pound");
    if (typeof said === "string") expect(words).toBe(said);
    else expect(words).toMatch(said);
    expect(words).not.toMatch(/\[object/);
  });

  test("in the units that are shown", () => {
    expect(valueInWords("strap.length", 10, car, "metric")).toBe("254 mm");
    expect(valueInWords("bumpStop.base", { x: 1, y: 2, z: 3 }, car, "metric")).toBe(
      "25.5 mm forward, 51 mm out, 76 mm up",
    );
  });
});
