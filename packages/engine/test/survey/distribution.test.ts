import { describe, expect, it } from "vitest";
import { chiSquareLimit, chiSquareTail, normalLimit, studentLimit, tauLimit } from "../../src/survey/distribution.ts";

describe("limits of tests", () => {
  // Percentage points as in E. S. Pearson and H. O. Hartley, Biometrika Tables; recomputed with scipy.stats.
  it.each([
    ["normal, 0.1 % both sides", normalLimit(0.001), 3.2905267],
    ["normal, 5 %", normalLimit(0.05), 1.959964],
    ["Student, 10 degrees, 5 %", studentLimit(0.05, 10), 2.228139],
    ["Student, 4 degrees, 0.1 %", studentLimit(0.001, 4), 8.6103016],
    ["chi-square, 3 degrees, 97.5 %", chiSquareLimit(0.975, 3), 0.215795],
    ["chi-square, 3 degrees, 2.5 %", chiSquareLimit(0.025, 3), 9.348404],
    ["chi-square, 7 degrees, 1 %", chiSquareLimit(0.01, 7), 18.4753069],
    ["95 % ellipsoid", Math.sqrt(chiSquareLimit(0.05, 3)), 2.795483],
    ["95 % ellipse", Math.sqrt(chiSquareLimit(0.05, 2)), 2.447747],
  ])("%s", (_, value, expected) => {
    expect(Math.abs(value - expected)).toBeLessThan(1e-6);
  });

  it("tau nears the normal limit with many degrees of freedom and never passes the root of few", () => {
    expect(Math.abs(tauLimit(0.001, 100_000)! - normalLimit(0.001))).toBeLessThan(1e-3);
    expect(tauLimit(0.001, 3)!).toBeLessThan(Math.sqrt(3));
    expect(tauLimit(0.001, 1)).toBeNull();
  });

  it("a limit's tail is its rate", () => {
    expect(Math.abs(chiSquareTail(chiSquareLimit(0.01, 26), 26) - 0.01)).toBeLessThan(1e-10);
  });
});
