import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Car } from "../../src/car/car.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { positionOf } from "../../src/cycle/position.ts";
import { ROW } from "../../src/cycle/row.ts";
import { cross, dot, length, scale, subtract, unit, vec } from "../../src/geometry/vec3.ts";
import { AT } from "../../src/linkage/motion-state.ts";
import type { CornerForces } from "../../src/loads/corner-forces.ts";
import { balance } from "../../src/loads/equilibrium.ts";
import { shaftResidual } from "../../src/loads/shaft-torque.ts";
import { shaftPlaceOf } from "../../src/loads/spindle-action.ts";
import { workAtWheel } from "../../src/loads/virtual-work.ts";
import type { Turning, WheelLoad } from "../../src/loads/wheel-load.ts";
import { anyCar, carOf, SAMPLE_CARS } from "../sample-cars.ts";

/** Rounding of a solve of at most 18 equations whose numbers differ a thousandfold, of the largest force. */
const ROUNDING = 1e-10;

const force = fc.double({ min: -10_000, max: 10_000, noNaN: true });
const anyForce = fc.tuple(force, force, force).map(([x, y, z]) => vec(x, y, z));
const anyTurning = fc.constantFrom<Turning["by"]>("rolling", "brake", "shaft").map((by): Turning => ({ by }));
const anyLoad = fc.record({ contact: anyForce, centre: anyForce, turning: anyTurning });
const anyTravel = fc.double({ min: -0.12, max: 0.12, noNaN: true });

function forcesOf(car: Car, travel: number, load: WheelLoad): CornerForces {
  const found = balance(makeCorner(car), { travel, load, carrier: "shock" });
  if (!found.ok) throw new Error(`no balance: ${found.reason}`);
  return found.forces;
}

const largest = (forces: CornerForces): number =>
  Math.max(1, ...forces.joints.map((joint) => length(joint.force)), ...forces.struts.map((s) => Math.abs(s.magnitude)));

const shockOf = (forces: CornerForces): number => forces.struts.find(({ name }) => name === "shock")!.magnitude;

/** Random corners can be near dead centre of the shock, where no force is of use. */
const isWorking = (car: Car, travel: number): boolean => {
  const solved = solveAt(makeCorner(car), travel);
  return solved !== null && Math.abs(solved.row[ROW.motionRatio]!) > 0.05;
};

