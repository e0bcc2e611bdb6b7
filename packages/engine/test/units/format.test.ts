import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Dimension } from "../../src/car/car.ts";
import { formatLength, formatNumber, formatValue, INCH, type LengthStyle } from "../../src/units/index.ts";

describe("formatLength", () => {
  const inches: readonly (readonly [number, LengthStyle, string])[] = [
    [12.1875, {}, "12 3/16"],
    [12.19, {}, "12 3/16"],
    [12, {}, "12"],
    [0.5, {}, "1/2"],
    [0, {}, "0"],
    [-0, {}, "0"],
    [-0.01, {}, "0"],
    [-3.125, {}, "-3 1/8"],
    [-0.25, {}, "-1/4"],
    [3.125, { sign: true }, "+3 1/8"],
    [-3.125, { sign: true }, "-3 1/8"],
    [0, { sign: true }, "0"],
    [11.999, {}, "12"],
    [1 / 32, { denominator: 32 }, "1/32"],
    [1 / 64, {}, "0"],
    [5 + 3 / 64, { denominator: 64 }, "5 3/64"],
    [14.375, { decimal: true }, "14 3/8 (14.38)"],
    [-0.001, { decimal: true }, "0 (0.00)"],
  ];
  test.each(inches)("%d in %o: %s", (value, style, text) => {
    expect(formatLength(value * INCH, "inch-pound", style)).toBe(text);
  });

  const millimetres: readonly (readonly [number, LengthStyle, string])[] = [
    [310, {}, "310"],
    [309.56, {}, "309.5"],
    [-0.2, {}, "0"],
    [-12.6, {}, "-12.5"],
    [12.5, { sign: true }, "+12.5"],
  ];
  test.each(millimetres)("%d mm %o: %s", (value, style, text) => {
    expect(formatLength(value / 1000, "metric", style)).toBe(text);
  });

  test("shows a dash where there is no number", () => {
    expect(formatLength(Number.NaN, "metric")).toBe("—");
    expect(formatLength(Number.POSITIVE_INFINITY, "inch-pound")).toBe("—");
  });
});

describe("formatValue", () => {
  const cases: readonly (readonly [number | string, Dimension, string, string])[] = [
    [12.1875 * INCH, "length", "12 3/16 in", "309.5 mm"],
    [(1.54 * Math.PI) / 180, "angle", "1.5 deg", "1.5 deg"],
    [-1e-9, "angle", "0.0 deg", "0.0 deg"],
    [281.2, "mass", "620 lb", "281 kg"],
    [4448.2216152605, "force", "1000 lb", "4448 N"],
    [43781.7, "rate", "250 lb/in", "43.8 N/mm"],
    [0.654, "ratio", "0.65", "0.65"],
    [1, "ratio-per-length", "0.025/in", "0.100/100 mm"],
    [Math.PI / 180 / INCH, "angle-per-length", "1.00 deg/in", "3.94 deg/100 mm"],
    [(0.25 * Math.PI) / 180, "angle-per-turn", "0.25 deg/turn", "0.25 deg/turn"],
    [1.25, "turns", "1.3 turns", "1.3 turns"],
    [0.4, "percent", "40 %", "40 %"],
    [6, "count", "6", "6"],
    ["spindle", "word", "spindle", "spindle"],
  ];
  test.each(cases)("%s %s", (value, dimension, inch, metric) => {
    expect(formatValue(value, dimension, "inch-pound")).toBe(inch);
    expect(formatValue(value, dimension, "metric")).toBe(metric);
  });

  test("never prints NaN, Infinity or a negative zero", () => {
    const dimensions: readonly Dimension[] = cases.map(([, dimension]) => dimension);
    fc.assert(
      fc.property(fc.double(), fc.constantFrom(...dimensions), fc.boolean(), (value, dimension, sign) => {
        for (const system of ["inch-pound", "metric"] as const) {
          const text = formatValue(value, dimension, system, { sign });
          expect(text).not.toMatch(/NaN|Infinity|^[-+]0(\.0+)?( |\/|$)/);
        }
      }),
    );
  });
});

test("formatNumber", () => {
  expect(formatNumber(-0.04, 1)).toBe("0.0");
  expect(formatNumber(0.25, 2, true)).toBe("+0.25");
  expect(formatNumber(Number.NaN, 2)).toBe("—");
});
