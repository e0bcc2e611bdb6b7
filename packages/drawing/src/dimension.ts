import { type NoteRoom, takeWords } from "./note.ts";
import { gapOf, headingOf, offset, polyline, spot, toward } from "./path.ts";
import { boxesAlong, grown } from "./placement.ts";
import type { Box, GroupPrimitive, Primitive, Spot, TextPrimitive } from "./primitive.ts";
import { group, patch, stroke, text } from "./sketch.ts";
import { boxOfText } from "./text-size.ts";

/** A distance to be written beside the drawing, between two spots. */
export interface DimensionWish {
  readonly id: string;
  readonly from: Spot;
  readonly to: Spot;
  readonly text: string;
  /** Distances from the measured line at which the dimension may stand, sheet units, best first; + is to the right of from→to. */
  readonly offsets: readonly number[];
  /** Measured along the sheet's own directions instead of along from→to. */
  readonly along?: "level" | "upright";
}

const ARROW = 10;
const ARROW_HALF = 2.1;

/**
 * A dimension where it has found room, or null where there is none. Its words keep clear of everything; its lines too where
 * that can be had, else they may cross the drawing, but no words and no other dimension.
 */
export function placeDimension(wish: DimensionWish, room: NoteRoom, pen: number): GroupPrimitive | null {
  for (const lines of [room.all, room.words]) {
    for (const { words, boxes, drawn } of candidatesOf(wish, pen)) {
      if (!room.all.isFree(words) || !boxes.every((box) => lines.isFree(box))) continue;
      for (const box of [words, ...boxes]) takeWords(room, box);
      return drawn();
    }
  }
  return null;
}

interface Drawn {
  readonly words: Box;
  /** What its lines cover, but for the tips, which touch what is measured. */
  readonly boxes: readonly Box[];
  /** Made of the one that finds room only. */
  readonly drawn: () => GroupPrimitive;
}

function* candidatesOf(wish: DimensionWish, pen: number): Generator<Drawn> {
  for (const share of [0.5, 0.35, 0.65]) for (const off of wish.offsets) yield dimensionAt(wish, off, share, pen);
}

/** One way to draw it: `off` from the measured line, its text at `share` of the line. */
function dimensionAt(wish: DimensionWish, off: number, share: number, pen: number): Drawn {
  const { a, b, h } = measured(wish, off);
  const length = gapOf(a, b);
  const words = text("dimension", toward(a, b, share), wish.text, { size: "text", anchor: "middle", ink: "ink" });
  const size = boxOfText(words, pen);
  const along = Math.abs(h.x) * size.width + Math.abs(h.y) * size.height + 8 * pen;
  const fits = length > along + 2 * ARROW * pen + 8 * pen;
  const at = fits ? toward(a, b, share) : offset(b, h, (ARROW + 6) * pen + along / 2, 0);
  const label: TextPrimitive = { ...words, at: spot(at.x, at.y + size.height * 0.33) };
  const gap = along / 2;
  const centre = fits ? gapOf(a, at) : length + (ARROW + 6) * pen + along / 2;
  const pieces: [Spot, Spot][] = fits
    ? [
        [a, offset(a, h, centre - gap, 0)],
        [offset(a, h, centre + gap, 0), b],
      ]
    : [
        [offset(a, h, -(ARROW + 6) * pen, 0), a],
        [b, offset(b, h, (ARROW + 6) * pen, 0)],
      ];
  const way = fits ? 1 : -1;
  const style = { ink: "ink-2", weight: "thin" } as const;
  const parts = (): Primitive[] => [
    ...extension(wish.from, a, pen),
    ...extension(wish.to, b, pen),
    ...pieces.map(([from, to]) => stroke("dimension", from, to, style)),
    patch("dimension", arrow(a, h, way * pen), { fill: "ink-2" }),
    patch("dimension", arrow(b, h, -way * pen), { fill: "ink-2" }),
    label,
  ];
  const tip = Math.min(7 * pen, 0.2 * length);
  const covered: [Spot, Spot][] = fits
    ? [
        [offset(a, h, tip, 0), offset(a, h, centre - gap, 0)],
        [offset(a, h, centre + gap, 0), offset(b, h, -tip, 0)],
      ]
    : pieces;
  return {
    words: grown(boxOfText(label, pen), 2 * pen),
    boxes: covered.flatMap(([from, to]) => boxesAlong(from, to, 2.4 * pen)),
    drawn: () => group("dimension", parts(), { meaning: wish.id }),
  };
}

/** The dimension line's two ends and its heading. */
function measured({ from, to, along }: DimensionWish, off: number): { a: Spot; b: Spot; h: Spot } {
  if (along === "level") {
    const y = from.y + off;
    const [a, b] = [spot(from.x, y), spot(to.x, y)];
    return { a, b, h: headingOf(a, b) };
  }
  if (along === "upright") {
    const x = from.x + off;
    const [a, b] = [spot(x, from.y), spot(x, to.y)];
    return { a, b, h: headingOf(a, b) };
  }
  const h = headingOf(from, to);
  return { a: offset(from, h, 0, off), b: offset(to, h, 0, off), h };
}

/** Starts 4 off what is measured and runs 5 past the dimension line. */
function extension(from: Spot, to: Spot, pen: number): Primitive[] {
  if (gapOf(from, to) < 6 * pen) return [];
  const h = headingOf(from, to);
  return [
    stroke("dimension", offset(from, h, 4 * pen, 0), offset(to, h, 5 * pen, 0), { ink: "ink-2", weight: "hair" }),
  ];
}

const arrow = (tip: Spot, h: Spot, size: number) =>
  polyline(
    [
      tip,
      offset(tip, h, ARROW * size, ARROW_HALF * Math.abs(size)),
      offset(tip, h, ARROW * size, -ARROW_HALF * Math.abs(size)),
    ],
    true,
  );
