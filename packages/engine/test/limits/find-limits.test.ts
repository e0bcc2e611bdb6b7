import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { readCarValue, setField, startingDocument } from "../../src/document/index.ts";
import { limitsOf, lookAt } from "../../src/limits/limit.ts";
import { reportTravel } from "../../src/limits/travel-report.ts";
import { anyCar } from "../sample-cars.ts";

/** Limits are found to a tenth of this, m. */
const MICROMETRE = 1e-6;

/** The engine walks in steps of 8 mm and looks closer where a spare could come to nothing between them. */
const TEN_TIMES_FINER = 0.0008;

const startingCar = (kind: Parameters<typeof startingDocument>[0]) => {
  const reading = readCarValue(startingDocument(kind, "inch-pound"));
  if (!reading.ok) throw new Error("the starting document does not read");
  return reading.car;
};

function spareAt(corner: ReturnType<typeof makeCorner>, id: string, travel: number): number {
  const solved = solveAt(corner, travel)!;
  const limit = limitsOf(corner).find((each) => each.id === id)!;
  return limit.spare(lookAt(corner, solved.state, solved.row, travel));
}

describe("limits", () => {
  it("are met within a micrometre of where they are told, on random cars of all kinds", () => {
    fc.assert(
      fc.property(anyCar, (car) => {
        const corner = makeCorner(car);
        const report = reportTravel(corner);
        for (const direction of ["bump", "droop"] as const) {
          const outward = direction === "bump" ? 1 : -1;
          for (const limit of report[direction].limits) {
            if (limit.code === "linkage" || limit.pastAtRide) continue;
            expect(spareAt(corner, limit.id, limit.travel - outward * MICROMETRE), limit.id).toBeGreaterThan(-1e-9);
            const beyond = limit.travel + outward * MICROMETRE;
            // A gap that only grazes changes by less than a nanometre within a micrometre of travel.
            if (solveAt(corner, beyond)) expect(spareAt(corner, limit.id, beyond), limit.id).toBeLessThan(1e-9);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it("leave no earlier place unseen: a walk ten times finer finds every spare above zero inside of them", () => {
    for (const kind of ["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const) {
      const corner = makeCorner(startingCar(kind));
      const report = reportTravel(corner);
      for (const direction of ["bump", "droop"] as const) {
        for (const limit of report[direction].limits) {
          if (limit.code === "linkage") continue;
          const steps = Math.ceil(Math.abs(limit.travel) / TEN_TIMES_FINER);
          for (let i = 0; i < steps; i += 1) {
            expect(spareAt(corner, limit.id, (limit.travel * i) / steps), `${kind} ${limit.id}`).toBeGreaterThan(0);
          }
        }
      }
    }
  });

  it("come in order outward, and say what is left at the chosen stop", () => {
    const corner = makeCorner(startingCar("h-arm"));
    const { bump, droop } = reportTravel(corner);
    for (const { limits, stop, direction } of [bump, droop]) {
      const travels = limits.map(({ travel }) => Math.abs(travel));
      expect(travels).toEqual([...travels].sort((a, b) => a - b));
      for (const limit of limits) {
        if (limit.code === "linkage") continue;
        expect(limit.spare).toBeCloseTo(spareAt(corner, limit.id, stop.travel), 9);
        const outward = direction === "bump" ? 1 : -1;
        expect(limit.travelLeft).toBeCloseTo(outward * (limit.travel - stop.travel), 12);
        expect(limit.isProtected).toBe(limit.travelLeft > 0);
      }
    }
    expect(droop.stop.by).toBe("strap");
    expect(droop.stop.travel).toBeCloseTo(droop.limits.find(({ code }) => code === "strap")!.travel, 12);
  });

  it("tell a stop that never works, and where the wheel is stopped instead", () => {
    const reading = readCarValue(setField(startingDocument("h-arm", "inch-pound"), "strap.length", 60));
    if (!reading.ok) throw new Error("does not read");
    const { droop } = reportTravel(makeCorner(reading.car));
    expect(droop.stop.works).toBe(false);
    expect(droop.stop.travel).toBe(droop.first!.travel);
  });

  it("tell a limit that is already past at ride height", () => {
    const reading = readCarValue(
      setField(startingDocument("h-arm", "inch-pound"), "driveshaft.outer.angleLimit", 0.01),
    );
    if (!reading.ok) throw new Error("does not read");
    const tilted = { ...reading.car, wheel: { ...reading.car.wheel, camber: 0.1 } };
    const { bump } = reportTravel(makeCorner(tilted));
    const joint = bump.limits.find(({ code }) => code === "outer-joint")!;
    expect(joint).toMatchObject({ pastAtRide: true, travel: 0 });
  });

  it("tell the least gap between the stops as a dense walk finds it", () => {
    for (const kind of ["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const) {
      const corner = makeCorner(startingCar(kind));
      const { bump, droop, clearances } = reportTravel(corner);
      const low = droop.stop.travel;
      const travels = Array.from({ length: 161 }, (_, i) => low + ((bump.stop.travel - low) * i) / 160);
      for (const { id, leastGap } of clearances) {
        const dense = Math.min(...travels.map((travel) => spareAt(corner, `clearance:${id}`, travel)));
        // Stations are 4 mm apart; between them a gap that has turned changes by far less than its speed allows.
        expect(Math.abs(leastGap - dense), `${kind} ${id}`).toBeLessThan(2e-4);
      }
    }
  });
});
