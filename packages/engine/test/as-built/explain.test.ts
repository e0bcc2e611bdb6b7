import { describe, expect, test } from "vitest";
import { cardValue, cardValues, isOfRide, logReadings } from "../../src/as-built/card-reading.ts";
import { explainAsBuilt } from "../../src/as-built/explain.ts";
import { fiveMinuteCheck } from "../../src/as-built/five-minute-check.ts";
import type { LoggedReading } from "../../src/as-built/logged-reading.ts";
import { proposedLog } from "../../src/as-built/proposed-log.ts";
import { remedyFor } from "../../src/as-built/remedy.ts";
import { strongestLimit } from "../../src/as-built/strongest-limit.ts";
import type { Car } from "../../src/car/car.ts";
import { movedBy, type UncertainInput, uncertainInputs } from "../../src/certainty/inputs.ts";
import { choleskyOf, shifted } from "../../src/certainty/monte-carlo.ts";
import { makeCorner } from "../../src/cycle/corner.ts";
import { reportTravel } from "../../src/limits/travel-report.ts";
import { carOfDocument, exampleCar, exampleDocument } from "../example-documents.ts";
import { normalFrom, randomFrom } from "../survey/simulated-surveys.ts";

const INCH = 0.0254;
const HEIGHTS = [-8, -4, 0, 3, 6].map((inches) => inches * INCH);

/** What a car reads: the whole proposed log, each reading off by its ± as honest readings are. */
function logOf(car: Car, normal: () => number): LoggedReading[] {
  const corner = makeCorner(car);
  const asked = logReadings(corner)
    .filter(({ kind }) => kind !== "hub-height")
    .flatMap((card) => (isOfRide(card) ? [0] : HEIGHTS).map((travel) => ({ card, travel })));
  const values = cardValues(corner, asked);
  return asked.flatMap(({ card, travel }, k): LoggedReading[] => {
    const { kind, of, plusMinus } = card;
    const value = values[k];
    if (value === null || value === undefined) return [];
    const path = `asBuilt.readings[${k}]`;
    return [{ kind, ...(of !== undefined && { of }), travel, reads: value + (plusMinus / 2) * normal(), path }];
  });
}

const EXACT = (): number => 0;
const seeded = (seed: number): (() => number) => {
  const random = randomFrom(seed);
  return () => normalFrom(random);
};

const plan = exampleCar("saltbush");
const inputs = uncertainInputs(plan);
const root = choleskyOf(inputs.covariance);
/** A car built to the tolerances. */
const builtBy = (normal: () => number): Car => {
  const deviates = Float64Array.from(root, normal);
  return shifted(
    plan,
    inputs,
    Float64Array.from(root, (row) => row.reduce((sum, value, k) => sum + value * deviates[k]!, 0)),
  );
};
const isPointOf = (input: UncertainInput, path: RegExp): boolean =>
  input.kind === "point" && path.test(input.place.path);

describe("a car with one point off by 3/16 in", () => {
  const off = inputs.list.find(
    (each) => isPointOf(each, /^linkage\.upperLink\.inner$/) && "axis" in each && each.axis === "z",
  )!;
  const built = movedBy(plan, off, (3 / 16) * INCH);

  test("is explained rightly: the point, the direction, the amount", () => {
    const found = explainAsBuilt(plan, logOf(built, seeded(1)), inputs);
    const [best] = found.explanations;
    expect(found.agrees).toBe(false);
    expect(best!.cause).toMatchObject({ kind: "point", input: off });
    expect(Math.abs(best!.by - (3 / 16) * INCH)).toBeLessThan(3 * best!.sd);
    expect(best!.sd).toBeLessThan(INCH / 16);
  });

  test("moved to what was found, the plan reads as the car does", () => {
    const found = explainAsBuilt(plan, logOf(built, EXACT), inputs);
    const corner = makeCorner(found.explained!);
    for (const { logged, card } of found.readings) {
      expect(Math.abs(cardValue(corner, card, logged.travel)! - logged.reads)).toBeLessThan(card.plusMinus);
    }
  });

  // The rest of the car is built to the tolerances, so that 3/16 in is six of a point's own standard deviations.
  test("any point, any direction, on an otherwise honest car: named first in most, told to be off in most", () => {
    const causes = inputs.list.filter((each) => isPointOf(each, /^(linkage|shock)\./));
    const cars = 100;
    let first = 0;
    let among = 0;
    let told = 0;
    const random = randomFrom(20_262);
    const normal = (): number => normalFrom(random);
    for (let n = 0; n < cars; n += 1) {
      const cause = causes[Math.floor(random() * causes.length)]!;
      const by = (random() < 0.5 ? -1 : 1) * (3 / 16) * INCH;
      const found = explainAsBuilt(plan, logOf(movedBy(builtBy(normal), cause, by), normal), inputs);
      const place = found.explanations.findIndex((each) => each.cause.kind === "point" && each.cause.input === cause);
      if (place === 0) first += 1;
      if (place >= 0 && place < found.alike) among += 1;
      if (!found.agrees && place >= 0 && place < found.alike) told += 1;
    }
    // Measured over 400 cars: 83 % first, 94 % among those that cannot be told apart, 61 % told to be off and named.
    expect(first / cars).toBeGreaterThan(0.7);
    expect(among / cars).toBeGreaterThan(0.85);
    expect(told / cars).toBeGreaterThan(0.5);
  }, 240_000);
});

