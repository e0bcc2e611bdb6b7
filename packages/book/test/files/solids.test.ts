import { makeCorner, type Vec3 } from "@armwright/engine";
import fc from "fast-check";
import { validateBytes } from "gltf-validator";
import { describe, expect, test } from "vitest";
import { EXAMPLES, exampleCar } from "../../../engine/test/example-documents.ts";
import { assemblySolids } from "../../src/files/assembly.ts";
import { glbBytes } from "../../src/files/glb.ts";
import { ball, bar, block, mirroredSolid, type Solid, turned, volumeOf } from "../../src/files/solid.ts";
import { stlBytes } from "../../src/files/stl.ts";

/** Every edge of a closed surface is walked once each way. */
function openEdges({ triangles }: Solid): number {
  const walked = new Set<string>();
  for (let i = 0; i < triangles.length; i += 3) {
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      const key = `${triangles[i + a]} ${triangles[i + b]}`;
      expect(walked.has(key)).toBe(false);
      walked.add(key);
    }
  }
  return [...walked].filter((key) => !walked.has(key.split(" ").reverse().join(" "))).length;
}

const ORIGIN: Vec3 = { x: 0, y: 0, z: 0 };

describe("solids are closed, turn outward, and hold their volume", () => {
  // A round of 32 sides holds a share sin(2π/32)·32/(2π) of the circle's area.
  const share = (32 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 32);

  test("bar", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
        ([x, y, z]) => {
          const to = { x: x!, y: y!, z: z! };
          const length = Math.hypot(x!, y!, z!);
          fc.pre(length > 0.01);
          const solid = bar("bar", ORIGIN, to, 0.04);
          expect(openEdges(solid)).toBe(0);
          expect(volumeOf(solid)).toBeCloseTo(share * Math.PI * 0.02 ** 2 * length, 12);
        },
      ),
      { numRuns: 50 },
    );
  });

  test("block, ball and ring", () => {
    const box = block("box", ORIGIN, { x: 1, y: 0, z: 0 }, { x: 0, y: 1, z: 0 }, { x: 1, y: 2, z: 3 });
    expect(openEdges(box)).toBe(0);
    expect(volumeOf(box)).toBeCloseTo(48, 12);
    const round = ball("ball", { x: 1, y: 2, z: 3 }, 1);
    expect(openEdges(round)).toBe(0);
    expect(volumeOf(round)).toBeGreaterThan(0.94 * ((4 / 3) * Math.PI));
    expect(volumeOf(round)).toBeLessThan((4 / 3) * Math.PI);
    const ring = turned("ring", ORIGIN, { x: 0, y: 0, z: 1 }, [
      [1, 0],
      [2, 0],
      [2, 1],
      [1, 1],
    ]);
    expect(openEdges(ring)).toBe(0);
    expect(volumeOf(ring)).toBeCloseTo(share * Math.PI * 3, 12);
    expect(volumeOf(mirroredSolid(ring))).toBeCloseTo(volumeOf(ring), 12);
  });
});

describe.each(EXAMPLES)("the assembly of %s", (name) => {
  const corner = makeCorner(exampleCar(name));
  const solids = assemblySolids(corner, corner, 0.03);

  test("every part is a closed surface that turns outward", () => {
    expect(solids.length).toBeGreaterThan(20);
    for (const solid of solids) {
      expect(openEdges(solid)).toBe(0);
      expect(volumeOf(solid)).toBeGreaterThan(0);
    }
  });

  test("its glTF passes the Khronos validator without a complaint", async () => {
    const report = await validateBytes(glbBytes(solids, name));
    expect(report.issues.messages).toEqual([]);
    expect(report.info.drawCallCount).toBe(solids.length);
  });

  test("its STL holds every triangle once", () => {
    const bytes = stlBytes(solids, name);
    const view = new DataView(bytes.buffer);
    const count = solids.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
    expect(view.getUint32(80, true)).toBe(count);
    expect(bytes.length).toBe(84 + 50 * count);
  });
});
