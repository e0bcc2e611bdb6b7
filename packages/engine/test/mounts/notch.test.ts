import { describe, expect, it } from "vitest";
import type { KeepOut } from "../../src/car/car.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { stations } from "../../src/cycle/cycle.ts";
import { placeOn, positionOf } from "../../src/cycle/position.ts";
import {
  addScaled,
  between,
  cross,
  dot,
  FORWARD,
  LEFT,
  subtract,
  unit,
  type Vec3,
  vec,
} from "../../src/geometry/vec3.ts";
import { findMounts } from "../../src/mounts/find-mounts.ts";
import { notchFor } from "../../src/mounts/notch.ts";
import { shockRadius } from "../../src/mounts/request.ts";
import { makeSearch } from "../../src/mounts/search.ts";
import { exampleCar, smallRequest } from "./request-for.ts";

/** What the bounds between stations and places along the shock may add, m. */
const ADDED = 0.0015;
/** Between the points that are tried, m. */
const GRAIN = 0.001;

/** A tank and a wall put in the way of a place that fits without them; the tank straight, turned, and in a corner. */
const turned = unit(vec(1, 0.4, 0.1));
const KEEP_OUTS: readonly (readonly [string, (middle: Vec3) => KeepOut])[] = [
  ["a tank from inboard", (m) => box(addScaled(m, LEFT, -0.2), FORWARD, LEFT, vec(0.2, 0.17, 0.1))],
  [
    "a turned tank",
    (m) => box(addScaled(m, LEFT, -0.2), turned, unit(cross(vec(0, 0, 1), turned)), vec(0.2, 0.17, 0.15)),
  ],
  [
    "a tank's corner",
    (m) => box(addScaled(addScaled(m, LEFT, -0.2), FORWARD, 0.12), FORWARD, LEFT, vec(0.1, 0.18, 0.1)),
  ],
  [
    "a wall",
    (m) => ({ shape: "half-space", name: "it", clearance: 0.02, point: addScaled(m, LEFT, -0.03), normal: LEFT }),
  ],
];

function box(centre: Vec3, axisX: Vec3, axisY: Vec3, half: Vec3): KeepOut {
  return { shape: "box", name: "it", clearance: 0.02, centre, axisX, axisY, half };
}

describe.each(KEEP_OUTS)("a notch for %s", (_, keepOutAt) => {
  const free = smallRequest("saltbush");
  const best = findMounts(makeCorner({ ...exampleCar("saltbush"), keepOuts: [] }), { ...free.request, shortList: 1 })
    .best[0]!;
  const keepOut = keepOutAt(between(best.upper, best.lower.point, 0.4));
  const corner = makeCorner({ ...exampleCar("saltbush"), keepOuts: [keepOut] });
  const search = makeSearch(corner, free.request);
  const notch = notchFor(search, best, keepOut)!;
  const outline = notch.outline!;
  const axes = [notch.axisX, notch.axisY, cross(notch.axisX, notch.axisY)];
  const samples = sweptPoints(corner, best, keepOut, free.request.travel).filter((point) => isInside(keepOut, point));

  it("holds every point of the shock's sweep with its clearance that lies in the keep-out", () => {
    expect(samples.length).toBeGreaterThan(1000);
    const [from, to] = [notch.from, notch.to].map(({ x, y, z }) => [x, y, z]);
    let most = 0;
    for (const point of samples) {
      const at = axes.map((axis) => dot(subtract(point, notch.origin), axis));
      at.forEach((value, n) => {
        most = Math.max(most, from![n]! - value, value - to![n]!);
      });
      const flat = subtract(point, outline.origin);
      const [x, y] = [dot(flat, outline.across), dot(flat, outline.up)];
      outline.points.forEach((a, i) => {
        const b = outline.points[(i + 1) % outline.points.length]!;
        const size = Math.hypot(b.x - a.x, b.y - a.y);
        most = Math.max(most, ((y - a.y) * (b.x - a.x) - (x - a.x) * (b.y - a.y)) / -size);
      });
      most = Math.max(most, -dot(flat, outline.normal) - outline.depth);
    }
    expect(most).toBeLessThan(1e-9);
  });

  it("is not larger than that by more than the bounds add", () => {
    const isSwept = sweep(corner, best, keepOut, free.request.travel);
    /** Whether a rectangle of points about `middle` holds one that is swept and lies in the keep-out. */
    const anySwept = (middle: Vec3, a: Vec3, halfA: number, b: Vec3, halfB: number): boolean => {
      for (let s = -halfA; s <= halfA; s += GRAIN)
        for (let t = -halfB; t <= halfB; t += GRAIN) {
          const point = addScaled(addScaled(middle, a, s), b, t);
          if (isInside(keepOut, point) && isSwept(point)) return true;
        }
      return false;
    };
    const { from, to } = notch;
    const [low, high] = [from, to].map(({ x, y, z }) => [x, y, z]);
    if (keepOut.shape === "box")
      axes.forEach((_axis, n) => {
        const middles = axes.map((_each, m) => 0.5 * (low![m]! + high![m]!));
        for (const at of [low![n]! + ADDED, high![n]! - ADDED]) {
          const point = axes.reduce((sum, each, m) => addScaled(sum, each, m === n ? at : middles[m]!), notch.origin);
          const [i, j] = [(n + 1) % 3, (n + 2) % 3];
          const half = (m: number): number => 0.5 * (high![m]! - low![m]!);
          expect(anySwept(point, axes[i]!, half(i), axes[j]!, half(j))).toBe(true);
        }
      });
    const skin = addScaled(outline.origin, outline.normal, -1e-6);
    const onFace = (x: number, y: number): Vec3 => addScaled(addScaled(skin, outline.across, x), outline.up, y);
    const middle = outline.points.reduce((sum, p) => ({ x: sum.x + p.x, y: sum.y + p.y }), { x: 0, y: 0 });
    const count = outline.points.length;
    for (let i = 0; i < 32; i += 1) {
      const [c, s] = [Math.cos((i * Math.PI) / 16), Math.sin((i * Math.PI) / 16)];
      const reach = Math.max(...outline.points.map(({ x, y }) => c * x + s * y)) - ADDED;
      const back = reach - (c * middle.x + s * middle.y) / count;
      const along = addScaled(addScaled(vec(0, 0, 0), outline.across, -s), outline.up, c);
      const at = onFace(middle.x / count + back * c, middle.y / count + back * s);
      // Seen square to the face: what lies behind the skin counts too.
      const depth = outline.depth / 2;
      const isReached =
        anySwept(at, along, 0.5, outline.normal, 0) ||
        anySwept(addScaled(at, outline.normal, -depth), along, 0.5, outline.normal, depth);
      expect(isReached).toBe(true);
    }
    const bottom = addScaled(onFace(middle.x / count, middle.y / count), outline.normal, ADDED - outline.depth);
    expect(anySwept(bottom, outline.across, 0.3, outline.up, 0.4)).toBe(true);
  });

  it("has an outline that turns one way round, seen from outside", () => {
    expect(dot(cross(outline.across, outline.up), outline.normal)).toBeCloseTo(1, 12);
    const { points } = outline;
    points.forEach((a, i) => {
      const b = points[(i + 1) % points.length]!;
      const c = points[(i + 2) % points.length]!;
      expect((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)).toBeGreaterThan(-1e-12);
    });
  });
});

