import { study } from "@armwright/engine";
import { readCarValue, startingDocument } from "@armwright/engine/document";
import { expect, test } from "vitest";
import { gapsAt, leastGaps, sampleGaps } from "../../src/mesh/samples.ts";
import { standIn } from "../../src/mesh/stand-in.ts";
import { gapTo, makeMeshTree } from "../../src/scene/mesh/mesh-gap.ts";
import { toCar } from "../../src/scene/mesh/similarity.ts";

const reading = readCarValue(startingDocument("h-arm", "inch-pound"));
if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
const made = study(reading.car);
const { wheelCentre } = made.corner;
const { wheel } = reading.car;
const bump = made.travel.bump.stop.travel;
const droop = made.travel.droop.stop.travel;

const SAME = { scale: 1, rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translation: { x: 0, y: 0, z: 0 } } as const;

/** A level plate, two triangles, right over the wheel: the tyre comes nearest in full bump. */
function plateAt(z: number) {
  const [x, y] = [wheelCentre.x, wheelCentre.y];
  const corners = [x - 1, y - 1, z, x + 1, y - 1, z, x + 1, y + 1, z, x - 1, y + 1, z];
  return makeMeshTree(new Float32Array(corners), new Uint32Array([0, 1, 2, 0, 2, 3]));
}

const asked = (z: number, most = 1) => {
  const tree = plateAt(z);
  return sampleGaps(made, async (positions) =>
    positions.map((solids) => solids.map((solid) => gapTo(tree, SAME, solid, most))),
  );
};

/** Single precision of a plate about 1 m off. */
const SINGLE = 1e-6;

test("a plate over the wheel is nearest in full bump, by what the tyre leaves there", async () => {
  const over = 0.05;
  const samples = await asked(wheelCentre.z + bump + wheel.freeRadius + over);
  const tyre = leastGaps(samples!).find(({ id }) => id === "tyre");
  expect(tyre?.travel).toBeCloseTo(bump, 9);
  // Camber tips the tyre's shoulder up, so that it comes nearer than its crown would.
  expect(tyre!.gap!).toBeLessThanOrEqual(over + SINGLE);
  expect(tyre!.gap!).toBeGreaterThan(over - wheel.sectionWidth / 4);
});

test("between two samples the gap is read as the plate gives it there", async () => {
  const samples = await asked(wheelCentre.z + bump + wheel.freeRadius + 0.05);
  const at = samples!.travels[4]!;
  const here = gapsAt(samples!, at).find(({ id }) => id === "tyre:chassis-mesh");
  expect(here?.gap).toBeCloseTo(samples!.gaps[4]![0]!.gap, 12);
  const middle = (at + samples!.travels[5]!) / 2;
  const between = gapsAt(samples!, middle).find(({ id }) => id === "tyre:chassis-mesh");
  expect(between!.gap).toBeGreaterThan(samples!.gaps[5]![0]!.gap);
  expect(between!.gap).toBeLessThan(here!.gap);
});

test("a plate that the tyre runs into is in it, and marked from there on only", async () => {
  const samples = await asked(wheelCentre.z + bump / 2 + wheel.freeRadius);
  const tyre = leastGaps(samples!).find(({ id }) => id === "tyre");
  expect(tyre!.gap!).toBeLessThan(0);
  const gapOf = (travel: number) => gapsAt(samples!, travel).find(({ id }) => id === "tyre:chassis-mesh")?.gap;
  expect(gapOf(0)!).toBeGreaterThan(0);
  expect(gapOf(bump)!).toBeLessThan(0);
});

test("outside the stops and farther than looked nothing is told", async () => {
  const samples = await asked(wheelCentre.z + 3, 0.2);
  expect(leastGaps(samples!).every(({ gap }) => gap === null)).toBe(true);
  expect(gapsAt(samples!, 0)).toEqual([]);
  const near = await asked(wheelCentre.z + bump + wheel.freeRadius + 0.05);
  expect(gapsAt(near!, bump + 0.01)).toEqual([]);
  expect(gapsAt(near!, droop - 0.01)).toEqual([]);
});

test("a plate at the chassis end of the lower arm's tubes, where its brackets are, is not told as fouling", async () => {
  const { members } = made.corner;
  const link = members.find(({ id }) => id === "upperLink");
  if (!link) throw new Error("no upper link");
  const end = reading.ok && reading.car.linkage.kind === "h-arm" ? reading.car.linkage.upperLink.inner : null;
  if (!end) throw new Error("another kind");
  // A square patch of 1 in, across the link right at its pivot.
  const h = 0.0127;
  const { x, y, z } = end;
  const corners = [x - h, y, z - h, x + h, y, z - h, x + h, y, z + h, x - h, y, z + h];
  const tree = makeMeshTree(new Float32Array(corners), new Uint32Array([0, 1, 2, 0, 2, 3]));
  const samples = await sampleGaps(made, async (positions) =>
    positions.map((solids) => solids.map((solid) => gapTo(tree, SAME, solid, 1))),
  );
  const row = leastGaps(samples!).find(({ id }) => id === "upperLink");
  expect(row!.gap!).toBeGreaterThan(0);
  expect(row!.gap!).toBeLessThan(3 * 0.0254);
});

test("a scan not yet placed stands upright over the axle, in the unit that makes a chassis of it", () => {
  const low = { x: 100, y: -500, z: 0 };
  const high = { x: 2100, y: 500, z: 800 };
  const stl = standIn("frame.stl", low, high, 0.4);
  expect(stl.scale).toBe(0.001);
  const middle = toCar(stl, { x: 1100, y: 0, z: 400 });
  expect(middle.x).toBeCloseTo(0.4, 12);
  expect(middle.y).toBeCloseTo(0, 12);
  expect(toCar(stl, low).z).toBeCloseTo(0.25, 12);
  // GLB has y up: its top is up on the car too.
  const glb = standIn("frame.glb", { x: -0.5, y: 0, z: -1 }, { x: 0.5, y: 0.8, z: 1 }, 0);
  expect(glb.scale).toBe(1);
  expect(toCar(glb, { x: 0, y: 0.8, z: 0 }).z - toCar(glb, { x: 0, y: 0, z: 0 }).z).toBeCloseTo(0.8, 12);
});
