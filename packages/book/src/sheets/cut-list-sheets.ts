import { area, type Box, type Primitive, rectangle, spot, text, widthOf } from "@armwright/drawing";
import { DEGREE, formatNumber, formatValue, toUnit, unitOf } from "@armwright/engine";
import type { CutLine, CutList } from "../cut/cut-list.ts";
import type { Bar } from "../cut/cut-plan.ts";
import { hardware, threadWords, tubeWords } from "../cut/hardware.ts";
import type { TubeEnd } from "../cut/tube-piece.ts";
import type { Block } from "../paper/flow.ts";
import { PEN } from "../paper/leaf.ts";
import { flowSheets } from "./flow-sheets.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";
import { tubeNumber } from "./template-sheets.ts";

/** Every tube with its length, its ends and its template; how the bars are cut; what has to be bought. */
export function cutListSheets(makings: Makings): readonly Sheet[] {
  const list = makings.cuts;
  if (list.lines.length === 0) return hardwareSheets(list, makings);
  return [...tubesSheets(list, makings), ...barsSheets(list, makings), ...hardwareSheets(list, makings)];
}

function tubesSheets(list: CutList, makings: Makings): readonly Sheet[] {
  const { units, strength } = makings.study.car;
  const notes = [
    "Cut each twice: left and right. A coped tube's length runs from longest tip to longest tip; saw it square, then grind to the template. A tube coped at both ends: scribe one line along it and lay both papers' seams on that line. Right side: wrap the same paper printed side in.",
    strength
      ? ""
      : `Walls and steel are not in the document: ${wallWords(0.12, units)} (arms) and ${wallWords(0.095, units)} (links) of DOM 1020 stand here for them. Enter yours.`,
    list.lines.some(({ piece }) => piece.isAssumed)
      ? "Cross tubes are a starting frame made from the car's points: draw your own before cutting."
      : "",
    list.templates.some(({ end }) => end.pastEndOf.length > 0)
      ? "Past its END: that cope reaches past the end of the tube that it sits on, where a bung stands, or nothing. Its template is true only where what stands there is as thick as that tube: leave it long, fit it on the car, and tie both with a plate."
      : "",
    ...assumedBungs(list),
  ].filter((words) => words !== "");
  const total = list.lines.reduce((sum, { mass, count }) => sum + mass * count, 0);
  return flowSheets(
    { id: "cut-list", title: "Cut list", note: lengthsIn(makings) },
    [
      { kind: "words", words: notes.join(" "), style: { ink: "ink-2" } },
      {
        kind: "table",
        columns: [
          { head: "no.", share: 5, bold: true },
          { head: "tube", share: 23 },
          { head: "size", share: 14 },
          { head: "centres", share: 9, align: "end" },
          { head: "CUT", share: 9, align: "end", bold: true },
          { head: "one end", share: 20 },
          { head: "other end", share: 20 },
          { head: "each", share: 7, align: "end" },
        ],
        rows: list.lines.map((line) => [
          `${line.number}`,
          line.piece.name,
          `${tubeWords(line.piece.diameter, line.piece.wall, units)} ${line.piece.material}`,
          tape(makings, line.piece.centres),
          tape(makings, line.piece.length),
          endWords(line.piece.from, line.fromTemplate, makings),
          endWords(line.piece.to, line.toTemplate, makings),
          massWords(line, makings),
        ]),
        style: { isForm: true, size: "label", rowHeight: 9 },
      },
      {
        kind: "words",
        words: `All tubes together, both sides: ${formatValue(total, "mass", units)}.`,
        style: { size: "text" },
      },
    ],
    makings,
  );
}

/** `.120 in`, `3.05 mm`. */
const wallWords = (inches: number, units: Makings["study"]["car"]["units"]): string =>
  units === "metric" ? `${formatNumber(inches * 25.4, 2)} mm` : `${formatNumber(inches, 3).replace(/^0/, "")} in`;

/** What was put in for rod ends, once. */
const assumedBungs = ({ lines }: CutList): string[] => {
  const all = lines
    .flatMap(({ piece }) => [piece.from, piece.to])
    .flatMap((end) => (end.kind === "bung" ? end.setBack.assumed : []));
  return all.length === 0 ? [] : [`Assumed: ${[...new Set(all)].join("; ")}.`];
};

