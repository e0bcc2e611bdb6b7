import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import type { Car, Shock, SpringSet } from "../../src/car/car.ts";
import { makeCorner } from "../../src/cycle/corner.ts";
import { vec } from "../../src/geometry/vec3.ts";
import { criticalDamping, shaftForces } from "../../src/springs/damping.ts";
import { findRest, preloadFor, rideFrequency } from "../../src/springs/ride-height.ts";
import { studySprings } from "../../src/springs/spring-study.ts";
import {
  type ShockSpring,
  SLOWLY,
  shockPlaceAt,
  shockSpringOf,
  wheelSpringAt,
  withSprings,
} from "../../src/springs/wheel-spring.ts";
import { study } from "../../src/study/study.ts";
import { STANDARD_GRAVITY } from "../../src/units/convert.ts";
import { carOfDocument, exampleDocument } from "../example-documents.ts";
import { carOf, SAMPLE_CARS } from "../sample-cars.ts";

const near = (ours: number, theirs: number, relative: number) =>
  expect(Math.abs(ours / theirs - 1)).toBeLessThan(relative);

const plain = (rate: number, preload = 0): SpringSet => ({
  main: { rate, freeLength: 0.4, solidLength: 0.05 },
  preload,
  collarPitch: 0.002,
});

/** A square trailing arm, level, pivot to wheel 500 mm; shock 300 mm from the pivot, its upper eye 350 back and 420 up. */
function lever(): Car {
  const made = carOf({
    linkage: {
      kind: "trailing-arm",
      trailingArm: {
        inboardPivot: vec(0.5, 0.2, 0.4),
        outboardPivot: vec(0.5, 0.5, 0.4),
        hub: vec(0, 0.6, 0.4),
        diameter: 0.04,
      },
    },
    wheelCentre: vec(0, 0.7, 0.4),
  });
  const shock: Shock = {
    upper: { point: vec(0.15, 0.4, 0.82), on: "chassis" },
    lower: { point: vec(0.2, 0.4, 0.4), on: "trailing-arm" },
    shortest: 0.3,
    longest: 0.52,
    diameter: 0.08,
    springs: plain(40_000),
  };
  return { ...made, shock };
}

// S12: k·MR² − F·d²L/dz²; equals the second derivative of strain energy (closed form).
test.each([
  [0, 422.96572, 0.595793, 2312.494, 13.60201, 14.19877],
  [60, 387.5274, 0.584776, 3098.67, 12.48513, 13.6785],
  [-40, 446.91507, 0.601577, 1758.65, 14.06915, 14.47582],
])("S12 lever of 500 mm, wheel at %d mm", (z, length, ratio, force, rate, plainRate) => {
  const car = lever();
  const state = wheelSpringAt(shockSpringOf(car.shock)!, shockPlaceAt(makeCorner(car), z / 1000)!, SLOWLY);
  near(state.shockLength, length / 1000, 2e-5);
  near(state.motionRatio, ratio, 2e-5);
  near(state.wheelForce, force, 2e-5);
  near(state.wheelRate, rate * 1000, 2e-5);
  near(state.wheelRate - state.geometryRate, plainRate * 1000, 2e-5);
});

describe("on every kind of linkage", () => {
  const STEP = 1e-5;
  const gas = { kind: "reservoir", pressure: 1.4e6, rodDiameter: 0.022, volume: 4e-4 } as const;
  it.each(SAMPLE_CARS.map((car) => [car.linkage.kind, car] as const))(
    "%s: force by virtual work, rate as its slope",
    (_, car) => {
      const shock = {
        ...car.shock!,
        springs: { ...plain(40_000, 0.3), main: { rate: 40_000, freeLength: 2, solidLength: 0.1 } },
        gas,
      };
      const corner = makeCorner(car);
      const made = shockSpringOf(shock)!;
      fc.assert(
        fc.property(fc.double({ min: -0.08, max: 0.08, noNaN: true }), (z) => {
          const at = (travel: number) => wheelSpringAt(made, shockPlaceAt(corner, travel)!, SLOWLY);
          const [low, here, high] = [at(z - STEP), at(z), at(z + STEP)];
          // Wheel force × dz = shock force × −dL.
          const work = here.shockForce * (low.shockLength - high.shockLength);
          expect(Math.abs(here.wheelForce * 2 * STEP - work)).toBeLessThan(1e-7 * Math.abs(here.shockForce));
          const slope = (high.wheelForce - low.wheelForce) / (2 * STEP);
          expect(Math.abs(slope - here.wheelRate)).toBeLessThan(1e-5 * Math.abs(here.shockRate));
        }),
        { numRuns: 30 },
      );
    },
  );
});

