import { plain } from "./plain.ts";
import { widthOf } from "./width.ts";
import { wordsOf, wrap } from "./wrap.ts";

export interface Column {
  /** One line of the head each, lowest last. */
  readonly head: readonly string[];
  /** `mark`: lengths, whose fractions or decimals begin at one place. */
  readonly align: "left" | "right" | "mark";
  /** Broken into lines where the page is too narrow. */
  readonly gives?: boolean;
}

export interface Row {
  readonly cells: readonly string[];
  /** Emphasis put on each finished line. */
  readonly paint?: (line: string) => string;
}

const GAP = "  ";
const LEAST_GIVING = 12;

export interface Laid {
  readonly head: readonly string[];
  /** The lines of each row. */
  readonly rows: readonly (readonly string[])[];
}

/** Lines of a table: head, then rows; `width` bounds it as far as the column that gives can give. */
export function table(columns: readonly Column[], rows: readonly Row[], width: number): readonly string[] {
  const { head, rows: laid } = layTable(columns, rows, width);
  return [...head, ...laid.flat()];
}

/** The same with head and rows apart, for rows that are shown in several places under one alignment. */
export function layTable(columns: readonly Column[], rows: readonly Row[], width: number): Laid {
  const aligned = columns.map(({ align }, c) =>
    alignColumn(
      rows.map((row) => plain(row.cells[c] ?? "")),
      align,
    ),
  );
  const heads = headLines(columns);
  const widths = columnWidths(columns, [...heads, ...rows.map((_, r) => aligned.map((cells) => cells[r]!))], width);
  const lay = (line: readonly string[]): string =>
    line
      .map((text, c) => pad(text, widths[c]!, columns[c]!.align))
      .join(GAP)
      .trimEnd();
  const laid = rows.map(({ paint }, r) => {
    const blocks = columns.map(({ gives }, c) => (gives ? wrapCell(aligned[c]![r]!, widths[c]!) : [aligned[c]![r]!]));
    const height = Math.max(...blocks.map((block) => block.length));
    const lines = Array.from({ length: height }, (_, i) => lay(blocks.map((block) => block[i] ?? "")));
    return paint ? lines.map(paint) : lines;
  });
  return { head: heads.map(lay), rows: laid };
}

/**
 * As wide as the cells; where that is too much for the page, the widest of the columns that give gives first: down to its
 * longest word, and only where all of them stand there and it is still too much, below it.
 */
function columnWidths(
  columns: readonly Column[],
  lines: readonly (readonly string[])[],
  width: number,
): readonly number[] {
  const widths = columns.map((_, c) => Math.max(0, ...lines.map((line) => widthOf(line[c]!))));
  const least = columns.map(({ head }) => Math.max(LEAST_GIVING, ...head.map(widthOf)));
  const longest = columns.map(({ gives }, c) =>
    gives ? Math.max(least[c]!, ...lines.flatMap((line) => wordsOf(line[c]!).map(widthOf))) : 0,
  );
  let excess = widths.reduce((sum, w) => sum + w, GAP.length * (columns.length - 1)) - width;
  for (const floor of [longest, least]) excess -= giveWay(columns, widths, floor, excess);
  return widths;
}

/** Takes up to `excess` columns of the page from those that give, the widest first, none below its floor; tells how many. */
function giveWay(columns: readonly Column[], widths: number[], floor: readonly number[], excess: number): number {
  let given = 0;
  for (; given < excess; given += 1) {
    let widest = -1;
    columns.forEach(({ gives }, c) => {
      if (gives && widths[c]! > floor[c]! && (widest < 0 || widths[c]! > widths[widest]!)) widest = c;
    });
    if (widest < 0) break;
    widths[widest]! -= 1;
  }
  return given;
}

const wrapCell = (text: string, width: number): readonly string[] =>
  widthOf(text) <= width ? [text] : wrap(text, width);

/** Heads stand on the lowest line. */
function headLines(columns: readonly Column[]): readonly (readonly string[])[] {
  const height = Math.max(...columns.map(({ head }) => head.length));
  return Array.from({ length: height }, (_, i) => columns.map(({ head }) => head[i - (height - head.length)] ?? ""));
}

function pad(text: string, width: number, align: Column["align"]): string {
  const blank = " ".repeat(Math.max(0, width - widthOf(text)));
  return align === "left" ? text + blank : blank + text;
}

/** Makes the cells of a column equally wide where they have to stand under each other. */
function alignColumn(cells: readonly string[], align: Column["align"]): readonly string[] {
  if (align !== "mark") return cells;
  const parts = cells.map(splitMark);
  const whole = Math.max(0, ...parts.map((part) => part?.whole.length ?? 0));
  const rest = Math.max(0, ...parts.map((part) => part?.rest.length ?? 0));
  return cells.map((cell, i) => {
    const part = parts[i];
    if (!part) return cell;
    // A lone fraction carries its sign right before it: ` -3/8`, not `- 3/8`.
    if (/^[+-]$/.test(part.whole)) return `${" ".repeat(whole)}${part.whole}${part.rest.trimStart().padEnd(rest - 1)}`;
    return part.whole.padStart(whole) + part.rest.padEnd(rest);
  });
}

/** `-12 3/16` into `-12` and ` 3/16`, `-12.5` into `-12` and `.5`; undefined for what is no length. */
function splitMark(cell: string): { readonly whole: string; readonly rest: string } | undefined {
  const match = /^([+-]?\d+)(\.\d+| \d+\/\d+)?$/.exec(cell) ?? /^([+-]?)(\d+\/\d+)$/.exec(cell);
  if (!match) return undefined;
  const [, whole = "", rest = ""] = match;
  return { whole, rest: rest.includes("/") && !rest.startsWith(" ") ? ` ${rest}` : rest };
}
