import { describe, expect, it } from "vitest";
import { defaultPlan } from "../../src/adjust/turn-plan.ts";
import { type TurnsResult, turnsFor } from "../../src/adjust/turns-for.ts";
import type { Car, RodEnd } from "../../src/car/car.ts";
import { wheelCentreOf } from "../../src/car/wheel-centre.ts";
import { SAMPLE_CARS } from "../sample-cars.ts";

const DEGREE = Math.PI / 180;
/** rad: a millionth of a degree. */
const ANGLE_TOLERANCE = 1e-6 * DEGREE;
const [H_ARM, DOUBLE_A_ARM, TRAILING_ARM, FIVE_LINK] = SAMPLE_CARS as readonly [Car, Car, Car, Car];

const close = (found: number, expected: number) => expect(Math.abs(found - expected)).toBeLessThan(ANGLE_TOLERANCE);

const namesOf = (result: TurnsResult) => result.turns.map(({ adjuster }) => adjuster);

describe("default plan", () => {
  it("sets an H-arm's camber with its upper link and toe with its outer pair, one out and one in", () => {
    expect(defaultPlan(H_ARM)).toEqual({
      camber: { parts: [{ adjuster: "upperLink", ratio: 1 }] },
      toe: {
        parts: [
          { adjuster: "lowerArm.outerFront", ratio: 1 },
          { adjuster: "lowerArm.outerRear", ratio: -1 },
        ],
      },
    });
  });

  it("sets a double A-arm's toe with its toe link", () => {
    expect(defaultPlan(DOUBLE_A_ARM).toe).toEqual({ parts: [{ adjuster: "toeLink", ratio: 1 }] });
  });

  it("sets a five-link's toe with its toe link and camber with both upper links", () => {
    expect(defaultPlan(FIVE_LINK)).toEqual({
      camber: {
        parts: [
          { adjuster: "links.upper front", ratio: 1 },
          { adjuster: "links.upper rear", ratio: 1 },
        ],
      },
      toe: { parts: [{ adjuster: "links.toe", ratio: 1 }] },
    });
  });

  it("leaves out a link that turning does not lengthen", () => {
    const sameHand: Car = { ...H_ARM, rodEnds: H_ARM.rodEnds.map((end): RodEnd => ({ ...end, hand: "right" })) };
    const { camber } = defaultPlan(sameHand);
    expect(camber!.parts.map(({ adjuster }) => adjuster)).not.toContain("upperLink");
  });
});

