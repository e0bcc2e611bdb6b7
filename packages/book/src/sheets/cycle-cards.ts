import { type Primitive, travelReading } from "@armwright/drawing";
import {
  type CardReading,
  type CycleCertainty,
  cardReadings,
  cardValue,
  cycleCertainty,
  formatLength,
  formatNumber,
  type UnitSystem,
} from "@armwright/engine";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet } from "./sheet.ts";

/** Cards on one sheet. */
const CARDS = 2;

/** One card a height: full bump, ride, full droop and one between each; what must be read, and blanks to write in. */
export function cycleCards(makings: Makings): readonly Sheet[] {
  const { study } = makings;
  const bump = study.travel.bump.stop.travel;
  const droop = study.travel.droop.stop.travel;
  const certainty = cycleCertainty(study.car, [bump, bump / 2, 0, droop / 2, droop]);
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
      parts: cards(shown, certainty, makings),
    });
  }
  return sheets;
}

interface Height {
  readonly name: string;
  readonly travel: number;
}

function cards(heights: readonly Height[], certainty: CycleCertainty, makings: Makings): Primitive[] {
  const { study, room } = makings;
  const intro = paragraph(
    "Body on stands at ride height, springs off, gas let down, real tyre on. Block the hub to the height, then read both sides. ± is two standard deviations of what building and tape allow together; a reading farther off has a cause: enter it as built.",
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
    const set = table(
      [
        { head: "", share: 42 },
        { head: "must read", share: 18, align: "end", bold: true },
        { head: "±", share: 9, align: "end" },
        { head: "left reads", share: 15 },
        { head: "right reads", share: 15 },
      ],
      cardReadings(study.corner).flatMap((card) => cardRow(card, travel, certainty, makings)),
      { left: room.x, top: head.bottom, width: room.width, floor: top + share },
      { isForm: true, size: "text", rowHeight: 9 },
    );
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

function words(value: number, { dimension, isFine }: CardReading, units: UnitSystem): string {
  const minus = (text: string): string => text.replace("-", "−");
  if (dimension === "angle") return `${minus(formatNumber((value * 180) / Math.PI, 1))}°`;
  return minus(formatLength(value, units, { denominator: isFine ? 32 : 16 }));
}
