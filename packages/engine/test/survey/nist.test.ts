import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fitFromFar, type Model } from "../../src/survey/fit-least-squares.ts";

// NIST Statistical Reference Datasets, nonlinear regression: certified values to 11 figures.
interface Dataset {
  readonly name: string;
  readonly starts: readonly (readonly number[])[];
  readonly certified: readonly number[];
  readonly certifiedSum: number;
  readonly data: readonly (readonly [number, number])[];
}

const sets = JSON.parse(
  readFileSync(new URL("../../../../reference/survey/nist-strd.json", import.meta.url), "utf8"),
) as readonly Dataset[];

type Curve = (b: ArrayLike<number>, x: number) => number;
const saturating: Curve = (b, x) => b[0]! * (1 - Math.exp(-b[1]! * x));
const CURVES: Readonly<Record<string, Curve>> = {
  Misra1a: saturating,
  BoxBOD: saturating,
  MGH09: (b, x) => (b[0]! * (x * x + b[1]! * x)) / (x * x + b[2]! * x + b[3]!),
  Eckerle4: (b, x) => (b[0]! / b[1]!) * Math.exp(-0.5 * ((x - b[2]!) / b[1]!) ** 2),
  Thurber: (b, x) =>
    (b[0]! + b[1]! * x + b[2]! * x ** 2 + b[3]! * x ** 3) / (1 + b[4]! * x + b[5]! * x ** 2 + b[6]! * x ** 3),
  MGH10: (b, x) => b[0]! * Math.exp(b[1]! / (x + b[2]!)),
  Rat43: (b, x) => b[0]! / (1 + Math.exp(b[1]! - b[2]! * x)) ** (1 / b[3]!),
  DanWood: (b, x) => b[0]! * x ** b[1]!,
};

/** Slopes by central differences of the curve, fine enough for the figures asked for. */
function modelOf(curve: Curve, data: Dataset["data"]): Model {
  return (b) =>
    data.map(([x, y]) => ({
      misfit: curve(b, x) - y,
      unknowns: [...b.keys()],
      slopes: [...b.keys()].map((k) => {
        const h = 1e-6 * Math.max(Math.abs(b[k]!), 1e-9);
        const up = b.slice();
        const down = b.slice();
        up[k]! += h;
        down[k]! -= h;
        return (curve(up, x) - curve(down, x)) / (2 * h);
      }),
    }));
}

describe("NIST nonlinear regression sets", () => {
  const all = sets.flatMap((set) => [0, 1].map((start) => [set.name, start + 1, set] as const));
  it.each(all)("%s from start %d", (name, start, { starts, certified, certifiedSum, data }) => {
    const model = modelOf(CURVES[name]!, data);
    const fit = fitFromFar(model, Float64Array.from(starts[start - 1]!), 3000);
    const worst = Math.max(...certified.map((value, k) => Math.abs(fit.unknowns[k]! / value - 1)));
    expect(worst, `${fit.status} after ${fit.steps}`).toBeLessThan(1e-6);
    expect(Math.abs(fit.sum / certifiedSum - 1)).toBeLessThan(1e-8);
  });
});
