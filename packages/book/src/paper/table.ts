import { type Primitive, spot, stroke, type TextPrimitive, text } from "@armwright/drawing";
import { leadOf, wrapped } from "./words.ts";

export interface Column {
  readonly head: string;
  /** Share of the table's width. */
  readonly share: number;
  readonly align?: "start" | "middle" | "end";
  readonly bold?: boolean;
}

export interface TableStyle {
  readonly size?: TextPrimitive["size"];
  /** Least height of a row, mm: enough to write into where cells are blank. */
  readonly rowHeight?: number;
  /** Above and below a row's words, mm. */
  readonly padding?: number;
  /** Rules between columns too, as on a form. */
  readonly isForm?: boolean;
}

/** A table's rows that fit, and those that are left for another sheet. */
export interface SetTable {
  readonly parts: readonly Primitive[];
  readonly bottom: number;
  readonly left: readonly (readonly string[])[];
}

const PADDING = 1.4;

/** Sets rows from `top` down to at most `floor` (mm); long cells wrap. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  box: { readonly left: number; readonly top: number; readonly width: number; readonly floor: number },
  style: TableStyle = {},
): SetTable {
  const size = style.size ?? "label";
  const padding = style.padding ?? PADDING;
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  const widths = columns.map(({ share }) => (share / whole) * box.width);
  const lefts = widths.map((_, index) => box.left + widths.slice(0, index).reduce((sum, width) => sum + width, 0));
  const parts: Primitive[] = [];
  const row = (cells: readonly string[], top: number, isHead: boolean): number => {
    const lines = cells.map((cell, index) =>
      wrapped(cell, (widths[index] ?? 0) - 2 * PADDING, isHead ? "label" : size),
    );
    const lead = leadOf(isHead ? "label" : size);
    const height = Math.max(
      Math.max(1, ...lines.map(({ length }) => length)) * lead + 2 * padding,
      isHead ? 0 : (style.rowHeight ?? 0),
    );
    lines.forEach((cell, index) => {
      const column = columns[index];
      if (!column) return;
      const align = column.align ?? "start";
      const [left, width] = [lefts[index]!, widths[index]!];
      const x = align === "start" ? left + PADDING : align === "end" ? left + width - PADDING : left + width / 2;
      cell.forEach((words, line) => {
        if (words === "") return;
        parts.push(
          text("table", spot(x, top + padding + lead * (line + 0.76)), words, {
            size: isHead ? "label" : size,
            bold: isHead ? false : (column.bold ?? false),
            anchor: align,
            ink: isHead ? "ink-2" : "ink",
          }),
        );
      });
    });
    return top + height;
  };
  let bottom = row(
    columns.map(({ head }) => head),
    box.top,
    true,
  );
  parts.push(stroke("table", spot(box.left, bottom), spot(box.left + box.width, bottom), { weight: "visible" }));
  let done = 0;
  for (const cells of rows) {
    const before = parts.length;
    const next = row(cells, bottom, false);
    if (next > box.floor) {
      parts.length = before;
      break;
    }
    parts.push(
      stroke("table", spot(box.left, next), spot(box.left + box.width, next), { weight: "hair", ink: "ink-2" }),
    );
    bottom = next;
    done += 1;
  }
  if (style.isForm) {
    for (const x of [...lefts, box.left + box.width])
      parts.push(stroke("table", spot(x, box.top), spot(x, bottom), { weight: "hair", ink: "ink-2" }));
    parts.push(stroke("table", spot(box.left, box.top), spot(box.left + box.width, box.top), { weight: "hair" }));
  }
  return { parts, bottom, left: rows.slice(done) };
}
