import { describe, expect, test } from "vitest";
import type { Car } from "../../src/car/car.ts";
import {
  type CarDocument,
  type FieldValue,
  readCarValue,
  sayFault,
  setField,
  simplestDocument,
  startingDocument,
} from "../../src/document/index.ts";
import { KINDS } from "./typed-documents.ts";

function carOf(document: CarDocument): Car {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(reading.faults.map(sayFault).join("\n"));
  return reading.car;
}

const paths = (car: Car): readonly string[] => car.assumed.map((each) => each.path);
const assumedAt = (car: Car, path: string) => car.assumed.find((each) => each.path === path)?.value;

describe("the simplest car", () => {
  const car = carOf(simplestDocument("trailing-arm", "inch-pound"));

  test("lists each assumption it rests on, and no other", () => {
    expect([...paths(car)].sort()).toEqual(
      [
        "linkage.trailingArm.diameter",
        'rodEnds["trailingArm.inboardPivot"].boltAxis',
        'rodEnds["trailingArm.inboardPivot"].boltOn',
        'rodEnds["trailingArm.outboardPivot"].boltAxis',
        'rodEnds["trailingArm.outboardPivot"].boltOn',
        "stops.bump",
        "stops.droop",
        "targets.wheelbase",
        "weights.centreOfGravityHeight",
        "weights.rearBrakeShare",
        "wheel.camber",
        "wheel.loadedRadius",
        "wheel.offset",
        "wheel.rimInsideDiameter",
        "wheel.shoulderRadius",
        "wheel.toe",
      ].sort(),
    );
  });

  test("says of each where it comes from", () => {
    for (const each of car.assumed) expect(each.because.length).toBeGreaterThan(10);
  });

  test("puts in the values that common practice gives", () => {
    expect(car.wheel.loadedRadius).toBeCloseTo(0.96 * 16.5 * 0.0254, 12);
    expect(car.wheel.offset).toBe(0);
    expect(car.wheel.rimInsideRadius).toBeCloseTo((7.5 - 0.75) * 0.0254, 12);
    expect(car.chassis.wheelbase).toBeCloseTo(100 * 0.0254, 12);
    expect(car.chassis.rearBrakeShare).toBe(0.4);
    expect(car.stops).toEqual({
      bump: { by: "travel", travel: 6 * 0.0254 },
      droop: { by: "travel", travel: 4 * 0.0254 },
    });
  });

  test("assumes the end of the arm's tubes where none is given", () => {
    const without = carOf(
      setField(simplestDocument("trailing-arm", "inch-pound"), "linkage.trailingArm.hub", undefined),
    );
    expect(assumedAt(without, "linkage.trailingArm.hub")).toBe("4 in inboard of the hub face");
    expect(without.linkage.kind === "trailing-arm" && without.linkage.trailingArm.hub.y).toBeCloseTo(31.5 * 0.0254, 12);
  });
});

test.each(KINDS)("%s: nothing that was given is listed as assumed", (kind) => {
  const document = startingDocument(kind, "metric");
  const told = paths(carOf(document));
  expect(new Set(told).size).toBe(told.length);
  for (const path of ["wheel.camber", "wheel.loadedRadius", "targets.wheelbase", "bumpStop.solid", "wheel.offset"]) {
    expect(told).not.toContain(path);
  }
});

describe("what ends the travel", () => {
  const cases: readonly (readonly [string, readonly (readonly [string, FieldValue])[], unknown, unknown])[] = [
    ["the parts that are there", [], { by: "bump-stop" }, { by: "strap" }],
    [
      "the travel aimed at, without those parts",
      [
        ["bumpStop", undefined],
        ["strap", undefined],
      ],
      { by: "travel", travel: 7 * 0.0254 },
      { by: "travel", travel: 6 * 0.0254 },
    ],
    [
      "what was chosen",
      [
        ["stops.bump", "shock"],
        ["stops.droop", "4 1/2"],
      ],
      { by: "shock" },
      { by: "travel", travel: 4.5 * 0.0254 },
    ],
  ];
  test.each(cases)("%s", (_, changes, bump, droop) => {
    let document = startingDocument("h-arm", "inch-pound");
    for (const [path, value] of changes) document = setField(document, path, value);
    expect(carOf(document).stops).toEqual({ bump, droop });
  });

  test("a chosen stop is not assumed", () => {
    const document = setField(startingDocument("h-arm", "inch-pound"), "stops.bump", "shock");
    expect(paths(carOf(document))).not.toContain("stops.bump");
  });
});

