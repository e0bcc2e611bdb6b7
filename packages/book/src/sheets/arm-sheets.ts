import { threadWords, tubeWords } from "../cut/hardware.ts";
import { apart, type JigPart, jigParts } from "../jig/jig-part.ts";
import type { Block } from "../paper/flow.ts";
import { isSeenApart, type Measure, partView } from "../paper/part-view.ts";
import { FROM_ABOVE, FROM_BEHIND, onTheRight, type Side } from "../paper/side.ts";
import { flowSheets } from "./flow-sheets.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

const ARMS = ["lower-arm", "upper-arm", "trailing-arm"];

/** A sheet an arm, left and right each, so that nobody makes two left ones. */
export function armSheets(makings: Makings): readonly Sheet[] {
  return jigParts(makings.study.corner)
    .filter(({ id }) => ARMS.includes(id))
    .flatMap((part) => (["left", "right"] as const).flatMap((hand) => armSheet(part, hand, makings)));
}

function armSheet(part: JigPart, hand: "left" | "right", makings: Makings): readonly Sheet[] {
  const { study } = makings;
  const lines = makings.cuts.lines.filter(({ piece }) => piece.part === part.id.replace("-", " "));
  const head: Pick<Sheet, "id" | "title" | "note"> = {
    id: `${part.id}-${hand}`,
    title: `${part.title}, ${hand.toUpperCase()}, make 1`,
    note: `${hand === "right" ? "mirror image; " : ""}${lengthsIn(makings)}`,
  };
  const numbers = new Map(lines.map(({ piece, number }) => [piece, number]));
  const tables: Block[] = [
    {
      kind: "table",
      columns: [
        { head: "tube", share: 8, bold: true },
        { head: "name", share: 34 },
        { head: "size", share: 28 },
        { head: "cut", share: 12, align: "end", bold: true },
        { head: "ends", share: 16 },
        { head: "as built", share: 16 },
      ],
      rows: lines.map(({ number, piece, fromTemplate, toTemplate }) => [
        `${number}`,
        piece.name.replace(`${piece.part}, `, ""),
        `${tubeWords(piece.diameter, piece.wall, study.car.units)} ${piece.material}`,
        tape(makings, piece.length),
        endsWords(fromTemplate, toTemplate),
        "",
      ]),
      style: { isForm: true, size: "label", rowHeight: 6.4 },
    },
    placesTable(part, makings),
    { kind: "words", words: weldingWords(makings), style: { ink: "ink-2" } },
  ];
  const views = [FROM_ABOVE, FROM_BEHIND].map(
    (side, index): Block => ({
      kind: "view",
      share: index === 0 ? 0.62 : 0.38,
      least: index === 0 ? 78 : 46,
      draw: (box) =>
        partView(
          {
            tubes: lines.map(({ piece }) => piece),
            points: part.points,
            numbers,
            measures: measuresIn(side, part, makings),
          },
          hand === "left" ? side : onTheRight(side),
          box,
        ).parts,
    }),
  );
  return flowSheets(head, [...views, ...tables], makings);
}

const weldingWords = ({ study }: Makings): string =>
  `Bungs in, jam nuts and real rod ends or dummies on, before the first tack. Tack all round, measure against the jig sheet, cycle; weld out in the jig, sides alternating. Tabs: tie each to a tube's node, weld all round but for the last ${study.car.units === "metric" ? "6 mm" : "1/4 in"} at a plate's end. Diagonals within ${study.car.units === "metric" ? "1.5 mm" : "1/16 in"} of each other before and after.`;

const endsWords = (...templates: readonly (number | null)[]): string =>
  templates.every((template) => template === null)
    ? "both square"
    : templates.map((template) => (template === null ? "square" : `T${template}`)).join(", ");

/** Marks with their places and threads, two to a row. */
function placesTable({ points }: JigPart, makings: Makings): Block {
  const half = Math.ceil(points.length / 2);
  const cells = (index: number): string[] => {
    const place = points[index];
    return place ? [place.mark, place.label, threadAt(place.label, makings)] : ["", "", ""];
  };
  const columns = [
    { head: "", share: 5, bold: true },
    { head: "place", share: 46 },
    { head: "thread", share: 28 },
  ];
  return {
    kind: "table",
    columns: [...columns, ...columns],
    rows: Array.from({ length: half }, (_, index) => [...cells(index), ...cells(index + half)]),
    style: { isForm: true, size: "label" },
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
