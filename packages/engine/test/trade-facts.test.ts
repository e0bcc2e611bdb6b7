import { describe, expect, it } from "vitest";
import { type Corner, makeCorner, solveAt } from "../src/cycle/corner.ts";
import { moveThrough, rowAt, stations } from "../src/cycle/cycle.ts";
import { ROW } from "../src/cycle/row.ts";
import { study } from "../src/index.ts";
import { carOfDocument, type EditableDocument, exampleDocument } from "./example-documents.ts";

// What the trade knows, as checks: first what is common practice only and has no published source, then what follows by
// arithmetic.

const INCH = 0.0254;
const DEGREE = Math.PI / 180;
/** Rounding of a solved position, m and rad. */
const ROUNDING = 1e-12;

const rowAtTravel = (corner: Corner, travel: number): Float64Array => {
  const solved = solveAt(corner, travel);
  if (!solved) throw new Error(`the linkage does not reach ${travel} m`);
  return solved.row;
};

/** Largest less smallest of one place of the rows between two travels, m. */
function spread(corner: Corner, place: number, from: number, to: number): number {
  const cycle = moveThrough(corner, stations(from, to, 121));
  expect(cycle.outside).toEqual([]);
  const values = Array.from(cycle.travels, (_, i) => rowAt(cycle, i)[place]!);
  return Math.max(...values) - Math.min(...values);
}

const demo = () => exampleDocument("saltbush");

type HArm = Extract<EditableDocument["linkage"], { kind: "h-arm" }>;
function hArmOf(document: EditableDocument): HArm {
  if (document.linkage.kind !== "h-arm") throw new Error("not an H-arm");
  return document.linkage;
}

describe("common practice, no source", () => {
  it("common practice, no source: an upper link as long as the lower arm and parallel to it holds camber over the whole travel", () => {
    const document = demo();
    const { lowerArm, upperLink } = hArmOf(document);
    // The demo's arm set level along the car, and its upper link laid parallel: 20 1/4 in out, 3/8 in down.
    lowerArm.innerFront = { x: 8, y: 11, z: "11 5/8" };
    lowerArm.innerRear = { x: -8, y: 11, z: "11 5/8" };
    upperLink.outer = { x: "-1/2", y: 31, z: "20 1/2" };
    upperLink.inner = { x: "-1/2", y: "10 3/4", z: "20 7/8" };
    const corner = makeCorner(carOfDocument(document));
    // Up to an arm that stands 75° up or down: all of the travel but its last half inch, where arm and link fall into line
    // with the spindle and a real one could turn over either way.
    expect(spread(corner, ROW.camber, -19.5 * INCH, 19.5 * INCH)).toBeLessThan(ROUNDING);
    expect(spread(corner, ROW.toe, -19.5 * INCH, 19.5 * INCH)).toBeLessThan(ROUNDING);
  });

  it("common practice, no source: cycled with strap and stop out, droop ends where a U-joint reaches its angle", () => {
    const { strap: _strap, bumpStop: _bumpStop, stops: _stops, ...document } = demo();
    expect(study(carOfDocument(document)).travel.droop.first?.code).toBe("outer-joint");
  });

  it("common practice, no source: cycled with strap, stop and shock out, bump ends at the ground, and the stop is put about 3 in before", () => {
    const { strap: _strap, bumpStop: _bumpStop, shock: _shock, stops: _stops, ...document } = demo();
    const bare = study(carOfDocument(document));
    expect(bare.travel.droop.first?.code).toBe("outer-joint");
    expect(bare.travel.bump.first?.code).toBe("underbody");
    const { corner, travel } = study(carOfDocument(demo()));
    const left = rowAtTravel(corner, travel.bump.stop.travel)[ROW.groundClearance]! / INCH;
    expect(Math.abs(left - 3)).toBeLessThan(0.25);
    // Camber hardly changes the contact point's height: what is left is what the wheel would still go.
    expect((bare.travel.bump.first!.travel - travel.bump.stop.travel) / INCH).toBeCloseTo(left, 1);
  });

  it("common practice, no source: a spindle pivot an inch out of the wheel's middle plane, toward the U-joint's centre, cuts the slip yoke's travel", () => {
    const { travel } = study(carOfDocument(demo()));
    const slipTravel = (pivot: string, link: string): number => {
      const document = demo();
      const { lowerArm, upperLink } = hArmOf(document);
      lowerArm.outerFront.y = pivot;
      lowerArm.outerRear.y = pivot;
      upperLink.outer.y = link;
      return spread(makeCorner(carOfDocument(document)), ROW.plunge, travel.droop.stop.travel, travel.bump.stop.travel);
    };
    // The middle plane lies at y = 36 7/8, the joint's centre at 29 3/4.
    const inThePlane = slipTravel("36 7/8", "36 5/8");
    const anInchOut = slipTravel("35 7/8", "35 5/8");
    expect(anInchOut).toBeLessThan(0.92 * inThePlane);
    expect(slipTravel("31 1/4", "31")).toBeLessThan(0.5 * inThePlane);
  });
});