it("is none where the sweep keeps clear", () => {
  const { corner, request } = smallRequest("saltbush");
  const { best, search } = findMounts(corner, request);
  for (const each of corner.car.keepOuts) expect(notchFor(search, best[0]!, each)).toBeNull();
});

function isInside(keepOut: KeepOut, point: Vec3): boolean {
  if (keepOut.shape === "half-space") return dot(subtract(point, keepOut.point), keepOut.normal) < 0;
  if (keepOut.shape === "tube") return false;
  const { centre, axisX, axisY, half } = keepOut;
  const from = subtract(point, centre);
  const z = dot(from, cross(axisX, axisY));
  return Math.abs(dot(from, axisX)) <= half.x && Math.abs(dot(from, axisY)) <= half.y && Math.abs(z) <= half.z;
}

/** Skin and inside of the shock with its clearance, at many travels: rounds about many places of its middle line. */
function sweptPoints(
  corner: ReturnType<typeof makeCorner>,
  { shock, upper, lower }: ReturnType<typeof findMounts>["best"][number],
  { clearance }: KeepOut,
  { droop, bump }: { readonly droop: number; readonly bump: number },
): readonly Vec3[] {
  const radius = shockRadius(shock) + clearance;
  const around = Array.from({ length: 240 }, (_, i) => {
    const z = 1 - (2 * i + 1) / 240;
    const turn = i * Math.PI * (3 - Math.sqrt(5));
    const across = Math.sqrt(1 - z * z);
    return vec(across * Math.cos(turn), across * Math.sin(turn), z);
  });
  return [...stations(droop, bump, 31)].flatMap((travel) => {
    const position = positionOf(corner, solveAt(corner, travel)!.state);
    const foot = placeOn(position, lower.point, lower.on);
    return Array.from({ length: 41 }, (_, i) => between(upper, foot, i / 40)).flatMap((at) =>
      around.flatMap((direction) => [addScaled(at, direction, radius), addScaled(at, direction, 0.7 * radius)]),
    );
  });
}

/** Whether a point lies in the shock's sweep with its clearance: distance to the middle line at many travels. */
function sweep(
  corner: ReturnType<typeof makeCorner>,
  { shock, upper, lower }: ReturnType<typeof findMounts>["best"][number],
  { clearance }: KeepOut,
  { droop, bump }: { readonly droop: number; readonly bump: number },
): (point: Vec3) => boolean {
  const radius = shockRadius(shock) + clearance;
  const feet = [...stations(droop, bump, 81)].map((travel) => {
    const foot = placeOn(positionOf(corner, solveAt(corner, travel)!.state), lower.point, lower.on);
    return { way: subtract(foot, upper), size: dot(subtract(foot, upper), subtract(foot, upper)) };
  });
  return (point) => {
    const from = subtract(point, upper);
    return feet.some(({ way, size }) => {
      const off = addScaled(from, way, -Math.min(1, Math.max(0, dot(from, way) / size)));
      return dot(off, off) < radius * radius;
    });
  };
}
