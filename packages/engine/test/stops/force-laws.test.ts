import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  apparentModulus,
  type BumpStopLaw,
  bumpStopAt,
  bumpStopForce,
  modulusAfterGent,
  modulusAfterRuess,
  shapeFactor,
  squeezeFor,
} from "../../src/stops/bump-stop-law.ts";
import { lawOf, rubberLaw } from "../../src/stops/law-of.ts";
import { strapAt, strapForce, USUAL_STRETCH } from "../../src/stops/strap-stretch.ts";
import { ATMOSPHERE } from "../../src/units/convert.ts";

const anyLaw: fc.Arbitrary<BumpStopLaw> = fc
  .record({
    kind: fc.constantFrom("table", "rubber", "gas"),
    stroke: fc.double({ min: 0.02, max: 0.12, noNaN: true }),
    share: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
    forces: fc.array(fc.double({ min: 10, max: 20_000, noNaN: true }), { minLength: 1, maxLength: 5 }),
    pressure: fc.double({ min: 1e5, max: 2e6, noNaN: true }),
  })
  .map(({ kind, stroke, share, forces, pressure }): BumpStopLaw => {
    if (kind === "table")
      return { kind, stroke, points: forces.sort((a, b) => a - b).map((force, i) => ({ at: 0.01 * (i + 1), force })) };
    if (kind === "rubber")
      return rubberLaw({ reach: stroke / share, solid: stroke / share - stroke }, { diameter: 0.05, hardness: 60 });
    const diameter = 0.025;
    return { kind: "gas", stroke, pressure, diameter, volume: ((Math.PI / 4) * diameter ** 2 * stroke) / share };
  });

