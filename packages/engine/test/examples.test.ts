import { describe, expect, it } from "vitest";
import { solveAt } from "../src/cycle/corner.ts";
import { moveThrough, rowAt } from "../src/cycle/cycle.ts";
import { ROW } from "../src/cycle/row.ts";
import { readCarDocument, writeCarDocument } from "../src/document/index.ts";
import { sayFinding, study } from "../src/index.ts";
import {
  carOfDocument,
  EXAMPLES,
  type ExampleName,
  exampleCar,
  exampleDocument,
  exampleText,
} from "./example-documents.ts";

const INCH = 0.0254;
const DEGREE = Math.PI / 180;

const STUDIES = new Map(EXAMPLES.map((name) => [name, study(exampleCar(name))]));
const studyOf = (name: ExampleName) => STUDIES.get(name)!;
const codesOf = (name: ExampleName, gravity: "must" | "mind") =>
  studyOf(name)
    .findings.filter((finding) => finding.gravity === gravity)
    .map(({ code }) => code);

const rowOf = (name: ExampleName, travel: number): Float64Array => {
  const solved = solveAt(studyOf(name).corner, travel);
  if (!solved) throw new Error(`${name} does not reach ${travel} m`);
  return solved.row;
};

/** Stroke used between the stops, as a share of the shock's own. */
function strokeShare(name: ExampleName): number {
  const { car, travel } = studyOf(name);
  const { shock } = car;
  if (!shock) throw new Error(`${name} has no shock`);
  const longest = rowOf(name, travel.droop.stop.travel)[ROW.shockLength]!;
  const shortest = rowOf(name, travel.bump.stop.travel)[ROW.shockLength]!;
  return (longest - shortest) / (shock.longest - shock.shortest);
}

/** Every number in a value, with its place; functions and text are passed over. */
function* numbersIn(value: unknown, place: string): Generator<readonly [string, number]> {
  if (typeof value === "number") yield [place, value];
  else if (value instanceof Float64Array) for (const [i, each] of value.entries()) yield [`${place}[${i}]`, each];
  else if (typeof value === "object" && value !== null) {
    for (const [key, each] of Object.entries(value)) yield* numbersIn(each, `${place}.${key}`);
  }
}

describe("every example", () => {
  for (const name of EXAMPLES) {
    it(`${name} reads without a fault or a warning and names its schema`, () => {
      const reading = readCarDocument(exampleText(name));
      expect(reading.ok && reading.warnings).toEqual([]);
      expect(exampleDocument(name).$schema).toBe("../docs/car.schema.json");
    });

    it(`${name} is written back byte for byte`, () => {
      const reading = readCarDocument(exampleText(name));
      if (!reading.ok) throw new Error(`${name} has faults`);
      expect(writeCarDocument(reading.document)).toBe(exampleText(name));
    });

    it(`${name} is studied without a number that is none`, () => {
      const { travel, cycle, axle, adjusters, range, findings } = studyOf(name);
      const numbers = [...numbersIn({ travel, cycle, axle, adjusters, range, findings }, name)];
      expect(numbers.length).toBeGreaterThan(1000);
      expect(numbers.filter(([, value]) => !Number.isFinite(value))).toEqual([]);
    });

    it(`${name} is typed as a tape is read: in sixteenths, or in half millimetres`, () => {
      const { linkage, wheel, driveshaft, shock, strap, bumpStop, units } = exampleDocument(name);
      const points = [...pointsIn({ linkage, wheel, driveshaft, shock, strap, bumpStop })];
      expect(points.length).toBeGreaterThan(30);
      for (const typed of points) {
        if (units === "metric") expect(Number(typed) * 2).toBe(Math.round(Number(typed) * 2));
        else expect(String(typed)).toMatch(/^-?(\d+ )?(\d+|\d+\/(2|4|8|16))$/);
      }
    });

    it(`${name} moves with nothing in the way at ride height`, () => {
      const { travel } = studyOf(name);
      expect(travel.clearances.filter(({ gapAtRide }) => gapAtRide <= 0)).toEqual([]);
      for (const direction of ["bump", "droop"] as const) {
        expect(travel[direction].stop.works).toBe(true);
        expect(travel[direction].limits.filter(({ pastAtRide }) => pastAtRide)).toEqual([]);
      }
    });
  }

  it("together show all four kinds of linkage, both unit systems and both kinds of joint", () => {
    const cars = EXAMPLES.map((name) => studyOf(name).car);
    expect(new Set(cars.map(({ linkage }) => linkage.kind)).size).toBe(4);
    expect(new Set(cars.map(({ units }) => units))).toEqual(new Set(["inch-pound", "metric"]));
    expect(new Set(cars.map(({ driveshaft }) => driveshaft?.outer.kind))).toEqual(
      new Set(["u-joint", "constant-velocity"]),
    );
  });

  it("that must be mended says so in plain words, the others do not", () => {
    const musts = EXAMPLES.filter((name) => codesOf(name, "must").length > 0);
    expect(musts).toEqual(["greasewood"]);
  });
});

