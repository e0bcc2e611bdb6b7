import type { PathStep, Spot } from "./primitive.ts";

export const spot = (x: number, y: number): Spot => ({ x, y });
export const shift = (a: Spot, dx: number, dy: number): Spot => ({ x: a.x + dx, y: a.y + dy });
export const toward = (a: Spot, b: Spot, fraction: number): Spot => ({
  x: a.x + (b.x - a.x) * fraction,
  y: a.y + (b.y - a.y) * fraction,
});
export const gapOf = (a: Spot, b: Spot): number => Math.hypot(b.x - a.x, b.y - a.y);
export const middle = (a: Spot, b: Spot): Spot => toward(a, b, 0.5);

/** Unit direction from a to b on the sheet; to the right where they coincide. */
export function headingOf(a: Spot, b: Spot): Spot {
  const size = gapOf(a, b);
  return size > 1e-9 ? { x: (b.x - a.x) / size, y: (b.y - a.y) / size } : { x: 1, y: 0 };
}

/** `a` moved by `forward` along the heading and `side` to its right (clockwise on the sheet). */
export const offset = (a: Spot, heading: Spot, forward: number, side: number): Spot => ({
  x: a.x + heading.x * forward - heading.y * side,
  y: a.y + heading.y * forward + heading.x * side,
});

export function polyline(spots: readonly Spot[], closed = false): PathStep[] {
  const steps: PathStep[] = spots.map((at, index) => ({ to: index === 0 ? "move" : "line", at }));
  if (closed) steps.push({ to: "close" });
  return steps;
}

export const rectangle = (x: number, y: number, width: number, height: number): PathStep[] =>
  polyline([spot(x, y), spot(x + width, y), spot(x + width, y + height), spot(x, y + height)], true);

/** Handle length of a cubic Bézier that stands for a quarter circle, as a share of the radius: 4/3·(√2 − 1). */
const QUARTER = 0.5522847498;

export function circle(c: Spot, r: number): PathStep[] {
  const k = r * QUARTER;
  const to = (x: number, y: number, x1: number, y1: number, x2: number, y2: number): PathStep => ({
    to: "curve",
    c1: shift(c, x1, y1),
    c2: shift(c, x2, y2),
    at: shift(c, x, y),
  });
  return [
    { to: "move", at: shift(c, r, 0) },
    to(0, r, r, k, k, r),
    to(-r, 0, -k, r, -r, k),
    to(0, -r, -r, -k, -k, -r),
    to(r, 0, k, -r, r, -k),
    { to: "close" },
  ];
}

/** A bar from a to b, `half` to either side, its ends square. */
export function bar(a: Spot, b: Spot, half: number, halfAtB = half): PathStep[] {
  const h = headingOf(a, b);
  return polyline(
    [offset(a, h, 0, -half), offset(b, h, 0, -halfAtB), offset(b, h, 0, halfAtB), offset(a, h, 0, half)],
    true,
  );
}

/** A bar from a to b with round ends, `half` to either side and past both ends. */
export function rounded(a: Spot, b: Spot, half: number): PathStep[] {
  const h = headingOf(a, b);
  const k = half * QUARTER;
  const turn = (end: Spot, way: 1 | -1): PathStep[] => [
    {
      to: "curve",
      c1: offset(end, h, way * k, -way * half),
      c2: offset(end, h, way * half, -way * k),
      at: offset(end, h, way * half, 0),
    },
    {
      to: "curve",
      c1: offset(end, h, way * half, way * k),
      c2: offset(end, h, way * k, way * half),
      at: offset(end, h, 0, way * half),
    },
  ];
  return [
    { to: "move", at: offset(a, h, 0, -half) },
    { to: "line", at: offset(b, h, 0, -half) },
    ...turn(b, 1),
    { to: "line", at: offset(a, h, 0, half) },
    ...turn(a, -1),
    { to: "close" },
  ];
}

/** Smallest convex outline round the spots (Andrew's monotone chain), in order. */
export function hull(spots: readonly Spot[]): Spot[] {
  const sorted = [...spots].sort((a, b) => a.x - b.x || a.y - b.y);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Spot[]): Spot[] => {
    const out: Spot[] = [];
    for (const p of list) {
      while (out.length >= 2 && turnOf(out[out.length - 2]!, out[out.length - 1]!, p) <= 0) out.pop();
      out.push(p);
    }
    out.pop();
    return out;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turnOf = (a: Spot, b: Spot, c: Spot): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** Spots on a circle, for a hull. */
export const ring = (c: Spot, r: number, count = 20): Spot[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (i / count) * 2 * Math.PI;
    return shift(c, r * Math.cos(angle), r * Math.sin(angle));
  });

/** The part of a convex outline on the side of a line that `normal` points away from (Sutherland and Hodgman). */
export function cutBehind(outline: readonly Spot[], at: Spot, normal: Spot): Spot[] {
  const side = (p: Spot): number => (p.x - at.x) * normal.x + (p.y - at.y) * normal.y;
  if (outline.every((p) => side(p) <= 0)) return [...outline];
  return outline.flatMap((p, index) => {
    const next = outline[(index + 1) % outline.length]!;
    const a = side(p);
    const b = side(next);
    const kept = a <= 0 ? [p] : [];
    return a < 0 !== b < 0 && a !== b ? [...kept, toward(p, next, a / (a - b))] : kept;
  });
}
