import fc from "fast-check";
import { expect, it } from "vitest";
import { findRisingRoot } from "../../src/springs/find-rising-root.ts";

const FOUND = 1e-9;

it("finds the root of any bent line, whatever slope it is told at the kink", () => {
  const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  fc.assert(
    fc.property(share, share, fc.double({ min: 0, max: 50, noNaN: true }), (root, kink, steep) => {
      const value = (x: number): number =>
        x - root + (x > kink ? steep * (x - kink) : 0) - (root > kink ? steep * (root - kink) : 0);
      const found = findRisingRoot((x) => ({ value: value(x), slope: x > kink ? 1 + steep : 1 }), 0, 1, FOUND)!;
      expect(Math.abs(found - root)).toBeLessThan(2 * FOUND);
    }),
  );
});

it("halves where there is no slope, as past solid springs", () => {
  const step = (x: number) => ({ value: x < 0.3 ? -1 : 1, slope: 0 });
  expect(Math.abs(findRisingRoot(step, 0, 1, FOUND)! - 0.3)).toBeLessThan(FOUND);
});

it("gives none where the function gives none", () => {
  expect(findRisingRoot(() => null, 0, 1, FOUND)).toBeNull();
});