/** Coordinates of all points; directions, which are plain numbers of no unit, are passed over. */
function* pointsIn(value: unknown): Generator<string | number> {
  if (typeof value !== "object" || value === null) return;
  for (const [key, each] of Object.entries(value)) {
    if (key === "axis" || key === "boltAxis" || key === "normal") continue;
    if (["x", "y", "z"].includes(key)) yield each;
    else yield* pointsIn(each);
  }
}

describe("saltbush, the demo", () => {
  const { car, travel, findings, cycle } = studyOf("saltbush");
  const ride = rowOf("saltbush", 0);

  it("has no must and two to four things to mind: spline, tank, toe", () => {
    expect(codesOf("saltbush", "must")).toEqual([]);
    expect(codesOf("saltbush", "mind")).toEqual(["limit-close", "clearance-short", "toe-change"]);
    const said = findings.map((finding) => sayFinding(finding, "inch-pound").sentence).join("\n");
    expect(said).toContain("of spline");
    expect(said).toContain("Shock to fuel tank");
  });

  it("stands on 33 in tyres, about 74 in wide and 104 in long", () => {
    expect(2 * car.wheel.freeRadius).toBeCloseTo(33 * INCH, 12);
    expect(Math.abs(2 * ride[ROW.contactY]! - 74 * INCH)).toBeLessThan(0.1 * INCH);
    expect(car.chassis.wheelbase).toBeCloseTo(104 * INCH, 12);
  });

  it("goes 6 to 7 in up on its bump stop and 8 to 9 in down on its strap", () => {
    expect(travel.bump.stop).toMatchObject({ by: "bump-stop", works: true });
    expect(travel.droop.stop).toMatchObject({ by: "strap", works: true });
    expect(travel.bump.stop.travel / INCH).toBeGreaterThan(6);
    expect(travel.bump.stop.travel / INCH).toBeLessThan(7);
    expect(-travel.droop.stop.travel / INCH).toBeGreaterThan(8);
    expect(-travel.droop.stop.travel / INCH).toBeLessThan(9);
  });

  it("is held by its strap within an inch of wheel travel before the outer U-joint, the first hard limit in droop", () => {
    expect(travel.droop.first?.code).toBe("outer-joint");
    expect(travel.droop.first?.isProtected).toBe(true);
    expect(travel.droop.first!.travelLeft / INCH).toBeLessThan(1);
    for (const joint of [car.driveshaft!.inner, car.driveshaft!.outer]) {
      expect(joint.angleLimit! / DEGREE).toBeGreaterThanOrEqual(25);
      expect(joint.angleLimit! / DEGREE).toBeLessThanOrEqual(28);
    }
  });

  it("uses 80 to 92 % of its shock, at a motion ratio of 0.55 to 0.65 that never falls from ride to bump", () => {
    expect(strokeShare("saltbush")).toBeGreaterThan(0.8);
    expect(strokeShare("saltbush")).toBeLessThan(0.92);
    expect(ride[ROW.motionRatio]).toBeGreaterThan(0.55);
    expect(ride[ROW.motionRatio]).toBeLessThan(0.65);
    for (let i = 1; i < cycle.travels.length; i += 1) {
      if (cycle.travels[i - 1]! < 0) continue;
      expect(rowAt(cycle, i)[ROW.motionRatio]).toBeGreaterThanOrEqual(rowAt(cycle, i - 1)[ROW.motionRatio]!);
    }
  });
});

