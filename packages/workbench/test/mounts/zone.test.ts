import { designState, type LowerZone, placeOn, positionOf, type Vec3 } from "@armwright/engine";
import { describe, expect, test } from "vitest";
import { designWay, movedZones, ordered, type Zones, zoneEdges, zoneGrips, zoneShapes } from "../../src/mounts/zone.ts";
import { exampleCar, INCH } from "./car.ts";

const { corner } = exampleCar("saltbush");
const SIXTEENTH = INCH / 16;
const at = (x: number, y: number, z: number): Vec3 => ({ x: x * INCH, y: y * INCH, z: z * INCH });
const TUBE: LowerZone = { kind: "tube", member: "lowerArm.front", standoff: INCH, from: 0.2, to: 0.8 };
const ZONES: Zones = { upper: { kind: "box", from: at(0, 14, 26), to: at(8, 20, 36) }, lower: [TUBE] };
const gripOf = (id: string, zones = ZONES) => {
  const grip = zoneGrips(corner, zones).find((each) => each.id === id);
  if (!grip) throw new Error(`no grip ${id}`);
  return grip;
};
const move = (id: string, way: Vec3, zones = ZONES): Zones =>
  movedZones(corner, zones, gripOf(id, zones), way, SIXTEENTH);
const upperOf = ({ upper }: Zones) => {
  if (upper.kind !== "box") throw new Error("no box");
  return ordered(upper.from, upper.to);
};

test("a box has its whole and six faces to take hold of, a stretch of tube its two ends", () => {
  expect(zoneGrips(corner, ZONES).map(({ id }) => id)).toEqual([
    "upper.all",
    "upper.x-",
    "upper.x+",
    "upper.y-",
    "upper.y+",
    "upper.z-",
    "upper.z+",
    "lower.0.from",
    "lower.0.to",
  ]);
  expect(new Set(zoneGrips(corner, ZONES).map(({ label }) => label)).size).toBe(9);
});

describe("moving", () => {
  test("a face goes along its own axis only, to a sixteenth", () => {
    const { low, high } = upperOf(move("upper.y+", at(3, 1.03, -2)));
    expect(low).toEqual(at(0, 14, 26));
    expect(high.x).toBeCloseTo(8 * INCH, 12);
    expect(high.y).toBeCloseTo(21 * INCH, 12);
    expect(high.z).toBeCloseTo(36 * INCH, 12);
  });

  test("a face never passes the opposite one", () => {
    const { low, high } = upperOf(move("upper.z-", at(0, 0, 99)));
    expect(high.z - low.z).toBeCloseTo(SIXTEENTH, 12);
    expect(high.z).toBeCloseTo(36 * INCH, 12);
  });

  test("the whole box keeps its size", () => {
    const { low, high } = upperOf(move("upper.all", at(1.02, -2, 0.49)));
    expect([low.x, low.y, low.z].map((each) => each / SIXTEENTH)).toEqual(
      [1 * 16, 12 * 16, 26.5 * 16].map((each) => expect.closeTo(each, 6)),
    );
    expect(high.x - low.x).toBeCloseTo(8 * INCH, 12);
    expect(high.z - low.z).toBeCloseTo(10 * INCH, 12);
  });

  test("an end of a stretch stays on the tube and before the other end", () => {
    const grip = gripOf("lower.0.to");
    const along = grip.along ?? at(0, 0, 0);
    const by = (inches: number): LowerZone | undefined =>
      move("lower.0.to", { x: along.x * inches * INCH, y: along.y * inches * INCH, z: along.z * inches * INCH })
        .lower[0];
    expect(by(99)).toMatchObject({ to: 1 });
    expect(by(-99)).toMatchObject({ to: 0.2 });
    const shorter = by(-2);
    const member = corner.members.find(({ id }) => id === "lowerArm.front");
    if (shorter?.kind !== "tube" || !member) throw new Error("no tube");
    const { from, to } = member;
    const length = Math.hypot(to.point.x - from.point.x, to.point.y - from.point.y, to.point.z - from.point.z);
    expect(Math.abs((0.8 - shorter.to) * length - 2 * INCH)).toBeLessThanOrEqual(SIXTEENTH / 2);
  });

  test("the zones handed in stay as they were", () => {
    const before = structuredClone(ZONES);
    move("upper.x+", at(1, 0, 0));
    move("lower.0.from", at(0, 1, 0));
    expect(ZONES).toEqual(before);
  });
});

test("a stretch lies over its tube by the eye's height, and rides with the arm", () => {
  const shape = zoneShapes(corner, ZONES).find(({ id }) => id === "lower.0");
  const member = corner.members.find(({ id }) => id === "lowerArm.front");
  if (shape?.kind !== "line" || !member) throw new Error("no line");
  const axis = { from: member.from.point, to: member.to.point };
  const way = { x: axis.to.x - axis.from.x, y: axis.to.y - axis.from.y, z: axis.to.z - axis.from.z };
  const size = Math.hypot(way.x, way.y, way.z);
  const out = { x: shape.from.x - axis.from.x, y: shape.from.y - axis.from.y, z: shape.from.z - axis.from.z };
  const along = (out.x * way.x + out.y * way.y + out.z * way.z) / size;
  expect(along).toBeCloseTo(0.2 * size, 12);
  expect(Math.sqrt(out.x ** 2 + out.y ** 2 + out.z ** 2 - along ** 2)).toBeCloseTo(INCH, 12);

  const state = designState();
  corner.mechanism.solve(0.1, state);
  const position = positionOf(corner, state);
  const [edge] = zoneEdges(position, shape);
  expect(edge?.[0]).toEqual(placeOn(position, shape.from, "lower-arm"));
  expect(Math.abs((edge?.[1].z ?? 0) - shape.to.z)).toBeGreaterThan(0.05);
});

test("a way on the car is brought back into the design position by the body's own rotation", () => {
  const state = designState();
  corner.mechanism.solve(0.12, state);
  const position = positionOf(corner, state);
  const a = at(2, 20, 12);
  const b = at(3, 22, 13);
  const [here, there] = [placeOn(position, a, "lower-arm"), placeOn(position, b, "lower-arm")];
  const way = designWay(position, "lower-arm", { x: there.x - here.x, y: there.y - here.y, z: there.z - here.z });
  expect(way.x).toBeCloseTo(b.x - a.x, 12);
  expect(way.y).toBeCloseTo(b.y - a.y, 12);
  expect(way.z).toBeCloseTo(b.z - a.z, 12);
  expect(designWay(position, "chassis", way)).toEqual(way);
});
