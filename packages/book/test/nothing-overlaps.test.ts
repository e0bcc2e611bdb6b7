import { type Box, boxOfText, overlap, type Primitive, type TextPrimitive } from "@armwright/drawing";
import { study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { EXAMPLES, exampleText } from "../../engine/test/example-documents.ts";
import { bookLeaves } from "../src/book.ts";
import { type Leaf, PEN } from "../src/paper/leaf.ts";
import { MARGIN, PAGE_SIZES } from "../src/paper/page-size.ts";

interface Placed {
  readonly words: string;
  readonly box: Box;
}

const textsOf = (parts: readonly Primitive[]): readonly TextPrimitive[] =>
  parts.flatMap((part) => (part.shape === "text" ? [part] : part.shape === "group" ? textsOf(part.parts) : []));

/** Boxes of words are a little larger than the ink: what laps by less than this, mm, does not touch. */
const HAIR = 0.5;

const shrunk = ({ x, y, width, height }: Box): Box => ({
  x: x + HAIR,
  y: y + HAIR,
  width: Math.max(width - 2 * HAIR, 0.1),
  height: Math.max(height - 2 * HAIR, 0.1),
});

function placedOn(leaf: Leaf): readonly Placed[] {
  return textsOf(leaf.parts)
    .filter(({ turn, text }) => turn === 0 && text !== "")
    .map((text) => ({ words: text.text, box: shrunk(boxOfText(text, PEN)) }));
}

describe.each(EXAMPLES)("the book of %s", (name) => {
  const reading = readCarDocument(exampleText(name));
  if (!reading.ok) throw new Error("the example does not read");
  const made = study(reading.car);

  test.each(["letter", "a4"] as const)("no words lie on each other or off the sheet, on %s", (paper) => {
    const leaves = bookLeaves(made, reading.document, { paper, date: new Date(0) });
    expect(leaves.length).toBeGreaterThan(10);
    const faults: string[] = [];
    for (const leaf of leaves) {
      const { width, height } = PAGE_SIZES[paper];
      const placed = placedOn(leaf);
      for (const { words, box } of placed) {
        const isOn =
          box.x >= MARGIN.left - HAIR &&
          box.x + box.width <= width - MARGIN.right + HAIR &&
          box.y >= MARGIN.top - HAIR &&
          box.y + box.height <= height - MARGIN.bottom + HAIR;
        if (!isOn) faults.push(`${leaf.id}: off the sheet: ${words}`);
      }
      placed.forEach((one, index) => {
        for (const other of placed.slice(index + 1)) {
          if (overlap(one.box, other.box)) faults.push(`${leaf.id}: ${one.words} | ${other.words}`);
        }
      });
    }
    expect(faults).toEqual([]);
  });
});
