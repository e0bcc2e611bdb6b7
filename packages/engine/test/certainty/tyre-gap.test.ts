import { describe, expect, test } from "vitest";
import { movedBy, uncertainInputs } from "../../src/certainty/inputs.ts";
import { tyreGaps } from "../../src/certainty/tyre-gap.ts";
import { gapsAt } from "../../src/clearance/gaps-at.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { positionOf } from "../../src/cycle/position.ts";
import { exampleCar } from "../example-documents.ts";

describe("the tyre's nearest neighbour", () => {
  const car = exampleCar("saltbush");

  test("it is the least of the gaps that the clearance check finds for the tyre", () => {
    const corner = makeCorner(car);
    const solved = solveAt(corner, -0.1)!;
    const all = gapsAt(corner, positionOf(corner, solved.state)).filter(({ label }) => /tyre/.test(label));
    const [found] = tyreGaps(car, [-0.1]);
    expect(found!.gap).toBeCloseTo(Math.min(...all.map(({ gap }) => gap)), 12);
    expect(all.find(({ gap }) => gap === found!.gap)!.label).toBe(found!.label);
  });

  test("its ± is what cars built with those errors spread over", () => {
    const inputs = uncertainInputs(car);
    const [found] = tyreGaps(car, [-0.1], inputs);
    // u² = Σ Σ ∂g/∂xi ∂g/∂xj u(xi, xj), each slope by a difference of its own, five times finer.
    const gapOf = (of: typeof car): number => tyreGaps(of, [-0.1], { ...inputs, list: [], covariance: [] })[0]!.gap;
    const slopes = inputs.list.map(
      (input) => (gapOf(movedBy(car, input, 1e-4)) - gapOf(movedBy(car, input, -1e-4))) / 2e-4,
    );
    let variance = 0;
    slopes.forEach((a, i) => {
      slopes.forEach((b, j) => {
        variance += a * b * inputs.covariance[i]![j]!;
      });
    });
    expect(found!.sd).toBeGreaterThan(1e-4);
    expect(found!.sd / Math.sqrt(variance)).toBeCloseTo(1, 2);
  });
});
