import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { caseForces, caseGround, cornerModel, runLanding, study, studyStrength, type Vec3 } from "@armwright/engine";
import { describe, expect, test } from "vitest";
import {
  bentArm,
  drawArm,
  drawForces,
  drawHistory,
  type ForceArrow,
  fitRear,
  type Primitive,
  useClassOf,
  viewFromBehind,
} from "../src/index.ts";
import type { Spot } from "../src/primitive.ts";
import { carFrom } from "./cars.ts";

const DEMO = fileURLToPath(new URL("../../../examples/saltbush.car.json", import.meta.url));
const made = study(carFrom(JSON.parse(readFileSync(DEMO, "utf8"))));
const flat = (parts: readonly Primitive[]): readonly Primitive[] =>
  parts.flatMap((part) => (part.shape === "group" ? [part, ...flat(part.parts)] : [part]));
const apart = (a: Vec3, b: Vec3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

describe("an arm under load", () => {
  const found = studyStrength(made)!;
  const arm = found.arms[0]!;
  if (!arm.analysis.ok) throw new Error("the demo arm can be reckoned");
  const result = arm.analysis.cases[0]!;
  const bent = bentArm(arm, result.loadCase)!;

  test("every piece bends from where its first node goes to where its other one goes", () => {
    const plain = bent.pieces.filter(({ id }) => !arm.frame.members.find((each) => each.id === id)?.offsetFrom);
    expect(plain.length).toBeGreaterThan(0);
    for (const { id, bent: curve } of plain) {
      const member = arm.frame.members.find((each) => each.id === id)!;
      const ends = [member.from, member.to].map((node) => bent.nodes.find((each) => each.id === node)!.at);
      expect(apart(curve[0]!, ends[0]!)).toBeLessThan(1e-9);
      expect(apart(curve.at(-1)!, ends[1]!)).toBeLessThan(1e-9);
    }
  });

  test("every piece leaves its ends the way the node has turned it", () => {
    for (const { id, from, to, bent: curve } of bent.pieces) {
      const member = arm.frame.members.find((each) => each.id === id)!;
      const along = { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
      for (const [node, way] of [
        [member.from, 1],
        [member.to, -1],
      ] as const) {
        const { turn } = result.frame.movements.find((each) => each.node === node)!;
        const turned = {
          x: along.x + (turn.y * along.z - turn.z * along.y) * bent.times,
          y: along.y + (turn.z * along.x - turn.x * along.z) * bent.times,
          z: along.z + (turn.x * along.y - turn.y * along.x) * bent.times,
        };
        const [a, b, c, d] = (way === 1 ? curve : [...curve].reverse()).slice(0, 4);
        // The slope of a cubic at the first of four spots that stand evenly.
        const slope = (axis: "x" | "y" | "z"): number =>
          (way * (curve.length - 1) * (-11 * a![axis] + 18 * b![axis] - 9 * c![axis] + 2 * d![axis])) / 6;
        expect(apart({ x: slope("x"), y: slope("y"), z: slope("z") }, turned)).toBeLessThan(1e-9);
      }
    }
  });

  test("the bending drawn is the reckoned one so many times, and the share is stress over what it bears", () => {
    for (const { node, shift } of result.frame.movements) {
      const drawn = bent.nodes.find((each) => each.id === node)!;
      const at = arm.frame.nodes.find((each) => each.id === node)!.point;
      const moved = { x: shift.x * bent.times, y: shift.y * bent.times, z: shift.z * bent.times };
      expect(apart(drawn.at, { x: at.x + moved.x, y: at.y + moved.y, z: at.z + moved.z })).toBeLessThan(1e-9);
      const uses = result.uses.filter((each) => each.node === node).map(({ use }) => use);
      expect(drawn.use).toBe(Math.max(0, ...uses));
    }
  });

  test("what gives way looks otherwise than what holds, and the worst node is named with its number", () => {
    expect([0.2, 0.7, 0.95, 1.01].map(useClassOf)).toEqual(["little", "half", "most", "over"]);
    const words = flat(drawArm(bent, 480, 240)).flatMap((part) => (part.shape === "text" ? [part.text] : []));
    const worst = bent.nodes.reduce((most, node) => (node.use > most.use ? node : most));
    expect(words.some((text) => text.startsWith(worst.label) && text.endsWith(" %"))).toBe(true);
  });
});

describe("forces", () => {
  const sheet = fitRear(made, 420, 640);
  test("each arrow ends or begins at its place, as long as it is large", () => {
    const arrows: readonly ForceArrow[] = [
      { id: "up", at: { x: 0, y: 0.5, z: 0.2 }, force: { x: 0, y: 0, z: 1000 }, label: "A 225 lb", end: "tip" },
      { id: "in", at: { x: 0, y: 0.4, z: 0.4 }, force: { x: 0, y: -500, z: 0 }, label: "B 112 lb", end: "tail" },
      { id: "on", at: { x: 0, y: 0.3, z: 0.4 }, force: { x: 900, y: 0, z: 0 }, label: "C 202 lb", end: "tail" },
    ];
    const parts = drawForces(viewFromBehind(sheet), arrows);
    const shaft = (id: string) => {
      const group = parts.find(({ meaning }) => meaning === id)!;
      return flat([group]).find((part) => part.shape === "line");
    };
    const ends = (id: string) => {
      const line = shaft(id);
      if (line?.shape !== "line") throw new Error("no shaft");
      const [from, neck] = line.path.flatMap((step) => (step.to === "close" ? [] : [step.at]));
      return { from: from!, neck: neck! };
    };
    const length = (id: string): number => Math.hypot(...gap(ends(id).from, ends(id).neck));
    const gap = (a: Spot, b: Spot): [number, number] => [b.x - a.x, b.y - a.y];
    const view = viewFromBehind(sheet);
    // A push from outside comes up to its place from below; what a joint puts on its part goes inward from there.
    expect(gap(ends("up").neck, view.at(arrows[0]!.at))).toEqual([expect.closeTo(0, 6), expect.closeTo(-8.8, 6)]);
    expect(ends("up").from.y).toBeGreaterThan(ends("up").neck.y);
    expect(gap(ends("in").from, view.at(arrows[1]!.at))).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
    expect(ends("in").neck.x).toBeGreaterThan(ends("in").from.x);
    // A head of 11 × 0.8 px is taken off each shaft.
    expect((length("up") + 8.8) / (length("in") + 8.8)).toBeCloseTo(2, 2);
    // Away from the eye: a ring with a cross in place of an arrow.
    expect(flat([parts[2]!]).filter((part) => part.shape === "area")).toHaveLength(1);
    const words = flat(parts).flatMap((part) => (part.shape === "text" ? [part.text] : []));
    expect(words).toEqual(["A 225 lb", "B 112 lb", "C 202 lb"]);
  });

  test("a whole load case has a number beside every arrow", () => {
    const ground = caseGround(made)!;
    const { balance } = caseForces(ground, ground.loads.cases[0]!);
    if (!balance.ok) throw new Error("the first case has a balance");
    const arrows = balance.forces.joints.map(
      ({ pivot, point, force }): ForceArrow => ({ id: pivot, at: point, force, label: pivot, end: "tail" }),
    );
    const words = flat(drawForces(viewFromBehind(sheet), arrows)).filter((part) => part.shape === "text");
    expect(words).toHaveLength(arrows.length);
  });
});

describe("a landing over time", () => {
  const found = cornerModel(made);
  if (!found.ok) throw new Error("the demo car can land");
  const { history } = runLanding(made.corner, found.model, {
    kind: "road",
    roadClass: "F",
    speed: 13,
    seconds: 20,
    seed: 1,
  });
  const chart = drawHistory(
    history.time,
    [{ id: "load", label: "wheel load", dimension: "force", values: history.wheelLoad, most: "most" }],
    460,
    "inch-pound",
  );

  test("thousands of steps are drawn in few spots, and no spike is lost", () => {
    const curve = flat(chart.parts).find((part) => part.shape === "line" && part.meaning === "load");
    if (curve?.shape !== "line") throw new Error("no curve");
    const spots = curve.path.flatMap((step) => (step.to === "close" ? [] : [step.at]));
    expect(history.time.length).toBeGreaterThan(10_000);
    expect(spots.length).toBeLessThan(4 * 460);
    const { frame, low, high } = chart.strips[0]!;
    const top = Math.max(...history.wheelLoad);
    const y = frame.y + frame.height - ((top - low) / (high - low)) * frame.height;
    expect(Math.min(...spots.map((spot) => spot.y))).toBeCloseTo(y, 6);
  });

  test("level numbers do not touch one another", () => {
    const values = Float64Array.from(history.time, (_, i) => (i === 5 ? 4.2 : i === 9 ? -1.1 : 0));
    const { parts } = drawHistory(
      history.time,
      [{ id: "g", label: "body", dimension: "ratio", unit: "g", values, most: "most 4.2 g" }],
      460,
      "inch-pound",
    );
    const numbers = flat(parts).flatMap((part) =>
      part.shape === "text" && part.anchor === "end" && part.at.x < 60 ? [part.at.y] : [],
    );
    expect(numbers.length).toBeGreaterThan(1);
    const sorted = numbers.sort((a, b) => a - b);
    for (let i = 1; i < sorted.length; i += 1) expect(sorted[i]! - sorted[i - 1]!).toBeGreaterThanOrEqual(14);
  });

  test("its time axis runs from the first step to the last", () => {
    expect(chart.from.time).toBe(0);
    expect(chart.to.time).toBeCloseTo(20, 9);
    expect(chart.to.x).toBeLessThanOrEqual(460);
  });
});