test("a setting is told from a point: camber off by a degree at every height", () => {
  const built = { ...plan, wheel: { ...plan.wheel, camber: plan.wheel.camber + Math.PI / 180 } };
  const [best] = explainAsBuilt(plan, logOf(built, seeded(2)), inputs).explanations;
  expect(best!.cause).toMatchObject({ kind: "setting", setting: "camber" });
  expect(best!.by).toBeCloseTo(Math.PI / 180, 2);
});

test("honest cars, built to the tolerances and read with care, agree with their plan 95 times in a hundred", () => {
  const cars = 200;
  const normal = seeded(20_263);
  let agreeing = 0;
  for (let n = 0; n < cars; n += 1) {
    if (explainAsBuilt(plan, logOf(builtBy(normal), normal), inputs).agrees) agreeing += 1;
  }
  // 200 cars tell 95 % to 1.5 %: three of these each way.
  expect(Math.abs(agreeing / cars - 0.95)).toBeLessThan(0.046);
}, 240_000);

describe("the limit of the strongest of many tests", () => {
  const alone = (k: number, size: number): Float64Array =>
    Float64Array.from({ length: size }, (_, i) => (i === k ? 1 : 0));

  test("of one is the normal law's, of many independent ones Šidák's", () => {
    // Two-sided 5 %: 1.960 (Abramowitz & Stegun, table 26.1). Šidák 1967: each at 1 − 0.95^(1/20) = 0.00256: 3.016.
    expect(Math.abs(strongestLimit([alone(0, 1)], 0.05) - 1.96)).toBeLessThan(0.06);
    expect(
      Math.abs(
        strongestLimit(
          [...Array(20).keys()].map((k) => alone(k, 20)),
          0.05,
        ) - 3.016,
      ),
    ).toBeLessThan(0.1);
  });

  test("of tests that go hand in hand is that of one", () => {
    const same = Array.from({ length: 20 }, () => alone(0, 3));
    expect(strongestLimit(same, 0.05)).toBe(strongestLimit([alone(0, 3)], 0.05));
  });
});

