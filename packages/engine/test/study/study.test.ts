import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Car } from "../../src/car/car.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { moveThrough } from "../../src/cycle/cycle.ts";
import { closureResidual, positionOf } from "../../src/cycle/position.ts";
import { quantitiesOf } from "../../src/cycle/quantities.ts";
import { ROW } from "../../src/cycle/row.ts";
import { readCarValue, startingDocument } from "../../src/document/index.ts";
import { sayFinding } from "../../src/findings/say-finding.ts";
import { distance } from "../../src/geometry/vec3.ts";
import { LINKAGE_KINDS } from "../../src/linkage/kinds.ts";
import { study } from "../../src/study/study.ts";
import { anyCar } from "../sample-cars.ts";
import { wheelForcePerShockForce } from "./free-body.ts";

/** Every number anywhere in a value, with its place. */
function numbersIn(value: unknown, path = "", seen = new Set<unknown>()): [string, number][] {
  if (typeof value === "number") return [[path, value]];
  if (value === null || typeof value !== "object" || seen.has(value)) return [];
  seen.add(value);
  const entries: [string, unknown][] = ArrayBuffer.isView(value)
    ? Array.from(value as Float64Array, (number, i) => [String(i), number])
    : Object.entries(value);
  return entries.flatMap(([key, part]) => numbersIn(part, `${path}.${key}`, seen));
}

/** A car shifted along x and told from another mark: only the mark differs. */
const shifted = (car: Car, by: number): Car =>
  JSON.parse(JSON.stringify(car), (_key, value) =>
    value && typeof value === "object" && "x" in value && "y" in value && "z" in value && !isDirection(value)
      ? { ...value, x: value.x + by }
      : value,
  ) as Car;

const isDirection = (v: { x: number; y: number; z: number }): boolean =>
  Math.abs(Math.hypot(v.x, v.y, v.z) - 1) < 1e-12;

describe("a study", () => {
  it("never holds a number that is not one, whatever the car", () => {
    fc.assert(
      fc.property(anyCar, (car) => {
        const { travel, cycle, axle, adjusters, findings, range, quantities, corner } = study(car);
        for (const [path, number] of numbersIn({ travel, cycle, axle, adjusters, findings, range })) {
          expect(Number.isFinite(number), path).toBe(true);
        }
        for (let i = 0; i < cycle.travels.length; i += 1) {
          const row = cycle.table.subarray(i * cycle.width, (i + 1) * cycle.width);
          for (const quantity of quantities) {
            const value = quantity.read(row, corner);
            expect(value === null || Number.isFinite(value), quantity.id).toBe(true);
          }
        }
        for (const finding of findings) {
          const { sentence, remedy } = sayFinding(finding, "inch-pound");
          expect(`${sentence} ${remedy}`).not.toMatch(/NaN|undefined|Infinity|null/);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("closes at every station to a nanometre", () => {
    fc.assert(
      fc.property(anyCar, (car) => {
        const corner = makeCorner(car);
        const { droop, bump } = corner.mechanism.range;
        for (let i = 1; i < 20; i += 1) {
          const travel = droop.travel + ((bump.travel - droop.travel) * i) / 20;
          expect(closureResidual(corner, positionOf(corner, solveAt(corner, travel)!.state))).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("is the same from another mark along the car", () => {
    for (const kind of LINKAGE_KINDS) {
      const reading = readCarValue(startingDocument(kind, "metric"));
      if (!reading.ok) throw new Error("does not read");
      const here = study(reading.car);
      const there = study(shifted(reading.car, 1.234));
      for (const direction of ["bump", "droop"] as const) {
        here.travel[direction].limits.forEach((limit, i) => {
          const other = there.travel[direction].limits[i]!;
          expect(other.id).toBe(limit.id);
          expect(Math.abs(other.travel - limit.travel)).toBeLessThan(1e-6);
        });
      }
      expect(there.findings.map(({ code }) => code)).toEqual(here.findings.map(({ code }) => code));
    }
  });

  it("of a car with its right side given as the mirror image is that of the left", () => {
    for (const kind of LINKAGE_KINDS) {
      const reading = readCarValue(startingDocument(kind, "inch-pound"));
      if (!reading.ok) throw new Error("does not read");
      const alone = study(reading.car);
      const both = study({ ...reading.car, right: reading.car });
      expect(both.axle).toEqual(alone.axle);
    }
  });

  it("gives the same rows for the inch and the metric form of one car", () => {
    for (const kind of LINKAGE_KINDS) {
      const reading = readCarValue(startingDocument(kind, "inch-pound"));
      if (!reading.ok) throw new Error("does not read");
      const inches = study(reading.car);
      const millimetres = study({ ...reading.car, units: "metric" });
      expect([...millimetres.cycle.table]).toEqual([...inches.cycle.table]);
    }
  });

  it("has a motion ratio that is the ratio of forces by free-body equilibrium", () => {
    fc.assert(
      fc.property(anyCar, fc.double({ min: 0.15, max: 0.85, noNaN: true }), (car, fraction) => {
        const corner = makeCorner(car);
        const { droop, bump } = corner.mechanism.range;
        const travel = droop.travel + fraction * (bump.travel - droop.travel);
        const here = solveAt(corner, travel)!;
        const balance = wheelForcePerShockForce(corner, positionOf(corner, here.state));
        expect(balance).not.toBeNull();
        expect(Math.abs(here.row[ROW.motionRatio]! - balance!)).toBeLessThan(1e-7 * Math.max(1, Math.abs(balance!)));
      }),
      { numRuns: 80 },
    );
  });

  it("gives exact slopes: camber, toe, motion ratio and its slope agree with differences", () => {
    fc.assert(
      fc.property(anyCar, fc.double({ min: 0.15, max: 0.85, noNaN: true }), (car, fraction) => {
        const corner = makeCorner(car);
        const { droop, bump } = corner.mechanism.range;
        const travel = droop.travel + fraction * (bump.travel - droop.travel);
        const h = 1e-5;
        const before = solveAt(corner, travel - h)!.row;
        const here = solveAt(corner, travel)!.row;
        const after = solveAt(corner, travel + h)!.row;
        for (const [value, slope, sign] of [
          [ROW.camber, ROW.camberGain, 1],
          [ROW.toe, ROW.toeGain, 1],
          [ROW.shockLength, ROW.motionRatio, -1],
          [ROW.motionRatio, ROW.motionRatioSlope, 1],
        ] as const) {
          const difference = (sign * (after[value]! - before[value]!)) / (2 * h);
          const size = Math.max(1, Math.abs(difference), Math.abs(after[slope]! - before[slope]!) / h);
          expect(Math.abs(difference - here[slope]!) / size).toBeLessThan(1e-5);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("has a shaft, strap and stop length that is the distance between their ends", () => {
    for (const kind of LINKAGE_KINDS) {
      const reading = readCarValue(startingDocument(kind, "metric"));
      if (!reading.ok) throw new Error("does not read");
      const corner = makeCorner(reading.car);
      const { driveshaft, strap } = reading.car;
      const row = moveThrough(corner, [0]).table;
      expect(row[ROW.shaftLength]).toBeCloseTo(distance(driveshaft!.inner.centre, driveshaft!.outer.centre), 12);
      expect(row[ROW.strapSlack]).toBeCloseTo(strap!.length - distance(strap!.upper.point, strap!.lower.point), 12);
      expect(quantitiesOf(corner).map(({ id }) => id)).toContain("plunge");
    }
  });
});