describe("turns for a wanted setting", () => {
  it("reach camber and toe together, on every kind that has both", () => {
    for (const car of [H_ARM, DOUBLE_A_ARM, FIVE_LINK]) {
      const wanted = { camber: -1.5 * DEGREE, toe: 0.2 * DEGREE };
      const result = turnsFor(car, wanted);
      expect(result.reachable).toBe(true);
      close(result.exact.camber, wanted.camber);
      close(result.exact.toe, wanted.toe);
      expect(wheelCentreOf(result.exact.car.wheel).z).toBeCloseTo(wheelCentreOf(car.wheel).z, 12);
    }
  });

  it("let the other angle go, or hold it, as asked", () => {
    const free = turnsFor(H_ARM, { toe: 1 * DEGREE });
    expect(free.reachable).toBe(true);
    expect(namesOf(free)).toEqual(["lowerArm.outerFront", "lowerArm.outerRear"]);
    close(free.exact.toe, 1 * DEGREE);
    const held = turnsFor(H_ARM, { toe: 1 * DEGREE, camber: H_ARM.wheel.camber });
    expect(namesOf(held)).toContain("upperLink");
    close(held.exact.toe, 1 * DEGREE);
    close(held.exact.camber, H_ARM.wheel.camber);
  });

  it("count turns by the thread, and what the nearest half turns give", () => {
    const result = turnsFor(H_ARM, { camber: -2 * DEGREE });
    const [turn] = result.turns;
    // 3/4-16 with opposite hands: 1/8 in a turn.
    expect(turn!.turns).toBeCloseTo(turn!.change / (0.0254 / 8), 12);
    expect(turn!.turns).toBeLessThan(0);
    expect(Number.isInteger(2 * turn!.halfTurns!)).toBe(true);
    expect(Math.abs(turn!.halfTurns! - turn!.turns!)).toBeLessThanOrEqual(0.25 + 1e-9);
    // A quarter turn of the link is at most 0.8 mm over a lever of 0.25 m.
    expect(Math.abs(result.rounded!.camber + 2 * DEGREE)).toBeLessThan(0.2 * DEGREE);
    expect(Math.abs(result.rounded!.camber + 2 * DEGREE)).toBeGreaterThan(ANGLE_TOLERANCE);
  });

  it("round all adjusters together, so that the wheel comes nearest", () => {
    // Each to its own nearest half would turn both ends by a half and overshoot: 0.37 deg for 0.2.
    const result = turnsFor(H_ARM, { toe: 0.2 * DEGREE });
    expect(result.turns.map(({ halfTurns }) => Math.abs(halfTurns!)).sort()).toEqual([0, 0.5]);
    expect(Math.abs(result.rounded!.toe - 0.2 * DEGREE)).toBeLessThan(0.03 * DEGREE);
  });

  it("come back from where they led", () => {
    const there = turnsFor(DOUBLE_A_ARM, { camber: 1 * DEGREE, toe: -0.5 * DEGREE });
    const { camber, toe } = DOUBLE_A_ARM.wheel;
    const back = turnsFor(there.exact.car, { camber, toe }, there.plan);
    expect(back.reachable).toBe(true);
    for (const [i, { change }] of back.turns.entries()) expect(change).toBeCloseTo(-there.turns[i]!.change, 7);
  });

  it("follow the plan that is given", () => {
    const plan = { camber: null, toe: { parts: [{ adjuster: "lowerArm.innerRear", ratio: 1 }] } };
    const result = turnsFor(H_ARM, { toe: 0.5 * DEGREE }, plan);
    expect(result.reachable).toBe(true);
    expect(namesOf(result)).toEqual(["lowerArm.innerRear"]);
    const none = turnsFor(H_ARM, { camber: 1 * DEGREE, toe: 0.5 * DEGREE }, plan);
    expect(none.reachable).toBe(false);
    close(none.exact.toe, 0.5 * DEGREE);
  });

  it("ask for nothing where the car already stands so", () => {
    const result = turnsFor(H_ARM, { camber: 0, toe: 0 });
    expect(result.reachable).toBe(true);
    for (const { turns, halfTurns } of result.turns) {
      expect(turns).toBe(0);
      expect(halfTurns).toBe(0);
    }
    expect(result.rounded!.halfTrackChange).toBe(0);
  });

  it("give the length where a thread is not known, and no turns", () => {
    const bare: Car = { ...H_ARM, rodEnds: H_ARM.rodEnds.map(({ pitch: _, ...end }): RodEnd => end) };
    const result = turnsFor(bare, { camber: 1 * DEGREE });
    expect(result.reachable).toBe(true);
    expect(result.turns[0]!.change).toBeGreaterThan(0.003);
    expect(result.turns[0]!.turns).toBeNull();
    expect(result.rounded).toBeNull();
  });

  it("say that it cannot be done, and the nearest", () => {
    const far = turnsFor(H_ARM, { camber: 60 * DEGREE });
    expect(far.reachable).toBe(false);
    expect(far.exact.camber).toBeGreaterThan(5 * DEGREE);
    expect(far.exact.camber).toBeLessThan(60 * DEGREE);
    // A trailing arm has nothing to set camber with; its toe still is set.
    const stiff = turnsFor(TRAILING_ARM, { camber: 2 * DEGREE, toe: 0.5 * DEGREE });
    expect(stiff.plan.camber).toBeNull();
    expect(stiff.reachable).toBe(false);
    close(stiff.exact.toe, 0.5 * DEGREE);
    expect(Math.abs(stiff.exact.camber)).toBeLessThan(0.2 * DEGREE);
  });
});
