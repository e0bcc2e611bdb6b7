import { study } from "@armwright/engine";
import { readCarValue, startingDocument } from "@armwright/engine/document";
import { expect, test } from "vitest";
import { withMesh } from "../../src/mesh/mesh-limits.ts";
import type { MeshSamples } from "../../src/mesh/samples.ts";

const INCH = 0.0254;
const reading = readCarValue(startingDocument("h-arm", "inch-pound"));
if (!reading.ok) throw new Error("the starting car cannot be read");
const base = study({ ...reading.car, chassisMesh: { file: "frame.stl", clearance: INCH, points: [] } });

/** Two parts: an arm whose gap falls evenly from 2 in at ride height to −1 in at 3 in of bump, and a link never nearer than 1/2 in. */
const samples: MeshSamples = (() => {
  const travels = [-2, -1, 0, 1, 2, 3].map((inches) => inches * INCH);
  const at = { x: 0, y: 0.3, z: 0.4 };
  return {
    parts: [
      { id: "arm", label: "lower arm", radius: 0.02 },
      { id: "link", label: "upper link", radius: 0.02 },
    ],
    travels,
    gaps: travels.map((travel) => [
      { gap: 2 * INCH - Math.max(0, travel), at, triangle: 0 },
      { gap: 0.5 * INCH + Math.abs(travel), at, triangle: 1 },
    ]),
  };
})();

test("a part that meets the scan before the stop is a limit at the travel where it does, and must be mended", () => {
  const shown = withMesh(base, samples);
  const limit = shown.travel.bump.limits.find(({ place }) => place === "chassisMesh");
  expect(limit?.label).toBe("lower arm to scan");
  expect(limit?.travel).toBeCloseTo(2 * INCH, 9);
  expect(limit?.isProtected).toBe(false);
  const travels = shown.travel.bump.limits.map(({ travel }) => Math.abs(travel));
  expect(travels).toEqual([...travels].sort((a, b) => a - b));
  const hard = shown.travel.bump.limits.find(({ nature }) => nature === "hard");
  expect(shown.travel.bump.first).toBe(hard);
  expect(shown.travel.droop).toBe(base.travel.droop);
  const must = shown.findings.find(({ place, gravity }) => place === "chassisMesh" && gravity === "must");
  expect(must?.travel).toBeCloseTo(2 * INCH, 9);
  expect(must?.at).toEqual({ x: 0, y: 0.3, z: 0.4 });
});

test("a gap less than is wanted is to be minded, after what must be mended", () => {
  const { findings } = withMesh(base, samples);
  const mind = findings.findIndex(({ place, gravity }) => place === "chassisMesh" && gravity === "mind");
  const must = findings.findIndex(({ gravity }) => gravity === "must");
  expect(mind).toBeGreaterThan(must);
  expect(findings[mind]?.values["gap"]).toEqual({ value: 0.5 * INCH, dimension: "length" });
  expect(findings[mind]?.values["pair"]).toBe("upper link to scan");
});

test("what a study makes only when asked is still there", () => {
  const shown = withMesh(base, samples);
  expect(shown.adjusters).toBe(base.adjusters);
  expect(shown.corner).toBe(base.corner);
});
