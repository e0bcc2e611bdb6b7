import { describe, expect, it } from "vitest";
import { type Branches, type DrivenPosition, findDrivenRange } from "../../src/linkage/driven-range.ts";

/** A half degree, as the search steps. */
const STEP = Math.PI / 360;
/** Margins that are small where they are counted in steps. */
const square = (steps: number): number => steps ** 2 / 50;

/** A linkage whose travel is its angle, and which only moves on the branches of its design position. */
const linkage =
  (margins: (steps: number) => readonly number[]) =>
  (angle: number, branches: Branches): DrivenPosition => ({
    travel: angle,
    slope: 1,
    margins: branches.every((branch) => branch === 1) ? margins(angle / STEP) : branches.map(() => -1),
  });

const stepsToEnd = (margins: (steps: number) => readonly number[], closures: number): number =>
  findDrivenRange(linkage(margins), closures).range.bump.travel / STEP;

describe("the end of a driven range between two steps of the search", () => {
  it("is where one closure no longer closes, though another would fall into line a hair beyond it", () => {
    const end = stepsToEnd((steps) => [10.47 - steps, square(steps - 10.48)], 2);
    expect(end).toBeCloseTo(10.47, 6);
  });

  it("is where a closure does not close for a moment", () => {
    const end = stepsToEnd((steps) => [square(steps - 10.48) - square(0.2)], 1);
    expect(end).toBeCloseTo(10.28, 6);
  });

  it("is there too where that moment lies before the last step at which it closes", () => {
    const end = stepsToEnd((steps) => [square(steps - 9.55) - square(0.2)], 1);
    expect(end).toBeCloseTo(9.35, 6);
  });
});