describe("greasewood", () => {
  it("has one must: the outer joint reaches its angle before the strap is taut", () => {
    const musts = studyOf("greasewood").findings.filter(({ gravity }) => gravity === "must");
    expect(musts).toHaveLength(1);
    expect(musts[0]).toMatchObject({
      code: "limit-before-stop",
      place: "driveshaft.outer.angleLimit",
      values: { code: "outer-joint", way: "droop" },
    });
  });

  it("is mended by a strap 3/8 in shorter at the price of 7/8 in of droop, or by a joint that bends 27°", () => {
    const asBuilt = studyOf("greasewood").travel.droop.stop.travel;
    const shorter = exampleDocument("greasewood");
    shorter.strap!.length = "12 3/4";
    const mended = study(carOfDocument(shorter));
    expect((mended.travel.droop.stop.travel - asBuilt) / INCH).toBeCloseTo(7 / 8, 1);
    const bendier = exampleDocument("greasewood");
    bendier.driveshaft!.outer.angleLimit = 27;
    for (const { findings } of [mended, study(carOfDocument(bendier))]) {
      expect(findings.filter(({ code }) => code === "limit-before-stop" || code === "limit-close")).toEqual([]);
      expect(findings.filter(({ gravity }) => gravity === "must")).toEqual([]);
    }
  });
});

describe("rabbitbrush", () => {
  const { travel, corner, car } = studyOf("rabbitbrush");

  it("turns about an axis raked about 15°, on constant-velocity joints", () => {
    if (car.linkage.kind !== "trailing-arm") throw new Error("not a trailing arm");
    const { inboardPivot: a, outboardPivot: b } = car.linkage.trailingArm;
    expect(Math.abs(Math.atan2(b.x - a.x, b.y - a.y) / DEGREE - 15)).toBeLessThan(0.5);
    expect([car.driveshaft?.inner.kind, car.driveshaft?.outer.kind]).toEqual([
      "constant-velocity",
      "constant-velocity",
    ]);
  });

  it("has positive camber at full droop and a wheelbase that changes by more than half an inch", () => {
    const cycle = moveThrough(corner, [travel.droop.stop.travel, 0]);
    expect(rowAt(cycle, 0)[ROW.camber]! / DEGREE).toBeGreaterThan(1);
    expect(Math.abs(rowAt(cycle, 0)[ROW.wheelbaseChange]!) / INCH).toBeGreaterThan(0.5);
  });
});

describe("catclaw", () => {
  it("is tidy: nothing that must be mended and nothing to mind", () => {
    expect(codesOf("catclaw", "must")).toEqual([]);
    expect(codesOf("catclaw", "mind")).toEqual([]);
  });
});

describe("juniper", () => {
  it("misses its strap, and that is all there is to mind", () => {
    expect(codesOf("juniper", "mind")).toEqual(["no-part-stops-the-wheel"]);
    expect(exampleDocument("juniper").strap).toBeUndefined();
  });

  it("has its own right side, where the shock leans a little more", () => {
    const { car } = studyOf("juniper");
    const left = car.shock!.upper.point;
    const right = car.right!.shock!.upper.point;
    expect(right.y).toBeCloseTo(left.y, 12);
    expect(left.x - right.x).toBeCloseTo(0.012, 12);
  });
});