describe("force of a bump stop", () => {
  it("absorbs the integral of its force, and its rate is that force's slope", () => {
    fc.assert(
      fc.property(anyLaw, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (law, share) => {
        const to = share * law.stroke;
        const steps = 4000;
        let sum = 0;
        for (let i = 0; i < steps; i += 1) sum += (bumpStopForce(law, ((i + 0.5) * to) / steps) * to) / steps;
        expect(bumpStopAt(law, to).energy / sum).toBeCloseTo(1, 3);
        if (law.kind === "table") return;
        const h = to * 1e-5;
        const slope = (bumpStopForce(law, to + h) - bumpStopForce(law, to - h)) / (2 * h);
        expect(bumpStopAt(law, to).rate / slope).toBeCloseTo(1, 4);
      }),
      { numRuns: 60 },
    );
  });

  it("has nothing before the touch, goes on from its solid force past it, and gives its squeeze back for an energy", () => {
    fc.assert(
      fc.property(anyLaw, fc.double({ min: 0.01, max: 1.5, noNaN: true }), (law, share) => {
        expect(bumpStopForce(law, 0)).toBe(0);
        expect(bumpStopForce(law, -0.01)).toBe(0);
        const solid = bumpStopForce(law, law.stroke);
        expect(bumpStopForce(law, law.stroke + 1e-9) - solid).toBeLessThan(0.02);
        expect(bumpStopAt(law, law.stroke * 1.01).isSolid).toBe(true);
        const { energy } = bumpStopAt(law, share * law.stroke);
        expect(squeezeFor(law, energy) / (share * law.stroke)).toBeCloseTo(1, 6);
      }),
      { numRuns: 60 },
    );
  });

  it("follows p·V^1.4 (OpenStax, University Physics Vol. 2, §3.6: 240 to 40 cm³ from 1e5 Pa)", () => {
    // Its 200 cm³ as 0.2 m of a rod of 10 cm².
    const diameter = Math.sqrt((4 * 0.001) / Math.PI);
    const law: BumpStopLaw = { kind: "gas", stroke: 0.2, pressure: 1e5 - ATMOSPHERE, volume: 240e-6, diameter };
    const { force, energy } = bumpStopAt(law, 0.2);
    expect(force / 0.001 + ATMOSPHERE).toBeCloseTo(1.2286e6, -2);
    expect(energy + ATMOSPHERE * 200e-6).toBeCloseTo(62.86, 2);
  });

  it("has a gas strut's force and rate (k = γ·p·A²/V by its own derivative, no publication: 1.5 MPa on 0.002 m², 0.6 l)", () => {
    const diameter = Math.sqrt((4 * 0.002) / Math.PI);
    // Absolute on both sides of that row: without the air outside.
    const law: BumpStopLaw = { kind: "gas", stroke: 0.1, pressure: 1.5e6 - ATMOSPHERE, volume: 0.6e-3, diameter };
    const air = ATMOSPHERE * 0.002;
    expect(bumpStopForce(law, 1e-12) + air).toBeCloseTo(3000, 4);
    expect(bumpStopAt(law, 1e-12).rate).toBeCloseTo(14_000, 3);
    expect(bumpStopForce(law, 0.05) + air).toBeCloseTo(3872.35, 1);
    expect(bumpStopAt(law, 0.05).rate).toBeCloseTo(21_685.2, 0);
  });

  it("stiffens rubber by its shape (E_a = E·(1 + 2S²): Gent and Lindley 1959, as quoted second-hand) and starts at that stiffness", () => {
    expect(apparentModulus(1, shapeFactor(60, 30))).toBe(1.5);
    expect(apparentModulus(1, shapeFactor(50, 50))).toBe(1.125);
    const law = rubberLaw({ reach: 0.05, solid: 0.02 }, { diameter: 0.05, hardness: 60 });
    const area = (Math.PI / 4) * 0.05 ** 2;
    expect(bumpStopAt(law, 1e-9).rate / ((law.modulus * 1.125 * area) / 0.05)).toBeCloseTo(1, 6);
  });

  it("knows rubber by its hardness only to a factor near two (Shore A 70: Gent 1958 and Ruess, both from memory: a spread, no gate)", () => {
    expect(modulusAfterGent(70) / 1e6).toBeCloseTo(5.54, 2);
    expect(modulusAfterRuess(70) / 1e6).toBeCloseTo(10.11, 2);
  });

  it("takes the usual pad where a car has none of its own", () => {
    const stop = { reach: 0.0762, solid: 0.03175 };
    expect(lawOf(stop)).toEqual(rubberLaw(stop, { diameter: 0.0508, hardness: 60 }));
  });
});

describe("force of a strap", () => {
  const strap = {
    length: 0.5,
    stretch: [
      { at: 0.05, force: 4000 },
      { at: 0.1, force: 12_000 },
    ],
  };
  it("is slack up to its length, then follows the readings, and on past the last", () => {
    expect(strapForce(strap, 0.5)).toBe(0);
    expect(strapForce(strap, 0.525)).toBeCloseTo(4000, 6);
    expect(strapForce(strap, 0.5375)).toBeCloseTo(8000, 6);
    expect(strapForce(strap, 0.575)).toBeCloseTo(20_000, 6);
    expect(strapAt(strap, 0.55).energy).toBeCloseTo(0.025 * 2000 + 0.025 * 8000, 6);
    expect(strapAt(strap, 0.55).rate).toBeCloseTo(8000 / 0.025, 3);
  });

  it("common practice, no source: the usual one stretches between 5 and 10 % where 2 000 lb snatch at it", () => {
    expect(USUAL_STRETCH[0]!.at).toBeGreaterThanOrEqual(0.05);
    expect(USUAL_STRETCH[0]!.at).toBeLessThanOrEqual(0.1);
    // As a bound, nylon rope (UFC 4-159-03, table 6-8): AE/break 3.539, so such a webbing would break near 7 500 lb.
    const perStrain = USUAL_STRETCH[0]!.force / USUAL_STRETCH[0]!.at;
    expect(perStrain / 3.539 / 4.4482216).toBeGreaterThan(4000);
  });
});
