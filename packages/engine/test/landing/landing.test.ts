import { describe, expect, it } from "vitest";
import { makeCorner } from "../../src/cycle/corner.ts";
import { type CornerModel, cornerModel } from "../../src/landing/corner-model.ts";
import { OUT, suspensionForces, WORK_SIZE } from "../../src/landing/corner-rates.ts";
import { suspensionEnergy } from "../../src/landing/landing-energy.ts";
import type { LandingEvent } from "../../src/landing/landing-event.ts";
import { restStart } from "../../src/landing/landing-start.ts";
import { runAxle } from "../../src/landing/run-axle.ts";
import { runLanding } from "../../src/landing/run-landing.ts";
import { shockPlaceAt, wheelSpringAt } from "../../src/springs/wheel-spring.ts";
import { study } from "../../src/study/study.ts";
import { exampleCar } from "../example-documents.ts";

const car = exampleCar("saltbush");
const made = study(car);
const { corner } = made;
const found = cornerModel(made);
if (!found.ok) throw new Error(`no model: ${found.need}`);
const model: CornerModel = found.model;

describe("the model of a corner", () => {
  it("between the stops, its springs and gas are those of the spring study", () => {
    const out = new Float64Array(WORK_SIZE);
    const pace = { pace: "fast", restedAt: model.springs.rest.state.shockLength } as const;
    for (let travel = -0.19; travel < 0.09; travel += 0.0173) {
      suspensionForces(model.constants, travel, 0, out);
      const state = wheelSpringAt(model.springs.shockSpring, shockPlaceAt(corner, travel)!, pace);
      expect(out[OUT.springForce]).toBeCloseTo(state.shockForce, 3);
      expect(out[OUT.atWheel]! / state.wheelForce).toBeCloseTo(1, 6);
    }
  });

  it("its force at the wheel is the slope of the energy held, also on the stop and on the strap", () => {
    const out = new Float64Array(WORK_SIZE);
    const d = 1e-5;
    for (const travel of [-0.215, -0.2, -0.1, 0, 0.05, 0.12, 0.16, 0.1695]) {
      suspensionForces(model.constants, travel, 0, out);
      const slope =
        (suspensionEnergy(corner, model, travel + d)! - suspensionEnergy(corner, model, travel - d)!) / (2 * d);
      expect(Math.abs(out[OUT.atWheel]! - slope)).toBeLessThan(2e-4 * (1000 + Math.abs(slope)));
    }
  });

  it("stands still where it rests", () => {
    const start = restStart(model);
    expect(start.wheel - start.body).toBeCloseTo(model.rest, 6);
    const level = runLanding(corner, model, { kind: "bump", height: 1e-9, length: 1, speed: 10 });
    expect(level.travel.bump - level.travel.droop).toBeLessThan(1e-6);
  });

  it("says what is missing", () => {
    const { springs: _, ...bare } = car.shock!;
    const without = { ...car, shock: bare };
    expect(cornerModel(study(without))).toEqual({ ok: false, need: "springs" });
  });
});

const EVENTS: readonly LandingEvent[] = [
  { kind: "drop", height: 0.6 },
  { kind: "drop", height: 1.2 },
  { kind: "bump", height: 0.15, length: 1, speed: 8 },
  { kind: "whoops", height: 0.3, spacing: 6, count: 4, speed: 12 },
];

describe("landings", () => {
  it.each(EVENTS)("$kind $height: energy comes out even to 1 in 100 000 of what moved", (event) => {
    const landing = runLanding(corner, model, event);
    // Measured: 2.0e-6 and 4.7e-6 of the drops, 6.2e-6 of the bump, 8.4e-6 of the whoops.
    expect(landing.energy.off).toBeLessThan(1e-5);
    expect(landing.damper.work).toBeGreaterThan(100);
  });

  it("a higher drop loads everything more, and bottoms", () => {
    const [low, high] = [0.3, 1.2].map((height) => runLanding(corner, model, { kind: "drop", height }));
    expect(high!.peaks.wheelLoad.value).toBeGreaterThan(low!.peaks.wheelLoad.value);
    expect(high!.peaks.shockSpeedIn.value).toBeGreaterThan(low!.peaks.shockSpeedIn.value);
    expect(low!.bottomings).toBe(0);
    expect(high!.bottomings).toBeGreaterThan(0);
  });

  it("a tighter tolerance changes the peaks by less than 1 in 2000", () => {
    const event = { kind: "drop", height: 0.6 } as const;
    const usual = runLanding(corner, model, event);
    const fine = runLanding(corner, model, event, { error: 1e-11, longest: 5e-4 });
    // Measured: at most 3.6e-4, of the shock's force.
    for (const peak of ["wheelLoad", "shockForce", "shockSpeedIn", "stopForce", "strapForce"] as const) {
      expect(fine.peaks[peak].value, peak).toBeGreaterThan(0.5);
      expect(Math.abs(usual.peaks[peak].value / fine.peaks[peak].value - 1)).toBeLessThan(5e-4);
    }
  });

  it("the same event gives the same bits", () => {
    const event = { kind: "road", roadClass: "D", speed: 12, seconds: 3, seed: 11 } as const;
    const one = runLanding(corner, model, event);
    const two = runLanding(corner, model, event);
    for (const key of ["time", "travel", "wheelLoad", "shockForce"] as const) {
      expect(two.history[key].every((value, i) => Object.is(value, one.history[key][i]))).toBe(true);
    }
    expect(two.peaks).toEqual(one.peaks);
  });
});

describe("both wheels of the axle", () => {
  const corners = { left: corner, right: makeCorner(car) };
  const axle = (gyration: number) => ({ left: model, right: model, halfTrack: 0.8, gyration });
  const drop = { kind: "drop", height: 0.6 } as const;

  it("landing level they are two single corners, and the body does not roll", () => {
    // Peaks are read at the steps, so these must be fine for two runs to meet.
    const fine = { error: 1e-9, longest: 5e-4 };
    const both = runAxle(corners, axle(0.5), drop, fine);
    const one = runLanding(corner, model, drop, fine);
    for (const side of [both.left, both.right]) {
      for (const peak of ["wheelLoad", "stopForce", "shockForce"] as const) {
        expect(Math.abs(side.peaks[peak].value / one.peaks[peak].value - 1)).toBeLessThan(1e-3);
      }
      expect(side.travel.bump).toBeCloseTo(one.travel.bump, 5);
    }
    expect(both.roll.most).toBeLessThan(1e-9);
  });

  it("with the mass as far out as the wheels, one side knows nothing of the other", () => {
    // Radius of gyration = half track: each half of the body sits over its own wheel.
    const both = runAxle(corners, axle(0.8), { ...drop, otherLower: 3 });
    const one = runLanding(corner, model, drop);
    expect(Math.abs(both.left.peaks.wheelLoad.value / one.peaks.wheelLoad.value - 1)).toBeLessThan(1e-3);
    // The two sides land at different times, so the steps are other ones; the most travel is read at the end of a step.
    expect(Math.abs(both.left.travel.bump / one.travel.bump - 1)).toBeLessThan(1e-4);
  });

  it("with the mass nearer the middle the side that lands first gives way to roll, and is loaded less", () => {
    const both = runAxle(corners, axle(0.5), { ...drop, otherLower: 0.5 });
    const level = runLanding(corner, model, drop);
    expect(both.left.peaks.stopForce.value).toBeLessThan(level.peaks.stopForce.value);
    expect(both.roll.most).toBeGreaterThan(0.05);
  });
});
