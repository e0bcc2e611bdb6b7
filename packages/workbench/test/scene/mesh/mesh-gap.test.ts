import { cylinderToTriangle, type Position, positionOf, segmentToTriangle, solveAt, study } from "@armwright/engine";
import { readCarValue, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { apart, unit } from "../../../src/scene/kit/space.ts";
import { gapTo, hitBy, type MeshSolid, makeMeshTree } from "../../../src/scene/mesh/mesh-gap.ts";
import { meshParts } from "../../../src/scene/mesh/parts-of.ts";
import { type Similarity, toFile } from "../../../src/scene/mesh/similarity.ts";
import { bumpySheet, stream, strewnTriangles } from "./random.ts";

const AS_IT_IS: Similarity = { scale: 1, rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translation: { x: 0, y: 0, z: 0 } };
/** A file in millimetres that lies on its side. */
const ON_ITS_SIDE: Similarity = {
  scale: 0.001,
  rotation: [0, 0, 1, 1, 0, 0, 0, 1, 0],
  translation: { x: 0.2, y: -0.1, z: 0.4 },
};

function solids(seed: number, count: number, size: number): MeshSolid[] {
  const next = stream(seed);
  const spot = () => ({ x: size * (next() - 0.5), y: size * (next() - 0.5), z: size * (next() - 0.5) });
  return Array.from({ length: count }, (_, i): MeshSolid => {
    if (i % 2 === 0) return { shape: "capsule", from: spot(), to: spot(), radius: 0.02 * size };
    const axis = unit(spot());
    return {
      shape: "wheel",
      centre: spot(),
      axis,
      coreRadius: 0.15 * size,
      coreHalfWidth: 0.05 * size,
      radius: 0.02 * size,
    };
  });
}

/** The least over all triangles of a file in metres that is placed as it is. */
function byBruteForce(position: Float32Array, index: Uint32Array, solid: MeshSolid): number {
  let least = Number.POSITIVE_INFINITY;
  const t = new Float64Array(9);
  for (let i = 0; i < index.length; i += 3) {
    for (let k = 0; k < 3; k += 1) for (let c = 0; c < 3; c += 1) t[k * 3 + c] = position[index[i + k]! * 3 + c]!;
    least = Math.min(least, coreDistance(t, solid));
  }
  return least - solid.radius;
}

function coreDistance(t: Float64Array, solid: MeshSolid): number {
  if (solid.shape === "capsule") {
    const { from: a, to: b } = solid;
    return segmentToTriangle(a.x, a.y, a.z, b.x, b.y, b.z, t);
  }
  // Another frame than the code's own: any turn about the axis must do.
  const s = solid.axis;
  const helper = Math.abs(s.x) < 0.5 ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 };
  const u = unit({
    x: s.y * helper.z - s.z * helper.y,
    y: s.z * helper.x - s.x * helper.z,
    z: s.x * helper.y - s.y * helper.x,
  });
  const v = { x: s.y * u.z - s.z * u.y, y: s.z * u.x - s.x * u.z, z: s.x * u.y - s.y * u.x };
  const local = new Float64Array(9);
  for (let k = 0; k < 9; k += 3) {
    const d = { x: t[k]! - solid.centre.x, y: t[k + 1]! - solid.centre.y, z: t[k + 2]! - solid.centre.z };
    local[k] = u.x * d.x + u.y * d.y + u.z * d.z;
    local[k + 1] = v.x * d.x + v.y * d.y + v.z * d.z;
    local[k + 2] = s.x * d.x + s.y * d.y + s.z * d.z;
  }
  return cylinderToTriangle(solid.coreRadius, solid.coreHalfWidth, local);
}

