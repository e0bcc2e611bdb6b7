import { expect, test } from "vitest";
import { shownFigures, threeFigures } from "../../src/words/three-figures.ts";

test.each([
  [169_132, "169,000"],
  [1232, "1,230"],
  [0.17717, "0.177"],
  [9.996, "10.0"],
  [-42.34, "\u221242.3"],
  [0.00003, "0"],
  [0, "0"],
])("%d in three figures is %s", (value, text) => {
  expect(threeFigures(value)).toBe(text);
});

test("a force and its unit keep together", () => {
  expect(shownFigures(4448.2, "force", "inch-pound")).toBe("1,000\u00a0lb");
  expect(shownFigures(4448.2, "force", "metric")).toBe("4,450\u00a0N");
});
