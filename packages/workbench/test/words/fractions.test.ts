import { describe, expect, test } from "vitest";
import { spoken } from "../../src/words/fractions.ts";
import { bare, shown, shownTravel, tidy } from "../../src/words/shown.ts";

describe("readings", () => {
  test("are read aloud as a builder says them", () => {
    expect(spoken("\u22123 7/16 in")).toBe("minus 3 and 7 sixteenths in");
    expect(spoken("1/2")).toBe("1 half");
    expect(spoken("+6 1/4")).toBe("plus 6 and 1 quarter");
  });

  test("bump carries a plus, droop the printer's minus", () => {
    expect(shownTravel(0.0254 * 5.75, "inch-pound")).toBe("+5 3/4");
    expect(shownTravel(-0.0254 * 8.75, "inch-pound")).toBe("\u22128 3/4");
    expect(shownTravel(0, "metric")).toBe("0");
    expect(shown(-0.01, "angle", "inch-pound")).toBe("\u22120.6\u00b0");
    expect(bare(0.61, "ratio", "metric")).toBe("0.61");
    expect(tidy("goes from -1.5 deg, well-made")).toBe("goes from \u22121.5\u00b0, well-made");
  });
});
