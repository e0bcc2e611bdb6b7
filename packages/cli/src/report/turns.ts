import { type Car, formatLength, formatNumber, type turnsFor, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { markTravel } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

export interface Wanted {
  readonly camber?: number;
  readonly toe?: number;
}

type TurnsResult = ReturnType<typeof turnsFor>;

const DEGREE = Math.PI / 180;

/** Camber and toe in one line, toe also as a tape across the tyre reads it. */
export function alignmentLine(
  lead: string,
  { camber, toe }: { camber: number; toe: number },
  { wheel }: Car,
  page: Page,
): string {
  const across = formatLength(Math.sin(toe) * 2 * wheel.freeRadius, page.units, { denominator: 32, sign: true });
  return `${lead}: camber ${degrees(camber)} deg, toe ${degrees(toe)} deg (${across} ${unitOf("length", page.units)} across the tyre, + is in).`;
}

/** Hundredths: a half turn moves less than a tenth. */
const degrees = (angle: number): string => formatNumber(angle / DEGREE, 2, true);

export function turnsLines(result: TurnsResult, wanted: Wanted, car: Car, page: Page): readonly string[] {
  const { turns, exact, rounded, reachable } = result;
  const say = (text: string) => hang("", text, page.width);
  const aims = [
    ...(wanted.camber === undefined ? [] : [`camber ${degrees(wanted.camber)} deg`]),
    ...(wanted.toe === undefined ? [] : [`toe ${degrees(wanted.toe)} deg`]),
  ].join(" and ");
  if (turns.length === 0) return say(`Nothing on this linkage sets ${aims}.`);
  return [
    ...say(`Wanted: ${aims}.`),
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
          page.units === "metric" ? formatNumber(change * 1000, 2, true) : formatNumber(change / 0.0254, 3, true),
          exactTurns === null ? "no thread given" : formatNumber(exactTurns, 2, true),
          halfTurns === null ? "" : formatNumber(halfTurns, 1, true),
        ],
      })),
      page.width,
    ),
    ...say("+ is longer (screwed out), - is shorter."),
    alignmentLine("Exactly so", exact, car, page),
    ...(rounded ? [alignmentLine("To half turns", rounded, car, page)] : []),
    ...say(
      `Half-track changes by ${markTravel((rounded ?? exact).halfTrackChange, page.units)} ${unitOf("length", page.units)}.`,
    ),
  ];
}
