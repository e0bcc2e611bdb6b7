import { area, bar, circle, type Primitive, rectangle, spot, stroke, text } from "@armwright/drawing";
import type { CutLine } from "../cut/cut-list.ts";
import { threadWords, tubeWords } from "../cut/hardware.ts";
import type { BungEnd } from "../cut/tube-piece.ts";
import { levelDimensions } from "../paper/level-dimensions.ts";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** Links on a sheet. */
const ON_A_SHEET = 2;
const HEIGHT = 62;
const APART = 104;

/** Every link: ball to ball, tube to cut, thread and hand of each end. Two of each: left and right are alike. */
export function linkSheets(makings: Makings): readonly Sheet[] {
  const links = makings.cuts.lines.filter(
    ({ piece }) => piece.from.kind === "bung" && piece.to.kind === "bung" && piece.part === piece.name,
  );
  const sheets: Sheet[] = [];
  for (let from = 0; from < links.length; from += ON_A_SHEET) {
    const shown = links.slice(from, from + ON_A_SHEET);
    const parts = shown.flatMap((line, index) => linkParts(line, makings.room.y + index * APART, makings));
    sheets.push({
      id: `links-${from / ON_A_SHEET + 1}`,
      title: shown.length === 1 ? `${capital(shown[0]!.piece.name)}, make 2` : "Links, make 2 of each",
      note: `left and right alike; not to scale; ${lengthsIn(makings)}`,
      parts,
    });
  }
  return sheets;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function linkParts({ piece, number }: CutLine, top: number, makings: Makings): Primitive[] {
  const { room, study } = makings;
  const ends = [piece.from, piece.to] as readonly BungEnd[];
  const [inner, outer] = ends as [BungEnd, BungEnd];
  const y = top + 24;
  const left = room.x + 14;
  const right = room.x + room.width - 14;
  const face = 26;
  const half = 5;
  const parts: Primitive[] = [
    text("title", spot(room.x, top + 5), `Tube ${number}: ${piece.name}`, { size: "reading", bold: true, ink: "ink" }),
    stroke("rod-end", spot(left, y), spot(left + face, y), { weight: "outline" }),
    stroke("rod-end", spot(right - face, y), spot(right, y), { weight: "outline" }),
    area("bung", bar(spot(left + face - 3, y), spot(left + face + 2, y), half * 1.12)),
    area("bung", bar(spot(right - face - 2, y), spot(right - face + 3, y), half * 1.12)),
    area("tube", rectangle(left + face, y - half, right - left - 2 * face, 2 * half)),
    stroke("tube", spot(left + 6, y), spot(right - 6, y), { weight: "hair", dash: "centre", ink: "ink-2" }),
    ...[left, right].flatMap((x) => [area("pivot", circle(spot(x, y), 5)), area("pivot", circle(spot(x, y), 2.2))]),
    ...[left + face - 6, right - face + 3].map((x) => area("jam-nut", rectangle(x, y - 4, 3, 8))),
    text("mark", spot(left - 14, y - 8), `INNER, ${handWords(inner)}`, { anchor: "start", ink: "ink", bold: true }),
    text("mark", spot(right + 14, y - 8), `OUTER, ${handWords(outer)}`, { anchor: "end", ink: "ink", bold: true }),
  ];
  const box = { x: room.x, y: top, width: room.width, height: HEIGHT };
  const wishes = [
    {
      id: "cut",
      from: spot(left + face, y + half),
      to: spot(right - face, y + half),
      text: `cut ${tape(makings, piece.length)}`,
      offsets: [7, 9],
    },
    {
      id: "inner",
      from: spot(left, y),
      to: spot(left + face, y),
      text: tape(makings, inner.setBack.length),
      offsets: [12, 14],
    },
    {
      id: "outer",
      from: spot(right - face, y),
      to: spot(right, y),
      text: tape(makings, outer.setBack.length),
      offsets: [12, 14],
    },
    {
      id: "centres",
      from: spot(left, y),
      to: spot(right, y),
      text: `ball to ball ${tape(makings, piece.centres)}`,
      offsets: [21, 24],
    },
  ];
  parts.push(...levelDimensions(wishes, { from: spot(left, y), to: spot(right, y), half: 6.5 }, box));
  const list = table(
    [
      { head: "", share: 12, bold: true },
      { head: "thread", share: 22 },
      { head: "hand", share: 22, bold: true },
      { head: "thread in the bung, mid adjustment", share: 26 },
      { head: "ball to ball, as built", share: 24 },
    ],
    [
      ["inner", inner],
      ["outer", outer],
    ].map(([name, end]) => endRow(name as string, end as BungEnd, makings)),
    { left: room.x, top: y + 28, width: room.width, floor: room.y + room.height },
    { isForm: true },
  );
  const note = paragraph(
    `${tubeWords(piece.diameter, piece.wall, study.car.units)} ${piece.material}. Never less than 1 1/2 thread diameters in the bung: drill a witness hole there. Mark the left-hand end with a groove.`,
    room.x,
    list.bottom + 1,
    room.width,
    { ink: "ink-2" },
  );
  return [...parts, ...list.parts, ...note.parts];
}

const handWords = ({ hand }: BungEnd): string => (hand === "left" ? "LEFT hand" : "RH");

function endRow(name: string, end: BungEnd, makings: Makings): string[] {
  const { rodEnds, units } = makings.study.car;
  const rodEnd = rodEnds.find(({ pivot }) => pivot === end.pivot);
  return [
    name,
    rodEnd ? threadWords(rodEnd, units) : "not entered",
    end.hand === "left" ? "LEFT" : "right",
    tape(makings, end.setBack.engaged),
    "",
  ];
}
