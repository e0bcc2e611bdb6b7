import { area, type Primitive, rectangle, spot, text, widthOf } from "@armwright/drawing";
import { formatNumber, formatValue, unitOf } from "@armwright/engine";
import type { CutLine, CutList } from "../cut/cut-list.ts";
import { hardware, threadWords, tubeWords } from "../cut/hardware.ts";
import type { TubeEnd } from "../cut/tube-piece.ts";
import { PEN } from "../paper/leaf.ts";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

const DEGREE = Math.PI / 180;

/** Every tube with its length, its ends and its template; how the bars are cut; what has to be bought. */
export function cutListSheets(makings: Makings): readonly Sheet[] {
  const list = makings.cuts;
  if (list.lines.length === 0) return [];
  return [tubesSheet(list, makings), barsSheet(list, makings), hardwareSheet(list, makings)];
}

function tubesSheet(list: CutList, makings: Makings): Sheet {
  const { room, study } = makings;
  const { units, strength } = study.car;
  const parts: Primitive[] = [];
  const notes = [
    "Cut each twice: left and right. A coped tube's length runs from longest tip to longest tip; saw it square, then grind to the template. Right side: wrap the same paper printed side in.",
    strength
      ? ""
      : "Walls and steel are not in the document: .120 in (arms) and .095 in (links) of DOM 1020 stand here for them. Enter yours.",
    list.lines.some(({ piece }) => piece.isAssumed)
      ? "Cross tubes are a starting frame made from the car's points: draw your own before cutting."
      : "",
    ...assumedBungs(list),
  ].filter((words) => words !== "");
  const intro = paragraph(notes.join(" "), room.x, room.y, room.width, { ink: "ink-2" });
  const set = table(
    [
      { head: "no.", share: 5, bold: true },
      { head: "tube", share: 24 },
      { head: "size", share: 13 },
      { head: "centres", share: 11, align: "end" },
      { head: "CUT", share: 12, align: "end", bold: true },
      { head: "one end", share: 16 },
      { head: "other end", share: 16 },
      { head: "each", share: 9, align: "end" },
    ],
    list.lines.map((line) => [
      `${line.number}`,
      line.piece.name,
      `${tubeWords(line.piece.diameter, line.piece.wall, units)} ${line.piece.material}`,
      tape(makings, line.piece.centres),
      tape(makings, line.piece.length),
      endWords(line.piece.from, line.fromTemplate, makings),
      endWords(line.piece.to, line.toTemplate, makings),
      massWords(line, makings),
    ]),
    { left: room.x, top: intro.bottom + 2, width: room.width, floor: room.y + room.height },
    { isForm: true, size: "label", rowHeight: 9 },
  );
  parts.push(...intro.parts, ...set.parts);
  const total = list.lines.reduce((sum, { mass, count }) => sum + mass * count, 0);
  const foot = paragraph(
    `All tubes together, both sides: ${formatValue(total, "mass", units)}.`,
    room.x,
    set.bottom + 3,
    room.width,
    { size: "text" },
  );
  parts.push(...foot.parts);
  return { id: "cut-list", title: "Cut list", note: lengthsIn(makings), parts };
}

/** What was put in for rod ends, once. */
const assumedBungs = ({ lines }: CutList): string[] => {
  const all = lines
    .flatMap(({ piece }) => [piece.from, piece.to])
    .flatMap((end) => (end.kind === "bung" ? end.setBack.assumed : []));
  return all.length === 0 ? [] : [`Assumed: ${[...new Set(all)].join("; ")}.`];
};

function endWords(end: TubeEnd, template: number | null, { study }: Makings): string {
  const { rodEnds, units } = study.car;
  switch (end.kind) {
    case "bung": {
      const rodEnd = rodEnds.find(({ pivot }) => pivot === end.pivot);
      return `square; bung ${rodEnd ? threadWords(rodEnd, units) : ""} ${end.hand === "left" ? "LEFT hand" : "RH"}`;
    }
    case "cope":
      return `cope T${template}, ${formatNumber(end.angle / DEGREE, 0)}° onto ${end.onto.map(({ name }) => name).join(" and ")}`;
    case "square":
      return `square, fit at ${end.at}`;
  }
}

