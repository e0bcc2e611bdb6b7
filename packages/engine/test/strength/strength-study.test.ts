import { describe, expect, test } from "vitest";
import { sectionProperties } from "../../src/frames/section.ts";
import { addScaled, cross, distance, dot, length, squareTo, subtract, unit } from "../../src/geometry/vec3.ts";
import { studyStrength } from "../../src/strength/strength-study.ts";
import { study } from "../../src/study/study.ts";
import { exampleCar } from "../example-documents.ts";
import { carWith, strengthOf } from "./cars.ts";

const INCH = 0.0254;

describe("the strength of the demo car", () => {
  const found = strengthOf(exampleCar("saltbush"));

  test("weakest first, each with its load case, its place and what it may bear", () => {
    expect(found.checks.length).toBeGreaterThan(8);
    const factors = found.checks.map(({ factor }) => factor ?? Number.POSITIVE_INFINITY);
    expect(factors).toEqual([...factors].sort((a, b) => a - b));
    const loaded = found.checks.filter(({ factor }) => factor !== null);
    expect(loaded.length).toBeGreaterThan(8);
    for (const check of loaded) {
      expect(check.loadCase).not.toBeNull();
      expect(check.allowable).toBeGreaterThan(0);
      expect(check.factor).toBeCloseTo(check.allowable / check.demand, 12);
    }
  });

  test("all its parts bear the stated cases", () => {
    expect(found.checks[0]!.factor!).toBeGreaterThan(1.2);
    expect(found.proposals).toEqual([]);
  });

  test("a larger or thicker tube holds more and weighs more", () => {
    // Plain tubes: with a second tube under them another part of the arm may be the weakest.
    const plain = strengthOf(carWith({ "strength.tubes.lowerArm.under": undefined }));
    const present = plain.alternatives.find(({ isPresent }) => isPresent)!;
    const others = plain.alternatives.filter(({ isPresent }) => !isPresent);
    expect(others).toHaveLength(4);
    for (const { size, factor, mass } of others) {
      const isMore = size.diameter > present.size.diameter || size.wall > present.size.wall;
      expect(mass > present.mass).toBe(isMore);
      expect(factor! > present.factor!).toBe(isMore);
    }
  });

  test("says what it could not judge", () => {
    expect(found.notEntered).toEqual([
      "ratings of the rod ends",
      "bolts",
      "tabs",
      "welds of the tabs",
      "the half shaft",
      "the stub axle",
    ]);
  });
});

/** Two plain tubes with one cross tube outboard of shock and stop: from pivot to mount only the pivot's force acts. */
const PLAIN_ARM = {
  nodes: [
    { name: "inner front", at: "lowerArm.innerFront" },
    { name: "inner rear", at: "lowerArm.innerRear" },
    { name: "outer front", at: "lowerArm.outerFront" },
    { name: "outer rear", at: "lowerArm.outerRear" },
    { name: "shock", point: { x: 5.25, y: 23.375, z: 11.3 } },
    { name: "pad", point: { x: -5.625, y: 21.5, z: 11.3 } },
    { name: "cross front", point: { x: 3.9, y: 29.5, z: 11.28 } },
    { name: "cross rear", point: { x: -3.9, y: 29.5, z: 11.28 } },
  ],
  members: [
    ["inner front", "shock"],
    ["shock", "cross front"],
    ["cross front", "outer front"],
    ["inner rear", "pad"],
    ["pad", "cross rear"],
    ["cross rear", "outer rear"],
    ["cross front", "cross rear"],
  ].map(([from, to]) => ({
    name: `${from} to ${to}`,
    from: from!,
    to: to!,
    shape: "round-tube",
    diameter: 1.5,
    wall: 0.12,
  })),
};

