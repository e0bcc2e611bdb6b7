import { type Primitive, spot, stroke, text, travelReading } from "@armwright/drawing";
import {
  type CardReading,
  type CycleCertainty,
  cardReadings,
  cardValue,
  cycleCertainty,
  DEGREE,
  formatLength,
  formatNumber,
  INCH,
  type TyreGap,
  tyreGaps,
  type UnitSystem,
  unitOf,
} from "@armwright/engine";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** Cards on one sheet. */
const CARDS = 2;

/** One card a height: full bump, ride, full droop and one between each; what must be read, and blanks to write in. */
export function cycleCards(makings: Makings): readonly Sheet[] {
  const { study } = makings;
  const bump = study.travel.bump.stop.travel;
  const droop = study.travel.droop.stop.travel;
  const travels = [bump, bump / 2, 0, droop / 2, droop];
  const names = ["Full bump", "Half bump", "Ride height", "Half droop", "Full droop"];
  const certainty = cycleCertainty(study.car, travels);
  const tyre = tyreGaps(study.car, travels);
  const heights = travels.map((travel, index): Height => ({ name: names[index]!, travel, tyre: tyre[index] ?? null }));
  const sheets: Sheet[] = [];
  for (let from = 0; from < heights.length; from += CARDS) {
    const shown = heights.slice(from, from + CARDS);
    sheets.push({
      id: `cycle-cards-${from / CARDS + 1}`,
      title: `Cycle cards: ${shown.map(({ name }) => name.toLowerCase()).join(", ")}`,
      note: lengthsIn(makings),
      parts: cards(shown, certainty, makings),
    });
  }
  return sheets;
}

interface Height {
  readonly name: string;
  readonly travel: number;
  readonly tyre: TyreGap | null;
}

function cards(heights: readonly Height[], certainty: CycleCertainty, makings: Makings): Primitive[] {
  const { study, room } = makings;
  const intro = paragraph(
    `Springs off, gas let down, real tyre on. The tyre hangs lower than the floor at ride height: raise the body evenly by at least ${tape(makings, raised(makings))} ${unitOf("length", study.car.units)} on stands, write how much here and add it to every height over the floor. Block the hub to the height, then read both sides. ± is two standard deviations of what building and tape allow together; a reading farther off has a cause: enter it as built.`,
    room.x,
    room.y,
    room.width,
    { ink: "ink-2" },
  );
  const blank = intro.bottom + 6;
  const parts: Primitive[] = [
    ...intro.parts,
    text("form", spot(room.x, blank), "body raised over ride height by", { size: "text", ink: "ink" }),
    stroke("form", spot(room.x + 66, blank + 0.6), spot(room.x + 100, blank + 0.6), { weight: "thin" }),
  ];
  const start = blank + 1;
  const share = (room.y + room.height - start) / CARDS;
  heights.forEach(({ name, travel, tyre }, index) => {
    const top = start + index * share;
    const head = paragraph(`${name}, travel ${travelReading(travel, study.car.units)}`, room.x, top, room.width, {
      size: "title",
      bold: true,
    });
    parts.push(...head.parts);
    const set = table(
      [
        { head: "", share: 52 },
        { head: "must read", share: 15, align: "end", bold: true },
        { head: "±", share: 9, align: "end" },
        { head: "left reads", share: 14 },
        { head: "right reads", share: 14 },
      ],
      [
        ...cardReadings(study.corner).flatMap((card) => cardRow(card, travel, certainty, makings)),
        ...tyreRow(tyre, makings),
      ],
      { left: room.x, top: head.bottom, width: room.width, floor: top + share },
      { isForm: true, size: "text", rowHeight: 7.2, padding: 0.9 },
    );
    if (set.left.length > 0) throw new Error("bug in the book: a cycle card is higher than half a sheet");
    parts.push(...set.parts);
  });
  return parts;
}

function cardRow(card: CardReading, travel: number, certainty: CycleCertainty, { study }: Makings): string[][] {
  const { corner, car } = study;
  const value = cardValue(corner, card, travel);
  if (value === null) return [];
  const sd = certainty.readings.find((each) => each.travel === travel && each.quantity.id === card.quantity)?.sd ?? 0;
  // What the quantity's spread is on the tape: toe is read across the rim.
  const built = card.kind === "toe-at-rim" ? Math.sin(sd) * car.wheel.rimDiameter : sd;
  const plusMinus = 2 * Math.hypot(built, card.plusMinus / 2);
  return [[card.label, words(value, card, car.units), words(plusMinus, card, car.units), "", ""]];
}

/** How far the body has to stand over ride height for the tyre to hang free at full droop, m: rounded up, and a little. */
function raised({ study }: Makings): number {
  const step = study.car.units === "metric" ? 0.01 : INCH;
  return Math.ceil(-study.travel.droop.stop.travel / step + 1) * step;
}

/** Of a careful reading with a tape between rubber and steel, two standard deviations, m; common practice. */
const GAP_TAPE = INCH / 8;

function tyreRow(tyre: TyreGap | null, { study }: Makings): string[][] {
  if (!tyre) return [];
  const card = { dimension: "length", isFine: false } as const;
  const plusMinus = 2 * Math.hypot(tyre.sd, GAP_TAPE / 2);
  return [
    [
      `nearest to the tyre: ${tyre.label}`,
      tyre.gap < 0 ? "TOUCHES" : words(tyre.gap, card, study.car.units),
      words(plusMinus, card, study.car.units),
      "",
      "",
    ],
  ];
}

function words(
  value: number,
  { dimension, isFine }: Pick<CardReading, "dimension" | "isFine">,
  units: UnitSystem,
): string {
  const minus = (text: string): string => text.replace("-", "−");
  if (dimension === "angle") return `${minus(formatNumber(value / DEGREE, 1))}°`;
  return minus(formatLength(value, units, { denominator: isFine ? 32 : 16 }));
}
