import {
  formatLength,
  formatNumber,
  formatValue,
  INCH,
  SEAT_ROOM,
  type ShelfSpring,
  type SpringChoice,
  type SpringChoices,
  type SpringStudy,
  type SpringWish,
  USUAL_PRELOAD,
  unitOf,
  WEIGHT_ERROR,
} from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare, counted, markTravel } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

/** What was aimed at. */
export type ChoiceWish = Pick<SpringWish, "band" | "rideTravel" | "crossoverPast">;

/** Ranks shown; the others differ little. */
const SHOWN = 8;

/** The sets that fit, best first, and why the others do not. */
export function choiceLines(
  { sets, refused, fitting }: SpringChoices,
  { springs }: SpringStudy,
  wish: ChoiceWish,
  page: Page,
): readonly string[] {
  const { units } = page;
  const say = (text: string) => hang("", text, page.width);
  const { band, rideTravel, crossoverPast } = wish;
  const height =
    rideTravel === 0
      ? "the drawn ride height"
      : `${formatValue(Math.abs(rideTravel), "length", units)} ${rideTravel > 0 ? "lower" : "higher"} than drawn`;
  const whys = Object.entries(refused).flatMap(([why, count]) =>
    count > 0 ? [`${count} ${WHY[why as keyof typeof WHY](formatValue(USUAL_PRELOAD.most, "length", units))}`] : [],
  );
  const length = unitOf("length", units);
  return [
    ...say(
      `${counted(sets, "set")} tried for ${height}, ${formatNumber(band.from, 1)} to ${formatNumber(band.to, 1)} Hz and crossover ${formatValue(crossoverPast, "length", units)} of shock past ride: ${fitting.length} fit.`,
    ),
    ...(whys.length > 0 ? say(`Not so: ${whys.join(", ")}.`) : []),
    ...(fitting.length === 0 ? say("NONE FITS: other lengths or rates are needed on the shelf.").map(page.red) : []),
    ...(fitting.length === 0
      ? []
      : table(
          [
            { head: ["", ""], align: "right" },
            { head: ["tender", ""], align: "left" },
            { head: ["main", ""], align: "left" },
            { head: ["preload", length], align: "mark" },
            { head: ["turns", ""], align: "right" },
            { head: ["ride", "Hz"], align: "right" },
            { head: ["bump", "Hz"], align: "right" },
            { head: ["left solid", length], align: "mark" },
            { head: [`+${WEIGHT_ERROR * 100} % weight`, `sits (${length}), turns`], align: "left" },
          ],
          fitting.slice(0, SHOWN).map((choice, index) => choiceRow(choice, index, page)),
          page.width,
        )),
    ...(fitting.length === 0
      ? []
      : say(
          `Ranked by frequency nearest the middle, then usual preload. One turn is ${units === "metric" ? `${formatNumber(springs.collarPitch * 1000, 2)} mm` : `${formatNumber(springs.collarPitch / INCH, 3)} in`}; ${formatValue(SEAT_ROOM, "length", units)} of the open shock is taken by eyes and seats (from memory: measure yours). Less weight does about the same the other way.`,
        )),
  ];
}

const WHY: Record<keyof SpringChoices["refused"], (preload: string) => string> = {
  "main-softer": () => "have the softer spring as main",
  preload: (most) => `need more than ${most} of preload or less than none`,
  room: () => "are too long for the shock",
  frequency: () => "miss the frequency",
  "tender-solid": () => "bring the tender near solid before its stop",
  "main-solid": () => "bring the main spring near solid before the bump stop is",
};

function choiceRow(
  { tender, main, springs, preloadTurns, frequency, frequencyAtBump, leftToSolid, heavier }: SpringChoice,
  index: number,
  page: Page,
) {
  const { units } = page;
  return {
    cells: [
      String(index + 1),
      tender ? spring(tender, page) : "none",
      spring(main, page),
      formatLength(springs.preload, units),
      formatNumber(preloadTurns, 1),
      formatNumber(frequency, 2),
      formatNumber(frequencyAtBump, 2),
      formatLength(leftToSolid, units),
      `${markTravel(-heavier.lower, units)}, ${formatNumber(heavier.turns, 1, true)}`,
    ],
    ...(index === 0 && { paint: page.bold }),
  };
}

const spring = ({ freeLength, rate }: ShelfSpring, { units }: Page): string =>
  `${formatLength(freeLength, units)} × ${bare(rate, "rate", units)}`;
