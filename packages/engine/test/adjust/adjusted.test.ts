import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adjusted, adjustersOf } from "../../src/adjust/adjusted.ts";
import { contactOf } from "../../src/adjust/carried-car.ts";
import type { Car, Linkage } from "../../src/car/car.ts";
import { wheelCentreOf } from "../../src/car/wheel-centre.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { ROW } from "../../src/cycle/row.ts";
import { angleBetween, distance, length, type Vec3 } from "../../src/geometry/vec3.ts";
import { kindOf } from "../../src/linkage/kinds.ts";
import { anyCar, SAMPLE_CARS } from "../sample-cars.ts";
import { keptDistances } from "./kept-distances.ts";

/** m: a thousand times finer than a bolt can tell, well above rounding. */
const LENGTH_TOLERANCE = 1e-9;
const HEIGHT_TOLERANCE = 1e-12;

const H_ARM = SAMPLE_CARS[0]!;

function carAfter(car: Car, id: string, change: number): Car {
  const result = adjusted(car, id, change);
  if (!result.ok) throw new Error(`${id} reaches ${result.reach} only`);
  return result.car;
}

/** Largest difference between two cars' numbers, of whatever kind. */
function difference(a: unknown, b: unknown): number {
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b);
  if (typeof a !== "object" || a === null || typeof b !== "object" || b === null) return a === b ? 0 : Infinity;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  const part = (value: object, key: string): unknown => (value as Record<string, unknown>)[key];
  return Math.max(0, ...[...keys].map((key) => difference(part(a, key), part(b, key))));
}

const carAndAdjuster = fc.tuple(anyCar, fc.double({ min: 0, max: 0.999, noNaN: true })).map(([car, pick]) => {
  const all = adjustersOf(car);
  return { car, adjuster: all[Math.floor(pick * all.length)]! };
});

const anyChange = fc.double({ min: -0.012, max: 0.012, noNaN: true });

