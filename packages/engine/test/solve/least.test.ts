import { describe, expect, it } from "vitest";
import { leastOver } from "../../src/solve/least.ts";

/** Shares of a box of size 1 are followed to 1e-9; a kinked valley is followed to this. */
const KINKED = 1e-5;

describe("leastOver", () => {
  it("finds the one bottom of a parabola", () => {
    const found = leastOver(([x]) => (x! - 0.3) ** 2 + 2, [{ from: -1, to: 4 }])!;
    expect(found.at[0]).toBeCloseTo(0.3, 6);
    expect(found.value).toBeCloseTo(2, 12);
  });

  it("finds the lower of two valleys", () => {
    const f = ([x]: readonly number[]): number => Math.min((x! + 1) ** 2, (x! - 1) ** 2 - 0.05);
    expect(leastOver(f, [{ from: -2, to: 2 }])!.at[0]).toBeCloseTo(1, 6);
  });

  it("stays within the box", () => {
    const found = leastOver(
      ([x, y]) => x! + 2 * y!,
      [
        { from: -1, to: 1 },
        { from: 3, to: 5 },
      ],
    )!;
    expect(found.at).toEqual([-1, 3]);
  });

  it.each([10, 100])("follows a valley with a kink along its floor, %d times steeper across than along", (steep) => {
    const f = ([x, y]: readonly number[]): number => steep * Math.abs(y! - 0.7 * x!) + Math.abs(x! + y! - 1.1);
    const found = leastOver(f, [
      { from: -2, to: 2 },
      { from: -2, to: 2 },
    ])!;
    expect(found.value).toBeLessThan(KINKED * steep);
  });

  it("finds the bottom of a largest-of-several in three directions", () => {
    const [a, b, c] = [0.21, -0.43, 0.77];
    const f = ([x, y, z]: readonly number[]): number =>
      Math.max(Math.abs(x! - a + 0.3 * (y! - b)), Math.abs(y! - b - 0.2 * (z! - c)), Math.abs(z! - c + 0.1 * (x! - a)));
    const box = [1, 1, 1].map(() => ({ from: -1, to: 1 }));
    expect(leastOver(f, box)!.value).toBeLessThan(KINKED);
  });

  it("passes over places that have no value", () => {
    const f = ([x]: readonly number[]): number => (x! < 0.5 ? Number.POSITIVE_INFINITY : x! * x!);
    expect(leastOver(f, [{ from: -1, to: 1 }])!.at[0]).toBeCloseTo(0.5, 6);
    expect(leastOver(() => Number.NaN, [{ from: 0, to: 1 }])).toBeNull();
  });

  it("gives the same twice", () => {
    const f = ([x, y]: readonly number[]): number => Math.sin(3 * x!) + Math.cos(5 * y!) + x! * x! * 0.1;
    const box = [
      { from: -3, to: 3 },
      { from: -3, to: 3 },
    ];
    expect(leastOver(f, box)).toEqual(leastOver(f, box));
  });
});
