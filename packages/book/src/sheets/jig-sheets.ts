import { type Box, type Primitive, spot, stroke, text } from "@armwright/drawing";
import { apart, type JigPart, type JigPoint, jigParts } from "../jig/jig-part.ts";
import type { Block } from "../paper/flow.ts";
import { type PartLine, partView } from "../paper/part-view.ts";
import { FROM_ABOVE, FROM_BEHIND } from "../paper/side.ts";
import type { Column } from "../paper/table.ts";
import { flowSheets } from "./flow-sheets.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** One sheet a part: where each place is from the datum, and what the tape reads between any two of them. */
export const jigSheets = (makings: Makings): readonly Sheet[] =>
  jigParts(makings.study.corner)
    .filter(({ points }) => points.length > 2)
    .flatMap((part) => jigSheet(part, makings));

function jigSheet(part: JigPart, makings: Makings): readonly Sheet[] {
  const { heights } = part;
  const row = rowHeight(part.points.length);
  const columns: Column[] = [
    { head: "", share: 5, bold: true },
    { head: "place", share: 40 },
    { head: "forward", share: 14, align: "end" },
    { head: "out", share: 14, align: "end" },
    { head: "up", share: 14, align: "end" },
    ...(heights ? [{ head: "block up", share: 13, align: "end" as const }] : []),
    { head: "as built", share: 20 },
  ];
  const rows = part.points.map(({ mark, label, point }, index) => [
    mark,
    label,
    tape(makings, point.x),
    tape(makings, point.y),
    tape(makings, point.z),
    ...(heights ? [tape(makings, heights[index] ?? 0)] : []),
    "",
  ]);
  const note: Block = {
    kind: "words",
    words: "Block up: the height of the centre over the lowest one, with the part laid flat on a bench.",
    style: { ink: "ink-2" },
  };
  return flowSheets(
    { id: `jig-${part.id}`, title: `Jig: ${part.title.toLowerCase()}`, note: lengthsIn(makings) },
    [
      {
        kind: "words",
        words: `In the design position, left side; the right side is its mirror image: the same numbers, out to the right. Forward counts from: ${makings.study.car.datum}. Out from the centreline, up from the floor. Every place is the centre of its bolt or joint.`,
      },
      { kind: "table", columns, rows, style: { rowHeight: row, isForm: true, size: "text", padding: 0.9 } },
      ...(heights ? [note] : []),
      { kind: "head", words: "Between centres, as the tape reads" },
      {
        kind: "drawn",
        height: part.points.length * row,
        draw: (box) => crossDistances(part.points, row, makings, box),
      },
      { kind: "view", share: 1, least: 36, draw: (box) => pictures(part, makings, box) },
    ],
    makings,
  );
}

/** Where the marks are, from above and from behind, side by side in what is left of the sheet. */
function pictures(part: JigPart, { study }: Makings, box: Box): Primitive[] {
  const height = Math.min(box.height, 100);
  const lines = study.corner.members
    .filter(({ body }) => body === part.id || part.id === "corner")
    .map(({ from, to }): PartLine => ({ from: from.point, to: to.point, as: "reach" }));
  const width = (box.width - 4) / 2;
  return [FROM_ABOVE, FROM_BEHIND].flatMap(
    (side, index) =>
      partView({ tubes: [], points: part.points, lines, measures: [] }, side, {
        x: box.x + index * (width + 4),
        y: box.y,
        width,
        height,
      }).parts,
  );
}

/** Height of a row and of a stair's step, mm: high enough to write into, lower where many places leave a sheet no room. */
const rowHeight = (places: number): number => (places > 8 ? 6.4 : 8.3);

/** A stair of distances, each pair once. */
function crossDistances(points: readonly JigPoint[], step: number, makings: Makings, box: Box): Primitive[] {
  const cell = Math.min(box.width / points.length, 26);
  const size = cell < 19 ? "text" : "reading";
  const parts: Primitive[] = [];
  points.forEach((row, i) => {
    const y = box.y + i * step;
    const middle = y + step * 0.7;
    parts.push(
      text("table", spot(box.x + i * cell + cell / 2, middle), row.mark, {
        size: "reading",
        bold: true,
        anchor: "middle",
        ink: "ink",
      }),
    );
    for (let j = 0; j < i; j += 1) {
      const x = box.x + j * cell;
      parts.push(
        text("table", spot(x + cell / 2, middle), tape(makings, apart(row, points[j]!), 32), {
          size,
          anchor: "middle",
          ink: "ink",
        }),
        stroke("table", spot(x, y + step), spot(x + cell, y + step), { weight: "hair", ink: "ink-2" }),
        stroke("table", spot(x + cell, y), spot(x + cell, y + step), { weight: "hair", ink: "ink-2" }),
      );
    }
  });
  return parts;
}
