import { describe, expect, test } from "vitest";
import { cylinderToTriangle, nearest, segmentToTriangle } from "../../src/clearance/core-triangle.ts";

// Two convex sets are as near as a pair of their points says if and only if the planes through the two points, square to the
// line between them, keep the sets apart: so each answer is proved by itself, by the sets' support, not by another search.

/** Rounding of coordinates of about 2 units. */
const EPS = 1e-9;

type V = readonly [number, number, number];

const minus = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const corners = (t: Float64Array): readonly V[] => [0, 3, 6].map((i): V => [t[i]!, t[i + 1]!, t[i + 2]!]);

function triangles(seed: number): Iterable<Float64Array> {
  const next = stream(seed);
  const list: Float64Array[] = [];
  for (let i = 0; i < 4000; i += 1) {
    const size = [0.02, 0.4, 3, 12][i % 4]!;
    const at = [4 * next() - 2, 4 * next() - 2, 4 * next() - 2];
    const t = Float64Array.from({ length: 9 }, (_, k) => at[k % 3]! + size * (next() - 0.5));
    // Every seventh level, upright or flat against the axis: where nearest places are not single.
    if (i % 7 === 0) t[2] = t[5] = t[8]!;
    if (i % 7 === 1) t[0] = t[3] = t[6]!;
    list.push(t);
  }
  return list;
}

/** Proves that the triangle's point a and the other set's point b are nearest; `support`: least of n · y over that set. */
function prove(t: Float64Array, distance: number, holds: (p: V) => boolean, support: (n: V) => number): void {
  const a: V = [nearest[0]!, nearest[1]!, nearest[2]!];
  const b: V = [nearest[3]!, nearest[4]!, nearest[5]!];
  expect(holds(b)).toBe(true);
  expect(outsideTriangle(a, t)).toBeLessThan(EPS);
  const way = minus(b, a);
  expect(Math.abs(Math.sqrt(dot(way, way)) - distance)).toBeLessThan(EPS);
  if (distance < 1e-6) return;
  const n: V = [way[0] / distance, way[1] / distance, way[2] / distance];
  for (const corner of corners(t)) expect(dot(n, minus(corner, a))).toBeLessThan(EPS * (1 + 1 / distance));
  expect(support(n)).toBeGreaterThan(dot(n, b) - EPS * (1 + 1 / distance));
}

/**
 * How far a point is from being a mean of the corners with weights none of which is negative. In a sliver the weights
 * themselves are lost in rounding, by one over the sine of its angle squared: they count for as much less.
 */
function outsideTriangle(p: V, t: Float64Array): number {
  const [a, b, c] = corners(t) as [V, V, V];
  const u = minus(b, a);
  const v = minus(c, a);
  const w = minus(p, a);
  const [uu, uv, vv, wu, wv] = [dot(u, u), dot(u, v), dot(v, v), dot(w, u), dot(w, v)];
  const d = uu * vv - uv * uv;
  const s = (vv * wu - uv * wv) / d;
  const r = (uu * wv - uv * wu) / d;
  const off = minus(w, [u[0] * s + v[0] * r, u[1] * s + v[1] * r, u[2] * s + v[2] * r]);
  const size = Math.sqrt(Math.max(uu, vv));
  const sineSquared = d / (uu * vv);
  return Math.max(Math.sqrt(dot(off, off)), Math.max(-s, -r, s + r - 1) * size * Math.min(1, sineSquared));
}

describe("triangle to the core of a part", () => {
  test("segment: every answer proves itself", () => {
    const next = stream(7);
    let through = 0;
    for (const t of triangles(1)) {
      const p: V = [3 * next() - 1.5, 3 * next() - 1.5, 3 * next() - 1.5];
      const q: V = next() < 0.05 ? p : [3 * next() - 1.5, 3 * next() - 1.5, 3 * next() - 1.5];
      const distance = segmentToTriangle(...p, ...q, t);
      if (distance === 0) through += 1;
      const along = minus(q, p);
      const holds = (b: V): boolean => {
        const w = minus(b, p);
        const s = dot(along, along) > 0 ? dot(w, along) / dot(along, along) : 0;
        const off = minus(w, [along[0] * s, along[1] * s, along[2] * s]);
        return Math.sqrt(dot(off, off)) < EPS && s > -EPS && s < 1 + EPS;
      };
      prove(t, distance, holds, (n) => Math.min(dot(n, p), dot(n, q)));
    }
    expect(through).toBeGreaterThan(50);
  });

  test("cylinder: every answer proves itself", () => {
    let meets = 0;
    for (const t of triangles(2)) {
      const [radius, half] = [0.9, 0.35];
      const distance = cylinderToTriangle(radius, half, t);
      if (distance === 0) meets += 1;
      const holds = ([x, y, z]: V): boolean => Math.hypot(x, y) < radius + EPS && Math.abs(z) < half + EPS;
      prove(t, distance, holds, ([x, y, z]) => -radius * Math.hypot(x, y) - half * Math.abs(z));
    }
    expect(meets).toBeGreaterThan(50);
  });

  test("a triangle that a cylinder goes through without touching an edge is met", () => {
    const wide = Float64Array.from([-9, -9, 0.1, 9, -9, 0.1, 0, 12, 0.1]);
    expect(cylinderToTriangle(0.9, 0.35, wide)).toBe(0);
    expect(segmentToTriangle(0, 0, -1, 0, 0, 1, wide)).toBe(0);
  });
});

/** A repeatable stream of numbers in 0…1 (mulberry32, public domain, as remembered). */
function stream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