describe("what to turn and what to move", () => {
  test("camber set wrong by a degree: the turns bring it back to the plan", () => {
    const built = { ...plan, wheel: { ...plan.wheel, camber: plan.wheel.camber + Math.PI / 180 } };
    const found = explainAsBuilt(plan, logOf(built, EXACT), inputs);
    const { turns, now } = remedyFor(plan, found);
    expect(now.wheel.camber - built.wheel.camber).toBeCloseTo(0, 4);
    expect(turns!.exact.camber).toBeCloseTo(plan.wheel.camber, 9);
    expect(turns!.turns.length).toBeGreaterThan(0);
  });

  test("camber read a degree off once, at ride height: that degree is turned back, not the share that half a thread would leave", () => {
    const built = { ...plan, wheel: { ...plan.wheel, camber: plan.wheel.camber + Math.PI / 180 } };
    const log = logOf(built, EXACT).filter(({ kind, travel }) => kind === "camber" && travel === 0);
    expect(log).toHaveLength(1);
    const found = explainAsBuilt(plan, log, inputs);
    expect([found.agrees, found.explanations[0]?.cause.kind]).toEqual([false, "setting"]);
    const { now } = remedyFor(plan, found);
    expect(now.wheel.camber - built.wheel.camber).toBeCloseTo(0, 6);
  });

  test("a strap's upper hole 3/8 in high: the strap that ends droop where the plan does is as much longer as it has to reach", () => {
    const off = inputs.list.find((each) => isPointOf(each, /^strap\.upper$/) && "axis" in each && each.axis === "z")!;
    const built = movedBy(plan, off, (3 / 8) * INCH);
    const { stops } = remedyFor(plan, explainAsBuilt(plan, logOf(built, EXACT), inputs));
    const strap = stops.find(({ part }) => part === "strap")!;
    expect(strap.now).toBeGreaterThan(strap.wanted);
    expect(strap.change).toBeGreaterThan(0.2 * INCH);
    const mended = { ...built, strap: { ...built.strap!, length: built.strap!.length + strap.change } };
    const planned = reportTravel(makeCorner(plan)).droop.stop.travel;
    expect(Math.abs(reportTravel(makeCorner(mended)).droop.stop.travel - planned)).toBeLessThan(INCH / 16);
  });
});

describe("the five-minute check", () => {
  test("names a reading that a tape can take, with its ±", () => {
    const check = fiveMinuteCheck(plan)!;
    expect(check.reads).toBe(cardValue(makeCorner(plan), check.card, check.travel));
    expect(check.plusMinus).toBeGreaterThan(check.card.plusMinus);
    // Told by the points alone, not by what is set by turning.
    expect(2 * check.tells * (check.card.plusMinus / 2)).toBeLessThan(check.plusMinus);
    // Points half as far off tell half as much.
    const sure = { ...inputs, covariance: inputs.covariance.map((line) => line.map((each) => each / 4)) };
    expect(fiveMinuteCheck(plan, sure)!.tells).toBeCloseTo(check.tells / 2, 6);
  });

  test("asks for the shock where it is the shock's mount that is least known", () => {
    const document = exampleDocument("saltbush");
    const upper = { ...document.shock!.upper, plusMinus: "3/4" };
    const { card, travel } = fiveMinuteCheck(carOfDocument({ ...document, shock: { ...document.shock!, upper } }))!;
    expect(card.kind).toBe("shock");
    expect((travel / INCH) % 1).toBeCloseTo(0, 9);
  });
});

test("the proposed log has every card and every tube at each height, and every point at ride height", () => {
  const [atHeights, atRide] = proposedLog(plan, inputs);
  expect(atHeights.map(([first]) => first!.card.label)).toEqual(
    expect.arrayContaining(["shock, eye to eye", "upper link, angle, outer end up +"]),
  );
  for (const row of atHeights) expect(row).toHaveLength(5);
  const upper = atRide.find(([first]) => first!.card.of === "shock, upper")!;
  const { point } = plan.shock!.upper;
  expect(upper.map(({ reads }) => reads)).toEqual([point.x, point.y, point.z]);
  // Tacked and read to a sixteenth each: √2/16.
  expect(upper[2]!.plusMinus).toBeCloseTo((Math.SQRT2 / 16) * INCH, 9);
});

test("a log in the document reads as it was written; what is still to be taken is left out", () => {
  const car = carOfDocument({
    ...exampleDocument("saltbush"),
    asBuilt: {
      readings: [
        { what: "shock", at: "-4", reads: "22 3/16" },
        { what: "camber", at: 0, degrees: -0.4 },
        { what: "half-track", at: 3 },
        { what: "angle", of: "upper link", at: 3, degrees: 4.5 },
      ],
    },
  });
  expect(car.asBuilt).toHaveLength(3);
  expect(car.asBuilt![0]!.travel).toBeCloseTo(-4 * INCH, 12);
  expect(car.asBuilt![0]!.reads).toBeCloseTo(22.1875 * INCH, 12);
  expect(car.asBuilt![2]).toMatchObject({ kind: "angle", of: "upper link", reads: (4.5 * Math.PI) / 180 });
  expect(car.asBuilt![1]!.reads).toBeCloseTo((-0.4 * Math.PI) / 180, 12);
});