/** A wheel with everything upright and square; 30 in tyre, so that its radius does not matter for what is looked at. */
const plain = (linkage: EditableDocument["linkage"], more: Partial<EditableDocument> = {}) => ({
  armwright: 1,
  name: "plain",
  units: "inch-pound",
  datum: "a line",
  wheel: { hubFace: { x: 0, y: 34, z: 15 }, freeRadius: 15, sectionWidth: 10, rimDiameter: 15, rimWidth: 8 },
  linkage,
  ...more,
});

/** Level H-arm, 20 in long, with an upper link equal and parallel to it; pivots 12 in above the ground. */
const equalParallel = (shaft?: { readonly innerY: number }): Corner =>
  makeCorner(
    carOfDocument(
      plain(
        {
          kind: "h-arm",
          lowerArm: {
            innerFront: { x: 8, y: 10, z: 12 },
            innerRear: { x: -8, y: 10, z: 12 },
            outerFront: { x: 4, y: 30, z: 12 },
            outerRear: { x: -4, y: 30, z: 12 },
          },
          upperLink: { inner: { x: 0, y: 10, z: 21 }, outer: { x: 0, y: 30, z: 21 } },
        },
        shaft && {
          driveshaft: {
            output: { point: { x: 0, y: shaft.innerY, z: 12 } },
            inner: { kind: "u-joint" },
            outer: { kind: "u-joint", centre: { x: 0, y: 30, z: 12 } },
          },
        },
      ),
    ),
  );

const squareArm = (): Corner =>
  makeCorner(
    carOfDocument(
      plain({
        kind: "trailing-arm",
        trailingArm: { inboardPivot: { x: 30, y: 12, z: 15 }, outboardPivot: { x: 30, y: 26, z: 15 } },
      }),
    ),
  );

