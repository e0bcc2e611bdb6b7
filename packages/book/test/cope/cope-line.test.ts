import { addScaled, cross, dot, lengthOf, subtract, unitVector, type Vec3 } from "@armwright/engine";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CopedEnd, copeLine, usualSeam } from "../../src/cope/cope-line.ts";

const ORIGIN: Vec3 = { x: 0, y: 0, z: 0 };

describe("a tube square onto another, axes meeting", () => {
  const end: CopedEnd = {
    origin: ORIGIN,
    outward: { x: 0, y: 0, z: -1 },
    seam: { x: 1, y: 0, z: 0 },
    outerRadius: 0.75,
    wall: 0.12,
    onto: [{ point: ORIGIN, direction: { x: 1, y: 0, z: 0 }, radius: 0.875 }],
  };

  test("closed form of two cylinders: s = −√(R² − ρ² sin²φ), the inside of the wall deciding", () => {
    for (const { angle, cut, meets } of copeLine(end)) {
      // The inside lies nearer the crown and so meets first.
      expect(cut).toBeCloseTo(-Math.sqrt(0.875 ** 2 - (0.63 * Math.sin(angle)) ** 2), 12);
      expect(meets).toBe(0);
    }
  });

  test("its ends meet, and it is symmetric", () => {
    const line = copeLine(end);
    expect(line.at(-1)!.cut).toBeCloseTo(line[0]!.cut!, 12);
    expect(line[90]!.cut).toBeCloseTo(line[270]!.cut!, 12);
  });
});

test("at 45 degrees the closed form holds: s = −(ρ cosφ cosβ + √(R² − ρ² sin²φ)) ÷ sinβ, the least over the wall", () => {
  const beta = Math.PI / 4;
  // The branch comes down at `beta` to the header's axis (x).
  const outward = { x: -Math.cos(beta), y: 0, z: -Math.sin(beta) };
  const seam = unitVector({ x: Math.sin(beta), y: 0, z: -Math.cos(beta) });
  const line = copeLine({
    origin: ORIGIN,
    outward,
    seam,
    outerRadius: 0.6,
    wall: 0.1,
    onto: [{ point: ORIGIN, direction: { x: 1, y: 0, z: 0 }, radius: 0.8 }],
  });
  for (const { angle, cut } of line) {
    const closed = (rho: number): number => {
      // Height of the line over the header's axis plane falls by sinβ a unit of s.
      const up = -rho * Math.cos(angle) * Math.cos(beta);
      return (up - Math.sqrt(0.8 ** 2 - (rho * Math.sin(angle)) ** 2)) / Math.sin(beta);
    };
    const least = Math.min(...Array.from({ length: 2001 }, (_, i) => closed(0.5 + (0.1 * i) / 2000)));
    expect(cut).toBeCloseTo(least, 6);
    expect(cut!).toBeLessThanOrEqual(least + 1e-12);
  }
});

const direction = fc
  .tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }))
  .map(([z, turn]): Vec3 => {
    const r = Math.sqrt(1 - z * z);
    return { x: r * Math.cos(turn), y: r * Math.sin(turn), z };
  });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("no part of the wall reaches into any tube that it sits on, and somewhere it touches", () => {
  fc.assert(
    fc.property(
      direction,
      fc.array(fc.tuple(direction, direction, number(0, 0.02), number(0.01, 0.04)), { minLength: 1, maxLength: 3 }),
      number(0.01, 0.03),
      (outward, tubes, outerRadius) => {
        fc.pre(tubes.every(([dir]) => lengthOf(cross(outward, dir)) > Math.sin(Math.PI / 60)));
        const onto = tubes.map(([dir, off, distance, radius]) => ({
          direction: dir,
          point: addScaled(ORIGIN, off, distance),
          radius,
        }));
        const wall = outerRadius * 0.15;
        const seam = usualSeam(outward, onto[0]!.direction);
        const side = cross(outward, seam);
        for (const { angle, cut, meets } of copeLine({ origin: ORIGIN, outward, seam, outerRadius, wall, onto }, 24)) {
          if (cut === null) continue;
          const radial = addScaled(addScaled(ORIGIN, seam, Math.cos(angle)), side, Math.sin(angle));
          let nearest = Number.POSITIVE_INFINITY;
          for (let i = 0; i <= 40; i += 1) {
            const edge = addScaled(addScaled(ORIGIN, radial, outerRadius - wall + (wall * i) / 40), outward, cut);
            onto.forEach((tube, which) => {
              const w = subtract(edge, tube.point);
              const gap = lengthOf(addScaled(w, tube.direction, -dot(w, tube.direction))) - tube.radius;
              expect(gap).toBeGreaterThan(-1e-7);
              if (which === meets) nearest = Math.min(nearest, gap);
            });
          }
          // 40 places through the wall: the touching one is at most half a place away.
          expect(nearest).toBeLessThan(wall / 40);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test("a tube that passes beside the other is not cut by it", () => {
  const line = copeLine({
    origin: ORIGIN,
    outward: { x: 0, y: 0, z: -1 },
    seam: { x: 1, y: 0, z: 0 },
    outerRadius: 0.5,
    wall: 0.1,
    onto: [{ point: { x: 0, y: 0.9, z: 0 }, direction: { x: 1, y: 0, z: 0 }, radius: 0.5 }],
  });
  expect(line.some(({ cut }) => cut === null)).toBe(true);
  expect(line.some(({ cut }) => cut !== null)).toBe(true);
});
