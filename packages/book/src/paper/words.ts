import { type Spot, spot, type TextPrimitive, TYPES, text, widthOf } from "@armwright/drawing";
import { PEN } from "./leaf.ts";

type Size = TextPrimitive["size"];
export type WordStyle = Partial<Pick<TextPrimitive, "size" | "bold" | "anchor" | "ink">>;

/** From one line of text to the next, mm. */
export const leadOf = (size: Size): number => TYPES[size].size * PEN * 1.34;

/** Words broken into lines that are no wider than `width`, mm; a word wider than that stands alone. */
export function wrapped(words: string, width: number, size: Size): readonly string[] {
  const lines: string[] = [];
  for (const paragraph of words.split("\n")) {
    let line = "";
    for (const word of paragraph.split(BREAKS)) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (line !== "" && widthOf(longer, size, PEN) > width) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    lines.push(line);
  }
  return lines;
}

/** Lines break at blanks, but not between inches and their fraction, or a number and its unit. */
const BREAKS = /(?<!\d) (?!in\b|mm\b|lb\b|deg\b)|(?<=\d) (?!\d{1,2}\/\d|in\b|mm\b|lb|deg\b|g\b|%)/;

/** A block of text set from its top left corner: what is drawn, and how far down it reaches, mm. */
export interface Block {
  readonly parts: readonly TextPrimitive[];
  readonly bottom: number;
}

/** A paragraph with its first line's top at `top`. */
export function paragraph(words: string, left: number, top: number, width: number, style: WordStyle = {}): Block {
  const size = style.size ?? "label";
  const lead = leadOf(size);
  const lines = wrapped(words, width, size);
  const at = (index: number): Spot => spot(left, top + lead * (index + 0.78));
  return {
    parts: lines.map((line, index) => text("words", at(index), line, { ink: "ink", ...style, size })),
    bottom: top + lead * lines.length,
  };
}
