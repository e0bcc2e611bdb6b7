import { type Primitive, travelReading } from "@armwright/drawing";
import { formatValue, type Quantity, solveAt, unitOf } from "@armwright/engine";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** What is read at each height: id of the quantity, how it is called on the card, where its reading comes from. */
interface CardLine {
  readonly id: string;
  readonly label: string;
  readonly from?: (value: number, makings: Makings) => number;
  /** Read to 1/32 in. */
  readonly isFine?: boolean;
}

const LINES: readonly CardLine[] = [
  { id: "wheelZ", label: "hub centre over the floor" },
  {
    id: "halfTrackChange",
    label: "tyre's middle out from the centreline, at the floor",
    from: (change, { study }) => study.corner.attitude.designContact.y + change,
  },
  { id: "camber", label: "camber, angle finder on the rim" },
  {
    id: "toe",
    label: "toe across the rim, front against rear (+ in)",
    from: (toe, { study }) => Math.sin(toe) * study.car.wheel.rimDiameter,
    isFine: true,
  },
  { id: "shockLength", label: "shock, eye to eye" },
  { id: "shaftLength", label: "half shaft, joint to joint" },
  { id: "slipEngagement", label: "spline still in" },
  {
    id: "strapSlack",
    label: "strap, hole to hole",
    from: (slack, { study }) => (study.car.strap?.length ?? 0) - slack,
  },
  {
    id: "bumpStopGap",
    label: "bump stop, base to landing place",
    from: (gap, { study }) => gap + (study.car.bumpStop?.reach ?? 0),
  },
];

/** Cards on one sheet. */
const CARDS = 2;

/** One card a height: full bump, ride, full droop and one between each; what must be read, and blanks to write in. */
export function cycleCards(makings: Makings): readonly Sheet[] {
  const { study } = makings;
  const bump = study.travel.bump.stop.travel;
  const droop = study.travel.droop.stop.travel;
  const heights: readonly Height[] = [
    { name: "Full bump", travel: bump },
    { name: "Half bump", travel: bump / 2 },
    { name: "Ride height", travel: 0 },
    { name: "Half droop", travel: droop / 2 },
    { name: "Full droop", travel: droop },
  ];
  const sheets: Sheet[] = [];
  for (let from = 0; from < heights.length; from += CARDS) {
    const shown = heights.slice(from, from + CARDS);
    sheets.push({
      id: `cycle-cards-${from / CARDS + 1}`,
      title: `Cycle cards: ${shown.map(({ name }) => name.toLowerCase()).join(", ")}`,
      note: lengthsIn(makings),
      parts: cards(shown, makings),
    });
  }
  return sheets;
}

interface Height {
  readonly name: string;
  readonly travel: number;
}

function cards(heights: readonly Height[], makings: Makings): Primitive[] {
  const { study, room } = makings;
  const intro = paragraph(
    "Body on stands at ride height, springs off, gas let down, real tyre on. Block the hub to the height, then read both sides. An empty must-read is not known yet.",
    room.x,
    room.y,
    room.width,
    { ink: "ink-2" },
  );
  const parts: Primitive[] = [...intro.parts];
  const share = (room.y + room.height - intro.bottom) / CARDS;
  heights.forEach(({ name, travel }, index) => {
    const top = intro.bottom + 2 + index * share;
    const head = paragraph(`${name}, travel ${travelReading(travel, study.car.units)}`, room.x, top, room.width, {
      size: "title",
      bold: true,
    });
    parts.push(...head.parts);
    const solved = solveAt(study.corner, travel);
    if (!solved) return;
    const set = table(
      [
        { head: "", share: 46 },
        { head: "must read", share: 20, align: "end", bold: true },
        { head: "left reads", share: 17 },
        { head: "right reads", share: 17 },
      ],
      LINES.flatMap((line) => cardRow(line, solved.row, makings)),
      { left: room.x, top: head.bottom, width: room.width, floor: top + share },
      { isForm: true, size: "text", rowHeight: 9 },
    );
    parts.push(...set.parts);
  });
  return parts;
}

function cardRow({ id, label, from, isFine }: CardLine, row: Float64Array, makings: Makings): string[][] {
  const { study } = makings;
  const quantity: Quantity | undefined = study.quantities.find((each) => each.id === id);
  const value = quantity?.read(row, study.corner) ?? null;
  if (!quantity || value === null) return [];
  const read = from ? from(value, makings) : value;
  const isLength = from !== undefined || quantity.dimension === "length";
  const words = isLength
    ? `${read < 0 ? "−" : ""}${tape(makings, Math.abs(read), isFine ? 32 : 16)} ${unitOf("length", study.car.units)}`
    : formatValue(read, quantity.dimension, study.car.units).replace(" deg", "°").replace("-", "−");
  return [[label, words, "", ""]];
}