const massWords = ({ mass }: CutLine, { study }: Makings): string =>
  study.car.units === "metric"
    ? `${formatNumber(mass, 2)} kg`
    : `${formatNumber(mass / 0.45359237, 1)} ${unitOf("mass", study.car.units)}`;

function barsSheet(list: CutList, makings: Makings): Sheet {
  const { room, study } = makings;
  const parts: Primitive[] = [];
  const proven = list.stock.every(({ plan }) => plan.isFewest);
  const intro = paragraph(
    `Bars of ${formatValue(list.bar, "length", study.car.units)}, saw cut ${formatValue(list.kerf, "length", study.car.units)} (common practice: change them if yours differ). ${
      proven
        ? "No way of cutting needs fewer bars: every way was looked at, or the lengths alone show it."
        : "Near the fewest bars; not every way of cutting was looked at."
    } Numbers are those of the cut list, L and R; lengths stand there too.`,
    room.x,
    room.y,
    room.width,
    { ink: "ink-2" },
  );
  parts.push(...intro.parts);
  let top = intro.bottom + 4;
  const scale = room.width / list.bar;
  for (const { tube, material, plan } of list.stock) {
    const head = paragraph(
      `${tube} ${material}: ${plan.bars.length} ${plan.bars.length === 1 ? "bar" : "bars"}`,
      room.x,
      top,
      room.width,
      {
        size: "reading",
        bold: true,
      },
    );
    parts.push(...head.parts);
    top = head.bottom + 1;
    for (const { name, length } of plan.tooLong) {
      const note = paragraph(`${name} is longer than a bar: ${tape(makings, length)}`, room.x, top, room.width);
      parts.push(...note.parts);
      top = note.bottom;
    }
    for (const bar of plan.bars) {
      let x = room.x;
      for (const piece of bar.pieces) {
        const width = piece.length * scale;
        parts.push(
          area("bar", rectangle(x, top, width, 9), { weight: "visible" }),
          ...inside(piece.name, x, width, top + 4.2, true),
          ...inside(tape(makings, piece.length), x, width, top + 8.2, false),
        );
        x += width + list.kerf * scale;
      }
      const rest = room.x + room.width - x;
      if (rest > 1) {
        parts.push(area("bar", rectangle(x, top, rest, 9), { hatch: "keep-out", weight: "hair" }));
        if (rest > 24) {
          parts.push(
            text("bar", spot(x + rest / 2, top + 6), `left over ${tape(makings, bar.offcut)}`, {
              anchor: "middle",
              ink: "ink",
              halo: "paper",
            }),
          );
        }
      }
      top += 12;
    }
    top += 3;
  }
  return { id: "bars", title: "How the bars are cut", note: lengthsIn(makings), parts };
}

/** Words in a piece of a bar, where they find room in it. */
const inside = (words: string, x: number, width: number, y: number, bold: boolean): Primitive[] =>
  widthOf(words, "label", PEN) < width - 0.5
    ? [text("bar", spot(x + width / 2, y), words, { anchor: "middle", ink: "ink", bold })]
    : [];

function hardwareSheet(list: CutList, makings: Makings): Sheet {
  const { room, study } = makings;
  const set = table(
    [
      { head: "pcs", share: 6, align: "end", bold: true },
      { head: "part", share: 24 },
      { head: "size", share: 20 },
      { head: "where", share: 28 },
      { head: "look at", share: 22 },
      { head: "got", share: 7 },
    ],
    hardware(
      study.car,
      list.lines.map(({ piece }) => piece),
    ).map(({ count, name, size, where, note }) => [`${count}`, name, size, where, note, ""]),
    { left: room.x, top: room.y, width: room.width, floor: room.y + room.height },
    { isForm: true, size: "label", rowHeight: 8 },
  );
  return { id: "hardware", title: "Rod ends, bungs, bolts", note: "both sides of the car", parts: set.parts };
}
