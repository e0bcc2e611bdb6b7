import { describe, expect, test } from "vitest";
import { cycleCertainty } from "../../src/certainty/cycle-certainty.ts";
import { halton, normalDeviate } from "../../src/certainty/halton.ts";
import { movedBy, uncertainInputs } from "../../src/certainty/inputs.ts";
import { limitCertainty } from "../../src/certainty/limit-certainty.ts";
import { choleskyOf, shiftsOf, simulateCars } from "../../src/certainty/monte-carlo.ts";
import { spreadOf } from "../../src/certainty/slopes.ts";
import { makeCorner } from "../../src/cycle/corner.ts";
import { reportTravel } from "../../src/limits/travel-report.ts";
import { carOfDocument, exampleCar, exampleDocument } from "../example-documents.ts";

const INCH = 0.0254;
const row = (...values: number[]): Float64Array => Float64Array.from(values);

describe("propagation", () => {
  // JCGM 101:2008, 9.2.2: y = x1 + x2 + x3 + x4, each N(0, 1): u(y) = 2.0.
  test("the sum of four standard normal inputs has a standard deviation of 2 (JCGM 101:2008, 9.2.2)", () => {
    const unit = [0, 1, 2, 3].map((i) => row(...[0, 1, 2, 3].map((j) => (i === j ? 1 : 0))));
    const slopes = [row(1), row(1), row(1), row(1)];
    expect(spreadOf(slopes, unit)[0]!.sd).toBeCloseTo(2, 12);
    // 9.2.2.6: the 95 % interval ±3.92; here by the quasi-random sequence.
    const sums = Array.from({ length: 20_000 }, (_, n) => shiftsOf(choleskyOf(unit), n + 1).reduce((a, b) => a + b, 0));
    sums.sort((a, b) => a - b);
    expect(sums[Math.round(0.975 * sums.length)]!).toBeCloseTo(3.92, 1);
    expect(sums[Math.round(0.025 * sums.length)]!).toBeCloseTo(-3.92, 1);
  });

  // JCGM 100:2008, 5.2.2, example: ten resistors calibrated against one standard hang together fully: 10 × 0.1 = 1.
  test("what hangs together adds up, what does not adds in squares (JCGM 100:2008, 5.2.2)", () => {
    const ten = Array.from({ length: 10 }, () => row(1));
    const together = Array.from({ length: 10 }, () => new Float64Array(10).fill(0.1 ** 2));
    expect(spreadOf(ten, together)[0]!.sd).toBeCloseTo(1, 12);
    const apart = Array.from({ length: 10 }, (_, i) =>
      Float64Array.from({ length: 10 }, (_, j) => (i === j ? 0.01 : 0)),
    );
    expect(spreadOf(ten, apart)[0]!.sd).toBeCloseTo(Math.sqrt(0.1), 12);
  });

  test("errors that are drawn hang together as the covariance says", () => {
    const wanted = [row(4, 1.5, 0), row(1.5, 1, -0.2), row(0, -0.2, 0.25)];
    const drawn = Array.from({ length: 20_000 }, (_, n) => shiftsOf(choleskyOf(wanted), n + 1));
    for (let i = 0; i < 3; i += 1) {
      for (let j = 0; j < 3; j += 1) {
        const mean = drawn.reduce((sum, shift) => sum + shift[i]! * shift[j]!, 0) / drawn.length;
        expect(mean).toBeCloseTo(wanted[i]![j]!, 1);
      }
    }
  });

  test("normal deviates and the sequence", () => {
    // Standard normal table: 0.975 → 1.959964, 0.99865 → 3 (e.g. Abramowitz & Stegun, table 26.1).
    expect(normalDeviate(0.975)).toBeCloseTo(1.959963985, 7);
    expect(normalDeviate(0.998650102)).toBeCloseTo(3, 6);
    expect(normalDeviate(0.5)).toBe(0);
    for (const dimension of [0, 7, 44]) {
      const mean = Array.from({ length: 5000 }, (_, n) => halton(n + 1, dimension)).reduce((a, b) => a + b, 0) / 5000;
      expect(mean).toBeCloseTo(0.5, 1);
    }
  });
});