describe("balance of a corner", () => {
  it("leaves nothing over on any body, whatever the car and the load", () => {
    fc.assert(
      fc.property(anyCar, anyTravel, anyLoad, (car, travel, load) => {
        fc.pre(isWorking(car, travel));
        const forces = forcesOf(car, travel, load);
        expect(forces.residual).toBeLessThan(ROUNDING * largest(forces));
      }),
      { numRuns: 300 },
    );
  });

  it("asks of the shock what virtual work asks of it", () => {
    fc.assert(
      fc.property(anyCar, anyTravel, anyLoad, (car, travel, load) => {
        fc.pre(isWorking(car, travel));
        const forces = forcesOf(car, travel, load);
        const work = workAtWheel(makeCorner(car), travel, load)!;
        expect(Math.abs(shockOf(forces) - work.shockForce!)).toBeLessThan(ROUNDING * largest(forces));
      }),
      { numRuns: 300 },
    );
  });

  it("braked, agrees with the contact point's velocity; rolling with a force at the centre, with the wheel centre's", () => {
    fc.assert(
      fc.property(anyCar, anyTravel, anyForce, (car, travel, load) => {
        fc.pre(isWorking(car, travel));
        const { row, state } = solveAt(makeCorner(car), travel)!;
        const none = vec(0, 0, 0);
        const braked = forcesOf(car, travel, { contact: load, centre: none, turning: { by: "brake" } });
        const contactPath = vec(row[ROW.contactVelocityX]!, row[ROW.contactVelocityY]!, row[ROW.contactVelocityZ]!);
        const byContact = dot(load, contactPath) / row[ROW.motionRatio]!;
        expect(Math.abs(shockOf(braked) - byContact)).toBeLessThan(ROUNDING * largest(braked));
        const struck = forcesOf(car, travel, { contact: none, centre: load, turning: { by: "rolling" } });
        const centrePath = vec(state[AT.velocity]!, state[AT.velocity + 1]!, state[AT.velocity + 2]!);
        const byCentre = dot(load, centrePath) / row[ROW.motionRatio]!;
        expect(Math.abs(shockOf(struck) - byCentre)).toBeLessThan(ROUNDING * largest(struck));
      }),
      { numRuns: 200 },
    );
  });

  it("passes the whole load on to the chassis", () => {
    fc.assert(
      fc.property(anyCar, anyTravel, anyLoad, (car, travel, load) => {
        fc.pre(isWorking(car, travel));
        const forces = forcesOf(car, travel, load);
        let rest = forces.action.onSpindle.force;
        const atChassis = makeCorner(car).pivots.filter(({ boltSide }) => boltSide === "chassis");
        for (const { id } of atChassis) {
          const joint = forces.joints.find(({ pivot }) => pivot === id)!;
          rest = subtract(rest, scale(joint.force, -1));
        }
        for (const { onLower, upper } of forces.struts) {
          if (upper.on === "chassis") rest = subtract(rest, scale(onLower, -1));
        }
        expect(length(rest)).toBeLessThan(ROUNDING * largest(forces));
      }),
      { numRuns: 100 },
    );
  });

  it("is linear: twice the load makes twice the forces", () => {
    for (const car of SAMPLE_CARS) {
      const load: WheelLoad = { contact: vec(900, -700, 4000), centre: vec(-50, 20, 0), turning: { by: "shaft" } };
      const twice: WheelLoad = { ...load, contact: scale(load.contact, 2), centre: scale(load.centre, 2) };
      const one = forcesOf(car, 0.05, load);
      const two = forcesOf(car, 0.05, twice);
      one.joints.forEach((joint, i) => {
        expect(length(subtract(two.joints[i]!.force, scale(joint.force, 2)))).toBeLessThan(ROUNDING * largest(two));
      });
    }
  });

  it("a hinge makes no moment about its own line, and says what it cannot share out", () => {
    const h = forcesOf(SAMPLE_CARS[0]!, 0.03, {
      contact: vec(1500, 800, 4000),
      centre: vec(0, 0, 0),
      turning: { by: "rolling" },
    });
    expect(h.hinges).toHaveLength(2);
    for (const { moment, axis, alongAxis } of h.hinges) {
      expect(Math.abs(dot(moment, axis))).toBeLessThan(1e-9);
      expect(Math.abs(alongAxis)).toBeGreaterThan(100);
    }
    const [front, rear] = ["lowerArm.innerFront", "lowerArm.innerRear"].map(
      (id) => h.joints.find(({ pivot }) => pivot === id)!,
    );
    expect(front!.undecided).toBe(rear!.undecided);
    const { axis } = h.hinges[0]!;
    expect(dot(front!.force, axis)).toBeCloseTo(front!.undecided / 2, 6);
    expect(dot(rear!.worst, axis)).toBeCloseTo(rear!.undecided, 6);
  });
});

