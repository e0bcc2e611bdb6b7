import { describe, expect, it } from "vitest";
import type { FiveLinkLinkage } from "../../src/car/car.ts";
import { fiveLink } from "../../src/linkage/five-link.ts";
import { fiveLinkConstants } from "../../src/linkage/five-link-constants.ts";
import { turn } from "../../src/linkage/five-link-newton.ts";
import { STEP, stepFiveLink } from "../../src/linkage/five-link-step.ts";
import { AT, designState } from "../../src/linkage/motion-state.ts";
import { SAMPLES } from "./sample-linkages.ts";

describe("five links by Newton's method", () => {
  it("converges quadratically: each step is as small as the square of the one before", () => {
    const { linkage, wheelCentre } = SAMPLES.find((sample) => sample.linkage.kind === "five-link")!;
    const five = fiveLinkConstants(linkage as FiveLinkLinkage, wheelCentre, {});
    const mechanism = fiveLink.mechanism(linkage as FiveLinkLinkage, wheelCentre);
    const solved = designState();
    expect(mechanism.solve(0.1, solved)).toBeGreaterThan(0);
    // Set out wrong by centimetres and degrees, at the right height.
    const state = Float64Array.from(solved);
    state[AT.wheelCentre] = state[AT.wheelCentre]! + 0.03;
    state[AT.wheelCentre + 1] = state[AT.wheelCentre + 1]! - 0.02;
    turn(state, [0, 0, 0.05, -0.04, 0.06]);
    const sizes: number[] = [];
    const step = new Float64Array(15);
    for (let i = 0; i < 6; i += 1) {
      expect(stepFiveLink(five, state, step)).not.toBe(STEP.singular);
      sizes.push(Math.hypot(...step.subarray(0, 5)));
      state[AT.wheelCentre] = state[AT.wheelCentre]! + step[0]!;
      state[AT.wheelCentre + 1] = state[AT.wheelCentre + 1]! + step[1]!;
      turn(state, step);
    }
    // Down to where rounding is all that is left (1e-14), the constant is that of the linkage: a few per metre.
    const pairs = sizes.slice(1).flatMap((size, i) => (size > 1e-13 ? [size / sizes[i]! ** 2] : []));
    expect(pairs.length).toBeGreaterThanOrEqual(2);
    for (const constant of pairs) expect(constant).toBeLessThan(5);
    expect(sizes.at(-1)).toBeLessThan(1e-14);
  });
});