describe("an adjusted car", () => {
  it("keeps every other length, its ride height, and its chassis", () => {
    fc.assert(
      fc.property(carAndAdjuster, anyChange, ({ car, adjuster }, change) => {
        const result = adjusted(car, adjuster.id, change);
        fc.pre(result.ok);
        if (!result.ok) return;
        const before = keptDistances(car, adjuster.id);
        const after = keptDistances(result.car, adjuster.id);
        after.forEach((value, i) => {
          expect(Math.abs(value - before[i]!)).toBeLessThan(LENGTH_TOLERANCE);
        });
        const height = wheelCentreOf(result.car.wheel).z - wheelCentreOf(car.wheel).z;
        expect(Math.abs(height)).toBeLessThan(HEIGHT_TOLERANCE);
        const inner = (of: Car) =>
          kindOf<Linkage>(of.linkage)
            .pivots(of.linkage)
            .filter(({ boltSide }) => boltSide === "chassis")
            .map(({ point }) => point);
        expect(inner(result.car)).toEqual(inner(car));
        for (const end of result.car.rodEnds) expect(length(end.boltAxis)).toBeCloseTo(1, 12);
      }),
      { numRuns: 120 },
    );
  });

  it("has its screwed length longer by the change", () => {
    for (const car of SAMPLE_CARS) {
      for (const adjuster of adjustersOf(car)) {
        const change = 0.0035;
        const after = carAfter(car, adjuster.id, change);
        const memberOf = (of: Car) => {
          const found = kindOf<Linkage>(of.linkage).members(of.linkage);
          return found.find(({ id }) => id === adjuster.id);
        };
        const link = memberOf(car);
        if (!link) continue;
        const now = memberOf(after)!;
        expect(distance(now.from.point, now.to.point) - distance(link.from.point, link.to.point)).toBeCloseTo(
          change,
          12,
        );
      }
    }
  });

  it("screws an arm's end by the change, short only of what bolt and bracket take up", () => {
    // Straight tubes, square to both hinge lines, so that the tube's own length is what the thread changes.
    const lowerArm = {
      innerFront: { x: 0.2, y: 0.22, z: 0.3 },
      innerRear: { x: -0.2, y: 0.22, z: 0.3 },
      outerFront: { x: 0.2, y: 0.7, z: 0.27 },
      outerRear: { x: -0.2, y: 0.7, z: 0.27 },
      diameter: 0.038,
    };
    if (H_ARM.linkage.kind !== "h-arm") throw new Error("sample order changed");
    const car: Car = { ...H_ARM, linkage: { ...H_ARM.linkage, lowerArm } };
    const tube = (of: Car, end: "Front" | "Rear"): number => {
      if (of.linkage.kind !== "h-arm") throw new Error("kind changed");
      return distance(of.linkage.lowerArm[`inner${end}`], of.linkage.lowerArm[`outer${end}`]);
    };
    for (const place of ["inner", "outer"]) {
      for (const [screwed, kept] of [
        ["Front", "Rear"],
        ["Rear", "Front"],
      ] as const) {
        const after = carAfter(car, `lowerArm.${place}${screwed}`, 0.004);
        // (change)²/2B with B = 400 mm between the ends is 0.02 mm.
        expect(tube(after, screwed) - tube(car, screwed)).toBeCloseTo(0.004, 4);
        expect(tube(after, kept)).toBeCloseTo(tube(car, kept), 12);
      }
    }
  });

  it("comes back when the end is screwed back", () => {
    fc.assert(
      fc.property(carAndAdjuster, anyChange, ({ car, adjuster }, change) => {
        const out = adjusted(car, adjuster.id, change);
        fc.pre(out.ok);
        if (!out.ok) return;
        const back = adjusted(out.car, adjuster.id, -change);
        expect(back.ok).toBe(true);
        if (back.ok) expect(difference(back.car, car)).toBeLessThan(LENGTH_TOLERANCE);
      }),
      { numRuns: 100 },
    );
  });

  it("is the same in one go and turn by turn", () => {
    for (const car of SAMPLE_CARS) {
      for (const { id } of adjustersOf(car)) {
        const atOnce = carAfter(car, id, 0.0105);
        const byTurns = [1, 2, 3].reduce((now) => carAfter(now, id, 0.0035), car);
        expect(difference(atOnce, byTurns)).toBeLessThan(LENGTH_TOLERANCE);
      }
    }
  });

  it("moves as the old car does when nothing is changed, and along a new path when something is", () => {
    for (const car of SAMPLE_CARS) {
      const id = adjustersOf(car)[0]!.id;
      expect(carAfter(car, id, 0)).toEqual(car);
      const after = carAfter(car, id, 0.003);
      // Ride position of the adjusted car is its design position: the mechanism closes there with no lengths given.
      const { row } = solveAt(makeCorner(after), 0)!;
      expect(row[ROW.camber]).toBeCloseTo(after.wheel.camber, 12);
      expect(row[ROW.toe]).toBeCloseTo(after.wheel.toe, 12);
      expect(difference(after.wheel, car.wheel)).toBeGreaterThan(1e-4);
    }
  });

  it("carries mounts, bolts, shaft, slip and wheelbase along", () => {
    const after = carAfter(H_ARM, "lowerArm.innerFront", 0.006);
    const was = H_ARM.shock!;
    const now = after.shock!;
    expect(now.upper).toEqual(was.upper);
    expect(distance(now.lower.point, was.lower.point)).toBeGreaterThan(1e-4);
    const bolt = (of: Car, pivot: string): Vec3 => of.rodEnds.find((end) => end.pivot === pivot)!.boltAxis;
    expect(bolt(after, "lowerArm.innerFront")).toEqual(bolt(H_ARM, "lowerArm.innerFront"));
    // Bolts of the spindle turn with it: by the toe and camber that it has gained.
    const turned = angleBetween(bolt(after, "lowerArm.outerFront"), bolt(H_ARM, "lowerArm.outerFront"));
    expect(turned).toBeGreaterThan(1e-3);
    const shaft = (of: Car) => distance(of.driveshaft!.inner.centre, of.driveshaft!.outer.centre);
    const longer = shaft(after) - shaft(H_ARM);
    expect(Math.abs(longer)).toBeGreaterThan(1e-4);
    expect(H_ARM.driveshaft!.slip!.engagement - after.driveshaft!.slip!.engagement).toBeCloseTo(longer, 12);
    expect(after.driveshaft!.slip!.pushInLeft! - H_ARM.driveshaft!.slip!.pushInLeft!).toBeCloseTo(longer, 12);
    const forward = contactOf(after.wheel).x - contactOf(H_ARM.wheel).x;
    expect(Math.abs(forward)).toBeGreaterThan(1e-4);
    expect(after.chassis.wheelbase - H_ARM.chassis.wheelbase).toBeCloseTo(-forward, 12);
  });

  it("says how far an adjuster reaches where the linkage cannot follow", () => {
    for (const change of [-0.5, 0.8]) {
      const result = adjusted(H_ARM, "upperLink", change);
      expect(result.ok).toBe(false);
      if (result.ok) continue;
      expect(Math.sign(result.reach)).toBe(Math.sign(change));
      expect(Math.abs(result.reach)).toBeGreaterThan(0.05);
      // As far as it says it goes, and no farther.
      expect(adjusted(H_ARM, "upperLink", result.reach * (1 - 1e-4)).ok).toBe(true);
      expect(adjusted(H_ARM, "upperLink", result.reach + Math.sign(change) * 1e-4).ok).toBe(false);
    }
  });

  it("does not take an adjuster that the linkage has not", () => {
    expect(() => adjusted(H_ARM, "toeLink", 0.001)).toThrow("no adjuster toeLink");
  });
});
