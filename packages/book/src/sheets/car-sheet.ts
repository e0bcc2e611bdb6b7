import type { Drawing, Primitive } from "@armwright/drawing";
import { type DirectionReport, positionOf, solveAt, unitOf } from "@armwright/engine";
import { carView } from "../paper/car-view.ts";
import { moved } from "../paper/moved.ts";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { CAUTIONS } from "./cautions.ts";
import { lengthsIn, type Makings, type Sheet, said, tape } from "./sheet.ts";

/** The car on one page: three views at ride height, the numbers that matter, what stops the wheel, cautions. */
export function carSheets(makings: Makings): readonly Sheet[] {
  const { study, room } = makings;
  const solved = solveAt(study.corner, 0);
  if (!solved) return [];
  const position = positionOf(study.corner, solved.state);
  const parts: Primitive[] = [];
  const rear = carView(study, position, "rear", room.width * 0.64, room.height * 0.43);
  parts.push(...placed(rear.drawing, room.x, room.y));
  const side = room.x + room.width * 0.66;
  const small = room.width - room.width * 0.66;
  const above = carView(study, position, "top", small, room.height * 0.21);
  const left = carView(study, position, "left", small, room.height * 0.215);
  parts.push(...placed(above.drawing, side, room.y), ...placed(left.drawing, side, room.y + room.height * 0.215));
  const top = room.y + room.height * 0.435;
  const half = (room.width - 6) / 2;
  const foot = cautions(makings);
  const floor = foot.top - 2;
  const numbers = table(
    [
      { head: "numbers that matter", share: 62 },
      { head: "", share: 38, align: "end", bold: true },
    ],
    mainNumbers(makings, solved.row),
    { left: room.x, top, width: half, floor },
    { padding: 0.8 },
  );
  const stopsOf = (most: number) =>
    table(
      [
        { head: "what stops the wheel", share: 42 },
        { head: "travel", share: 20, align: "end", bold: true },
        { head: "left to it", share: 38, align: "end" },
      ],
      [...stopRows(makings, study.travel.bump, most), ...stopRows(makings, study.travel.droop, most)],
      { left: room.x + half + 6, top, width: half, floor },
      { padding: 0.8 },
    );
  // As many hard limits as the sheet has room for; the settings and the screen have them all.
  const stops = [3, 2, 1].map(stopsOf).find(({ left }) => left.length === 0) ?? stopsOf(0);
  parts.push(...numbers.parts, ...stops.parts, ...foot.parts);
  return [
    {
      id: "car",
      title: study.car.name,
      note: `at ride height; from behind 1 : ${rear.ratio}, above 1 : ${above.ratio}, left 1 : ${left.ratio}; ${lengthsIn(makings)}`,
      parts,
    },
  ];
}

const placed = (drawing: Drawing, dx: number, dy: number): Primitive[] =>
  drawing.parts.map((part) => moved(part, dx, dy));

function mainNumbers(makings: Makings, row: Float64Array): string[][] {
  const { study } = makings;
  const { car, corner, travel } = study;
  const unit = unitOf("length", car.units);
  const of = (id: string): number | null =>
    study.quantities.find((quantity) => quantity.id === id)?.read(row, corner) ?? null;
  const total = travel.bump.stop.travel - travel.droop.stop.travel;
  const track = 2 * corner.attitude.designContact.y;
  const line = (label: string, id: string): string[][] => {
    const quantity = study.quantities.find((each) => each.id === id);
    return quantity ? [[label, said(makings, of(id), quantity.dimension)]] : [];
  };
  return [
    ["wheel travel", `${tape(makings, total)} ${unit}`],
    ["track width", `${tape(makings, track)} ${unit}`],
    ["wheelbase", `${tape(makings, car.chassis.wheelbase)} ${unit}`],
    ...line("under the body", "groundClearance"),
    ...line("camber", "camber"),
    ...line("toe, this wheel", "toe"),
    ...line("shock, eye to eye", "shockLength"),
    ...line("motion ratio, shock ÷ wheel", "motionRatio"),
    ...line("half shaft, joint to joint", "shaftLength"),
    ...line("roll centre height", "rollCentre"),
  ];
}

const STOP_WORDS = {
  "bump-stop": "bump stop solid",
  strap: "strap taut",
  shock: "shock itself",
  travel: "travel aimed at",
} as const;

/** The chosen stop, then the first hard limits outward. */
function stopRows(makings: Makings, { direction, stop, limits }: DirectionReport, most: number): string[][] {
  const mark = (travel: number): string => `${travel < 0 ? "−" : "+"}${tape(makings, Math.abs(travel))}`;
  const hard = limits.filter(({ nature }) => nature === "hard").slice(0, most);
  return [
    [`${direction.toUpperCase()}: ${STOP_WORDS[stop.by]}`, mark(stop.travel), "your stop"],
    ...hard.map((limit) => [
      limit.label,
      limit.pastAtRide ? "at ride" : mark(limit.travel),
      limit.pastAtRide
        ? "PAST"
        : `${said(makings, Math.abs(limit.spare), limit.dimension)} ${limit.spare < 0 ? "TOO FAR" : limit.spareWord}`,
    ]),
  ];
}

/** At the sheet's foot, as high as they need. */
function cautions({ room }: Makings): { readonly parts: readonly Primitive[]; readonly top: number } {
  const set = (top: number): { readonly parts: readonly Primitive[]; readonly bottom: number } => {
    const head = paragraph("Before you begin", room.x, top, room.width, { size: "text", bold: true });
    let below = head.bottom;
    const parts: Primitive[] = [...head.parts];
    for (const caution of CAUTIONS) {
      const block = paragraph(caution, room.x, below, room.width);
      parts.push(...block.parts);
      below = block.bottom;
    }
    return { parts, bottom: below };
  };
  const top = room.y + room.height - set(0).bottom;
  return { parts: set(top).parts, top };
}
