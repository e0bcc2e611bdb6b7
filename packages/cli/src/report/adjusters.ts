import { DEGREE, formatLength, formatNumber, formatValue, INCH, NO_VALUE, type Study, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { threadMark } from "../text/say.ts";
import { type Column, type Row, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

type TurnEffect = Study["adjusters"][number];

/** What a turn of each adjuster does at ride height; a small length of it where the thread is not given. */
export function adjusterLines({ adjusters, car }: Pick<Study, "adjusters" | "car">, page: Page): readonly string[] {
  if (adjusters.length === 0) return [];
  const length = unitOf("length", page.units);
  const isHeld = adjusters.some(({ camberHeld }) => camberHeld !== null);
  const columns: readonly Column[] = [
    { head: ["longer, per turn,", "to begin with"], align: "left", gives: true },
    { head: ["which is", length], align: "right" },
    { head: ["camber", "deg"], align: "right" },
    { head: ["toe", "deg"], align: "right" },
    { head: ["toe at", `rim, ${length}`], align: "mark" },
    ...(isHeld
      ? ([
          { head: ["held **", "toe, deg"], align: "right" },
          { head: ["by **", "turns"], align: "right" },
        ] as const)
      : []),
  ];
  const rows = adjusters.map((each) => effectRow(each, car.wheel.rimDiameter, isHeld, page));
  return [...hang("", HEAD, page.width), ...table(columns, rows, page.width), ...footnotes(adjusters, car, page)];
}

const HEAD =
  "Slopes at the present setting; they change a little as you turn. To 0.01 deg, because half a turn often moves less than 0.1.";

function holderOf(adjusters: readonly TurnEffect[]): string | undefined {
  const id = adjusters.find(({ camberHeld }) => camberHeld)?.camberHeld?.by;
  return adjusters.find(({ adjuster }) => adjuster.id === id)?.adjuster.label;
}

function effectRow(each: TurnEffect, rimDiameter: number, isHeld: boolean, page: Page): Row {
  const { adjuster, advance, perLength, camberHeld } = each;
  const step = advance ?? smallStep(page);
  const camber = perLength && perLength.camber * step;
  const toe = perLength && perLength.toe * step;
  const across = toe === null ? null : Math.sin(toe) * rimDiameter;
  return {
    cells: [
      advance === null ? `${adjuster.label} *` : adjuster.label,
      advance === 0 ? "nothing" : threadMark(step, page.units),
      hundredths(camber),
      hundredths(toe),
      across === null ? NO_VALUE : formatLength(across, page.units, { denominator: 32, sign: true }),
      ...(isHeld
        ? [hundredths(camberHeld?.toe ?? null), camberHeld ? formatNumber(camberHeld.turns, 2, true) : NO_VALUE]
        : []),
    ],
  };
}

const smallStep = ({ units }: Page): number => (units === "metric" ? 0.001 : INCH / 16);

function footnotes(adjusters: readonly TurnEffect[], { wheel }: Study["car"], page: Page): readonly string[] {
  const step = page.units === "metric" ? "1 mm" : "1/16 in";
  const lines: string[] = [];
  if (adjusters.some(({ advance }) => advance === null)) {
    lines.push(
      ...hang("* ", `its thread is not given, so turns cannot be counted: told for ${step} longer.`, page.width),
    );
  }
  if (adjusters.some(({ advance }) => advance === 0)) {
    lines.push(
      ...hang(
        "",
        "nothing: both ends have the same hand and pitch, so turning the tube moves it, no more.",
        page.width,
      ),
    );
  }
  const holder = holderOf(adjusters);
  if (holder !== undefined)
    lines.push(...hang("** ", `camber held by so many turns, along with each, of: ${holder}.`, page.width));
  const times = formatNumber((2 * wheel.freeRadius) / wheel.rimDiameter, 1);
  const rim = formatValue(wheel.rimDiameter, "length", page.units);
  lines.push(
    ...hang(
      "",
      `Toe at rim: this wheel, front against rear across its ${rim}; at the tyre ${times} times that.`,
      page.width,
    ),
  );
  return lines;
}

const hundredths = (angle: number | null): string =>
  angle === null ? NO_VALUE : formatNumber(angle / DEGREE, 2, true);
