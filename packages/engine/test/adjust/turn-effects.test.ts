import { describe, expect, it } from "vitest";
import { adjusted } from "../../src/adjust/adjusted.ts";
import { advancePerTurn } from "../../src/adjust/thread-advance.ts";
import { type TurnEffect, turnEffects } from "../../src/adjust/turn-effects.ts";
import type { Car, RodEnd } from "../../src/car/car.ts";
import { carOf, PITCH, SAMPLE_CARS } from "../sample-cars.ts";

const MM = 0.001;
const INCH = 0.0254;
const H_ARM = SAMPLE_CARS[0]!;
const FIVE_LINK = SAMPLE_CARS[3]!;

const effectOf = (car: Car, id: string): TurnEffect => turnEffects(car).find(({ adjuster }) => adjuster.id === id)!;

const withEnds = (car: Car, change: (end: RodEnd) => RodEnd): Car => ({ ...car, rodEnds: car.rodEnds.map(change) });

const upperLink = effectOf(H_ARM, "upperLink").adjuster;
const frontEnd = effectOf(H_ARM, "lowerArm.outerFront").adjuster;

describe("advance of a turn", () => {
  // Arithmetic: a turn of a turnbuckle is two pitches: M12×1.75 3.5 mm, 3/4-16 1/8 in.
  it("is two pitches on a turnbuckle with opposite hands", () => {
    const metric = withEnds(H_ARM, (end) => ({ ...end, pitch: 1.75 * MM }));
    expect(advancePerTurn(metric, upperLink)).toBeCloseTo(3.5 * MM, 15);
    const inch = withEnds(H_ARM, (end) => ({ ...end, pitch: INCH / 16 }));
    expect(advancePerTurn(inch, upperLink)).toBeCloseTo(INCH / 8, 15);
  });

  it("is the difference of the pitches with equal hands, none with equal pitches", () => {
    const sameHand = withEnds(H_ARM, (end) => ({ ...end, hand: "right" }));
    expect(advancePerTurn(sameHand, upperLink)).toBe(0);
    const uneven = withEnds(sameHand, (end) =>
      end.pivot === "upperLink.inner" ? { ...end, pitch: 1.75 * MM } : { ...end, pitch: 1.5 * MM },
    );
    expect(advancePerTurn(uneven, upperLink)).toBeCloseTo(0.25 * MM, 15);
  });

  it("is one pitch on an end that is taken off", () => {
    expect(advancePerTurn(H_ARM, frontEnd)).toBe(PITCH);
  });

  it("is not known where a thread is not given", () => {
    const bare = withEnds(H_ARM, ({ pitch: _, ...end }) => end);
    expect(advancePerTurn(bare, upperLink)).toBeNull();
    expect(advancePerTurn(bare, frontEnd)).toBeNull();
    expect(advancePerTurn({ ...H_ARM, rodEnds: [] }, frontEnd)).toBeNull();
  });
});

describe("turn effects", () => {
  it("tip the top out when an H-arm's upper link gets longer, in when its lower arm does", () => {
    expect(effectOf(H_ARM, "upperLink").perTurn!.camber).toBeGreaterThan(0);
    expect(effectOf(H_ARM, "lowerArm.outerFront").perTurn!.camber).toBeLessThan(0);
  });

  it("toe the wheel out when the rear end of an H-arm's outer pair comes in, in when the front one does", () => {
    // Rear end out pushes the back of the wheel out: toe-in.
    expect(effectOf(H_ARM, "lowerArm.outerRear").perTurn!.toe).toBeGreaterThan(0);
    expect(effectOf(H_ARM, "lowerArm.outerFront").perTurn!.toe).toBeLessThan(0);
  });

  // Closed case: links level, square to the car, spindle turning about the outer line: camber is change ÷ lever arm.
  it("give camber of link change over lever, half-track likewise", () => {
    const car = carOf({
      wheelCentre: { x: 0, y: 0.8, z: 0.4 },
      linkage: {
        kind: "h-arm",
        lowerArm: {
          innerFront: { x: 0.2, y: 0.2, z: 0.28 },
          innerRear: { x: -0.2, y: 0.2, z: 0.28 },
          outerFront: { x: 0.2, y: 0.8, z: 0.28 },
          outerRear: { x: -0.2, y: 0.8, z: 0.28 },
          diameter: 0.04,
        },
        upperLink: { inner: { x: 0, y: 0.2, z: 0.53 }, outer: { x: 0, y: 0.8, z: 0.53 }, diameter: 0.03 },
      },
    });
    const { perLength } = effectOf(car, "upperLink");
    // Lever 0.25 m; the contact point lies 0.28 m under the outer line and goes in as the top goes out.
    expect(perLength!.camber).toBeCloseTo(1 / 0.25, 6);
    expect(perLength!.toe).toBeCloseTo(0, 9);
    expect(perLength!.halfTrack).toBeCloseTo(-0.28 / 0.25, 6);
    const rear = effectOf(car, "lowerArm.outerRear").perLength!;
    // The pair's ends are 0.4 m apart: toe 1/0.4, the middle goes out by half.
    expect(rear.toe).toBeCloseTo(1 / 0.4, 6);
    expect(rear.camber).toBeCloseTo(-0.5 / 0.25, 6);
  });

  it("are the slopes of the adjusted car, on every kind", () => {
    for (const car of SAMPLE_CARS) {
      for (const { adjuster, advance, perTurn, perLength } of turnEffects(car)) {
        // A second difference, thirty times wider: agrees to its own (h/L)².
        const h = 6e-4;
        const out = adjusted(car, adjuster.id, h);
        const back = adjusted(car, adjuster.id, -h);
        if (!out.ok || !back.ok) throw new Error("a sample stands at its limit");
        for (const angle of ["camber", "toe"] as const) {
          const slope = (out.car.wheel[angle] - back.car.wheel[angle]) / (2 * h);
          const size = Math.max(1, Math.hypot(perLength!.camber, perLength!.toe));
          expect(Math.abs(slope - perLength![angle]) / size).toBeLessThan(5e-4);
          expect(perTurn![angle]).toBe(perLength![angle] * advance!);
        }
      }
    }
  });

  it("hold camber with the upper link while an end is turned", () => {
    const held = effectOf(H_ARM, "lowerArm.outerRear").camberHeld!;
    expect(held.by).toBe("upperLink");
    expect(held.turns).toBeGreaterThan(0);
    // Independent: turn both a little and look.
    const part = 0.02;
    const one = adjusted(H_ARM, "lowerArm.outerRear", part * PITCH);
    if (!one.ok) throw new Error("out of reach");
    const both = adjusted(one.car, "upperLink", part * held.turns * 2 * PITCH);
    if (!both.ok) throw new Error("out of reach");
    expect((both.car.wheel.camber - H_ARM.wheel.camber) / part).toBeCloseTo(0, 5);
    expect((both.car.wheel.toe - H_ARM.wheel.toe) / part).toBeCloseTo(held.toe, 5);
    expect(effectOf(H_ARM, "upperLink").camberHeld).toBeNull();
  });

  it("are unknown by the turn, but known by length, without a thread", () => {
    const bare = withEnds(FIVE_LINK, ({ pitch: _, ...end }) => end);
    for (const effect of turnEffects(bare)) {
      expect(effect.perTurn).toBeNull();
      expect(effect.camberHeld).toBeNull();
      expect(effect.perLength).not.toBeNull();
    }
  });
});
