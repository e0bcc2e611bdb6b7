import type { Box, Primitive } from "@armwright/drawing";
import { type Column, type TableStyle, table } from "./table.ts";
import { paragraph, type WordStyle } from "./words.ts";

/** What stands on a sheet from top to bottom; what finds no room goes on to the next sheet, nothing is left out. */
export type Block =
  | { readonly kind: "words"; readonly words: string; readonly style?: WordStyle; readonly gap?: number }
  /** A title that stays with what follows it. */
  | { readonly kind: "head"; readonly words: string }
  | {
      readonly kind: "table";
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly string[])[];
      readonly style?: TableStyle;
    }
  | { readonly kind: "drawn"; readonly height: number; readonly draw: (box: Box) => readonly Primitive[] }
  /** Takes its share of the height that the others leave on one sheet; where that is under `least`, of a sheet of its own. */
  | {
      readonly kind: "view";
      readonly share: number;
      readonly least: number;
      readonly draw: (box: Box) => readonly Primitive[];
    };

/** Between blocks, mm. */
const GAP = 2.5;
/** A head wants so much under it, mm: a table's head and a row or two. */
const UNDER_HEAD = 24;

/** Rounding, mm. */
const HAIR = 1e-6;

/** Blocks set one under the other into as many sheets as they take. */
export function flow(blocks: readonly Block[], room: Box): readonly (readonly Primitive[])[] {
  const floor = room.y + room.height;
  const viewHeights = heightsOfViews(blocks, room);
  const sheets: Primitive[][] = [[]];
  let top = room.y;
  const turn = (): void => {
    sheets.push([]);
    top = room.y;
  };
  const put = (parts: readonly Primitive[], bottom: number): void => {
    sheets.at(-1)!.push(...parts);
    top = bottom + GAP;
  };
  for (const block of blocks) {
    switch (block.kind) {
      case "words": {
        const make = () => paragraph(block.words, room.x, top, room.width, block.style);
        if (make().bottom > floor && top > room.y) turn();
        const { parts, bottom } = make();
        put(parts, bottom + (block.gap ?? 0));
        break;
      }
      case "head": {
        if (top + UNDER_HEAD > floor) turn();
        const { parts, bottom } = paragraph(block.words, room.x, top, room.width, { size: "reading", bold: true });
        put(parts, bottom - GAP + 0.5);
        break;
      }
      case "drawn":
      case "view": {
        const height = block.kind === "view" ? viewHeights(block.share) : block.height;
        if (top + height > floor + HAIR && top > room.y) turn();
        put(block.draw({ x: room.x, y: top, width: room.width, height }), top + height);
        break;
      }
      case "table": {
        let rows = block.rows;
        while (rows.length > 0) {
          const set = table(block.columns, rows, { left: room.x, top, width: room.width, floor }, block.style);
          const isStuck = set.left.length === rows.length;
          if (isStuck && top === room.y) throw new Error("bug in the book: a row is higher than a sheet");
          if (!isStuck) put(set.parts, set.bottom);
          rows = set.left;
          if (rows.length > 0) turn();
        }
      }
    }
  }
  return sheets.filter((parts) => parts.length > 0);
}

/** How high a view of a share is: what the other blocks leave of one sheet, or all of a sheet where they leave too little. */
function heightsOfViews(blocks: readonly Block[], room: Box): (share: number) => number {
  const views = blocks.flatMap((block) => (block.kind === "view" ? [block] : []));
  const shares = views.reduce((sum, { share }) => sum + share, 0);
  const others = blocks.reduce((sum, block) => sum + heightOf(block, room), 0);
  const gaps = views.length * GAP;
  const left = room.height - others - gaps;
  const isEnough = views.every(({ share, least }) => (left * share) / shares >= least);
  const height = isEnough ? left : room.height - gaps;
  return (share) => (height * share) / shares;
}

/** Height with the gap below, mm, on a sheet without end; 0 for a view. */
function heightOf(block: Block, { x, width }: Box): number {
  switch (block.kind) {
    case "words":
      return paragraph(block.words, x, 0, width, block.style).bottom + (block.gap ?? 0) + GAP;
    case "head":
      return paragraph(block.words, x, 0, width, { size: "reading", bold: true }).bottom + 0.5;
    case "drawn":
      return block.height + GAP;
    case "view":
      return 0;
    case "table": {
      const box = { left: x, top: 0, width, floor: Number.POSITIVE_INFINITY };
      return table(block.columns, block.rows, box, block.style).bottom + GAP;
    }
  }
}