describe("gap of a part to a mesh", () => {
  test.each([
    ["strewn triangles", strewnTriangles(3000, 0.08, 11), 2.4],
    ["few, large ones", strewnTriangles(40, 1.5, 12), 5],
    ["a bumpy sheet", bumpySheet(5000, 2, 13), 2.2],
  ])("%s: the tree finds what brute force finds", (_, { position, index }, size) => {
    const tree = makeMeshTree(position.slice(), index.slice());
    for (const solid of solids(21, 60, size)) {
      const expected = byBruteForce(position, index, solid);
      const found = gapTo(tree, AS_IT_IS, solid, 10);
      expect(found).not.toBeNull();
      // Both go over the same single-precision corners in double precision.
      expect(Math.abs(found!.gap - expected)).toBeLessThan(1e-12);
      if (found!.gap > 0) {
        const again = gapTo(tree, AS_IT_IS, solid, 10, found!.triangle);
        expect(again!.gap).toBe(found!.gap);
        expect(gapTo(tree, AS_IT_IS, solid, found!.gap * 0.999)).toBeNull();
      }
    }
  });

  test("a placed and scaled file gives the gaps of the same mesh on the car", () => {
    const { position, index } = bumpySheet(5000, 1.2, 14);
    const file = new Float32Array(position.length);
    for (let i = 0; i < position.length; i += 3) {
      const p = toFile(ON_ITS_SIDE, { x: position[i]!, y: position[i + 1]!, z: position[i + 2]! });
      file.set([p.x, p.y, p.z], i);
    }
    const tree = makeMeshTree(file, index.slice());
    for (const solid of solids(22, 40, 1.4)) {
      const expected = byBruteForce(position, index, solid);
      const found = gapTo(tree, ON_ITS_SIDE, solid, 10);
      // The file's single precision at 1000 mm: 6e-5 mm a coordinate.
      expect(Math.abs(found!.gap - expected)).toBeLessThan(5e-7);
    }
  });

  test("the spot told lies midway between the part's surface and the mesh", () => {
    const tree = makeMeshTree(Float32Array.from([-5, -5, 0, 5, -5, 0, 0, 9, 0]), Uint32Array.from([0, 1, 2]));
    const found = gapTo(
      tree,
      AS_IT_IS,
      { shape: "capsule", from: { x: 0, y: 0, z: 0.5 }, to: { x: 0.2, y: 0, z: 0.9 }, radius: 0.1 },
      1,
    );
    expect(found!.gap).toBeCloseTo(0.4, 12);
    expect(apart(found!.at, { x: 0, y: 0, z: 0.2 })).toBeLessThan(1e-12);
  });

  test("a core that is cut reads minus its radius", () => {
    const tree = makeMeshTree(Float32Array.from([-5, -5, 0, 5, -5, 0, 0, 9, 0]), Uint32Array.from([0, 1, 2]));
    const found = gapTo(
      tree,
      AS_IT_IS,
      { shape: "capsule", from: { x: 0, y: 0, z: -0.5 }, to: { x: 0, y: 0, z: 0.9 }, radius: 0.1 },
      1,
    );
    expect(found!.gap).toBeCloseTo(-0.1, 12);
  });

  test("a ray is answered on the car and in the file", () => {
    const tree = makeMeshTree(Float32Array.from([-500, 0, -500, 500, 0, -500, 0, 0, 900]), Uint32Array.from([0, 1, 2]));
    const origin = { x: 0.3, y: -0.1, z: 9 };
    const hit = hitBy(tree, ON_ITS_SIDE, origin, { x: 0, y: 0, z: -1 });
    // The file's plane y = 0 lies at the height of its origin on the car.
    expect(apart(hit!.car, { x: 0.3, y: -0.1, z: 0.4 })).toBeLessThan(1e-9);
    expect(apart(toFile(ON_ITS_SIDE, hit!.car), hit!.file)).toBeLessThan(1e-6);
  });
});

test("the moving parts of a car are told as rounded solids of their own sizes", () => {
  const reading = readCarValue(startingDocument("h-arm", "inch-pound"));
  if (!reading.ok) throw new Error("the starting document does not read");
  const made = study(reading.car);
  const position: Position = positionOf(made.corner, solveAt(made.corner, 0.03)!.state);
  const parts = meshParts(made.corner, position);
  expect(parts.map(({ id }) => id)).toEqual(["tyre", "lowerArm.front", "lowerArm.rear", "upperLink", "shaft", "shock"]);
  const [tyre, front] = parts.map(({ solid }) => solid);
  if (tyre?.shape !== "wheel" || front?.shape !== "capsule") throw new Error("tyre and tube have other shapes");
  const { wheel, linkage } = reading.car;
  expect(tyre.coreRadius + tyre.radius).toBeCloseTo(wheel.freeRadius, 12);
  expect(2 * (tyre.coreHalfWidth + tyre.radius)).toBeCloseTo(wheel.sectionWidth, 12);
  expect(tyre.centre.z).toBeCloseTo(made.corner.wheelCentre.z + 0.03, 9);
  expect(linkage.kind === "h-arm" && apart(front.from, linkage.lowerArm.innerFront)).toBeLessThan(1e-12);
});
