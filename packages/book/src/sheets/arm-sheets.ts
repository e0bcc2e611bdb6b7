import type { Primitive } from "@armwright/drawing";
import { threadWords, tubeWords } from "../cut/hardware.ts";
import { apart, type JigPart, jigParts } from "../jig/jig-part.ts";
import { isSeenApart, type Measure, partView } from "../paper/part-view.ts";
import { FROM_ABOVE, FROM_BEHIND, onTheRight, type Side } from "../paper/side.ts";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

const ARMS = ["lower-arm", "upper-arm", "trailing-arm"];

/** A sheet an arm, left and right each, so that nobody makes two left ones. */
export function armSheets(makings: Makings): readonly Sheet[] {
  return jigParts(makings.study.corner)
    .filter(({ id }) => ARMS.includes(id))
    .flatMap((part) => (["left", "right"] as const).map((hand) => armSheet(part, hand, makings)));
}

function armSheet(part: JigPart, hand: "left" | "right", makings: Makings): Sheet {
  const { room, study } = makings;
  const lines = makings.cuts.lines.filter(({ piece }) => piece.part === part.id.replace("-", " "));
  const tubes = lines.map(({ piece }) => piece);
  const sides = [FROM_ABOVE, FROM_BEHIND].map((side) => (hand === "left" ? side : onTheRight(side)));
  const heights = [room.height * 0.37, room.height * 0.24];
  const parts: Primitive[] = [];
  let top = room.y;
  sides.forEach((side, index) => {
    const height = heights[index]!;
    const drawn = partView({ tubes, points: part.points, measures: measuresIn(side, part, makings) }, side, {
      x: room.x,
      y: top,
      width: room.width,
      height,
    });
    parts.push(...drawn.parts);
    top += height + 2;
  });
  const floor = room.y + room.height;
  const half = room.width * 0.56;
  const tubeRows = table(
    [
      { head: "tube", share: 9, bold: true },
      { head: "size", share: 36 },
      { head: "cut", share: 16, align: "end", bold: true },
      { head: "ends", share: 27 },
      { head: "as built", share: 18 },
    ],
    lines.map(({ number, piece, fromTemplate, toTemplate }) => [
      `${number}`,
      `${tubeWords(piece.diameter, piece.wall, study.car.units)} ${piece.material}`,
      tape(makings, piece.length),
      [fromTemplate, toTemplate].map((template) => (template === null ? "square" : `T${template}`)).join(", "),
      "",
    ]),
    { left: room.x, top, width: half, floor },
    { isForm: true, size: "label", rowHeight: 8 },
  );
  const places = table(
    [
      { head: "", share: 8, bold: true },
      { head: "place", share: 50 },
      { head: "thread", share: 42 },
    ],
    part.points.map(({ mark, label }) => [mark, label, threadAt(label, makings)]),
    { left: room.x + half + 4, top, width: room.width - half - 4, floor },
    { isForm: true, size: "label" },
  );
  const note = paragraph(
    "Bungs in, jam nuts and real rod ends or dummies on, before the first tack. Tack all round, measure against the jig sheet, cycle; weld out in the jig, sides alternating. Tabs: tie each to a tube's node, weld all round but for the last 1/4 in at a plate's end.",
    room.x,
    Math.max(tubeRows.bottom, places.bottom) + 3,
    room.width,
    { ink: "ink-2" },
  );
  parts.push(...tubeRows.parts, ...places.parts);
  if (note.bottom < floor) parts.push(...note.parts);
  return {
    id: `${part.id}-${hand}`,
    title: `${part.title}, ${hand.toUpperCase()}, make 1`,
    note: `${hand === "right" ? "mirror image of the left; " : ""}${lengthsIn(makings)}`,
    parts,
  };
}

/** `3/4-16 RH` where a rod end screws in. */
function threadAt(label: string, { study }: Makings): string {
  const pivot = study.corner.pivots.find((each) => each.label === label);
  const rodEnd = pivot && study.car.rodEnds.find((each) => each.pivot === pivot.id);
  return rodEnd ? `${threadWords(rodEnd, study.car.units)} ${rodEnd.hand === "left" ? "LEFT hand" : "RH"}` : "";
}

/** Between pivots where this view shows them in true length; mounts from the first pivot, level and upright. */
function measuresIn(side: Side, part: JigPart, makings: Makings): Measure[] {
  const { corner } = makings.study;
  const pivots = part.points.filter(({ label }) => corner.pivots.some((pivot) => pivot.label === label));
  const mounts = part.points.filter((point) => !pivots.includes(point));
  const measures: Measure[] = [];
  const isFlat = side.title === FROM_ABOVE.title;
  if (isFlat) {
    pivots.forEach((a, i) => {
      for (const b of pivots.slice(i + 1)) {
        if (isSeenApart(side, a.point, b.point)) {
          measures.push({ from: a.point, to: b.point, words: tape(makings, apart(a, b)) });
        }
      }
    });
  }
  const first = pivots[0];
  if (!first) return measures;
  for (const mount of mounts) {
    if (isFlat) {
      measures.push({
        from: first.point,
        to: mount.point,
        words: `${mount.mark} ${tape(makings, Math.abs(side.across(mount.point) - side.across(first.point)))}`,
        along: "level",
      });
    }
    const rise = side.up(mount.point) - side.up(first.point);
    if (Math.abs(rise) > 0.004) {
      measures.push({
        from: first.point,
        to: mount.point,
        words: `${mount.mark} ${tape(makings, Math.abs(rise))}`,
        along: "upright",
      });
    }
  }
  return measures;
}
