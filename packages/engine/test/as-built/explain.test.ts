import { describe, expect, test } from "vitest";
import { cardReadings, cardValue } from "../../src/as-built/card-reading.ts";
import { explainAsBuilt } from "../../src/as-built/explain.ts";
import { fiveMinuteCheck } from "../../src/as-built/five-minute-check.ts";
import type { LoggedReading } from "../../src/as-built/logged-reading.ts";
import type { Car } from "../../src/car/car.ts";
import { halton, normalDeviate } from "../../src/certainty/halton.ts";
import { movedBy, uncertainInputs } from "../../src/certainty/inputs.ts";
import { choleskyOf, shifted, shiftsOf } from "../../src/certainty/monte-carlo.ts";
import { makeCorner } from "../../src/cycle/corner.ts";
import { carOfDocument, exampleCar, exampleDocument } from "../example-documents.ts";

const INCH = 0.0254;
const HEIGHTS = [-8, -4, 0, 3, 6].map((inches) => inches * INCH);

/** What a car reads at every height, each reading off by its ± as honest readings are (seeded). */
function logOf(car: Car, seed: number, noise = 1): LoggedReading[] {
  const corner = makeCorner(car);
  let index = 0;
  return HEIGHTS.flatMap((travel) =>
    cardReadings(corner).flatMap((card): LoggedReading[] => {
      const value = card.kind === "hub-height" ? null : cardValue(corner, card, travel);
      if (value === null) return [];
      index += 1;
      const error = noise * (card.plusMinus / 2) * normalDeviate(halton(seed * 97 + index, index % 60));
      return [{ kind: card.kind, travel, reads: value + error, path: `asBuilt.readings[${index}]` }];
    }),
  );
}

const plan = exampleCar("saltbush");
const inputs = uncertainInputs(plan);

describe("a car with one point off by 3/16 in", () => {
  const off = inputs.list.find(
    (input) => input.kind === "point" && input.place.path === "linkage.upperLink.inner" && input.axis === "z",
  )!;
  const built = movedBy(plan, off, (3 / 16) * INCH);

  test("is explained rightly: the point, the direction, the amount", () => {
    const found = explainAsBuilt(plan, logOf(built, 1), inputs);
    const [best] = found.explanations;
    expect(best!.cause.kind === "point" && best!.cause.input.place.path).toMatch(/^linkage\.upperLink/);
    // Its inner end up or its outer end down tilt the link alike: told apart or named as alike.
    const likely = found.explanations.slice(0, found.alike);
    const right = likely.find(({ cause }) => cause.kind === "point" && cause.input === off);
    expect(right).toBeDefined();
    expect(Math.abs(right!.by - (3 / 16) * INCH)).toBeLessThan(3 * right!.sd);
    expect(right!.sd).toBeLessThan(INCH / 16);
  });

  test("twice that is more than building and tape allow", () => {
    expect(explainAsBuilt(plan, logOf(movedBy(plan, off, (3 / 8) * INCH), 1), inputs).agrees).toBe(false);
  });

  test("moved to what was found, the plan reads as the car does", () => {
    const found = explainAsBuilt(plan, logOf(built, 1, 0), inputs);
    const corner = makeCorner(found.explained!);
    for (const { logged, card } of found.readings) {
      expect(Math.abs(cardValue(corner, card, logged.travel)! - logged.reads)).toBeLessThan(card.plusMinus);
    }
  });
});

test("a setting is told from a point: camber off by a degree at every height", () => {
  const built = { ...plan, wheel: { ...plan.wheel, camber: plan.wheel.camber + Math.PI / 180 } };
  const [best] = explainAsBuilt(plan, logOf(built, 2), inputs).explanations;
  expect(best!.cause).toMatchObject({ kind: "setting", setting: "camber" });
  expect(best!.by).toBeCloseTo(Math.PI / 180, 2);
});

test("honest cars, built to the tolerances and read with care, agree with their plan 95 times in a hundred", () => {
  const root = choleskyOf(inputs.covariance);
  const cars = 100;
  let agreeing = 0;
  for (let n = 1; n <= cars; n += 1) {
    const car = shifted(plan, inputs, shiftsOf(root, n));
    if (explainAsBuilt(plan, logOf(car, n), inputs).agrees) agreeing += 1;
  }
  // 100 cars: 95 % ± 2 %, one standard deviation.
  expect(agreeing / cars).toBeGreaterThan(0.9);
  expect(agreeing / cars).toBeLessThan(0.995);
}, 120_000);

describe("the five-minute check", () => {
  test("names a reading that a tape can take, with its ±", () => {
    const check = fiveMinuteCheck(plan)!;
    expect(check.reads).toBe(cardValue(makeCorner(plan), check.card, check.travel));
    expect(check.plusMinus).toBeGreaterThan(check.card.plusMinus);
    expect(check.tells).toBeGreaterThan(0.5);
    expect((check.travel / INCH) % 1).toBeCloseTo(0, 9);
  });
});

test("a log in the document reads as it was written; what is still to be taken is left out", () => {
  const car = carOfDocument({
    ...exampleDocument("saltbush"),
    asBuilt: {
      readings: [
        { what: "shock", at: "-4", reads: "22 3/16" },
        { what: "camber", at: 0, degrees: -0.4 },
        { what: "half-track", at: 3 },
      ],
    },
  });
  expect(car.asBuilt).toHaveLength(2);
  expect(car.asBuilt![0]!.travel).toBeCloseTo(-4 * INCH, 12);
  expect(car.asBuilt![0]!.reads).toBeCloseTo(22.1875 * INCH, 12);
  expect(car.asBuilt![1]!.reads).toBeCloseTo((-0.4 * Math.PI) / 180, 12);
});
