import type { Vec3 } from "@armwright/engine";
import { bar, circle, headingOf, offset, polyline, shift, spot } from "./path.ts";
import { makePlacement, type Placement } from "./placement.ts";
import type { Box, GroupPrimitive, Primitive, Spot } from "./primitive.ts";
import { area, group, patch, stroke, text } from "./sketch.ts";
import { boxOfText } from "./text-size.ts";
import type { View } from "./view.ts";

/** A force as an arrow: how long it is says how much, and the number stands beside it. */
export interface ForceArrow {
  readonly id: string;
  /** Where it acts, vehicle axes, m. */
  readonly at: Vec3;
  /** N, vehicle axes. */
  readonly force: Vec3;
  /** `A 1,230 lb`; what the arrow is called and how much it is. */
  readonly label: string;
  /** A push from outside has its tip at the place; what a joint puts on its part begins there. */
  readonly end: "tip" | "tail";
}

/** px of the longest arrow, and under how many a force is seen end on. */
const LONGEST = 92;
const END_ON = 9;
const HEAD = 11;
const HEAD_HALF = 4.6;
/** Half width of the paper on which an arrow lies. */
const EDGE = 3.6;

/** Arrows of forces over a view, all to one scale; numbers clear of one another, and of what lies over the view. */
export function drawForces(view: View, arrows: readonly ForceArrow[], covered?: Box): readonly Primitive[] {
  const { pen, width, height } = view.sheet;
  const most = Math.max(1e-9, ...arrows.map(({ force }) => Math.hypot(force.x, force.y, force.z)));
  const room = makePlacement({ x: 2, y: 2, width: width - 4, height: height - 4 });
  const drawn = arrows.map((arrow) => ({ arrow, ...placeArrow(view, arrow, (LONGEST * pen) / most) }));
  if (covered) room.take(covered);
  for (const { from, to } of drawn) room.takeLine(from, to, 4 * pen);
  return drawn.map(({ arrow, from, to }) => drawArrow(view, arrow, from, to, room, pen));
}

function placeArrow(view: View, { at, force, end }: ForceArrow, scale: number) {
  const here = view.at(at);
  const there = view.at({ x: at.x + force.x, y: at.y + force.y, z: at.z + force.z });
  // Metres a newton in `view.at`, sheet units a newton in `scale`.
  const way = {
    x: ((there.x - here.x) / view.sheet.scale) * scale,
    y: ((there.y - here.y) / view.sheet.scale) * scale,
  };
  return end === "tip"
    ? { from: spot(here.x - way.x, here.y - way.y), to: here }
    : { from: here, to: spot(here.x + way.x, here.y + way.y) };
}

function drawArrow(
  view: View,
  { id, label, force }: ForceArrow,
  from: Spot,
  to: Spot,
  room: Placement,
  pen: number,
): GroupPrimitive {
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  const parts: Primitive[] = [];
  if (size < END_ON * pen) {
    const isAway = force.x * view.away.x + force.y * view.away.y + force.z * view.away.z > 0;
    parts.push(...endOn(to, isAway, pen));
  } else {
    const heading = headingOf(from, to);
    const neck = offset(to, heading, -HEAD * pen * 0.8, 0);
    parts.push(
      patch("force", bar(from, neck, EDGE * pen), { fill: "paper" }),
      stroke("force", from, neck, { weight: "outline" }),
      area(
        "force",
        polyline(
          [to, offset(to, heading, -HEAD * pen, HEAD_HALF * pen), offset(to, heading, -HEAD * pen, -HEAD_HALF * pen)],
          true,
        ),
        { fill: "ink", ink: "paper", weight: "thin" },
      ),
    );
  }
  const words = wordsBeside(from, to, label, room, pen);
  if (words) parts.push(words);
  return group("force", parts, { meaning: id, label });
}

/** An arrow that goes away from the eye shows its feathers, one that comes its point. */
function endOn(at: Spot, isAway: boolean, pen: number): readonly Primitive[] {
  const r = 6 * pen;
  const d = r * Math.SQRT1_2;
  return [
    area("force", circle(at, r), { weight: "visible" }),
    ...(isAway
      ? [stroke("force", shift(at, -d, -d), shift(at, d, d)), stroke("force", shift(at, -d, d), shift(at, d, -d))]
      : [patch("force", circle(at, 2 * pen), { fill: "ink" })]),
  ];
}

/** Round the arrow's far end, then round its other one. */
function wordsBeside(from: Spot, to: Spot, label: string, room: Placement, pen: number): Primitive | null {
  for (const reach of [8, 20, 34, 50]) {
    for (const end of [to, from]) {
      for (const [dx, dy, anchor] of [
        [1, 0, "start"],
        [-1, 0, "end"],
        [0.4, -1, "start"],
        [0.4, 1, "start"],
        [-0.4, -1, "end"],
        [-0.4, 1, "end"],
      ] as const) {
        const at = shift(end, dx * reach * pen, dy * reach * pen + 5 * pen);
        const words = text("force", at, label, { anchor, ink: "ink", bold: true, halo: "paper" });
        const box: Box = boxOfText(words, pen);
        if (!room.isFree(box)) continue;
        room.take(box);
        return words;
      }
    }
  }
  return null;
}