// So many cars tell a standard deviation to 1/√(2n): 1.6 %, or 4 % of the slow five links; three times that is allowed.
describe.each([
  ["saltbush", 2000],
  ["rabbitbrush", 2000],
  ["catclaw", 300],
] as const)("%s built to a sixteenth", (name, cars) => {
  const car = exampleCar(name);
  const travels = [-0.15, 0, 0.12];

  test("the linear ± and that of true cars confirm each other", () => {
    const { readings } = cycleCertainty(car, travels);
    const { results, apart } = simulateCars(car, travels, cars);
    expect(apart).toBe(0);
    let compared = 0;
    readings.forEach(({ quantity, sd }, k) => {
      // Where a result has its turning point in the middle the linear ± is too small; those are few and small.
      const isBent = /ripple|Ripple|rodEnd|Joint|instantCentre|sideSwing|rollCentre|anti/.test(quantity.id);
      const simulated = results[k];
      if (!simulated || isBent || sd < 1e-7) return;
      expect(Math.abs(simulated.sd / sd - 1), `${quantity.id} ${simulated.sd} ${sd}`).toBeLessThan(
        3 / Math.sqrt(2 * cars),
      );
      compared += 1;
    });
    expect(compared).toBeGreaterThan(20);
  });

  test("camber and toe at ride height are set on the car: certain", () => {
    const at = cycleCertainty(car, [0]).readings.filter(({ quantity }) => ["camber", "toe"].includes(quantity.id));
    for (const { sd } of at) expect(sd).toBeLessThan(1e-9);
  });
});

describe("what matters most", () => {
  test("a shock's length at ride hangs on its own two mounts, along it", () => {
    const { readings } = cycleCertainty(exampleCar("saltbush"), [0]);
    const shock = readings.find(({ quantity }) => quantity.id === "shockLength")!;
    // Two ends, each ± 1/16 (sd 1/32) along the shock: √2/32 in.
    expect(shock.sd).toBeCloseTo((Math.SQRT2 / 32) * INCH, 6);
    for (const { input } of shock.causes) expect(input.place.path).toMatch(/^shock\./);
  });

  test("twice the tolerance is twice the ±", () => {
    const document = exampleDocument("saltbush");
    const rough = carOfDocument({ ...document, tolerances: { tacked: "1/8", joint: "1/8" } });
    const [a, b] = [exampleCar("saltbush"), rough].map((car) => cycleCertainty(car, [0.1]));
    a!.readings.forEach(({ sd }, k) => {
      expect(b!.readings[k]!.sd).toBeCloseTo(2 * sd, 9);
    });
    expect([a!.isGiven, b!.isGiven]).toEqual([false, true]);
  });
});

describe("limits", () => {
  const car = exampleCar("saltbush");
  const limits = limitCertainty(car);

  test("the chance that the outer joint comes before the strap is between none and half, and its ± counts", () => {
    const joint = limits.find(({ limit }) => limit.code === "outer-joint" && limit.travel < 0)!;
    expect(joint.left).toBeGreaterThan(0);
    expect(joint.sd).toBeGreaterThan(0.0005);
    expect(joint.chance).toBeGreaterThan(0);
    expect(joint.chance).toBeLessThan(0.5);
  });

  test("is what true cars do", () => {
    const inputs = uncertainInputs(car);
    const joint = limits.find(({ limit }) => limit.code === "outer-joint" && limit.travel < 0)!;
    const root = choleskyOf(inputs.covariance);
    const left = Array.from({ length: 300 }, (_, n) => {
      const shifts = shiftsOf(root, n + 1);
      let built = car;
      inputs.list.forEach((input, i) => {
        built = movedBy(built, input, shifts[i]!);
      });
      return reportTravel(makeCorner(built), 0.1).droop.limits.find(({ id }) => id === joint.limit.id)!.travelLeft;
    });
    const mean = left.reduce((a, b) => a + b, 0) / left.length;
    const sd = Math.sqrt(left.reduce((a, b) => a + (b - mean) ** 2, 0) / (left.length - 1));
    expect(Math.abs(mean - joint.left)).toBeLessThan(0.3 * joint.sd);
    // 300 cars tell a standard deviation to 4 %; three times that is allowed.
    expect(Math.abs(sd / joint.sd - 1)).toBeLessThan(0.12);
  });
});
