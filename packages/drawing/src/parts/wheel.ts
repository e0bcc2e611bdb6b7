import { addScaled, cross, type Position, UP, type Vec3, type Wheel } from "@armwright/engine";
import { circle, hull, polyline, ring } from "../path.ts";
import type { PathStep, Primitive, Spot } from "../primitive.ts";
import type { Scene } from "../scene.ts";
import { area, line, patch, stroke } from "../sketch.ts";
import { squareOr, unitOr } from "../space.ts";
import type { View } from "../view.ts";

const LAYER = "wheel";
const INCH = 0.0254;

/** Takes a place in the wheel's own plane of section (m outboard of the centre plane, m above the spin axis) to the sheet. */
type InSection = (outboard: number, up: number) => Spot;

function inSection(view: View, { wheelCentre, spinAxis }: Position): InSection {
  const up = squareOr(UP, spinAxis, UP);
  return (a, r) => view.at(addScaled(addScaled(wheelCentre, spinAxis, a), up, r));
}

/** The wheel cut on the axle plane: tyre hatched, rim and centre solid, tread joined by two thin lines. */
export function wheelSection(scene: Scene): Primitive[] {
  const { wheel } = scene.car;
  const p = inSection(scene.view, scene.position);
  const half = wheel.sectionWidth / 2;
  const join = wheel.freeRadius - wheel.shoulderRadius;
  const low = squashed(wheel, join);
  const tyre = (side: 1 | -1): Primitive[] => {
    const squash = side === 1 ? (r: number) => r : (r: number) => -squashed(wheel, r);
    return [
      area(
        LAYER,
        tyrePath(wheel, (a, r) => p(a, squash(r))),
        { hatch: "cut", weight: "outline", meaning: "tyre" },
      ),
      ...[-0.38, 0, 0.38].map((share) =>
        stroke(
          LAYER,
          p(share * half, squash(wheel.freeRadius)),
          p(share * half, squash(wheel.freeRadius - 0.6 * INCH)),
        ),
      ),
      ...rimPaths(wheel, side).map((path) =>
        line(LAYER, polyline(path.map(([a, r]) => p(a, r))), { weight: "rim", meaning: "rim" }),
      ),
    ];
  };
  return [
    patch(LAYER, polyline([p(-half, join), p(half, join), p(half, -low), p(-half, -low)], true)),
    ...[half, -half].map((a) => stroke(LAYER, p(a, join), p(a, -low), { weight: "thin" })),
    ...tyre(1),
    ...tyre(-1),
  ];
}

/** Below the axle the tyre carries the car: from the rim outward it is squeezed to its loaded radius. */
function squashed(wheel: Wheel, r: number): number {
  const rim = wheel.rimDiameter / 2;
  if (r <= rim) return r;
  return rim + ((r - rim) * (wheel.loadedRadius - rim)) / (wheel.freeRadius - rim);
}

/** Tyre above the axle: outside from bead to bead, then inside back. Widths and radii are the car's, walls are usual ones. */
function tyrePath(wheel: Wheel, p: InSection): PathStep[] {
  const half = wheel.sectionWidth / 2;
  const rim = wheel.rimDiameter / 2;
  const height = wheel.freeRadius - rim;
  const wall = Math.min(0.11 * height, 0.18 * half);
  const tread = 0.155 * height;
  const bead = Math.min(wheel.rimWidth / 2, half * 0.92);
  const beadIn = bead - Math.min(0.8 * INCH, bead * 0.4);
  const outside = contour(half, wheel.freeRadius, wheel.shoulderRadius, bead, rim);
  const inside = contour(
    half - wall,
    wheel.freeRadius - tread,
    Math.max(wheel.shoulderRadius - 0.5 * (wall + tread), 0.25 * wheel.shoulderRadius),
    beadIn,
    rim + 0.09 * height,
  );
  const back = [...inside].reverse().map(([a, b, c, d]): Curve => [d, c, b, a]);
  const at = ([a, r]: Pair): Spot => p(a, r);
  const steps = (curves: readonly Curve[]): PathStep[] =>
    curves.map(([, b, c, d]) => ({ to: "curve", c1: at(b), c2: at(c), at: at(d) }));
  return [
    { to: "move", at: at(outside[0]![0]) },
    ...steps(outside),
    { to: "line", at: p(beadIn, rim) },
    { to: "line", at: at(back[0]![0]) },
    ...steps(back),
    { to: "line", at: p(-beadIn, rim) },
    { to: "close" },
  ];
}

type Pair = readonly [number, number];
type Curve = readonly [Pair, Pair, Pair, Pair];

/** Bead, sidewall, shoulder, crown, and the same down the other side. */
function contour(half: number, top: number, shoulder: number, bead: number, foot: number): Curve[] {
  const round = Math.max(0, Math.min(shoulder, half, (top - foot) * 0.6));
  const rise = top - round - foot;
  const k = round * 0.4477152502;
  const rising = (side: 1 | -1): Curve[] => [
    [
      [side * bead, foot],
      [side * (bead + 0.3 * (half - bead)), foot + 0.3 * rise],
      [side * half, top - round - 0.45 * rise],
      [side * half, top - round],
    ],
    [
      [side * half, top - round],
      [side * half, top - k],
      [side * (half - k), top],
      [side * (half - round), top],
    ],
  ];
  const flat: Curve = [
    [-(half - round), top],
    [-(half - round) / 3, top],
    [(half - round) / 3, top],
    [half - round, top],
  ];
  return [
    ...rising(-1),
    flat,
    ...rising(1)
      .reverse()
      .map(([a, b, c, d]): Curve => [d, c, b, a]),
  ];
}

