import { expect, test } from "vitest";
import type { Car } from "../../src/car/car.ts";
import {
  type FieldValue,
  readCarDocument,
  readCarValue,
  setField,
  startingDocument,
  writeCarDocument,
} from "../../src/document/index.ts";

const MESH: FieldValue = {
  file: "frame.stl",
  points: [
    { name: "rail end", mesh: { x: 120.5, y: 0, z: 3 }, car: { x: "12 1/2", y: 10, z: 20 } },
    { mesh: { x: 0, y: 50, z: 3 }, car: { x: 0, y: -10, z: 20 } },
    { mesh: { x: 0, y: 0, z: 400 }, car: { x: "100 mm", y: 10, z: 36 } },
  ],
};

function read(value: FieldValue): Car {
  const reading = readCarValue(setField(startingDocument("h-arm", "inch-pound"), "chassisMesh", value));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.car;
}

test("spots on the mesh stay as in the file, spots on the car come out in metres", () => {
  const { chassisMesh } = read(MESH);
  expect(chassisMesh?.points.map(({ mesh }) => mesh)).toEqual([
    { x: 120.5, y: 0, z: 3 },
    { x: 0, y: 50, z: 3 },
    { x: 0, y: 0, z: 400 },
  ]);
  expect(chassisMesh?.points[0]?.car.x).toBeCloseTo(12.5 * 0.0254, 12);
  expect(chassisMesh?.points[1]?.car.y).toBeCloseTo(-10 * 0.0254, 12);
  expect(chassisMesh?.points[2]?.car.x).toBeCloseTo(0.1, 12);
});

test("clearance left out is half an inch, and said to be assumed", () => {
  const { chassisMesh, assumed } = read(MESH);
  expect(chassisMesh?.clearance).toBeCloseTo(0.0127, 12);
  expect(assumed.map(({ path }) => path)).toContain("chassisMesh.clearance");
  const given = read({ ...(MESH as object), clearance: "3/4" });
  expect(given.chassisMesh?.clearance).toBeCloseTo(0.75 * 0.0254, 12);
  expect(given.assumed.map(({ path }) => path)).not.toContain("chassisMesh.clearance");
});

test("a right side of its own is not held against the mesh", () => {
  const document = setField(startingDocument("h-arm", "inch-pound"), "chassisMesh", MESH);
  const wheel = JSON.parse(JSON.stringify(document.wheel));
  const hubFace = { ...wheel.hubFace, y: `-${wheel.hubFace.y}` };
  const reading = readCarValue(setField(document, "right.wheel", { ...wheel, hubFace }));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  expect(reading.car.chassisMesh?.file).toBe("frame.stl");
  expect(reading.car.right).toBeDefined();
  expect(reading.car.right?.chassisMesh).toBeUndefined();
});

test("is written as it was typed", () => {
  const text = writeCarDocument(setField(startingDocument("h-arm", "inch-pound"), "chassisMesh", MESH));
  const again = readCarDocument(text);
  if (!again.ok) throw new Error(JSON.stringify(again.faults));
  expect(again.document.chassisMesh).toEqual(MESH);
  expect(writeCarDocument(again.document)).toBe(text);
});
