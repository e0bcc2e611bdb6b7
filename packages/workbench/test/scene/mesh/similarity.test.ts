import type { Vec3 } from "@armwright/engine";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { apart, turned, unit } from "../../../src/scene/kit/space.ts";
import {
  fitSimilarity,
  matrixOf,
  type PointPair,
  type Similarity,
  toCar,
  toFile,
} from "../../../src/scene/mesh/similarity.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = fc.record({ x: number(-2, 2), y: number(-2, 2), z: number(-2, 2) });

/** Files in metres, inches and millimetres, turned and shifted anyhow. */
const placed = fc
  .record({ axis: point, angle: number(-3.1, 3.1), scale: fc.constantFrom(1, 0.0254, 0.001), translation: point })
  .filter(({ axis }) => Math.hypot(axis.x, axis.y, axis.z) > 0.1)
  .map(({ axis, angle, scale, translation }): Similarity => {
    const [a, b, c] = [
      { x: 1, y: 0, z: 0 },
      { x: 0, y: 1, z: 0 },
      { x: 0, y: 0, z: 1 },
    ].map((v) => turned(v, unit(axis), angle)) as [Vec3, Vec3, Vec3];
    return { scale, rotation: [a.x, b.x, c.x, a.y, b.y, c.y, a.z, b.z, c.z], translation };
  });

const threeApart = fc.tuple(point, point, point).filter(([a, b, c]) => {
  const sides = [apart(a, b), apart(b, c), apart(c, a)].sort((p, q) => p - q) as [number, number, number];
  return sides[0] > 0.2 && sides[0] + sides[1] > sides[2] * 1.05;
});

describe("placing a mesh by points", () => {
  test("three true pairs give back the placement that made them", () => {
    fc.assert(
      fc.property(placed, threeApart, point, (truth, cars, other) => {
        const pairs = cars.map((car): PointPair => ({ car, file: toFile(truth, car) }));
        const fit = fitSimilarity(pairs);
        if (!fit.ok) throw new Error(fit.why);
        expect(Math.max(...fit.residuals)).toBeLessThan(1e-11);
        expect(Math.abs(fit.placement.scale / truth.scale - 1)).toBeLessThan(1e-11);
        expect(apart(toCar(fit.placement, toFile(truth, other)), other)).toBeLessThan(1e-10);
      }),
    );
  });

  test("with errors, no small change of the placement makes the squares less", () => {
    fc.assert(
      fc.property(placed, threeApart, fc.array(point, { minLength: 3, maxLength: 3 }), (truth, cars, errors) => {
        const pairs = cars.map((car, i): PointPair => {
          const e = errors[i]!;
          return {
            file: toFile(truth, car),
            car: { x: car.x + 0.01 * e.x, y: car.y + 0.01 * e.y, z: car.z + 0.01 * e.z },
          };
        });
        const fit = fitSimilarity(pairs);
        if (!fit.ok) throw new Error(fit.why);
        const squares = (p: Similarity): number =>
          pairs.reduce((sum, pair) => sum + apart(toCar(p, pair.file), pair.car) ** 2, 0);
        const least = squares(fit.placement);
        const { scale, rotation: r, translation } = fit.placement;
        const step = 1e-5;
        const rows = [0, 3, 6].map((i) => ({ x: r[i]!, y: r[i + 1]!, z: r[i + 2]! }));
        for (const sign of [-1, 1]) {
          // Shift keeps the squares no less; so does a turn or a scaling, each with the shift that suits it best, which is
          // why both are made about the middle of the points.
          for (const axis of ["x", "y", "z"] as const) {
            const shifted = {
              ...fit.placement,
              translation: { ...translation, [axis]: translation[axis] + sign * step },
            };
            expect(squares(shifted)).toBeGreaterThanOrEqual(least);
            const unitAxis = { x: 0, y: 0, z: 0, [axis]: 1 };
            // A turn of the file before it is placed: R · T.
            const [a, b, c] = rows.map((row) => turned(row, unitAxis, sign * step)) as [Vec3, Vec3, Vec3];
            expect(
              squares(
                aboutMiddle({ scale, rotation: [a.x, a.y, a.z, b.x, b.y, b.z, c.x, c.y, c.z], translation }, pairs),
              ),
            ).toBeGreaterThanOrEqual(least);
          }
          expect(
            squares(aboutMiddle({ ...fit.placement, scale: scale * (1 + sign * step) }, pairs)),
          ).toBeGreaterThanOrEqual(least);
        }
      }),
    );
  });

  test("the matrix says the same as the placement", () => {
    fc.assert(
      fc.property(placed, point, (truth, at) => {
        const m = matrixOf(truth);
        const viaMatrix = {
          x: m[0]! * at.x + m[4]! * at.y + m[8]! * at.z + m[12]!,
          y: m[1]! * at.x + m[5]! * at.y + m[9]! * at.z + m[13]!,
          z: m[2]! * at.x + m[6]! * at.y + m[10]! * at.z + m[14]!,
        };
        expect(apart(viaMatrix, toCar(truth, at))).toBeLessThan(1e-13);
      }),
    );
  });

  test("the rotation never mirrors, also where the points are mirrored", () => {
    const file = [
      { x: 0, y: 0, z: 0 },
      { x: 1, y: 0, z: 0 },
      { x: 0, y: 2, z: 0 },
      { x: 0, y: 0, z: 3 },
    ];
    const fit = fitSimilarity(file.map((p) => ({ file: p, car: { ...p, x: -p.x } })));
    if (!fit.ok) throw new Error(fit.why);
    const [a, b, c, d, e, f, g, h, i] = fit.placement.rotation;
    expect(a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)).toBeCloseTo(1, 12);
    expect(Math.max(...fit.residuals)).toBeGreaterThan(0.5);
  });

  test.each([
    ["too few", [0, 1]],
    ["in line", [0, 1, 2]],
    ["in line", [1, 1, 1]],
  ] as const)("refuses points that are %s", (why, xs) => {
    const pairs = xs.map((x) => ({ file: { x, y: 0, z: 0 }, car: { x: 2 * x, y: x, z: 0 } }));
    expect(fitSimilarity(pairs)).toEqual({ ok: false, why });
  });
});

/** The placement so shifted that the means of both sides meet. */
function aboutMiddle(p: Similarity, pairs: readonly PointPair[]): Similarity {
  const count = pairs.length;
  const off = { x: 0, y: 0, z: 0 };
  for (const { file, car } of pairs) {
    const at = toCar(p, file);
    off.x += (car.x - at.x) / count;
    off.y += (car.y - at.y) / count;
    off.z += (car.z - at.z) / count;
  }
  const t = p.translation;
  return { ...p, translation: { x: t.x + off.x, y: t.y + off.y, z: t.z + off.z } };
}
