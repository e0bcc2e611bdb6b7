import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { findRest, rideFrequency } from "../../src/springs/ride-height.ts";
import {
  chooseSprings,
  LEFT_TO_SOLID,
  SEAT_ROOM,
  type ShelfSpring,
  type SpringWish,
  USUAL_PRELOAD,
} from "../../src/springs/spring-choice.ts";
import { springStackAt } from "../../src/springs/spring-stack.ts";
import { studySprings } from "../../src/springs/spring-study.ts";
import { bandOf } from "../../src/springs/use-band.ts";
import { shockPlaceAt, wheelSpringAt, withSprings } from "../../src/springs/wheel-spring.ts";
import { study } from "../../src/study/study.ts";
import { INCH, POUND_FORCE_PER_INCH } from "../../src/units/convert.ts";
import { parseLength } from "../../src/units/tape.ts";
import { carOfDocument, exampleDocument } from "../example-documents.ts";

const metres = (typed: number | string): number => {
  const parsed = parseLength(typed, "inch-pound");
  if (!parsed.ok) throw new Error(String(typed));
  return parsed.metres;
};

const SHELF: readonly ShelfSpring[] = JSON.parse(
  readFileSync(new URL("../../../../examples/springs.shelf.json", import.meta.url), "utf8"),
).springs.map(({ name, rate, freeLength, solidLength }: Record<string, number | string>) => ({
  name: String(name),
  rate: Number(rate) * POUND_FORCE_PER_INCH,
  freeLength: metres(freeLength!),
  solidLength: metres(solidLength!),
}));

const made = study(carOfDocument(exampleDocument("saltbush")));
const springs = studySprings(made)!;
const wish: SpringWish = {
  sprungMass: springs.sprungMass,
  stops: springs.stops,
  rideTravel: 0,
  band: bandOf("desert"),
  crossoverPast: 2 * INCH,
  collarPitch: INCH / 12,
};
const choices = chooseSprings(made.corner, springs.shockSpring, SHELF, wish)!;

describe("every spring of a shelf and every two", () => {
  it("are tried, and each is either taken or turned down for one reason", () => {
    expect(choices.sets).toBe(SHELF.length * (SHELF.length + 1));
    const refused = Object.values(choices.refused).reduce((sum, count) => sum + count, 0);
    expect(refused + choices.fitting.length).toBe(choices.sets);
    expect(choices.fitting.length).toBeGreaterThan(5);
  });

  it("taken, sit at the wished height by solving for rest anew, and break no rule", () => {
    const bump = shockPlaceAt(made.corner, wish.stops.bump)!;
    const droop = shockPlaceAt(made.corner, wish.stops.droop)!;
    for (const { springs: set, frequency } of choices.fitting) {
      const fitted = withSprings(springs.shockSpring, set);
      const rest = findRest(made.corner, fitted, wish, wish.stops)!;
      expect(rest.on).toBe("springs");
      expect(Math.abs(rest.travel)).toBeLessThan(1e-6);
      const fast = wheelSpringAt(fitted, rest.state, { pace: "fast", restedAt: rest.state.shockLength });
      expect(rideFrequency(fast.wheelRate, wish.sprungMass)).toBeCloseTo(frequency, 6);
      expect(frequency).toBeGreaterThanOrEqual(wish.band.from);
      expect(frequency).toBeLessThanOrEqual(wish.band.to);
      expect(set.preload).toBeGreaterThanOrEqual(0);
      expect(set.preload).toBeLessThanOrEqual(USUAL_PRELOAD.most);
      if (set.tender) {
        expect(set.tender.rate).toBeLessThanOrEqual(set.main.rate);
        expect(fitted.stack.crossover?.by).toBe("stop");
        expect((rest.state.shockLength - fitted.stack.crossover!.shockLength) / INCH).toBeCloseTo(2, 4);
      }
      expect(set.main.freeLength + (set.tender?.freeLength ?? 0) - set.preload).toBeLessThanOrEqual(
        fitted.longest - SEAT_ROOM,
      );
      for (const { leftToSolid } of springStackAt(fitted.stack, bump.shockLength).members) {
        expect(leftToSolid).toBeGreaterThanOrEqual(LEFT_TO_SOLID - 1e-12);
      }
      expect(springStackAt(fitted.stack, droop.shockLength).loose).toBe(0);
    }
  });

  it("come best first, the same whenever asked", () => {
    const ranks = choices.fitting.map(({ rank }) => rank);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(chooseSprings(made.corner, springs.shockSpring, SHELF, wish)).toEqual(choices);
  });

  it("tell what 5 % of weight does: lower when heavier, and the turns that mend it do", () => {
    for (const { springs: set, heavier, lighter } of choices.fitting) {
      expect(heavier.lower).toBeGreaterThan(0);
      expect(lighter.lower).toBeLessThan(0);
      const preload = set.preload + heavier.turns * set.collarPitch;
      const mended = withSprings(springs.shockSpring, { ...set, preload });
      const rest = findRest(made.corner, mended, { sprungMass: wish.sprungMass * 1.05 }, wish.stops)!;
      expect(Math.abs(rest.travel)).toBeLessThan(1e-6);
    }
  });

  it("give nothing where nothing fits, with the reasons", () => {
    const none = chooseSprings(made.corner, springs.shockSpring, SHELF.slice(0, 1), wish)!;
    expect(none.fitting).toEqual([]);
    expect(none.sets).toBe(2);
  });
});
