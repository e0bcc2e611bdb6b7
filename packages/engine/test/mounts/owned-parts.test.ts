import { describe, expect, it } from "vitest";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { ROW } from "../../src/cycle/row.ts";
import { distance } from "../../src/geometry/vec3.ts";
import { limitsOf, lookAt } from "../../src/limits/limit.ts";
import { findMounts } from "../../src/mounts/find-mounts.ts";
import { movedOut } from "../../src/mounts/moved-out.ts";
import { trackRange, travelWindow, USUAL_MARGIN, withOwnedParts } from "../../src/mounts/owned-parts.ts";
import { exampleCar, INCH, smallRequest } from "./request-for.ts";

const NAMES = ["saltbush", "greasewood", "rabbitbrush", "catclaw", "juniper"] as const;

describe.each(NAMES)("with the parts at hand, %s", (name) => {
  const car = exampleCar(name);
  const { shock: _, strap: __, bumpStop: ___, ...bare } = car;
  const corner = makeCorner(bare);
  const row = (travel: number) => solveAt(corner, travel)!.row;

  it("has a window that ends the margin before a limit that is really met there", () => {
    const { droop, bump, strap } = travelWindow(car);
    for (const { limit, travel } of [droop, bump]) {
      if (!limit) throw new Error(`${name} goes on for ever`);
      const isEndedByStrap = strap !== null && travel < 0;
      if (isEndedByStrap) expect(Math.abs(limit.travel) - Math.abs(travel)).toBeGreaterThanOrEqual(USUAL_MARGIN - 1e-9);
      else expect(Math.abs(limit.travel) - Math.abs(travel)).toBeCloseTo(USUAL_MARGIN, 9);
      // Met there, and nothing else before: every limit of the car without shock and stops, looked at by itself.
      const spares = (at: number) => {
        const { state, row: there } = solveAt(corner, at)!;
        return limitsOf(corner)
          .filter(({ code }) => code !== "linkage")
          .map((each) => ({ label: each.label, spare: each.spare(lookAt(corner, state, there, at)) }));
      };
      const before = spares(limit.travel * (1 - 1e-5)).filter(({ spare }) => spare <= 0);
      expect(before).toEqual([]);
      const met = spares(limit.travel * (1 + 1e-5)).filter(({ spare }) => spare < 0);
      expect(met.map(({ label }) => label)).toEqual([limit.label]);
    }
    if (strap) {
      const { upper, lower } = car.strap!;
      const strapped = makeCorner({ ...bare, strap: { upper, lower, length: strap.length } });
      expect(solveAt(strapped, strap.travel)!.row[ROW.strapSlack]!).toBeCloseTo(0, 8);
      expect(droop.travel).toBe(strap.travel);
    }
  });

  it("takes the longest strap that is taut in time", () => {
    if (!car.strap) return;
    const own = car.strap.length;
    const held = travelWindow(car, { straps: [own - 2 * INCH, own - INCH, own + 20 * INCH] }).strap!;
    expect(held.length).toBe(own - INCH);
  });

  it("moves the wheel end out, the shaft's pieces as they are", () => {
    const out = movedOut(car, 0.02);
    const there = makeCorner(out);
    expect(there.wheelCentre.y - corner.wheelCentre.y).toBeCloseTo(0.02, 12);
    expect(solveAt(there, 0)!.row[ROW.contactY]! - row(0)[ROW.contactY]!).toBeCloseTo(0.02, 9);
    const { driveshaft: before } = car;
    const { driveshaft: after } = out;
    const length = (shaft: NonNullable<typeof before>) => distance(shaft.inner.centre, shaft.outer.centre);
    expect(length(after!) + after!.slip!.engagement).toBeCloseTo(length(before!) + before!.slip!.engagement, 12);
    expect(movedOut(out, -0.02).wheel.hubFace.y).toBeCloseTo(car.wheel.hubFace.y, 12);
  });

  it("brackets how far the track can go with the same half shaft", () => {
    const window = travelWindow(car);
    const travel = { droop: 0.8 * window.droop.travel, bump: 0.8 * window.bump.travel };
    const { least, most } = trackRange(car, travel);
    expect(most.out).toBeGreaterThanOrEqual(least.out);
    const shaft = car.driveshaft!;
    /** Looked at in 81 positions, by rows alone: least of what joints and spline have left. */
    const left = (out: number): number => {
      const moved = movedOut(car, out);
      const there = makeCorner(moved);
      const spares = Array.from({ length: 81 }, (_each, i) => {
        const at = solveAt(there, travel.droop + ((travel.bump - travel.droop) * i) / 80)?.row;
        if (!at) return -1;
        const { slip } = moved.driveshaft!;
        return Math.min(
          (shaft.inner.angleLimit ?? 9) - at[ROW.innerJointAngle]!,
          (shaft.outer.angleLimit ?? 9) - at[ROW.outerJointAngle]!,
          at[ROW.slipEngagement]! - slip!.leastEngagement,
          (slip!.pushInLeft ?? 9) + at[ROW.plunge]!,
        );
      });
      return Math.min(...spares);
    };
    for (const end of [least, most]) {
      if (end.limit === null) continue;
      expect(left(end.out)).toBeGreaterThan(-2e-4);
      expect(left(end.out + 0.001 * (end === most ? 1 : -1))).toBeLessThan(2e-4);
      expect(end.track).toBeCloseTo(2 * (row(0)[ROW.contactY]! + end.out), 9);
    }
  });
});

describe.each(["saltbush", "catclaw"])("the largest travel that a shock allows on %s", (name) => {
  const { corner, request } = smallRequest(name, 1.5 * INCH);
  const { car } = corner;
  const short = { ...request.shocks[0]!, name: "short", shortest: 0.33, longest: 0.5 };
  const asked = { ...request, shocks: [short, ...request.shocks] };
  const { shocks, window } = withOwnedParts(car, asked);
  const { shock: _, strap: __, bumpStop: ___, ...bare } = car;

  it("has a place, and none with a little more", () => {
    let bracketed = 0;
    for (const { shock, reaches } of shocks)
      for (const { kept, droop, bump, givenUp, notBy, proposal } of reaches) {
        const { strokeUsed } = request.requirements;
        const requirements = { ...request.requirements, strokeUsed: { ...strokeUsed, least: 0 } };
        const with_ = (travel: { droop: number; bump: number }) =>
          findMounts(makeCorner(bare), { ...request, requirements, shocks: [shock], travel, shortList: 0 }).feasible
            .count;
        expect(proposal.fails).toBeNull();
        expect(with_({ droop, bump })).toBeGreaterThan(0);
        if (givenUp === 0) {
          expect({ droop, bump }).toEqual({ droop: window.droop.travel, bump: window.bump.travel });
          continue;
        }
        bracketed += 1;
        expect((givenUp - notBy) * (window.bump.travel - window.droop.travel)).toBeLessThanOrEqual(INCH / 32);
        const more = {
          droop: window.droop.travel * (kept === "droop" ? 1 : 1 - notBy),
          bump: window.bump.travel * (kept === "bump" ? 1 : 1 - notBy),
        };
        expect(with_(more)).toBe(0);
      }
    expect(bracketed).toBeGreaterThan(0);
  });

  it("is told most travel first", () => {
    const most = shocks.map(({ reaches }) => (reaches[0] ? reaches[0].bump - reaches[0].droop : 0));
    expect(most).toEqual([...most].sort((a, b) => b - a));
  });
});
