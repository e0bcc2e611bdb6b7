import { describe, expect, it } from "vitest";
import { IN, OUT, WORK_SIZE, writeRates } from "../../src/landing/corner-rates.ts";
import { tryStep } from "../../src/landing/dormand-prince.ts";
import { type CornerStart, runCorner, STEP, STEP_SIZE, USUAL_STEPS } from "../../src/landing/run-corner.ts";
import { type PlainCorner, plainConstants } from "./plain-model.ts";

/** An invented quarter car: 250 kg on 16 kN/m over 40 kg on 160 kN/m; its modes are eigenvalues, no publication. All without gravity unless said. */
const QUARTER: PlainCorner = {
  sprung: 250,
  unsprung: 40,
  springRate: 16_000,
  damping: 0,
  tyreRate: 160_000,
  tyreDamping: 0,
  gravity: 0,
};

function run(P: Float64Array, start: CornerStart, until: number, error = USUAL_STEPS.error) {
  const path = new Float64Array(STEP_SIZE * 60_000);
  const end = runCorner(P, null, start, until, { ...USUAL_STEPS, error }, path);
  if (!end.isWhole) throw new Error("path too short");
  const at = (step: number, place: number): number => path[step * STEP_SIZE + place]!;
  return { ...end, at, last: (place: number) => at(end.steps - 1, place), path };
}

describe("runCorner against closed forms", () => {
  it("free drop: √(2gh) at the touch, found to 1e-12 m", () => {
    const P = plainConstants({ ...QUARTER, gravity: 9.80665, springRate: 0 });
    for (const [height, speed] of [
      [0.5, 3.13156],
      [1, 4.42869],
      [2, 6.26311],
    ] as const) {
      // Drop speeds: √(2gh), g 9.80665 m/s².
      const drop = run(P, { body: height, bodySpeed: 0, wheel: height, wheelSpeed: 0 }, 1);
      let touch = 0;
      while (drop.at(touch, STEP.wheel) > 0) touch += 1;
      expect(-drop.at(touch, STEP.wheelSpeed)).toBeCloseTo(speed, 5);
      expect(Math.abs(drop.at(touch, STEP.wheel))).toBeLessThan(1e-12);
      expect(drop.at(touch, STEP.time)).toBeCloseTo(Math.sqrt((2 * height) / 9.80665), 10);
    }
  });

  it("one mass undamped: A·cos ωt, with the wheel's mass far beyond", () => {
    // A wheel that cannot be moved: 1e12 kg.
    const P = plainConstants({ ...QUARTER, unsprung: 1e12 }, 1);
    const still = 16_000 / 250;
    const omega = Math.sqrt(still);
    // Without gravity the spring is free at z = −1: body 1 m over a wheel that stays at 0.
    const swung = run(P, { body: 1 + 0.1, bodySpeed: 0, wheel: 0, wheelSpeed: 0 }, 0.19);
    // Beyond free the spring hangs loose: only the half in which it pushes is a spring.
    const into = run(P, { body: 1, bodySpeed: -0.5, wheel: 0, wheelSpeed: 0 }, 0.3);
    expect(swung.last(STEP.body)).toBeCloseTo(1.1, 9);
    const t = into.last(STEP.time);
    expect(into.last(STEP.body)).toBeCloseTo(1 - (0.5 / omega) * Math.sin(omega * t), 8);
    expect(into.last(STEP.bodySpeed)).toBeCloseTo(-0.5 * Math.cos(omega * t), 7);
  });

  it("one mass damped: e^(−ζωt) with √(1 − ζ²)·ω", () => {
    const damping = 1200;
    const P = plainConstants({ ...QUARTER, unsprung: 1e12, damping }, 1);
    const omega = Math.sqrt(16_000 / 250);
    const zeta = damping / (2 * 250 * omega);
    const damped = omega * Math.sqrt(1 - zeta ** 2);
    const into = run(P, { body: 1, bodySpeed: -0.5, wheel: 0, wheelSpeed: 0 }, 0.3);
    const t = into.last(STEP.time);
    const body = 1 - (0.5 / damped) * Math.exp(-zeta * omega * t) * Math.sin(damped * t);
    expect(into.last(STEP.body)).toBeCloseTo(body, 8);
  });

  /** Linear round a standing corner: gravity presses springs and tyre, so that neither leaves its range. */
  const standing = (corner: PlainCorner) => {
    const { sprung, unsprung, springRate, tyreRate, gravity } = corner;
    const wheel = (-(sprung + unsprung) * gravity) / tyreRate;
    return { wheel, body: wheel - (sprung * gravity) / springRate };
  };

  it.each([
    ["Q5", { sprung: 250, unsprung: 40, springRate: 16_000, tyreRate: 160_000, damping: 0 }, [1.21317, 10.56422]],
    // Golden Car per kilogram of sprung mass (World Bank TP-46, ASTM E1926): K1 653, K2 63.3, µ 0.15.
    ["Q3", { sprung: 1, unsprung: 0.15, springRate: 63.3, tyreRate: 653, damping: 0 }, [1.2083, 11.00473]],
  ] as const)("two masses: the natural frequencies of %s come back from the motion", (_, corner, frequencies) => {
    const whole = { ...corner, tyreDamping: 0, gravity: 9.80665 };
    const P = plainConstants(whole);
    const rest = standing(whole);
    for (const hertz of frequencies) {
      // Start in the mode's own shape: it stays in it, and comes back after one period.
      const w2 = (2 * Math.PI * hertz) ** 2;
      const shape = 1 - (corner.sprung * w2) / corner.springRate;
      // The most of either amplitude 2 mm, so that the tyre stays on the ground.
      const size = 0.002 / Math.max(1, Math.abs(shape));
      const start = { body: rest.body + size, bodySpeed: 0, wheel: rest.wheel + size * shape, wheelSpeed: 0 };
      const back = run(P, start, 4 / hertz, 1e-11);
      // The eigenvalues are held to five decimals, so the shape is known to 1e-5 or so.
      expect(Math.abs(back.last(STEP.body) - start.body)).toBeLessThan(2e-4 * size);
    }
  });

  it("the Golden Car damped: its decay and frequency (eigenvalues of the car of ASTM E1926)", () => {
    const corner = { sprung: 1, unsprung: 0.15, springRate: 63.3, tyreRate: 653, damping: 6, tyreDamping: 0 };
    const whole = { ...corner, gravity: 9.80665 };
    const P = plainConstants(whole);
    const rest = standing(whole);
    // After the fast mode has died, upward crossings of rest are 1/(f·√(1 − ζ²)) apart: f 1.23630 Hz, ζ 0.33343.
    const free = run(P, { body: rest.body - 0.05, bodySpeed: 0, wheel: rest.wheel, wheelSpeed: 0 }, 4, 1e-10);
    const crossings: number[] = [];
    for (let i = 1; i < free.steps; i += 1) {
      const before = free.at(i - 1, STEP.body) - rest.body;
      const after = free.at(i, STEP.body) - rest.body;
      const [t0, t1] = [free.at(i - 1, STEP.time), free.at(i, STEP.time)];
      if (before < 0 && after >= 0) crossings.push(t0 + ((t1 - t0) * before) / (before - after));
    }
    const period = 1 / (1.2363 * Math.sqrt(1 - 0.33343 ** 2));
    expect(crossings[2]! - crossings[1]!).toBeCloseTo(period, 4);
  });
});