describe("balance by hand", () => {
  /** A trailing arm square to the car, 700 mm long, its shock upright half way: a lever. */
  const lever = carOf({
    wheelCentre: vec(0, 0.8, 0.4),
    linkage: {
      kind: "trailing-arm",
      trailingArm: {
        inboardPivot: vec(0.7, 0.3, 0.4),
        outboardPivot: vec(0.7, 0.6, 0.4),
        hub: vec(0, 0.7, 0.4),
        diameter: 0.05,
      },
    },
  });
  const shock = {
    upper: { point: vec(0.35, 0.5, 0.9), on: "chassis" as const },
    lower: { point: vec(0.35, 0.5, 0.4), on: "trailing-arm" as const },
    shortest: 0.3,
    longest: 0.7,
    diameter: 0.08,
  };
  const car: Car = { ...lever, shock };

  it("a lever: half the arm, twice the force; pivots pull down by the difference, and share by moments", () => {
    const forces = forcesOf(car, 0, { contact: vec(0, 0, 1000), centre: vec(0, 0, 0), turning: { by: "rolling" } });
    expect(shockOf(forces)).toBeCloseTo(2000, 8);
    const [inboard, outboard] = forces.joints;
    expect(inboard!.force.z + outboard!.force.z).toBeCloseTo(1000, 8);
    // Moments about the inboard pivot's fore-and-aft line: 1000·0.5 − 2000·0.2 + Fo·0.3 = 0.
    expect(outboard!.force.z).toBeCloseTo((2000 * 0.2 - 1000 * 0.5) / 0.3, 8);
    expect(inboard!.undecided).toBeCloseTo(0, 8);
  });

  it("rearward at the contact: rolling it acts at the axle's height, braked at the ground's", () => {
    const rear = { contact: vec(-1000, 0, 0), centre: vec(0, 0, 0) };
    // The axle is level with the pivot: no moment about it. Braked, the loaded radius 0.4 is the lever, and pulls the body down.
    expect(shockOf(forcesOf(car, 0, { ...rear, turning: { by: "rolling" } }))).toBeCloseTo(0, 8);
    expect(shockOf(forcesOf(car, 0, { ...rear, turning: { by: "brake" } }))).toBeCloseTo((1000 * 0.4) / 0.35, 8);
  });

  it("a known shock leaves the rest to the stop", () => {
    const corner = makeCorner({
      ...car,
      bumpStop: {
        base: { point: vec(0.2, 0.5, 0.6), on: "chassis" },
        strikes: { point: vec(0.2, 0.5, 0.4), on: "trailing-arm" },
        reach: 0.1,
        solid: 0.05,
      },
    });
    const load: WheelLoad = { contact: vec(0, 0, 1000), centre: vec(0, 0, 0), turning: { by: "rolling" } };
    const found = balance(corner, { travel: 0, load, carrier: "bump-stop", known: { shock: 500 } });
    const stop = found.ok ? found.forces.struts.find(({ name }) => name === "bump-stop")! : null;
    expect(stop!.magnitude).toBeCloseTo((1000 * 0.7 - 500 * 0.35) / 0.5, 8);
    expect(stop!.canBe).toBe(true);
    const lifted = balance(corner, { travel: 0, load, carrier: "bump-stop", known: { shock: 5000 } });
    expect(lifted.ok && lifted.forces.struts.find(({ name }) => name === "bump-stop")!.canBe).toBe(false);
  });

  it("names what is missing and where the linkage does not reach", () => {
    const { strap: _, ...strapless } = car;
    const corner = makeCorner(strapless);
    const load: WheelLoad = { contact: vec(0, 0, 1), centre: vec(0, 0, 0), turning: { by: "rolling" } };
    expect(balance(corner, { travel: 0, load, carrier: "strap" })).toEqual({
      ok: false,
      reason: "part-missing",
      part: "strap",
    });
    expect(balance(corner, { travel: 5, load, carrier: "shock" })).toMatchObject({ ok: false, reason: "out-of-range" });
  });
});

describe("shaft", () => {
  it("is in balance by itself, and holds the wheel", () => {
    for (const car of SAMPLE_CARS) {
      const corner = makeCorner(car);
      const forces = forcesOf(car, 0.1, {
        contact: vec(2500, 0, 4000),
        centre: vec(0, 0, 0),
        turning: { by: "shaft" },
      });
      const shaft = forces.action.shaft!;
      const place = shaftPlaceOf(corner, positionOf(corner, solveAt(corner, 0.1)!.state))!;
      expect(shaftResidual(car.driveshaft!, place, shaft)).toBeLessThan(1e-9);
      expect(Math.abs(forces.action.spinsUp)).toBeLessThan(1e-9);
      expect(shaft.atWheel).toBeGreaterThan(900);
    }
  });

  it("mean of a U-joint's couple: integrated over a turn from the cross itself", () => {
    const car = SAMPLE_CARS[0]!;
    const corner = makeCorner(car);
    const place = shaftPlaceOf(corner, positionOf(corner, solveAt(corner, 0.1)!.state))!;
    const forces = forcesOf(car, 0.1, {
      contact: vec(0, 0, 4000),
      centre: vec(0, 0, 0),
      turning: { by: "shaft", torque: 1000 },
    });
    const shaft = forces.action.shaft!;
    const s = place.spinAxis;
    const d = unit(subtract(place.outer, place.inner));
    const first = unit(cross(s, vec(0, 0, 1)));
    const second = cross(s, first);
    let mean = vec(0, 0, 0);
    let most = 0;
    const steps = 720;
    for (let i = 0; i < steps; i += 1) {
      const turn = (2 * Math.PI * i) / steps;
      const b = unit(subtract(scale(first, Math.cos(turn)), scale(second, -Math.sin(turn))));
      const n = cross(b, cross(d, b));
      const couple = scale(n, 1000 / dot(n, s));
      // No moment about the trunnion on the stub's yoke.
      expect(Math.abs(dot(couple, b))).toBeLessThan(1e-9);
      mean = subtract(mean, scale(couple, -1 / steps));
      most = Math.max(most, length(subtract(couple, scale(s, 1000))));
    }
    expect(length(subtract(mean, shaft.couple))).toBeLessThan(1e-6);
    expect(most).toBeCloseTo(shaft.secondaryMost, 1);
  });
});
