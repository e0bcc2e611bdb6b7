import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adjusted } from "../../src/adjust/adjusted.ts";
import { fitLengths } from "../../src/adjust/fit-lengths.ts";
import { linkLengths } from "../../src/adjust/screw-step.ts";
import type { Car } from "../../src/car/car.ts";
import { wheelCentreOf } from "../../src/car/wheel-centre.ts";
import { anyCar, SAMPLE_CARS } from "../sample-cars.ts";
import { keptDistances } from "./kept-distances.ts";

/** m */
const LENGTH_TOLERANCE = 1e-9;
const [H_ARM, DOUBLE_A_ARM, TRAILING_ARM, FIVE_LINK] = SAMPLE_CARS as readonly [Car, Car, Car, Car];

describe("measured lengths", () => {
  it("put the car together anew, with every other length kept, on random cars", () => {
    fc.assert(
      fc.property(
        anyCar.filter((car) => car.linkage.kind !== "trailing-arm"),
        fc.array(fc.double({ min: -0.004, max: 0.004, noNaN: true }), { minLength: 5, maxLength: 5 }),
        (car, shifts) => {
          const asked = Object.fromEntries(
            Object.entries(linkLengths(car)).map(([id, length], i) => [id, length + shifts[i]!]),
          );
          const result = fitLengths(car, asked);
          fc.pre(result.ok);
          if (!result.ok) return;
          const now = linkLengths(result.car);
          for (const [id, length] of Object.entries(asked))
            expect(Math.abs(now[id]! - length)).toBeLessThan(LENGTH_TOLERANCE);
          expect(wheelCentreOf(result.car.wheel).z).toBeCloseTo(wheelCentreOf(car.wheel).z, 12);
          // Of the kept distances the links are the last; all before them are within bodies.
          const before = keptDistances(car, "").slice(0, -Object.keys(asked).length);
          const after = keptDistances(result.car, "");
          for (const [i, value] of before.entries()) expect(Math.abs(after[i]! - value)).toBeLessThan(LENGTH_TOLERANCE);
        },
      ),
      { numRuns: 50 },
    );
  });

  it("do the same as the link's adjuster", () => {
    const before = linkLengths(DOUBLE_A_ARM)["toeLink"]!;
    const fitted = fitLengths(DOUBLE_A_ARM, { toeLink: before + 0.003 });
    const turned = adjusted(DOUBLE_A_ARM, "toeLink", 0.003);
    if (!fitted.ok || !turned.ok) throw new Error("out of reach");
    expect(fitted.car.wheel.toe).toBeCloseTo(turned.car.wheel.toe, 13);
  });

  it("leave the car alone where they agree with its points", () => {
    for (const car of SAMPLE_CARS) {
      const result = fitLengths(car, linkLengths(car));
      expect(result.ok && result.car).toBe(car);
    }
    expect(fitLengths(TRAILING_ARM, {})).toEqual({ ok: true, car: TRAILING_ARM });
  });

  it("say which length misses, and by how much", () => {
    const now = linkLengths(H_ARM)["upperLink"]!;
    const result = fitLengths(H_ARM, { upperLink: now + 1 });
    if (result.ok) throw new Error("a link twice as long went in");
    const [miss, ...others] = result.misses;
    expect(others).toEqual([]);
    expect(miss!.member).toBe("upperLink");
    expect(miss!.label).toBe("upper link");
    expect(miss!.miss).toBeCloseTo(now + 1 - miss!.nearest, 12);
    expect(miss!.nearest).toBeGreaterThan(now);
    // The nearest does go together; a little more does not.
    expect(fitLengths(H_ARM, { upperLink: miss!.nearest - 1e-5 }).ok).toBe(true);
    expect(fitLengths(H_ARM, { upperLink: miss!.nearest + 1e-4 }).ok).toBe(false);
  });

  it("name only the one that misses out of several", () => {
    const lengths = linkLengths(FIVE_LINK);
    const result = fitLengths(FIVE_LINK, {
      "links.toe": lengths["links.toe"]! + 1.5,
      "links.upper front": lengths["links.upper front"]! + 0.002,
    });
    if (result.ok) throw new Error("a toe link of two metres went in");
    expect(result.misses.map(({ member }) => member)).toEqual(["links.toe"]);
  });

  it("do not take a link that the linkage has not", () => {
    expect(() => fitLengths(TRAILING_ARM, { toeLink: 0.4 })).toThrow("no link toeLink");
  });
});
