import type { Box, TextPrimitive } from "./primitive.ts";
import { FRACTION_SIZE, GAP_SIZE, TYPES } from "./style.ts";
import { textParts } from "./words.ts";

/**
 * Advance widths of National Park (OFL-1.1), thousandths of an em, from the space (32) to the tilde (126): for each glyph
 * the wider of its 400 and 600 cuts, as measured in a browser. Layout needs boxes that are never too small.
 */
const WIDTHS: readonly number[] = [
  275, 264, 364, 648, 582, 824, 694, 197, 400, 400, 464, 567, 280, 426, 264, 422, 655, 503, 580, 586, 635, 582, 612,
  544, 608, 615, 264, 317, 584, 581, 584, 487, 952, 612, 629, 622, 656, 570, 531, 664, 690, 279, 514, 618, 529, 851,
  683, 710, 591, 730, 646, 582, 572, 687, 600, 829, 605, 556, 578, 344, 420, 344, 452, 546, 261, 560, 596, 521, 595,
  552, 359, 600, 588, 256, 269, 538, 256, 905, 590, 574, 594, 594, 389, 494, 405, 590, 512, 747, 504, 533, 489, 394,
  235, 394, 633,
];
const OTHER: Readonly<Record<string, number>> = { "\u2212": 559, "°": 353, "±": 579, "—": 900, "½": 928 };
/** Digits of a set fraction are this share of full ones, its stroke this wide (measured likewise, rounded up). */
const FRACTION_DIGIT = 0.7;
const FRACTION_STROKE = 180;
/** Above and below the baseline, in ems: tall letters and a set fraction; descenders. */
export const ASCENT = 0.76;
export const FRACTION_ASCENT = 0.95;
export const DESCENT = 0.23;

/** Width of a text, sheet units: never less than what is drawn in the house's face. */
export const widthOf = (words: string, size: TextPrimitive["size"], pen: number): number =>
  (setOf(words).thousandths / 1000) * TYPES[size].size * pen;

/** A text as it is set: thousandths of an em, and whether a fraction makes it taller. */
interface Setting {
  readonly thousandths: number;
  readonly hasFraction: boolean;
}

/** The same few hundred texts are measured again and again while a point is dragged. */
const known = new Map<string, Setting>();
const MOST_KNOWN = 2000;

function setOf(words: string): Setting {
  const before = known.get(words);
  if (before) return before;
  if (known.size >= MOST_KNOWN) known.clear();
  const made = measured(words);
  known.set(words, made);
  return made;
}

function measured(words: string): Setting {
  const parts = textParts(words);
  let thousandths = 0;
  for (const part of parts) {
    if (part.isBehindWhole) thousandths += GAP_SIZE * widthOfGlyph(" ");
    for (const glyph of part.text) {
      if (!part.fraction) thousandths += widthOfGlyph(glyph);
      else thousandths += FRACTION_SIZE * (glyph === "\u2044" ? FRACTION_STROKE : widthOfGlyph(glyph) * FRACTION_DIGIT);
    }
  }
  return { thousandths, hasFraction: parts.some(({ fraction }) => fraction) };
}

function widthOfGlyph(glyph: string): number {
  const width = WIDTHS[glyph.charCodeAt(0) - 32];
  // Letters beyond plain Latin: as wide as a wide one.
  return OTHER[glyph] ?? width ?? 720;
}

/** The box that a level text takes up. */
export function boxOfText(primitive: TextPrimitive, pen: number): Box {
  const em = TYPES[primitive.size].size * pen;
  const width = widthOf(primitive.text, primitive.size, pen);
  const ascent = setOf(primitive.text).hasFraction ? FRACTION_ASCENT : ASCENT;
  const left = primitive.anchor === "start" ? 0 : primitive.anchor === "middle" ? width / 2 : width;
  return {
    x: primitive.at.x - left,
    y: primitive.at.y - ascent * em,
    width,
    height: (ascent + DESCENT) * em,
  };
}