describe("ride frequency", () => {
  test("Q6 OpenStax, College Physics, Ex. 16.4: 900 kg on 6.53e4 N/m is 1.3557 Hz", () => {
    near(rideFrequency(6.53e4, 900), 1.3557, 1e-4);
  });

  // Q7: f = √(g/δ)/2π.
  test.each([
    [1, 3.1273],
    [2, 2.2113],
    [4, 1.5636],
    [8, 1.1057],
    [12, 0.9028],
  ])("Q7 %d in of static deflection is %d Hz", (inches, hertz) => {
    near(rideFrequency((100 * STANDARD_GRAVITY) / (inches * 0.0254), 100), hertz, 1e-4);
  });

  test("Q5 quarter car 250 and 40 kg on 16 and 160 kN/m: 1.21399 Hz, 0.1 % above the coupled mode of 1.21317", () => {
    near(rideFrequency(16_000, 250, 160_000), 1.21399, 1e-5);
    near(rideFrequency(16_000, 250, 160_000), 1.21317, 1e-3);
  });

  test("a rate that is none has no frequency", () => {
    expect(rideFrequency(-5, 250)).toBe(0);
  });
});

describe("where a car sits", () => {
  const car = lever();
  const corner = makeCorner(car);
  const stops = { droop: -0.1, bump: 0.1 };
  const onSpring = (springs: SpringSet): ShockSpring => withSprings(shockSpringOf(car.shock)!, springs);

  it("is where the springs carry what is sprung", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 600, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (sprungMass, preload) => {
          const rest = findRest(corner, onSpring(plain(40_000, preload)), { sprungMass }, stops)!;
          const over = rest.state.wheelForce - sprungMass * STANDARD_GRAVITY;
          if (rest.on === "springs") expect(Math.abs(over)).toBeLessThan(1e-3);
          else expect(rest.on === "bump-stop" ? over < 0 : over >= 0).toBe(true);
        },
      ),
    );
  });

  it("is brought to a height by the preload that is told for it", () => {
    const springs = plain(40_000);
    const wanted = preloadFor(corner, onSpring(springs), springs, { sprungMass: 250 }, 0.02)!;
    expect(findRest(corner, onSpring({ ...springs, preload: wanted }), { sprungMass: 250 }, stops)!.travel).toBeCloseTo(
      0.02,
      7,
    );
  });

  test("by arithmetic: 60 lb more on a wheel rate of 100 lb/in is 0.6 in of height", () => {
    const { state } = findRest(corner, onSpring(plain(40_000)), { sprungMass: 240 }, stops)!;
    const more = 5;
    const moved = findRest(corner, onSpring(plain(40_000)), { sprungMass: 240 + more }, stops)!.travel - state.travel;
    // weight ÷ rate, to the rate's change over 4 mm.
    near(moved, (more * STANDARD_GRAVITY) / state.wheelRate, 0.01);
  });
});

test("critical damping is 2·√(K·m), and over MR² at the shock; the targets are shares of it", () => {
  const critical = criticalDamping(16_000, 250, 0.5)!;
  expect(critical.atWheel).toBeCloseTo(4000, 9);
  expect(critical.atShock).toBeCloseTo(16_000, 9);
  expect(shaftForces(critical, { bump: 0.25, rebound: 0.5 }, [0.1])).toEqual([{ speed: 0.1, bump: 400, rebound: 800 }]);
  expect(criticalDamping(-1, 250, 0.5)).toBeNull();
  expect(criticalDamping(16_000, 250, 0)).toBeNull();
});

describe("saltbush on a 250 over a 300 lb/in spring", () => {
  const made = studySprings(study(carOfDocument(exampleDocument("saltbush"))))!;

  it("sits within 1/8 in of the drawn height, on usual preload and frequency", () => {
    expect(made.rest.on).toBe("springs");
    expect(Math.abs(made.rest.travel) / 0.0254).toBeLessThan(0.125);
    expect(made.frequency.ride).toBeGreaterThan(0.9);
    expect(made.frequency.beyondCrossover).toBeGreaterThan(made.frequency.ride!);
  });

  it("crosses over 1 to 3 in of shock past ride, with half an inch left before coil bind", () => {
    const past = (made.rest.state.shockLength - made.crossover!.shockLength) / 0.0254;
    expect(past).toBeGreaterThan(1);
    expect(past).toBeLessThan(3);
    for (const { leftToSolid } of made.positions[2]!.state.springs.members)
      expect(leftToSolid / 0.0254).toBeGreaterThan(0.5);
    expect(made.looseAtDroop).toBe(0);
  });

  it("carries its weight by bottom: the sum of what is left is the travel", () => {
    expect(made.left.bump + made.left.droop).toBeCloseTo(made.stops.bump - made.stops.droop, 12);
    expect(made.sagShare).toBeCloseTo(made.left.droop / (made.stops.bump - made.stops.droop), 12);
  });
});