describe("a tube between its pivot and a mount, by statics alone", () => {
  const car = carWith({ "strength.frames": { "lower-arm": PLAIN_ARM } });
  const found = strengthOf(car);
  const { frame, analysis } = found.arms[0]!;
  if (!analysis.ok) throw new Error("the arm could not be analysed");

  // By hand: nothing but the rod end's force acts on this length, wherever the arm's other tubes are. The bending moment at
  // the mount is force × distance, the stress M/Z + N/A. A beam on two hinges says less: the spindle's hinge shares the wheel's
  // load evenly between both tubes, so that all that a shock or stop off the middle twists falls on the inner pivots.
  test.each([
    ["inner front", "shock"],
    ["inner rear", "pad"],
  ])("%s to %s, in every case", (from, to) => {
    const node = (id: string) => frame.nodes.find((each) => each.id === id)!.point;
    const pivot = { "inner front": "lowerArm.innerFront", "inner rear": "lowerArm.innerRear" }[from]!;
    const along = unit(subtract(node(to), node(from)));
    const { area, iy } = sectionProperties({ shape: "round-tube", diameter: 1.5 * INCH, wall: 0.12 * INCH });
    expect(analysis.cases).toHaveLength(10);
    analysis.cases.forEach(({ uses, loadCase }, index) => {
      const { forces, undecided } = found.forces[index]!.arms["lower-arm"]!;
      const even = forces.find(({ place }) => place === pivot)!.force;
      const shared = undecided.find(({ places }) => places.includes(pivot));
      const shares = shared ? [addScaled(even, shared.half, 1), addScaled(even, shared.half, -1), even] : [even];
      const stress = shares.map((force) => {
        const moment = length(squareTo(force, along)) * distance(node(from), node(to));
        return Math.abs(dot(force, along)) / area + (moment * 0.75 * INCH) / iy;
      });
      const use = uses.find(({ member, node: at }) => member.id === `${from} to ${to}` && at === to)!;
      expect(use.stress.normal, loadCase).not.toBe(0);
      expect(Math.abs(use.stress.normal) / Math.max(...stress), loadCase).toBeCloseTo(1, 9);
    });
  });

  test("the pivots' forces balance load and mounts about the arm's middle line", () => {
    for (const { arms, name } of found.forces) {
      const { forces } = arms["lower-arm"]!;
      const about = frame.nodes[0]!.point;
      const point = (place: string) =>
        frame.attached.find((each) => each.place === place)?.point ?? { x: Number.NaN, y: 0, z: 0 };
      const moment = forces.reduce(
        (sum, each) => addScaled(sum, cross(subtract(each.point ?? point(each.place), about), each.force), 1),
        { x: 0, y: 0, z: 0 },
      );
      const most = Math.max(...forces.map(({ force }) => length(force)));
      expect(length(moment) / most, name).toBeLessThan(1e-9);
    }
  });
});

test("what a hinge line's rod ends may share is the whole force along it", () => {
  // By hand: 2 g of 720 lb rearward on the wheel and what the leaning shock pulls rearward; the upper link takes hardly any.
  const rock = strengthOf(exampleCar("saltbush")).forces.find(({ name }) => name === "rock from the front")!;
  const { undecided, forces } = rock.arms["lower-arm"]!;
  const shock = forces.find(({ place }) => place === "shock.lower")!.force;
  const half = (2 * 720 * 4.4482216 - shock.x) / 2;
  const inner = undecided.find(({ places }) => places.includes("lowerArm.innerFront"))!;
  // The hinge line is level and square to the car to 1 %.
  expect(Math.abs(length(inner.half) / half - 1)).toBeLessThan(0.01);
});

describe("what the document says", () => {
  test("a thicker wall, a bolt and tabs are judged as entered", () => {
    const found = strengthOf(
      carWith({
        "strength.tubes.lowerArm": { wall: 0.188, material: "4130 N" },
        "strength.bolts": { all: { size: "5/8-18", grade: "8", shear: "double" } },
        "strength.tabs": { all: { thickness: "1/4", width: 2, edgeDistance: 1 } },
      }),
    );
    const plain = strengthOf(carWith({ "strength.tubes.lowerArm": { wall: 0.12, material: "DOM 1020" } }));
    const arm = (of: typeof found) => of.checks.find(({ label }) => label === "lower arm, front tube")!;
    expect(arm(found).factor!).toBeGreaterThan(2 * arm(plain).factor!);
    const bolts = found.checks.filter(({ check }) => check === "bolt-shear");
    expect(bolts.length).toBeGreaterThan(5);
    expect(found.notEntered).not.toContain("bolts");
  });

  test("half the load is twice the factor", () => {
    const [a, b] = [exampleCar("saltbush"), carWith({ "weights.corner": 360, "weights.unsprung": 67.5 })].map(
      strengthOf,
    );
    const link = (of: typeof a) => of!.checks.find(({ check }) => check === "link-pulled")!;
    expect(link(b).factor! / link(a).factor!).toBeCloseTo(2, 6);
  });

  test("without the wheel's weight there is no load to judge by", () => {
    expect(studyStrength(study(carWith({ weights: undefined })))).toBeNull();
  });
});
