import { PENNANT_WIDTH, pennant } from "./parts/pennant.ts";
import { circle, headingOf, shift, spot } from "./path.ts";
import { boxesAlong, type Placement } from "./placement.ts";
import type { Box, GroupPrimitive, Ink, Primitive, Spot, TextPrimitive } from "./primitive.ts";
import { area, group, patch, stroke, text } from "./sketch.ts";
import { boxOfText } from "./text-size.ts";

/** Words about one spot: a label, a reading beneath it, a shelf, a leader, a dot on the part. */
export interface NoteWish {
  readonly id: string;
  readonly at: Spot;
  readonly label: string;
  readonly reading?: string;
  /** `stop`: in trouble; ringed instead of dotted, and with a pennant when it has an order. */
  readonly ink?: "ink" | "stop";
  readonly order?: number;
  /** What a screen reader says. */
  readonly spoken?: string;
}

/** Room for words, and the words alone: leaders may cross the drawing, but no words. */
export interface NoteRoom {
  readonly all: Placement;
  readonly words: Placement;
  /** As `all`, but the hatching of keep-outs and the ghosts count as free: for words on a halo that must be told. */
  readonly parts: Placement;
}

/** Takes a box in all three. */
export function takeWords(room: NoteRoom, box: Box): void {
  room.all.take(box);
  room.words.take(box);
  room.parts.take(box);
}

const SHELF = 12;
const LEAD = 18;
const RING = 9;
const DIRECTIONS = 32;
/** From the upper right round, so that upright and level leaders come late. */
const WAYS: readonly Spot[] = Array.from({ length: DIRECTIONS }, (_, i) => {
  const angle = -Math.PI / 4 + ((i % 2 === 0 ? i : -i - 1) * Math.PI) / DIRECTIONS;
  return spot(Math.cos(angle), Math.sin(angle));
});
const NEAREST = 34;
const STEP = 16;
/** Lengths of leaders that are tried, px; trouble is told over hatching sooner than from farther than NEAR. */
const REACH = 520;
const NEAR = 130;

/** A note at the nearest free place round its spot, or null where there is none. */
export function placeNote(wish: NoteWish, room: NoteRoom, pen: number): GroupPrimitive | null {
  if (wish.ink !== "stop") return placeWithin(wish, room, room.all, REACH, pen);
  return (
    placeWithin(wish, room, room.all, NEAR, pen) ??
    placeWithin(wish, room, room.parts, 2 * NEAR, pen) ??
    placeWithin(wish, room, room.all, REACH, pen) ??
    placeWithin(wish, room, room.parts, REACH, pen)
  );
}

function placeWithin(
  wish: NoteWish,
  room: NoteRoom,
  free: Placement,
  reach: number,
  pen: number,
): GroupPrimitive | null {
  // The words' boxes hang on the shelf's inner end, one way to its right and one to its left.
  const hung = { left: hungBoxes(wish, true, pen), right: hungBoxes(wish, false, pen) };
  for (let distance = NEAREST; distance <= reach; distance += STEP) {
    for (const way of WAYS) {
      const elbow = shift(wish.at, way.x * distance * pen, way.y * distance * pen);
      const words = hung[way.x < 0 ? "left" : "right"];
      if (!words.every((box) => free.isFree(box, elbow))) continue;
      const leader = leaderOf(wish, elbow, pen).flatMap(([from, to]) => boxesAlong(from, to, 1.5 * pen));
      if (!leader.every((box) => room.words.isFree(box))) continue;
      for (const box of words) takeWords(room, moved(box, elbow));
      for (const box of leader) {
        room.all.take(box);
        room.parts.take(box);
      }
      return drawNote(wish, elbow, pen);
    }
  }
  return null;
}

/** A note that found no room still marks its spot: the ring stays, the words go into the list beside the drawing. */
export const bareMark = (wish: NoteWish, pen: number): GroupPrimitive =>
  group("trouble", [mark(wish, pen)], { meaning: wish.id, label: wish.spoken ?? wish.label });

const moved = ({ x, y, width, height }: Box, by: Spot): Box => ({ x: x + by.x, y: y + by.y, width, height });

/** What the words and the pennant cover, with a little air. */
function hungBoxes(wish: NoteWish, left: boolean, pen: number): readonly Box[] {
  const air = 2 * pen;
  const flag = flagWidth(wish, pen);
  const words = wordsOf(wish, spot(0, 0), left, pen).map((word) => boxOfText(word, pen));
  const start = (left ? -1 : 1) * (SHELF + 5) * pen;
  const flags = flag === 0 ? [] : [{ x: left ? start - flag : start, y: -8 * pen, width: flag, height: 16 * pen }];
  return [...words, ...flags].map(({ x, y, width, height }) => ({
    x: x - air,
    y: y - air,
    width: width + 2 * air,
    height: height + 2 * air,
  }));
}

const flagWidth = ({ order }: NoteWish, pen: number): number => (order ? (PENNANT_WIDTH + 5) * pen : 0);

function wordsOf(wish: NoteWish, elbow: Spot, left: boolean, pen: number): TextPrimitive[] {
  const stop = wish.ink === "stop";
  const x = elbow.x + (left ? -1 : 1) * ((SHELF + 5) * pen + flagWidth(wish, pen));
  const anchor = left ? "end" : "start";
  const label = text("note", spot(x, elbow.y + 4.5 * pen), wish.label, {
    anchor,
    ink: stop ? "stop" : "ink-2",
    bold: stop,
    halo: "paper",
  });
  if (wish.reading === undefined) return [label];
  const at = spot(x, elbow.y + (4.5 + LEAD) * pen);
  const reading = text("note", at, wish.reading, {
    anchor,
    size: "text",
    ink: stop ? "stop" : "ink",
    bold: stop,
    halo: "paper",
  });
  return [label, reading];
}

/** From the part to the elbow, and the shelf. */
function leaderOf(wish: NoteWish, elbow: Spot, pen: number): readonly (readonly [Spot, Spot])[] {
  const ring = wish.ink === "stop" ? RING * pen : 0;
  const h = headingOf(wish.at, elbow);
  const side = elbow.x < wish.at.x ? -1 : 1;
  return [
    [spot(wish.at.x + h.x * ring, wish.at.y + h.y * ring), elbow],
    [elbow, shift(elbow, side * SHELF * pen, 0)],
  ];
}

/** The note with its shelf's inner end at `elbow`. */
function drawNote(wish: NoteWish, elbow: Spot, pen: number): GroupPrimitive {
  const left = elbow.x < wish.at.x;
  const stop = wish.ink === "stop";
  const ink: Ink = stop ? "stop" : "ink-2";
  const inner = elbow.x + (left ? -1 : 1) * (SHELF + 5) * pen;
  const tip = left ? inner : inner + PENNANT_WIDTH * pen;
  const parts: Primitive[] = [
    ...leaderOf(wish, elbow, pen).map(([from, to]) =>
      stroke("note", from, to, { ink, weight: stop ? "ghost" : "hair" }),
    ),
    ...(wish.order ? pennant("trouble", spot(tip, elbow.y), wish.order, pen) : []),
    stop ? mark(wish, pen) : patch("note", circle(wish.at, 2 * pen), { fill: "ink-2" }),
    ...wordsOf(wish, elbow, left, pen),
  ];
  return group("note", parts, { meaning: wish.id, label: wish.spoken ?? wish.label });
}

/** The ring on the spot that is in trouble. */
const mark = ({ at }: NoteWish, pen: number): Primitive =>
  area("trouble", circle(at, RING * pen), { ink: "stop", weight: "outline", fill: "none" });
