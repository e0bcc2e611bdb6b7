import { area, type Box, type Primitive, rectangle, spot, stroke, text, widthOf } from "@armwright/drawing";
import { PEN } from "./leaf.ts";
import { MARGIN, type PageSize } from "./page-size.ts";

/** What stands at the foot of every sheet. */
export interface SheetFacts {
  readonly car: string;
  readonly version: string | undefined;
  /** As written out, e.g. `25 November 2026`. */
  readonly date: string;
  readonly fingerprint: string;
}

const FOOT = 13;
const HEAD = 11;

/** Where a sheet's own contents may stand, mm. */
export const roomOn = (page: PageSize): Box => ({
  x: MARGIN.left + 3,
  y: MARGIN.top + HEAD + 2,
  width: page.width - MARGIN.left - MARGIN.right - 6,
  height: page.height - MARGIN.top - MARGIN.bottom - HEAD - FOOT - 4,
});

/** The ruled border, the sheet's title above, and the block below that says what it was made from. */
export function frame(
  page: PageSize,
  title: string,
  note: string,
  facts: SheetFacts,
  number: string,
): readonly Primitive[] {
  const left = MARGIN.left;
  const right = page.width - MARGIN.right;
  const top = MARGIN.top;
  const bottom = page.height - MARGIN.bottom;
  const foot = bottom - FOOT;
  const head = top + HEAD;
  const version = facts.version === undefined ? "" : `, version ${facts.version}`;
  const cells: readonly (readonly [label: string, words: string])[] = [
    ["car", `${facts.car}${version}`],
    ["made", facts.date],
    ["made from", facts.fingerprint],
    ["sheet", number],
  ];
  const shares = [0.42, 0.24, 0.22, 0.12];
  let x = left;
  const block = cells.flatMap(([label, words], index): Primitive[] => {
    const width = (right - left) * (shares[index] ?? 0);
    const at = x;
    x += width;
    return [
      ...(index === 0 ? [] : [stroke("frame", spot(at, foot), spot(at, bottom), { weight: "thin" })]),
      text("frame", spot(at + 2, foot + 4.6), label, { ink: "ink-2" }),
      text("frame", spot(at + 2, foot + 10.4), shortened(words, width - 4), { ink: "ink", size: "text", bold: true }),
    ];
  });
  return [
    area("frame", rectangle(left, top, right - left, bottom - top), { fill: "none", weight: "visible" }),
    stroke("frame", spot(left, head), spot(right, head), { weight: "thin" }),
    stroke("frame", spot(left, foot), spot(right, foot), { weight: "thin" }),
    text("frame", spot(left + 3, top + 7.6), title, { ink: "ink", size: "title", bold: true }),
    text("frame", spot(right - 3, top + 7.4), note, { ink: "ink-2", anchor: "end" }),
    ...block,
  ];
}

/** A name cut to the room that it has, with dots for what is left out. */
function shortened(words: string, width: number): string {
  if (widthOf(words, "text", PEN) <= width) return words;
  let kept = words;
  while (kept.length > 1 && widthOf(`${kept}…`, "text", PEN) > width) kept = kept.slice(0, -1);
  return `${kept}…`;
}
