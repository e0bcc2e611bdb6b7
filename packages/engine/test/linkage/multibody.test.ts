import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Linkage } from "../../src/car/car.ts";
import type { Vec3 } from "../../src/geometry/vec3.ts";
import { kindOf } from "../../src/linkage/kinds.ts";
import { AT, designState } from "../../src/linkage/motion-state.ts";

/** Poses by the general multibody library libsimbody; made by reference/multibody/rebuild.sh. */
interface ReferenceCar {
  readonly name: string;
  readonly kind: Linkage["kind"];
  readonly geometry: string;
  readonly linkage: Linkage;
  readonly wheelCentre: Vec3;
  readonly droopLimit: number | null;
  readonly bumpLimit: number | null;
  readonly positions: readonly {
    readonly travel: number;
    readonly wheelCentre: Vec3;
    readonly rotation: readonly number[];
    readonly wheelCentreRate: Vec3;
    readonly angularRate: Vec3;
  }[];
}

const read = JSON.parse(
  readFileSync(new URL("../../../../reference/multibody/cycle.json", import.meta.url), "utf8"),
) as { cars: readonly ReferenceCar[] };

/** The reference knows no tubes; where a trailing arm's tubes end does not matter to its motion. */
const withHub = (car: ReferenceCar): ReferenceCar =>
  car.linkage.kind === "trailing-arm"
    ? { ...car, linkage: { ...car.linkage, trailingArm: { ...car.linkage.trailingArm, hub: car.wheelCentre } } }
    : car;
const cars = read.cars.map(withHub);

/** 1e-6 mm and 1e-6 degree. */
const PLACE_TOLERANCE = 1e-9;
const ANGLE_TOLERANCE = (1e-6 * Math.PI) / 180;
/** Rates grow without bound toward an assembly limit; compared relative to their size. */
const RATE_TOLERANCE = 1e-7;

const values = (v: Vec3): number[] => [v.x, v.y, v.z];

describe("every kind against a general multibody library", () => {
  it.each(cars.map((car) => [`${car.kind} ${car.geometry}`, car] as const))("%s", (_name, car) => {
    const mechanism = kindOf<Linkage>(car.linkage).mechanism(car.linkage, car.wheelCentre);
    expect(car.positions.length).toBeGreaterThan(20);
    const state = designState();
    for (const position of car.positions) {
      expect(mechanism.solve(position.travel, state), `solves at ${position.travel}`).toBeGreaterThan(0);
      const place = values(position.wheelCentre);
      for (let i = 0; i < 3; i += 1) {
        expect(Math.abs(state[AT.wheelCentre + i]! - place[i]!)).toBeLessThan(PLACE_TOLERANCE);
      }
      for (let i = 0; i < 9; i += 1) {
        expect(Math.abs(state[AT.rotation + i]! - position.rotation[i]!)).toBeLessThan(ANGLE_TOLERANCE);
      }
      const rates = [...values(position.wheelCentreRate), ...values(position.angularRate)];
      const ours = [...state.subarray(AT.velocity, AT.velocity + 3), ...state.subarray(AT.spin, AT.spin + 3)];
      const size = Math.max(...rates.map(Math.abs));
      rates.forEach((rate, i) => {
        expect(Math.abs(ours[i]! - rate) / size).toBeLessThan(RATE_TOLERANCE);
      });
    }
  });

  it.each(cars.filter((car) => car.geometry === "near-limit").map((car) => [`${car.kind}`, car] as const))(
    "finds the same ends of the range: %s",
    (_name, car) => {
      const { range } = kindOf<Linkage>(car.linkage).mechanism(car.linkage, car.wheelCentre);
      if (car.droopLimit !== null) expect(Math.abs(range.droop.travel - car.droopLimit)).toBeLessThan(1e-6);
      if (car.bumpLimit !== null) expect(Math.abs(range.bump.travel - car.bumpLimit)).toBeLessThan(1e-6);
    },
  );
});
