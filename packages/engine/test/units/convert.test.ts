import { describe, expect, test } from "vitest";
import type { Dimension } from "../../src/car/car.ts";
import {
  ATMOSPHERE,
  BAR,
  CUBIC_INCH,
  FOOT,
  FOOT_POUND_FORCE,
  fromUnit,
  INCH,
  POUND_FORCE,
  POUND_FORCE_INCH,
  POUND_FORCE_PER_INCH,
  POUND_MASS,
  PSI,
  STANDARD_GRAVITY,
  toUnit,
  unitOf,
} from "../../src/units/index.ts";

describe("conversion factors against NIST Special Publication 811, Appendix B", () => {
  // Published value, and the half unit of its last published digit.
  const published: readonly (readonly [string, number, number, number])[] = [
    ["U1 pound-force, N (exact)", POUND_FORCE, 4.4482216152605, 0],
    ["U1 pound-force as mass times gravity, N", POUND_MASS * STANDARD_GRAVITY, 4.4482216152605, 4.5e-15],
    ["U2 psi, Pa", PSI, 6894.757, 5e-4],
    ["U3 pound-force per inch, N/m", POUND_FORCE_PER_INCH, 175.1268, 5e-5],
    ["U4 pound-force inch, N·m", POUND_FORCE_INCH, 0.1129848, 5e-8],
    ["foot pound-force, J", FOOT_POUND_FORCE, 1.355818, 5e-7],
    ["cubic inch, m³", CUBIC_INCH, 1.638706e-5, 5e-12],
    ["bar, Pa (exact)", BAR, 100_000, 0],
    ["standard atmosphere, Pa (exact)", ATMOSPHERE, 101_325, 0],
    ["U5 gravity, in/s²", STANDARD_GRAVITY / INCH, 386.0886, 5e-5],
    ["U5 gravity, ft/s²", STANDARD_GRAVITY / FOOT, 32.17405, 5e-6],
  ];
  test.each(published)("%s", (_, ours, theirs, tolerance) => {
    expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(tolerance);
  });
});

describe("toUnit and fromUnit", () => {
  const cases: readonly (readonly [Dimension, number, number, number])[] = [
    ["length", 0.0254, 1, 25.4],
    ["mass", 0.45359237, 1, 0.45359237],
    ["force", 4.4482216152605, 1, 4.4482216152605],
    ["rate", 4.4482216152605 / 0.0254, 1, 4.4482216152605 / 25.4],
    ["angle", Math.PI, 180, 180],
    ["ratio", 0.65, 0.65, 0.65],
    ["percent", 0.4, 40, 40],
    ["angle-per-length", Math.PI / 180 / 0.0254, 1, 100 / 25.4],
    ["ratio-per-length", 1 / 0.0254, 1, 100 / 25.4],
    ["angle-per-turn", Math.PI / 180, 1, 1],
    ["turns", 2.5, 2.5, 2.5],
    ["count", 3, 3, 3],
    ["pressure", PSI, 1, PSI / 100_000],
    ["volume", 0.0254 ** 3, 1, 16.387064],
    ["energy", 4.4482216152605 * 0.3048, 1, 4.4482216152605 * 0.3048],
    ["frequency", 1.2, 1.2, 1.2],
    ["damping", 4.4482216152605 / 0.0254, 1, 4.4482216152605 / 0.0254],
    ["speed", 0.254, 10, 0.254],
  ];
  test.each(cases)("%s", (dimension, si, inch, metric) => {
    expect(toUnit(si, dimension, "inch-pound")).toBeCloseTo(inch, 12);
    expect(toUnit(si, dimension, "metric")).toBeCloseTo(metric, 12);
    expect(fromUnit(inch, dimension, "inch-pound")).toBeCloseTo(si, 12);
    expect(fromUnit(metric, dimension, "metric")).toBeCloseTo(si, 12);
  });

  test("names its units", () => {
    expect(unitOf("rate", "inch-pound")).toBe("lb/in");
    expect(unitOf("rate", "metric")).toBe("N/mm");
    expect(unitOf("angle-per-length", "metric")).toBe("deg/100 mm");
    expect(unitOf("ratio", "metric")).toBe("");
  });
});