describe("runCorner by itself", () => {
  const P = plainConstants({ ...QUARTER, gravity: 9.80665, damping: 1200, tyreDamping: 400 }, 0.02);
  const drop: CornerStart = { body: 0.8, bodySpeed: 0, wheel: 0.5, wheelSpeed: 0 };

  it("gives the same bits each time", () => {
    const one = run(P, drop, 2);
    const two = run(P, drop, 2);
    expect(two.steps).toBe(one.steps);
    expect(two.path.every((value, i) => Object.is(value, one.path[i]))).toBe(true);
  });

  it("loses no energy but what damper and tyre took", () => {
    const fall = run(P, drop, 2);
    const energy = (i: number): number => {
      const [body, wheel] = [fall.at(i, STEP.body), fall.at(i, STEP.wheel)];
      const squeezed = Math.max(0, wheel - body + 0.02);
      const pressed = Math.max(0, -wheel);
      const kinetic = 125 * fall.at(i, STEP.bodySpeed) ** 2 + 20 * fall.at(i, STEP.wheelSpeed) ** 2;
      return kinetic + 9.80665 * (250 * body + 40 * wheel) + 8000 * squeezed ** 2 + 80_000 * pressed ** 2;
    };
    const taken = (i: number): number => fall.at(i, STEP.damperWork) + fall.at(i, STEP.tyreWork);
    const all = energy(0);
    for (let i = 0; i < fall.steps; i += 1) expect(Math.abs(energy(i) + taken(i) - all)).toBeLessThan(2e-5 * all);
    expect(taken(fall.steps - 1)).toBeGreaterThan(500);
  });

  it("the scalar steps are those of the plain method", () => {
    const out = new Float64Array(WORK_SIZE);
    const rates = (_: number, y: Float64Array, k: Float64Array): void => {
      out.set(y.subarray(0, 4), IN.body);
      writeRates(P, out, true);
      k.set([y[1]!, out[OUT.body]!, y[3]!, out[OUT.wheel]!, out[OUT.damperPower]!, out[OUT.tyrePower]!]);
    };
    const down = { body: 0.1, bodySpeed: -2, wheel: -0.01, wheelSpeed: -1 };
    const flat = run(P, down, 0.05);
    const errors = Float64Array.of(1, 1, 1, 1, 1, 1);
    for (let i = 1; i < flat.steps; i += 1) {
      const places = [STEP.body, STEP.bodySpeed, STEP.wheel, STEP.wheelSpeed, STEP.damperWork, STEP.tyreWork];
      const before = Float64Array.from(places, (place) => flat.at(i - 1, place));
      const h = flat.at(i, STEP.time) - flat.at(i - 1, STEP.time);
      const { y } = tryStep(rates, 0, before, h, errors);
      for (const [k, place] of places.entries()) expect(flat.at(i, place)).toBeCloseTo(y[k]!, 10);
    }
  });
});