describe("by arithmetic", () => {
  it("an equal and parallel H-arm and link hold camber and toe to rounding", () => {
    const corner = equalParallel();
    expect(spread(corner, ROW.camber, -19.5 * INCH, 19.5 * INCH)).toBeLessThan(ROUNDING);
    expect(spread(corner, ROW.toe, -19.5 * INCH, 19.5 * INCH)).toBeLessThan(ROUNDING);
  });

  it("a shaft of 20 in from joint to joint, bent to 25°, draws the hub 1.87 in nearer: 20·(1 − cos 25°)", () => {
    const row = rowAtTravel(equalParallel({ innerY: 10 }), -20 * INCH * Math.sin(25 * DEGREE));
    expect(row[ROW.innerJointAngle]! / DEGREE).toBeCloseTo(25, 10);
    expect(row[ROW.outerJointAngle]! / DEGREE).toBeCloseTo(25, 10);
    expect(-row[ROW.halfTrackChange]! / INCH).toBeCloseTo(1.87, 2);
    expect(Math.abs(row[ROW.plunge]!)).toBeLessThan(ROUNDING);
  });

  it("on a 20 in arm, 8 in either way, a joint on the pivot line gives no plunge and one 3 in off gives 0.22 in", () => {
    for (const travel of [-8 * INCH, 8 * INCH]) {
      expect(Math.abs(rowAtTravel(equalParallel({ innerY: 10 }), travel)[ROW.plunge]!)).toBeLessThan(ROUNDING);
      const off = rowAtTravel(equalParallel({ innerY: 7 }), travel)[ROW.plunge]! / INCH;
      expect(Math.abs(off)).toBeCloseTo(0.22, 2);
    }
  });

  it("a 30 in trailing arm, 9 in either way, moves the hub 1.4 in along the car", () => {
    const corner = squareArm();
    for (const travel of [-9 * INCH, 9 * INCH]) {
      const row = rowAtTravel(corner, travel);
      expect(row[ROW.wheelX]! / INCH).toBeCloseTo(1.4, 1);
      expect(-row[ROW.wheelbaseChange]! / INCH).toBeCloseTo(1.4, 1);
    }
  });

  it("a square trailing arm's wheel centre runs on a circle about its axis and stays in its plane", () => {
    const cycle = moveThrough(squareArm(), stations(-29 * INCH, 29 * INCH, 59));
    expect(cycle.travels).toHaveLength(59);
    for (let i = 0; i < cycle.travels.length; i += 1) {
      const row = rowAt(cycle, i);
      const reach = Math.hypot(row[ROW.wheelX]! - 30 * INCH, row[ROW.wheelZ]! - 15 * INCH);
      expect(Math.abs(reach - 30 * INCH)).toBeLessThan(ROUNDING);
      expect(Math.abs(row[ROW.wheelY]! - 34 * INCH)).toBeLessThan(ROUNDING);
    }
  });

  describe("a toe link hung 1/8 in too high, 18 in long with a 7 in lever", () => {
    const HIGH = 1 / 8;
    const LONG = 18;
    const LEVER = 7;
    const TYRE = 30;
    // Arms of 18 in, level, equal and parallel: the spindle only shifts, and whatever toe there is comes from the link.
    const corner = (high: string | number): Corner =>
      makeCorner(
        carOfDocument(
          plain({
            kind: "double-a-arm",
            lowerArm: {
              innerFront: { x: 8, y: 12, z: 12 },
              innerRear: { x: -8, y: 12, z: 12 },
              outer: { x: 0, y: 30, z: 12 },
            },
            upperArm: {
              innerFront: { x: 8, y: 12, z: 20 },
              innerRear: { x: -8, y: 12, z: 20 },
              outer: { x: 0, y: 30, z: 20 },
            },
            toeLink: { inner: { x: -LEVER, y: 12, z: high }, outer: { x: -LEVER, y: 30, z: 16 } },
          }),
        ),
      );
    const acrossTyre = (from: number, to: number, high: string | number = "16 1/8"): number => {
      const made = corner(high);
      const toe = (travel: number) => rowAtTravel(made, travel * INCH)[ROW.toe]!;
      return TYRE * Math.sin(Math.abs(toe(to) - toe(from)));
    };

    it("gives 0.24 in of toe on a 30 in tyre over 8 in of travel about level: high·travel/long/lever·tyre", () => {
      expect((HIGH * 8 * TYRE) / LONG / LEVER).toBeCloseTo(0.24, 2);
      expect(acrossTyre(-4, 4)).toBeCloseTo(0.24, 2);
    });

    it("gives half as much hung 1/16 in too high", () => {
      expect(acrossTyre(-4, 4, "16 1/16")).toBeCloseTo(0.12, 2);
    });

    it("gives none hung right", () => {
      expect(acrossTyre(-4, 4, 16)).toBeLessThan(1e-9);
    });

    it("gives 0.27 in when the 8 in are all on one side: the link then stands steep, and one over its cosine comes in", () => {
      const steep = Math.cos(Math.asin(8 / LONG));
      const expected = (HIGH * 8 * TYRE) / LONG / LEVER / steep;
      expect(expected).toBeCloseTo(0.27, 2);
      // Of first order: the second is high/long, under a hundredth.
      expect(Math.abs(acrossTyre(0, 8) / expected - 1)).toBeLessThan(0.01);
    });
  });
});
