import {
  type AsBuiltStudy,
  type Car,
  type ComparedReading,
  type Explanation,
  type FiveMinuteCheck,
  formatLength,
  formatNumber,
  type Inputs,
  type LimitCertainty,
  likelyCauses,
  NO_VALUE,
  type Proposed,
  proposedLog,
  type Remedy,
  sayBack,
  sayOff,
  type UnitSystem,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { markTravel, sayAmount, sayTape } from "../text/say.ts";
import { type Column, type Row, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { limitCertaintyLines, restsOn } from "./certainty.ts";

/** All that the report is made from. */
export interface AsBuilt {
  readonly car: Car;
  readonly inputs: Inputs;
  readonly found: AsBuiltStudy;
  readonly check: FiveMinuteCheck | null;
  readonly limits: readonly LimitCertainty[];
  /** Null without readings. */
  readonly remedy: Remedy | null;
}

/** The finished car against its plan, in words. */
export function asBuiltLines({ car, inputs, found, check, limits, remedy }: AsBuilt, page: Page): readonly string[] {
  const hasLog = found.readings.length > 0;
  return [
    page.bold(car.name),
    ...section(page, "Before any welding: the five-minute check", check ? checkLines(check, page) : []),
    ...(hasLog ? [] : logLines(car, inputs, page)),
    ...section(page, "Plan and car", hasLog ? comparedLines(found, page) : []),
    ...section(page, "Do they agree?", hasLog ? verdictLines(found, page) : []),
    ...section(page, "What to turn and what to move", remedy ? remedyLines(car, found, remedy, page) : []),
    ...section(page, "How sure your stops come first", limitCertaintyLines(limits, page)),
    ...section(page, "What this rests on", [
      ...restsOn(car, page),
      ...hang("", "± is two standard deviations: about 95 of 100 are within.", page.width),
      ...hang("", "Springs out, jack stands, gas let down while you measure.", page.width),
    ]),
  ];
}

/** What to read and what it should read, before anything is logged. */
function logLines(car: Car, inputs: Inputs, page: Page): readonly string[] {
  const [atHeights, atRide] = proposedLog(car, inputs);
  const { units } = page;
  const cell = (each: Proposed | undefined): string =>
    each === undefined || each.reads === null
      ? NO_VALUE
      : `${value(each.reads, each.card, units)} ± ${amount(each.plusMinus, each.card, units)}`;
  const heights = (atHeights[0] ?? []).map(
    ({ travel }): Column => ({ head: [markTravel(travel, units)], align: "right" }),
  );
  return [
    ...section(page, "What to read", [
      ...hang(
        "",
        "Body on stands at ride height, springs off. Block the hub at each height and read; then the places at ride height. ± is building and reading together. The more of it you read, the surer a part that is off is named.",
        page.width,
      ),
      ...table(
        [{ head: ["should read"], align: "left", gives: true }, ...heights],
        atHeights.map((row) => ({ cells: [row[0]!.card.label, ...row.map(cell)] })),
        page.width,
      ),
    ]),
    ...section(page, "Where the places should be, at ride height", [
      ...table(
        [
          { head: ["point"], align: "left", gives: true },
          { head: ["forward of the mark"], align: "right" },
          { head: ["out from centreline"], align: "right" },
          { head: ["height off floor"], align: "right" },
        ],
        atRide.map((row) => ({ cells: [row[0]!.card.of ?? "", ...row.map(cell)] })),
        page.width,
      ),
      ...hang("", 'Write what you read under "asBuilt", "readings":', page.width),
      ...(units === "metric" ? EXAMPLE_METRIC : EXAMPLE_INCH),
    ]),
  ];
}

const EXAMPLE_INCH: readonly string[] = [
  '  { "what": "shock", "at": "-4", "reads": "22 3/16" }, { "what": "camber", "at": 0, "degrees": -0.5 },',
  '  { "what": "angle", "of": "upper link", "at": 3, "degrees": 4.5 },',
  '  { "what": "height", "of": "shock, upper", "at": 0, "reads": "32 1/16" }',
];
const EXAMPLE_METRIC: readonly string[] = [
  '  { "what": "shock", "at": -100, "reads": 563.5 }, { "what": "camber", "at": 0, "degrees": -0.5 },',
  '  { "what": "angle", "of": "upper link", "at": 75, "degrees": 4.5 },',
  '  { "what": "height", "of": "shock, upper", "at": 0, "reads": 814 }',
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

function verdictLines(found: AsBuiltStudy, page: Page): readonly string[] {
  const { agrees, together, readings } = found;
  const { units, width } = page;
  if (readings.every(({ misfit }) => misfit === null))
    return hang("", "Nothing could be compared: the plan does not reach where the car was read.", width);
  const causes = likelyCauses(found);
  const likely = causes.map((each) => `${says(each, units)}.`);
  if (agrees) {
    return [
      ...hang(
        "",
        `Yes, as well as tape and building allow (${readings.length} readings; of cars built and read with care 95 in 100 pass).`,
        width,
      ),
      ...(likely.length > 0 ? hang("If something is off, likeliest  ", likely[0]!, width) : []),
    ];
  }
  const lines = [...hang("", "No. Something is off by more than tape and building allow.", width)];
  if (likely.length === 1) lines.push(...hang("Likeliest  ", likely[0]!, width).map(page.bold));
  if (likely.length > 1) {
    lines.push(
      ...hang("", "One of these, and the readings cannot say which:", width).map(page.bold),
      ...likely.flatMap((each, i) => hang(`${i + 1}. `, each, width)),
      ...hang("", "Measure these places themselves: that tells them apart.", width),
    );
  }
  const most = together.slice(0, 3).map((each) => sayOff(each, units));
  if (most.length > 1) lines.push(...hang("Or a little of each  ", `${most.join("; ")}.`, width));
  if (likely.length === 0)
    lines.push(...hang("", "No single cause explains it: look for a reading that is wrong, and read it again.", width));
  else
    lines.push(
      ...hang(
        "",
        `${mend(causes, units)}, or take it as it is: --apply FILE${likely.length > 1 ? " --cause N" : ""} writes the car as built beside the plan.`,
        width,
      ),
    );
  return lines;
}

/** The way back to the plan, where one point is named. */
function mend([first, ...others]: readonly Explanation[], units: UnitSystem): string {
  if (first?.cause.kind !== "point" || others.length > 0) return "Put it right";
  return `Move it ${sayBack(first.cause.input.axis, first.by, units)}`;
}

/** Turns to the plan's camber and toe, and what strap and bump stop need. */
function remedyLines(car: Car, { settings }: AsBuiltStudy, { turns, stops }: Remedy, page: Page): readonly string[] {
  const degrees = (angle: number, sign = true): string => formatNumber((angle * 180) / Math.PI, 1, sign);
  const said = (["camber", "toe"] as const).map((name) => {
    const { by, sd } = settings[name];
    return `${name} ${degrees(car.wheel[name] + by)} ± ${degrees(2 * sd, false)} deg (plan ${degrees(car.wheel[name])})`;
  });
  const turned = (turns?.turns ?? []).filter(({ halfTurns, turns: exact }) => (halfTurns ?? exact ?? 0) !== 0);
  const isSure = (["camber", "toe"] as const).some((name) => Math.abs(settings[name].by) > 2 * settings[name].sd);
  const lines = [...hang("", `At ride height, by all readings: ${said.join(", ")}.`, page.width)];
  if (!isSure || turned.length === 0) {
    lines.push(
      ...hang("", "Nothing to turn: that is within what the readings can tell, or within half a turn.", page.width),
    );
  } else lines.push(...turned.flatMap((each) => turnLines(each, page)));
  for (const { part, change, now, wanted } of stops) {
    const where = `to end ${part === "strap" ? "droop" : "bump"} at ${markTravel(wanted, page.units)} as planned; as it is, it ends at ${markTravel(now, page.units)}`;
    lines.push(...hang("Stop  ", `${saysChange(part, change, page.units)}, ${where}.`, page.width));
  }
  return lines;
}

type Turned = NonNullable<Remedy["turns"]>["turns"][number];

function turnLines({ label, change, turns, halfTurns }: Turned, page: Page): readonly string[] {
  const way = change > 0 ? "longer" : "shorter";
  const count = Math.abs(halfTurns ?? turns ?? 0);
  const said =
    turns === null
      ? `${sayTape(Math.abs(change), page.units)} ${way}`
      : `${formatNumber(count, halfTurns === null ? 2 : 1)} ${count === 1 ? "turn" : "turns"} ${way}`;
  return hang("Turn  ", `${label}: ${said}.`, page.width).map(page.bold);
}

function saysChange(part: "strap" | "bump-stop", change: number, units: UnitSystem): string {
  const by = sayTape(Math.abs(change), units);
  if (part === "strap") return `strap ${by} ${change > 0 ? "longer" : "shorter"}`;
  return change > 0 ? `bump stop packed out by ${by}` : `bump stop ${by} shorter`;
}

const says = (off: Explanation, units: UnitSystem): string =>
  `${sayOff(off, units)}, ± ${sayAmount(2 * off.sd, off.cause.kind === "point" ? "length" : "angle", units)}`;

function value(si: number, card: ComparedReading["card"], units: UnitSystem, sign = false): string {
  if (card.dimension === "angle") return `${formatNumber((si * 180) / Math.PI, 1, sign)}°`;
  return formatLength(si, units, { denominator: card.isFine ? 32 : 16, sign });
}

const amount = (si: number, card: ComparedReading["card"], units: UnitSystem): string =>
  card.dimension === "angle"
    ? `${formatNumber((si * 180) / Math.PI, 1)}°`
    : formatLength(si, units, { denominator: card.isFine ? 32 : 16 });