function endWords(end: TubeEnd, template: number | null, { study, cuts }: Makings): string {
  const { rodEnds, units } = study.car;
  switch (end.kind) {
    case "bung": {
      const rodEnd = rodEnds.find(({ pivot }) => pivot === end.pivot);
      return `square; bung ${rodEnd ? threadWords(rodEnd, units) : ""} ${end.hand === "left" ? "LEFT hand" : "RH"}`;
    }
    case "cope":
      return `cope T${template}, ${formatNumber(end.angle / DEGREE, 0)}° onto tube ${end.onto.map(({ id }) => tubeNumber(id, cuts.lines)).join(" and ")}${end.pastEndOf.length > 0 ? "; past its END" : ""}`;
    case "square":
      return `square, fit at ${end.at}`;
  }
}

const massWords = ({ mass }: CutLine, { study }: Makings): string =>
  `${formatNumber(toUnit(mass, "mass", study.car.units), study.car.units === "metric" ? 2 : 1)} ${unitOf("mass", study.car.units)}`;

function barsSheets(list: CutList, makings: Makings): readonly Sheet[] {
  const { units } = makings.study.car;
  const proven = list.stock.every(({ plan }) => plan.isFewest);
  const intro = `Bars of ${formatValue(list.bar, "length", units)}, saw cut ${formatValue(list.kerf, "length", units)} (common practice: change them if yours differ). ${
    proven
      ? "No way of cutting needs fewer bars: every way was looked at, or the lengths alone show it."
      : "Near the fewest bars; not every way of cutting was looked at."
  } Numbers are those of the cut list, L and R; lengths stand there too.`;
  return flowSheets(
    { id: "bars", title: "How the bars are cut", note: lengthsIn(makings) },
    [
      { kind: "words", words: intro, style: { ink: "ink-2" }, gap: 2 },
      ...list.stock.flatMap(({ tube, material, plan }): Block[] => [
        { kind: "head", words: `${tube} ${material}: ${plan.bars.length} ${plan.bars.length === 1 ? "bar" : "bars"}` },
        ...plan.tooLong.map(
          ({ name, length }): Block => ({
            kind: "words",
            words: `${name} is longer than a bar: ${tape(makings, length)}`,
          }),
        ),
        ...plan.bars.map(
          (bar): Block => ({ kind: "drawn", height: BAR, draw: (box) => barParts(bar, list, box, makings) }),
        ),
      ]),
    ],
    makings,
  );
}

/** Height of a bar as drawn, mm. */
const BAR = 9;

function barParts({ pieces, offcut }: Bar, list: CutList, room: Box, makings: Makings): Primitive[] {
  const scale = room.width / list.bar;
  const parts: Primitive[] = [];
  let x = room.x;
  for (const piece of pieces) {
    const width = piece.length * scale;
    parts.push(
      area("bar", rectangle(x, room.y, width, BAR), { weight: "visible" }),
      ...inside(piece.name, x, width, room.y + 4.2, true),
      ...inside(tape(makings, piece.length), x, width, room.y + 8.2, false),
    );
    x += width + list.kerf * scale;
  }
  const rest = room.x + room.width - x;
  if (rest > 1) {
    parts.push(area("bar", rectangle(x, room.y, rest, BAR), { hatch: "keep-out", weight: "hair" }));
    if (rest > 24) {
      parts.push(
        text("bar", spot(x + rest / 2, room.y + 6), `left over ${tape(makings, offcut)}`, {
          anchor: "middle",
          ink: "ink",
          halo: "paper",
        }),
      );
    }
  }
  return parts;
}

/** Words in a piece of a bar, where they find room in it. */
const inside = (words: string, x: number, width: number, y: number, bold: boolean): Primitive[] =>
  widthOf(words, "label", PEN) < width - 0.5
    ? [text("bar", spot(x + width / 2, y), words, { anchor: "middle", ink: "ink", bold })]
    : [];

function hardwareSheets(list: CutList, makings: Makings): readonly Sheet[] {
  const rows = hardware(
    makings.study.corner,
    list.lines.map(({ piece }) => piece),
  ).map(({ count, name, size, where, note }) => [`${count}`, name, size, where, note, ""]);
  return flowSheets(
    { id: "hardware", title: "Bill of materials, without tube", note: "both sides of the car" },
    [
      {
        kind: "words",
        words:
          "Grip: the plain shank, from under the head to where the thread begins. It reaches through both tabs, and the thread begins inside the washer. Order when the sheet What is safe to buy now says so.",
        style: { ink: "ink-2" },
      },
      {
        kind: "table",
        columns: [
          { head: "pcs", share: 6, align: "end", bold: true },
          { head: "part", share: 22 },
          { head: "size", share: 20 },
          { head: "where", share: 36 },
          { head: "look at", share: 32 },
          { head: "got", share: 6 },
        ],
        rows,
        style: { isForm: true, size: "label", rowHeight: 8 },
      },
    ],
    makings,
  );
}