/** Rim above (1) or below (−1) the axle: flanges, bead seats, well; and the centre from the well to the hub face. */
function rimPaths(wheel: Wheel, side: 1 | -1): Pair[][] {
  const seat = wheel.rimDiameter / 2;
  const half = wheel.rimWidth / 2;
  const flange = half + 0.25 * INCH;
  const lip = seat + 0.65 * INCH;
  const well = Math.max(wheel.rimInsideRadius + 0.1 * INCH, seat - 1.2 * INCH);
  const step = 0.5 * INCH;
  const hub = Math.min(2.7 * INCH, well * 0.5);
  const barrel: Pair[] = [
    [flange + 0.2 * INCH, lip],
    [flange, seat],
    [half * 0.72, seat - 0.1 * INCH],
    [half * 0.72 - step, well],
    [-half * 0.1, well],
    [-half * 0.1 - step, seat - 0.2 * INCH],
    [-flange, seat],
    [-flange - 0.2 * INCH, lip],
  ];
  const from = half * 0.2;
  const disc: Pair[] = [
    [from, well],
    [from + (wheel.offset - from) * 0.6, hub + (well - hub) * 0.38],
    [wheel.offset, hub],
    [wheel.offset, side === 1 ? 0.3 * hub : 0.3 * hub],
  ];
  return [barrel, disc].map((path) => path.map(([a, r]): Pair => [a, side * r]));
}

/** The tyre's outline with nothing cut, as seen across the spin axis: for ghosts and the view from above. */
export function tyreOutline(wheel: Wheel, position: Position, view: View): PathStep[] {
  const up = sectionUp(position, view);
  const p: InSection = (a, r) => view.at(addScaled(addScaled(position.wheelCentre, position.spinAxis, a), up, r));
  const half = wheel.sectionWidth / 2;
  const R = wheel.freeRadius;
  const s = Math.min(wheel.shoulderRadius, half);
  const k = s * 0.4477152502;
  const corner = (a: 1 | -1, r: 1 | -1, flip: boolean): PathStep[] => {
    const one = [p(a * half, r * (R - s)), p(a * half, r * (R - k))] as const;
    const two = [p(a * (half - s), r * R), p(a * (half - k), r * R)] as const;
    const [from, to] = flip ? [two, one] : [one, two];
    return [
      { to: "line", at: from[0] },
      { to: "curve", c1: from[1], c2: to[1], at: to[0] },
    ];
  };
  const steps = [...corner(1, 1, false), ...corner(-1, 1, true), ...corner(-1, -1, false), ...corner(1, -1, true)];
  return [{ to: "move", at: p(half, 0) }, ...steps, { to: "close" }];
}

/** Direction in the wheel plane in which its edge is seen: square to the spin axis and to the line of sight. */
const sectionUp = ({ spinAxis }: Position, view: View): Vec3 => unitOr(cross(spinAxis, view.away), UP);

/** The wheel seen flat on: tyre, rim and hub as rings. */
export function wheelFace(scene: Scene): Primitive[] {
  const { wheel } = scene.car;
  const { position, view, scale } = scene;
  const disc = (r: number, a: number): Spot[] => {
    const up = squareOr(UP, position.spinAxis, UP);
    const side = cross(position.spinAxis, up);
    const centre = addScaled(position.wheelCentre, position.spinAxis, a);
    return Array.from({ length: 48 }, (_, i) => {
      const angle = (i / 48) * 2 * Math.PI;
      return view.at(addScaled(addScaled(centre, up, r * Math.cos(angle)), side, r * Math.sin(angle)));
    });
  };
  const half = wheel.sectionWidth / 2;
  const whole = hull([...disc(wheel.freeRadius - wheel.shoulderRadius, half), ...disc(wheel.freeRadius, 0)]);
  return [
    area(LAYER, polyline(whole, true), { weight: "visible", meaning: "tyre" }),
    area(LAYER, polyline(disc(wheel.rimDiameter / 2 + 0.6 * INCH, half), true), { weight: "visible", meaning: "rim" }),
    area(LAYER, polyline(disc(wheel.rimInsideRadius, half), true), { weight: "thin", fill: "paper" }),
    ...(scale > 0 ? [area(LAYER, circle(view.at(position.wheelCentre), 1.2 * INCH * scale), { weight: "thin" })] : []),
  ];
}

/** Spots round the tyre, for finding room. */
export const tyreSpots = (scene: Scene): Spot[] => {
  const { wheel } = scene.car;
  const up = sectionUp(scene.position, scene.view);
  const at = (a: number, r: number): Spot =>
    scene.view.at(addScaled(addScaled(scene.position.wheelCentre, scene.position.spinAxis, a), up, r));
  const half = wheel.sectionWidth / 2;
  return hull(
    [
      at(half, wheel.freeRadius),
      at(-half, wheel.freeRadius),
      at(half, -wheel.freeRadius),
      at(-half, -wheel.freeRadius),
    ].flatMap((c) => ring(c, 0.01, 4)),
  );
};
