import { widthOf } from "@armwright/drawing";
import { describe, expect, test } from "vitest";
import { PEN } from "../../src/paper/leaf.ts";
import { wrapped } from "../../src/paper/words.ts";

describe("breaking lines", () => {
  test("inches stay with their fraction, and a number with its unit", () => {
    const words =
      "the strap is 23 7/8 in long and the hub 5 1/4 in down from ride, that is 250 lb/in at 4 deg of lean and 3 g up";
    for (let width = 20; width < 120; width += 1) {
      const lines = wrapped(words, width, "label");
      expect(lines.join(" ")).toBe(words);
      for (const line of lines) expect(line).not.toMatch(/^(\d+\/\d+|in\b|lb\/in|deg|g\b)/);
    }
  });

  test("no line is wider than asked, but for a word that is itself", () => {
    const lines = wrapped(
      "Weld out in the jig, bolts or dummy joints in, sides alternating, letting it cool.",
      40,
      "text",
    );
    for (const line of lines) expect(widthOf(line, "text", PEN)).toBeLessThanOrEqual(40);
    expect(wrapped("unbreakableword and more", 5, "text")[0]).toBe("unbreakableword");
  });
});
