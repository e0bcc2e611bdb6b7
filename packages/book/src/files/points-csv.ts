import type { Corner } from "@armwright/engine";
import { apart, jigParts } from "../jig/jig-part.ts";
import { csvText, headCell, numberCell, tapeCell } from "./csv.ts";

/** Every place of the jig sheets: part, mark, name, forward, out and up of the design position, in the document's unit. */
export function pointsCsv(corner: Corner): string {
  const { units } = corner.car;
  const head = ["part", "mark", "place", ...["forward", "out", "up"].map((name) => headCell(name, "length", units))];
  const rows = jigParts(corner).flatMap((part) =>
    part.points.map(({ mark, label, point }) => [
      part.title,
      mark,
      label,
      ...[point.x, point.y, point.z].map((value) => numberCell(value, "length", units)),
    ]),
  );
  return csvText([head, ...rows]);
}

/** Every distance of the jig sheets, exact and as the tape reads it. */
export function distancesCsv(corner: Corner): string {
  const { units } = corner.car;
  const head = ["part", "from", "to", headCell("distance", "length", units), "as the tape reads"];
  const rows = jigParts(corner).flatMap((part) =>
    part.points.flatMap((from, i) =>
      part.points.slice(i + 1).map((to) => {
        const length = apart(from, to);
        return [part.title, from.label, to.label, numberCell(length, "length", units), tapeCell(length, units)];
      }),
    ),
  );
  return csvText([head, ...rows]);
}
