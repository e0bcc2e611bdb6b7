import { type Primitive, spot, stroke, text } from "@armwright/drawing";
import { apart, type JigPart, type JigPoint, jigParts } from "../jig/jig-part.ts";
import { markedView } from "../paper/marked-view.ts";
import { FROM_ABOVE, FROM_BEHIND } from "../paper/side.ts";
import { type Column, table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** One sheet a part: where each place is from the datum, and what the tape reads between any two of them. */
export const jigSheets = (makings: Makings): readonly Sheet[] =>
  jigParts(makings.study.corner)
    .filter(({ points }) => points.length > 2)
    .map((part) => jigSheet(part, makings));

function jigSheet(part: JigPart, makings: Makings): Sheet {
  const { room, study } = makings;
  const parts: Primitive[] = [];
  const intro = paragraph(
    `In the design position, left side; the right side is its mirror image: the same numbers, out to the right. Forward counts from: ${study.car.datum}. Out from the centreline, up from the floor. Every place is the centre of its bolt or joint.`,
    room.x,
    room.y,
    room.width,
  );
  parts.push(...intro.parts);
  const heights = part.heights;
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
  const list = table(
    columns,
    rows,
    { left: room.x, top: intro.bottom + 2, width: room.width, floor: room.y + room.height },
    { rowHeight: 8.5, isForm: true, size: "text" },
  );
  parts.push(...list.parts);
  let below = list.bottom + 3;
  if (heights) {
    const note = paragraph(
      "Block up: the height of the centre over the lowest one, with the part laid flat on a bench.",
      room.x,
      below,
      room.width,
      { ink: "ink-2" },
    );
    parts.push(...note.parts);
    below = note.bottom + 2;
  }
  const head = paragraph("Between centres, as the tape reads", room.x, below, room.width, {
    size: "reading",
    bold: true,
  });
  const stair = crossDistances(part.points, makings, head.bottom + 1);
  parts.push(...head.parts, ...stair.parts, ...pictures(part, makings, stair.bottom + 4));
  return { id: `jig-${part.id}`, title: `Jig: ${part.title.toLowerCase()}`, note: lengthsIn(makings), parts };
}

/** Where the marks are, from above and from behind, side by side in what is left of the sheet. */
function pictures(part: JigPart, { room, study }: Makings, top: number): Primitive[] {
  const height = Math.min(room.y + room.height - top, 80);
  if (height < 34) return [];
  const tubes = study.corner.members
    .filter(({ body }) => body === part.id)
    .map(({ from, to }) => [from.point, to.point] as const);
  const width = (room.width - 4) / 2;
  return [FROM_ABOVE, FROM_BEHIND].flatMap((side, index) =>
    markedView(part.points, tubes, side, { x: room.x + index * (width + 4), y: top, width, height }),
  );
}

/** A stair of distances, each pair once. */
function crossDistances(
  points: readonly JigPoint[],
  makings: Makings,
  top: number,
): { readonly parts: Primitive[]; readonly bottom: number } {
  const { room } = makings;
  const cell = Math.min(room.width / points.length, 26);
  const height = Math.min(10, (room.y + room.height - top) / points.length);
  const parts: Primitive[] = [];
  points.forEach((row, i) => {
    const y = top + i * height;
    const middle = y + height * 0.68;
    parts.push(
      text("table", spot(room.x + i * cell + cell / 2, middle), row.mark, {
        size: "reading",
        bold: true,
        anchor: "middle",
        ink: "ink",
      }),
    );
    for (let j = 0; j < i; j += 1) {
      const x = room.x + j * cell;
      parts.push(
        text("table", spot(x + cell / 2, middle), tape(makings, apart(row, points[j]!), 32), {
          size: "reading",
          anchor: "middle",
          ink: "ink",
        }),
        stroke("table", spot(x, y + height), spot(x + cell, y + height), { weight: "hair", ink: "ink-2" }),
        stroke("table", spot(x + cell, y), spot(x + cell, y + height), { weight: "hair", ink: "ink-2" }),
      );
    }
  });
  return { parts, bottom: top + points.length * height };
}