test("backspacing: offset is what lies past half the rim and one flange", () => {
  const car = carOf(startingDocument("h-arm", "inch-pound"));
  expect(car.wheel.offset).toBeCloseTo((4 - 4 - 0.5) * 0.0254, 12);
  expect(assumedAt(car, "wheel.flangeWidth")).toBeCloseTo(0.5 * 0.0254, 12);
});

describe("rod ends", () => {
  test.each([
    ["h-arm", 6],
    ["double-a-arm", 8],
    ["trailing-arm", 2],
    ["five-link", 10],
  ] as const)("%s has one at each of its %d pivots", (kind, count) => {
    const { rodEnds } = carOf(simplestDocument(kind, "inch-pound"));
    expect(rodEnds.length).toBe(count);
    for (const { boltAxis } of rodEnds) expect(Math.hypot(boltAxis.x, boltAxis.y, boltAxis.z)).toBeCloseTo(1, 12);
  });

  test("take what is given and assume the rest", () => {
    const given = { thread: "3/4-16", hand: "left", boltAxis: "up", boltOn: "lower-arm", misalignmentLimit: 15 };
    const document = setField(startingDocument("h-arm", "metric"), 'rodEnds["lowerArm.outerFront"]', given);
    const car = carOf(document);
    const end = car.rodEnds.find((each) => each.pivot === "lowerArm.outerFront");
    expect(end?.pitch).toBeCloseTo(0.0254 / 16, 15);
    expect(end?.headRadius).toBeCloseTo((2.4 * 0.75 * 0.0254) / 2, 12);
    expect(end?.misalignmentLimit).toBeCloseTo((15 * Math.PI) / 180, 12);
    expect([end?.hand, end?.boltAxis, end?.boltOn]).toEqual(["left", { x: 0, y: 0, z: 1 }, "lower-arm"]);
    const own = paths(car).filter((path) => path.includes("lowerArm.outerFront"));
    expect(own).toEqual(['rodEnds["lowerArm.outerFront"].headDiameter']);
  });

  test("an upright link still gets a bolt", () => {
    const upright = { inner: { x: 0, y: 29, z: 30 }, outer: { x: 0, y: 29, z: 20 } };
    const car = carOf(setField(startingDocument("h-arm", "inch-pound"), "linkage.upperLink", upright));
    expect(car.rodEnds.find((each) => each.pivot === "upperLink.inner")?.boltAxis).toEqual({ x: 0, y: 1, z: 0 });
  });
});

test("a turned box keeps its axes square and of unit length", () => {
  const box = {
    shape: "box",
    name: "tank",
    centre: { x: 10, y: 5, z: 20 },
    size: { x: 20, y: 12, z: "8 1/2" },
    turn: { axis: "up", angle: 90 },
    clearance: 1,
  };
  const [keepOut] = carOf(setField(startingDocument("h-arm", "inch-pound"), "keepOuts", [box])).keepOuts;
  if (keepOut?.shape !== "box") throw new Error("no box");
  // A quarter turn about up, right-handed, takes forward to left and left to rearward.
  expect(keepOut.axisX.y).toBeCloseTo(1, 12);
  expect(keepOut.axisY.x).toBeCloseTo(-1, 12);
  expect(keepOut.half.z).toBeCloseTo(4.25 * 0.0254, 12);
});
