import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { turnEffects } from "../../src/adjust/turn-effects.ts";
import { cycleCertainty, readAll } from "../../src/certainty/cycle-certainty.ts";
import { halton, normalDeviate } from "../../src/certainty/halton.ts";
import { movedBy, uncertainInputs } from "../../src/certainty/inputs.ts";
import { limitCertainty } from "../../src/certainty/limit-certainty.ts";
import { choleskyOf, drawer, shifted, shiftsOf, simulateCars } from "../../src/certainty/monte-carlo.ts";
import { isBent, spreadOf } from "../../src/certainty/slopes.ts";
import { makeCorner } from "../../src/cycle/corner.ts";
import { quantitiesOf } from "../../src/cycle/quantities.ts";
import { sayFinding } from "../../src/findings/say-finding.ts";
import { reportTravel } from "../../src/limits/travel-report.ts";
import { study } from "../../src/study/study.ts";
import { carOfDocument, exampleCar, exampleDocument } from "../example-documents.ts";
import { normalFrom, randomFrom } from "../survey/simulated-surveys.ts";

const INCH = 0.0254;
/** The example whose points come from readings. */
const surveyedDocument = (): unknown =>
  JSON.parse(readFileSync(new URL("../../../../examples/brittlebush.car.json", import.meta.url), "utf8"));
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

  // JCGM 101:2008, 9.4: comparison loss of a power meter, y = x1² + x2², u(x1) = u(x2) = 0.005, x2 = 0. Table 6: at x1 = 0
  // the estimate is 50e-6 with u = 50e-6 where the straight law gives 0 and 0; at x1 = 0.010 it is 150e-6 with u = 112e-6.
  test.each([
    [0, 50e-6, 50e-6, 0],
    [0.01, 150e-6, 112e-6, 100e-6],
  ])(
    "a loss that turns back at nothing (JCGM 101:2008, 9.4, x1 = %d) is seen to bend, and is simulated",
    (x1, mean, sd, straight) => {
      const list = [0.005, 0.005].map(
        (each) => ({ kind: "setting", setting: "camber", sd: each, from: "turning" }) as const,
      );
      const covariance = [row(0.005 ** 2, 0), row(0, 0.005 ** 2)];
      const slopes = [row(2 * x1), row(0)];
      const linear = spreadOf(slopes, covariance)[0]!.sd;
      expect(linear).toBeCloseTo(straight, 12);
      expect(isBent({ slopes, bends: [row(2), row(2)] }, { list }, 0, linear)).toBe(true);
      const draw = drawer({ covariance });
      const losses = Array.from({ length: 20_000 }, (_, n) => {
        const [a, b] = draw(n + 1);
        return (x1 + a!) ** 2 + b! ** 2;
      });
      const found = losses.reduce((a, b) => a + b, 0) / losses.length;
      const spread = Math.sqrt(losses.reduce((a, b) => a + (b - found) ** 2, 0) / losses.length);
      expect(Math.abs(found / mean - 1)).toBeLessThan(0.02);
      expect(Math.abs(spread / sd - 1)).toBeLessThan(0.03);
    },
  );

  test("far from where it turns back the straight law is enough (JCGM 101:2008, 9.4, x1 = 0.1)", () => {
    const list = [0.005, 0.005].map(
      (each) => ({ kind: "setting", setting: "camber", sd: each, from: "turning" }) as const,
    );
    expect(isBent({ slopes: [row(0.2), row(0)], bends: [row(2), row(2)] }, { list }, 0, 0.001)).toBe(false);
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

// Cars, and travels between their stops. The simulated cars are of another, plain random sequence than the engine's own.
describe.each([
  ["saltbush", 2000],
  ["greasewood", 2000],
  ["juniper", 2000],
  ["rabbitbrush", 2000],
  ["catclaw", 2000],
] as const)("%s built to a sixteenth", (name, cars) => {
  const car = exampleCar(name);
  const travels = [-0.15, 0, 0.12];
  const inputs = uncertainInputs(car);
  const { readings } = cycleCertainty(car, travels, inputs);
  const quantities = quantitiesOf(makeCorner(car));
  const random = randomFrom(20_261);
  const root = choleskyOf(inputs.covariance);
  const simulated = Array.from({ length: cars }, () => {
    const deviates = Float64Array.from(root, () => normalFrom(random));
    const shifts = Float64Array.from(root, (line) => line.reduce((sum, value, k) => sum + value * deviates[k]!, 0));
    return readAll(makeCorner(shifted(car, inputs, shifts)), quantities, travels);
  });

  test("of every quantity the stated bounds hold 93 to 97 of 100 true cars, and ± as many or more", () => {
    // 2000 cars tell a share of 95.45 % to 0.47 %; the quasi-random bounds of bent ones add as much: 2.4 % is over three.
    let bent = 0;
    let compared = 0;
    readings.forEach(({ quantity, value, sd, low, high, isSimulated }, k) => {
      const all = simulated.map((results) => results[k]!).filter((each) => each !== null);
      if (sd === null) {
        // Told to have no ±: then in some cars it is not there, or not on the plan.
        expect(value === null || all.length < cars, quantity.id).toBe(true);
        return;
      }
      const within = all.filter((each) => each >= low! - 1e-9 && each <= high! + 1e-9).length / all.length;
      const what = `${quantity.id} at ${travels[Math.floor(k / quantities.length)]}: ${value} ± ${2 * sd}`;
      if (sd > 1e-9) {
        expect(within, what).toBeGreaterThan(0.93);
        expect(within, what).toBeLessThan(0.978);
      }
      const plusMinus = all.filter((each) => Math.abs(each - value!) <= 2 * sd + 1e-9).length / all.length;
      expect(plusMinus, what).toBeGreaterThan(0.93);
      compared += 1;
      if (isSimulated) bent += 1;
    });
    expect(compared).toBeGreaterThan(50);
    // Tilts that are nothing at ride height always bend.
    if (name !== "rabbitbrush") expect(bent).toBeGreaterThan(0);
  });

  test("the fast simulation is the plain one", () => {
    const fast = simulateCars(car, travels, 200, inputs);
    const plain = Array.from({ length: 200 }, (_, n) =>
      readAll(makeCorner(shifted(car, inputs, shiftsOf(root, n + 1))), quantities, travels),
    );
    fast.results.forEach((result, k) => {
      const all = plain.map((results) => results[k]!).filter((each) => each !== null);
      if (!result) {
        expect(all.length).toBeLessThan(2);
        return;
      }
      const mean = all.reduce((a, b) => a + b, 0) / all.length;
      const size = Math.max(1, ...all.map(Math.abs));
      expect(result.share * 200, quantities[k % quantities.length]!.id).toBeCloseTo(all.length, 9);
      // Both close to the last digits of a solve; quantities that are quotients of small ones lose some more.
      expect(Math.abs(result.mean - mean) / size).toBeLessThan(1e-8);
      expect(result.low).toBeGreaterThanOrEqual(Math.min(...all) - 1e-8 * size);
      expect(result.high).toBeLessThanOrEqual(Math.max(...all) + 1e-8 * size);
    });
    expect(fast.apart).toBe(0);
  });

  test("camber and toe at ride height are as sure as half a thread sets them", () => {
    const { list } = inputs;
    for (const id of ["camber", "toe"]) {
      const setting = list.find((input) => input.kind === "setting" && input.setting === id)!;
      const reading = readings.find(({ quantity, travel }) => quantity.id === id && travel === 0)!;
      expect(setting.sd).toBeGreaterThan(1e-3);
      expect(reading.sd! / setting.sd).toBeCloseTo(1, 6);
    }
  });
});

describe("what matters most", () => {
  test("a shock's length at ride hangs on its own two mounts, along it", () => {
    const { readings } = cycleCertainty(exampleCar("saltbush"), [0]);
    const shock = readings.find(({ quantity }) => quantity.id === "shockLength")!;
    // Two ends, each ± 1/16 (sd 1/32) along the shock: √2/32 in.
    expect(shock.sd).toBeCloseTo((Math.SQRT2 / 32) * INCH, 6);
    for (const { input } of shock.causes) expect(input.kind === "point" && input.place.path).toMatch(/^shock\./);
  });

  test("twice the tolerance is twice the ±", () => {
    const document = exampleDocument("saltbush");
    const rough = carOfDocument({ ...document, tolerances: { tacked: "1/8", joint: "1/8", turned: 1 } });
    const [a, b] = [exampleCar("saltbush"), rough].map((car) => cycleCertainty(car, [0.1]));
    a!.readings.forEach(({ quantity, sd, isSimulated }, k) => {
      if (isSimulated || b!.readings[k]!.isSimulated) return;
      expect(b!.readings[k]!.sd, quantity.id).toBeCloseTo(2 * sd!, 9);
    });
    expect([a!.isGiven, b!.isGiven]).toEqual([false, true]);
  });

  test("half a thread: the ± of camber as it is set is the root of the squares of what each adjuster does in half a turn", () => {
    const car = exampleCar("saltbush");
    const slopes = turnEffects(car).map(({ perTurn }) => perTurn!.camber);
    const { sd } = uncertainInputs(car).list.find((input) => input.kind === "setting" && input.setting === "camber")!;
    expect(2 * sd).toBeCloseTo(0.5 * Math.hypot(...slopes), 12);
  });

  test("a point with a ± of its own goes through with it", () => {
    const document = exampleDocument("saltbush");
    const upper = { ...document.shock!.upper, plusMinus: "1/2" };
    const car = carOfDocument({ ...document, shock: { ...document.shock!, upper } });
    expect(car.ownTolerances).toEqual([{ path: "shock.upper", plusMinus: INCH / 2 }]);
    const { sd, causes } = cycleCertainty(car, [0]).readings.find(({ quantity }) => quantity.id === "shockLength")!;
    // One end ± 1/2 in, the other ± 1/16, along the shock.
    expect(2 * sd!).toBeCloseTo(Math.hypot(1 / 2, 1 / 16) * INCH, 6);
    expect(causes[0]!.input).toMatchObject({ from: "stated", sd: INCH / 4 });
    expect(causes[0]!.input.kind === "point" && causes[0]!.input.place.path).toBe("shock.upper");
  });
});

test("a point of the right side with a ± of its own goes with the right wheel only", () => {
  const document = exampleDocument("saltbush");
  const { upper, ...shock } = document.shock!;
  const mirrored = (point: typeof upper) => ({ ...point, y: `-${point.y}` });
  const lower = mirrored(shock.lower as typeof upper);
  const car = carOfDocument({
    ...document,
    right: { shock: { ...shock, lower, upper: { ...mirrored(upper), plusMinus: "1/2" } } },
  });
  expect(car.ownTolerances).toBeUndefined();
  expect(car.right!.ownTolerances).toEqual([{ path: "shock.upper", plusMinus: INCH / 2 }]);
});

describe("a study's certainty", () => {
  const brittlebush = study(carOfDocument(surveyedDocument()));

  test("what its points' readings bring is split among the readings: all shares together are the whole", () => {
    const { matters } = brittlebush.certainty;
    expect(matters.length).toBeGreaterThan(3);
    const sum = matters.reduce((total, { weight }) => total + weight, 0);
    expect(sum).toBeGreaterThan(0.4);
    expect(sum).toBeLessThanOrEqual(1 + 1e-9);
    for (const { source, of } of matters) {
      for (const { share } of of) expect(share).toBeLessThanOrEqual(1 + 1e-9);
      if (source.kind === "reading") expect(brittlebush.car.survey!.survey.readings[source.reading]).toBeDefined();
    }
  });

  test("a limit nearer to the stop than its ± is not safe to rely on, and one farther off is not told so", () => {
    const document = exampleDocument("saltbush");
    const codes = (tacked: string): string[] =>
      study(carOfDocument({ ...document, tolerances: { tacked, joint: tacked } }))
        .findings.filter(({ code }) => code === "limit-uncertain")
        .map((finding) => sayFinding(finding, "inch-pound").sentence);
    expect(codes("1/16")).toEqual([]);
    const said = codes("3/8");
    expect(said.length).toBeGreaterThan(0);
    expect(said.join("\n")).toMatch(
      /^Outer U-joint angle: 11\/16 in of droop travel left past the strap, ± 1? ?[\d/]+ in, not safe to rely on\. It would come first in about \d+ of 100 cars built so\.$/m,
    );
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
