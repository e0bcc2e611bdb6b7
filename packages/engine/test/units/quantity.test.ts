import { describe, expect, test } from "vitest";
import type { Dimension } from "../../src/car/car.ts";
import { INCH, POUND_FORCE_PER_INCH, PSI, parseQuantity, parseThread } from "../../src/units/index.ts";

describe("parseQuantity", () => {
  const cases: readonly (readonly [number | string, Dimension, number])[] = [
    ["12 3/16", "length", 12.1875 * INCH],
    [1.5, "angle", (1.5 * Math.PI) / 180],
    ["1.5 deg", "angle", (1.5 * Math.PI) / 180],
    ["1.5°", "angle", (1.5 * Math.PI) / 180],
    ["−2", "angle", (-2 * Math.PI) / 180],
    [100, "mass", 45.359237],
    ["100 kg", "mass", 100],
    ["100 lb", "mass", 45.359237],
    [40, "percent", 0.4],
    ["40 %", "percent", 0.4],
    [250, "rate", 250 * POUND_FORCE_PER_INCH],
    ["250 lb/in", "rate", 250 * POUND_FORCE_PER_INCH],
    ["45 N/mm", "rate", 45_000],
    ["200 psi", "pressure", 200 * PSI],
    ["14 bar", "pressure", 1_400_000],
    ["24 in3", "volume", 24 * INCH ** 3],
    ["400 cc", "volume", 400e-6],
  ];
  test.each(cases)("%j as %s", (typed, dimension, si) => {
    const parsed = parseQuantity(typed, dimension, "inch-pound");
    expect(parsed.ok ? parsed.value : Number.NaN).toBeCloseTo(si, 12);
  });

  const refused: readonly (readonly [number | string, Dimension, string | undefined])[] = [
    ["1,5", "angle", "1.5"],
    ["1.5 mm", "angle", "1.5"],
    ["12 3", "rate", undefined],
    ["250 kg/mm", "rate", "250"],
    ["a few", "mass", undefined],
    [Number.NaN, "mass", undefined],
  ];
  test.each(refused)("%j is not a %s", (typed, dimension, suggestion) => {
    const parsed = parseQuantity(typed, dimension, "inch-pound");
    expect(parsed.ok).toBe(false);
    expect(parsed.ok ? undefined : parsed.suggestion).toBe(suggestion);
  });
});

describe("parseThread", () => {
  const cases: readonly (readonly [string, number, number])[] = [
    ["3/4-16", 0.75 * INCH, INCH / 16],
    ["5/8-18 UNF", 0.625 * INCH, INCH / 18],
    ["1 1/4-12", 1.25 * INCH, INCH / 12],
    ["1-1/4-12", 1.25 * INCH, INCH / 12],
    ["1-14", INCH, INCH / 14],
    ["3/4 x 16", 0.75 * INCH, INCH / 16],
    ["M16x1.5", 0.016, 0.0015],
    ["m 12 × 1.75", 0.012, 0.00175],
  ];
  test.each(cases)("%s", (text, diameter, pitch) => {
    const thread = parseThread(text);
    expect(thread?.diameter).toBeCloseTo(diameter, 12);
    expect(thread?.pitch).toBeCloseTo(pitch, 12);
  });
  test.each(["", "3/4", "M16", "16-3/4", "3/0-16", "M1.5x16", "3/4-0", "big"])("%j is none", (text) => {
    expect(parseThread(text)).toBeUndefined();
  });
});
