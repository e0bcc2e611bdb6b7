import { type Car, DEGREE, formatNumber, type turnsFor, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { sayTape, threadMark } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

export interface Wanted {
  readonly camber?: number;
  readonly toe?: number;
  /** The same as it was typed. */
  readonly words: string;
}

type TurnsResult = ReturnType<typeof turnsFor>;

/** Camber and toe, toe also as a tape reads it, front less rear across the rim and across the tyre of this wheel. */
export function alignmentLines(
  lead: string,
  { camber, toe }: { camber: number; toe: number },
  { wheel }: Car,
  page: Page,
): readonly string[] {
  const across = (diameter: number) => sayTape(Math.sin(toe) * diameter, page.units, true);
  const tape = `${across(wheel.rimDiameter)} at the rim, ${across(2 * wheel.freeRadius)} at the tyre`;
  return hang(`${lead}: `, `camber ${degrees(camber)} deg, toe ${degrees(toe)} deg: ${tape}.`, page.width);
}

const degrees = (angle: number): string => formatNumber(angle / DEGREE, 1, true);

/** The turns to a wanted setting, exactly and to half turns, with what they make. */
export function turnsLines(result: TurnsResult, wanted: Wanted, car: Car, page: Page): readonly string[] {
  const { turns, exact, rounded, reachable } = result;
  const say = (text: string) => hang("", text, page.width);
  if (turns.length === 0) return say(`Nothing on this linkage sets ${wanted.words}.`);
  return [
    ...say(`Wanted: ${wanted.words}.`),
    ...(reachable ? [] : say("NOT REACHED: the adjusters cannot bring it there. This is the nearest.").map(page.red)),
    ...table(
      [
        { head: ["adjuster"], align: "left", gives: true },
        { head: [`longer by, ${unitOf("length", page.units)}`], align: "right" },
        { head: ["turns"], align: "right" },
        { head: ["nearest half turn"], align: "right" },
      ],
      turns.map(({ label, change, turns: exactTurns, halfTurns }) => ({
        cells: [
          label,
          threadMark(change, page.units, true),
          exactTurns === null ? "no thread given" : formatNumber(exactTurns, 2, true),
          halfTurns === null ? "" : formatNumber(halfTurns, 1, true),
        ],
      })),
      page.width,
    ),
    ...say("+ is longer (screwed out), - is shorter."),
    ...alignmentLines("Exactly so", exact, car, page),
    ...(rounded ? alignmentLines("To half turns", rounded, car, page) : []),
    ...say(`Half-track changes by ${sayTape((rounded ?? exact).halfTrackChange, page.units, true)}.`),
  ];
}
