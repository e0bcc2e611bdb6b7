import {
  type AsBuiltCause,
  type AsBuiltStudy,
  type Car,
  type ComparedReading,
  type Explanation,
  type FiveMinuteCheck,
  formatLength,
  formatNumber,
  type LimitCertainty,
  type UnitSystem,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { markTravel, sayAmount, sayTape } from "../text/say.ts";
import { type Column, type Row, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { limitCertaintyLines, restsOn } from "./certainty.ts";

/** The finished car against its plan, in words. */
export function asBuiltLines(
  car: Car,
  found: AsBuiltStudy,
  check: FiveMinuteCheck | null,
  limits: readonly LimitCertainty[],
  page: Page,
): readonly string[] {
  return [
    page.bold(car.name),
    ...section(page, "Before any welding: the five-minute check", check ? checkLines(check, page) : []),
    ...section(page, "Plan and car", found.readings.length === 0 ? NO_LOG : comparedLines(found, page)),
    ...section(page, "Do they agree?", found.readings.length === 0 ? [] : verdictLines(found, page)),
    ...section(page, "How sure your stops come first", limitCertaintyLines(limits, page)),
    ...section(page, "What this rests on", [
      ...restsOn(car, page),
      ...hang("", "Springs out, jack stands, gas let down while you measure.", page.width),
    ]),
  ];
}

const NO_LOG: readonly string[] = [
  'No readings yet: block the hub at each height, read, and write them under "asBuilt", "readings":',
  '  { "what": "shock", "at": "-4", "reads": "22 3/16" }, { "what": "camber", "at": 0, "degrees": -0.5 }',
];

function checkLines({ card, travel, reads, plusMinus }: FiveMinuteCheck, page: Page): readonly string[] {
  const way = travel > 0 ? "up" : "down";
  const height = sayAmount(travel, "length", page.units);
  return hang(
    "",
    `Block the hub ${height} ${way} from ride height: ${card.label} should read ${value(reads, card, page.units)} ± ${amount(plusMinus, card, page.units)}. Of all easy readings this tells most of whether the model is your car.`,
    page.width,
  );
}

function comparedLines({ readings }: AsBuiltStudy, page: Page): readonly string[] {
  const columns: readonly Column[] = [
    { head: ["", "travel"], align: "right" },
    { head: ["", "reading"], align: "left", gives: true },
    { head: ["plan", "says"], align: "mark" },
    { head: ["", "±"], align: "left" },
    { head: ["car", "reads"], align: "mark" },
    { head: ["", "off by"], align: "mark" },
    { head: ["", ""], align: "left" },
  ];
  return table(
    columns,
    readings.map((reading) => comparedRow(reading, page)),
    page.width,
  );
}

function comparedRow({ logged, card, predicted, predictedSd, misfit }: ComparedReading, page: Page): Row {
  const { units } = page;
  const isOdd = misfit !== null && Math.abs(misfit) > 2;
  const cells = [
    markTravel(logged.travel, units),
    card.label,
    predicted === null ? "out of reach" : value(predicted, card, units),
    predicted === null ? "" : amount(2 * predictedSd, card, units),
    value(logged.reads, card, units),
    predicted === null ? "" : value(logged.reads - predicted, card, units, true),
    isOdd ? "MORE THAN ±" : "",
  ];
  return isOdd ? { cells, paint: page.bold } : { cells };
}

function verdictLines(
  { agrees, explanations, alike, together, sum, readings }: AsBuiltStudy,
  page: Page,
): readonly string[] {
  const [best, ...rest] = explanations;
  if (readings.every(({ misfit }) => misfit === null))
    return hang("", "Nothing could be compared: the plan does not reach where the car was read.", page.width);
  if (agrees) {
    return [
      ...hang(
        "",
        `Yes, as well as tape and building allow (sum of squared misfits ${formatNumber(sum, 1)} over ${readings.length} readings; of honest cars 95 in 100 pass).`,
        page.width,
      ),
      ...(best && Math.abs(best.test) > HINT
        ? hang("If something is off, likeliest  ", `${says(best, page.units)}.`, page.width)
        : []),
    ];
  }
  const lines = [...hang("", "No. Something is off by more than tape and building allow.", page.width)];
  if (best && Math.abs(best.test) > HINT) {
    lines.push(...hang("Likeliest  ", `${says(best, page.units)}.`, page.width).map(page.bold));
    const others = rest.slice(0, Math.max(0, alike - 1)).slice(0, 4);
    if (others.length > 0) {
      lines.push(
        ...hang("", "The readings cannot tell it from:", page.width),
        ...others.flatMap((each) => hang("  - ", says(each, page.units), page.width)),
        ...hang(
          "",
          "One more reading where these differ would: another height, or the places themselves from the datum.",
          page.width,
        ),
      );
    }
  }
  const most = together.slice(0, 3).map(({ cause, by }) => saysShort(cause, by, page.units));
  if (most.length > 1) lines.push(...hang("Or a little of each  ", most.join("; "), page.width));
  lines.push(
    ...hang(
      "",
      "Move it, or take it as it is: --apply FILE writes the car as built; then npx armwright turns tells the turns back to camber and toe, and study what the stops do.",
      page.width,
    ),
  );
  return lines;
}

/** Standard deviations from which on a single cause is worth a look though plan and car agree. */
const HINT = 2;

const WAYS = {
  x: ["farther forward", "farther back"],
  y: ["farther out", "farther in"],
  z: ["high", "low"],
} as const;

function says({ cause, by, sd }: Explanation, units: UnitSystem): string {
  return cause.kind === "point"
    ? `${saysShort(cause, by, units)}, ± ${sayAmount(2 * sd, "length", units)}`
    : `${saysShort(cause, by, units)}, ± ${sayAmount(2 * sd, "angle", units)}`;
}

function saysShort(cause: AsBuiltCause, by: number, units: UnitSystem): string {
  if (cause.kind === "setting") {
    return `${cause.setting} at ride height is ${formatNumber((by * 180) / Math.PI, 1, true)} deg from the plan`;
  }
  const way = WAYS[cause.input.axis][by > 0 ? 0 : 1];
  return `${cause.input.place.label} is ${sayTape(Math.abs(by), units)} ${way}`;
}

function value(si: number, card: ComparedReading["card"], units: UnitSystem, sign = false): string {
  if (card.dimension === "angle") return `${formatNumber((si * 180) / Math.PI, 1, sign)}°`;
  return formatLength(si, units, { denominator: card.isFine ? 32 : 16, sign });
}

const amount = (si: number, card: ComparedReading["card"], units: UnitSystem): string =>
  card.dimension === "angle"
    ? `${formatNumber((si * 180) / Math.PI, 1)}°`
    : formatLength(si, units, { denominator: card.isFine ? 32 : 16 });
