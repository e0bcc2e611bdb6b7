import { distance, midpoint } from "@armwright/engine";
import { circle, gapOf, middle, spot, toward } from "../path.ts";
import type { Ink, PathStep, Primitive, Spot } from "../primitive.ts";
import { isPartHeld, mountAt, mountPoint, type Scene } from "../scene.ts";
import { area, group, line, patch } from "../sketch.ts";

/** Band with a stitched middle: straight when tight, hanging in a curve of its own length when slack. */
export function strapParts(scene: Scene): { readonly depth: number; readonly parts: Primitive } | null {
  const strap = scene.car.strap;
  if (!strap) return null;
  const { pen, view } = scene;
  const top = mountPoint(scene, strap.upper);
  const bottom = mountPoint(scene, strap.lower);
  const a = mountAt(scene, strap.upper);
  const b = mountAt(scene, strap.lower);
  const ink: Ink = isPartHeld(scene, "strap") ? "hold" : "ink";
  const middleLine = strapSpots(scene);
  const half = (scene.detail === "full" ? 4 : 1.4) * pen;
  const parts: Primitive[] = [
    area("strap", band(middleLine, half), { ink, weight: "visible", meaning: "strap" }),
    ...(scene.detail === "full"
      ? [line("strap", smooth(middleLine), { ink, weight: "thin", dash: "short", meaning: "strap" })]
      : []),
    ...[a, b].flatMap((c) => [
      area("strap", circle(c, half * 1.2), { ink, meaning: "strap" }),
      patch("strap", circle(c, half * 0.34), { fill: ink }),
    ]),
  ];
  return {
    depth: view.depth(midpoint(top, bottom)),
    parts: group("strap", parts, { meaning: "strap", label: "limit strap" }),
  };
}

/** Length of the strap as it is seen on the sheet: foreshortened as the line between its holes is. */
function hangingLength(scene: Scene): number {
  const strap = scene.car.strap;
  if (!strap) return 0;
  const a = mountAt(scene, strap.upper);
  const b = mountAt(scene, strap.lower);
  const apart3 = distance(mountPoint(scene, strap.upper), mountPoint(scene, strap.lower));
  return apart3 > 0 ? (strap.length * gapOf(a, b)) / apart3 : 0;
}

/** The strap's middle line on the sheet, from the upper hole to the lower one. */
export function strapSpots(scene: Scene): readonly Spot[] {
  const strap = scene.car.strap;
  if (!strap) return [];
  const known = hanging.get(scene);
  if (known) return known;
  const made = strapCurve(mountAt(scene, strap.upper), mountAt(scene, strap.lower), hangingLength(scene));
  hanging.set(scene, made);
  return made;
}

/** Asked for by the strap itself and by everything that keeps clear of it. */
const hanging = new WeakMap<Scene, readonly Spot[]>();

const POINTS = 24;

/**
 * Middle line of a strap of `length` between two spots (sheet units): straight where it is tight, else a parabola that
 * sags down and out, its length found by halving the sag.
 */
export function strapCurve(a: Spot, b: Spot, length: number): readonly Spot[] {
  const chord = gapOf(a, b);
  const along = (control: Spot): Spot[] =>
    Array.from({ length: POINTS + 1 }, (_, i) => {
      const t = i / POINTS;
      return toward(toward(a, control, t), toward(control, b, t), t);
    });
  if (!(length > chord * 1.0005)) return along(middle(a, b));
  const low = a.y > b.y ? a : b;
  const m = toward(middle(a, b), low, 0.25);
  // Across the strap, to the side that is lower; an upright one goes to the left, where the wheel is.
  const nx = b.y - a.y;
  const ny = a.x - b.x;
  const flip = Math.abs(ny) > 0.05 * chord ? Math.sign(ny) : Math.sign(-nx) || 1;
  const side = spot((nx / chord) * flip, (ny / chord) * flip);
  const controlAt = (sag: number): Spot => spot(m.x + side.x * sag, m.y + side.y * sag);
  let low1 = 0;
  let high = 2 * length;
  for (let i = 0; i < 40; i += 1) {
    const sag = 0.5 * (low1 + high);
    if (lengthOfParabola(a, controlAt(sag), b) < length) low1 = sag;
    else high = sag;
  }
  return along(controlAt(0.5 * (low1 + high)));
}

/** Length of the same points on the parabola, without making them: it is asked for many times a frame. */
function lengthOfParabola(a: Spot, control: Spot, b: Spot): number {
  let sum = 0;
  let x = a.x;
  let y = a.y;
  for (let i = 1; i <= POINTS; i += 1) {
    const t = i / POINTS;
    const ofA = (1 - t) * (1 - t);
    const ofControl = 2 * t * (1 - t);
    const ofB = t * t;
    const nextX = ofA * a.x + ofControl * control.x + ofB * b.x;
    const nextY = ofA * a.y + ofControl * control.y + ofB * b.y;
    sum += Math.sqrt((nextX - x) ** 2 + (nextY - y) ** 2);
    x = nextX;
    y = nextY;
  }
  return sum;
}

export function lengthOf(spots: readonly Spot[]): number {
  let sum = 0;
  for (let i = 1; i < spots.length; i += 1) sum += gapOf(spots[i - 1]!, spots[i]!);
  return sum;
}

const smooth = (spots: readonly Spot[]): PathStep[] =>
  spots.map((at, index) => ({ to: index === 0 ? "move" : "line", at }));

function band(spots: readonly Spot[], half: number): PathStep[] {
  const sides = [-1, 1].map((way) =>
    spots.map((p, i) => {
      const before = spots[Math.max(0, i - 1)]!;
      const after = spots[Math.min(spots.length - 1, i + 1)]!;
      const size = gapOf(before, after);
      const nx = size > 0 ? -(after.y - before.y) / size : 0;
      const ny = size > 0 ? (after.x - before.x) / size : 1;
      return spot(p.x + nx * half * way, p.y + ny * half * way);
    }),
  );
  return [...smooth([...sides[0]!, ...sides[1]!.reverse()]), { to: "close" }];
}
