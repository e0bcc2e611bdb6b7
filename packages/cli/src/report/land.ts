import {
  type AxleLanding,
  type Car,
  type CornerModel,
  DEGREE,
  formatNumber,
  formatValue,
  INCH,
  type Landing,
  type LandingAssumption,
  type LandingEvent,
  type LoadCase,
  oilHeat,
  SHOCK_COOLING,
  SHOCK_HEAT_CAPACITY,
  unitOf,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { bare, counted, markTravel } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

export interface LandReport {
  readonly car: Car;
  readonly title: string;
  readonly event: LandingEvent;
  readonly model: CornerModel;
  readonly landing: Landing;
  readonly axle: AxleLanding | null;
  readonly cases: readonly LoadCase[];
  readonly stops: CornerModel["stops"];
}

const GRAVITY = 9.80665;

/** What a landing does to a corner: peaks, travel, how often it bottoms, heat, and what was assumed. */
export function landLines(report: LandReport, page: Page): readonly string[] {
  const { title, landing, axle } = report;
  return [
    ...section(page, title, summaryLines(report, landing, page)),
    ...section(page, axle ? "Peaks, left wheel" : "Peaks", peakTable(landing, report, page)),
    ...(axle
      ? [
          ...section(page, "Peaks, right wheel", peakTable(axle.right, report, page)),
          ...section(page, "The body", rollLines(axle)),
        ]
      : []),
    ...section(page, "Damper and oil", heatLines(report, page)),
    ...section(page, "As load cases", caseLines(report.cases, page)),
    ...section(page, "Assumed", assumedLines(report, page)),
    ...section(page, "What this is not", cautionLines(landing, page)),
  ];
}

const show = (value: number, dimension: Parameters<typeof formatValue>[1], { units }: Page): string =>
  formatValue(value, dimension, units);

function summaryLines({ car, stops }: LandReport, landing: Landing, page: Page): readonly string[] {
  const { travel, bottomings, stopTouches, strapSnatches, airTime, tyrePressed } = landing;
  const unit = unitOf("length", page.units);
  const lines = [
    `Travel used: ${markTravel(travel.bump, page.units)} to ${markTravel(travel.droop, page.units)} ${unit}; the stops are at ${markTravel(stops.bump, page.units)} and ${markTravel(stops.droop, page.units)}.`,
    bottomings > 0
      ? `IT BOTTOMS ${bottomings === 1 ? "ONCE" : `${bottomings} TIMES`}: metal on metal, or the stop solid.`
      : "It does not bottom.",
    ...(car.bumpStop ? [`Bump stop touched ${counted(stopTouches, "time")}.`] : []),
    ...(car.strap ? [`Strap pulled tight ${counted(strapSnatches, "time")}.`] : []),
    ...(airTime > 0 ? [`Tyre off the ground for ${formatNumber(airTime, 2)} s in all.`] : []),
    ...(tyrePressed > car.wheel.freeRadius - car.wheel.rimDiameter / 2
      ? [
          `THE TYRE IS PRESSED ONTO ITS RIM (${show(tyrePressed, "length", page)}): real loads are higher from there on.`,
        ]
      : [`Tyre pressed in by up to ${show(tyrePressed, "length", page)}.`]),
  ];
  return lines.flatMap((line) => hang("", line, page.width));
}

function peakTable({ peaks }: Landing, { car, model }: LandReport, page: Page): readonly string[] {
  const { units } = page;
  const carried = (model.sprungMass + model.unsprungMass) * GRAVITY;
  const row = (
    name: string,
    value: string,
    note: string,
    peak: { readonly time: number; readonly travel: number },
  ) => ({
    cells: [name, value, note, formatNumber(peak.time, 2), markTravel(peak.travel, units)],
  });
  const force = (name: string, peak: Landing["peaks"]["wheelLoad"], note = "") =>
    row(name, `${bare(peak.value, "force", units)} ${unitOf("force", units)}`, note, peak);
  return table(
    [
      { head: ["", ""], align: "left" },
      { head: ["", "most"], align: "right" },
      { head: ["", ""], align: "left" },
      { head: ["at time", "s"], align: "right" },
      { head: ["at travel", unitOf("length", units)], align: "mark" },
    ],
    [
      force("wheel load", peaks.wheelLoad, `${formatNumber(peaks.wheelLoad.value / carried, 1)} times standing`),
      force("shock", peaks.shockForce, "springs, gas, damper"),
      row("shock going in", show(peaks.shockSpeedIn.value, "speed", page), "", peaks.shockSpeedIn),
      row("shock coming out", show(peaks.shockSpeedOut.value, "speed", page), "", peaks.shockSpeedOut),
      ...(car.bumpStop ? [force("bump stop", peaks.stopForce)] : []),
      ...(car.strap ? [force("strap", peaks.strapForce)] : []),
      row(
        "body pushed up",
        `${formatNumber(peaks.bodyAcceleration.value / GRAVITY, 1)} g`,
        "over standing",
        peaks.bodyAcceleration,
      ),
    ],
    page.width,
  );
}

const degrees = (radians: number): string => formatNumber(radians / DEGREE, 1);

const rollLines = ({ roll }: AxleLanding): readonly string[] => [
  `Rolls ${degrees(roll.most)} deg left side up, ${degrees(-roll.least)} deg right side up at most.`,
];

function heatLines({ landing, event }: LandReport, page: Page): readonly string[] {
  const { work, meanPower } = landing.damper;
  const heat = oilHeat(meanPower);
  const kelvin = (value: number) =>
    page.units === "metric" ? `${Math.round(value)} C` : `${Math.round(value * 1.8)} F`;
  const lines = [`The damper turns ${show(work, "energy", page)} into heat, ${Math.round(meanPower)} W on average.`];
  if (event.kind === "road" || event.kind === "whoops") {
    lines.push(
      `Were it to go on: warmer by ${kelvin(heat.risePerMinute)} in the first minute, and in the end by about ${kelvin(heat.settlesAt)} over the air (two thirds of it after ${Math.round(heat.timeConstant / 60)} minutes). A trend only: ${SHOCK_HEAT_CAPACITY} J/K of heat capacity and ${SHOCK_COOLING} W/K of cooling are from memory.`,
    );
  }
  return lines.flatMap((line) => hang("", line, page.width));
}

/** Ready to be put into the document. */
function caseLines(cases: readonly LoadCase[], page: Page): readonly string[] {
  if (cases.length === 0) return [];
  const metres = (at: LoadCase["at"]) =>
    typeof at === "number" ? formatNumber(page.units === "metric" ? at * 1000 : at / INCH, 2) : `"${at}"`;
  return [
    ...hang(
      "",
      'To have npx armwright loads work with these peaks, put them into the document under "loads", "cases":',
      page.width,
    ),
    ...cases.map(
      ({ name, at, carrier, vertical }) =>
        `  { "name": ${JSON.stringify(name)}, "at": ${metres(at)}, "carrier": "${carrier}", "vertical": ${formatNumber(vertical, 2)} }`,
    ),
  ];
}

function assumedLines({ model, event }: LandReport, page: Page): readonly string[] {
  const said: Record<LandingAssumption["what"], (value: number | null) => string> = {
    "tyre-rate": (value) =>
      `tyre rate ${show(value ?? 0, "rate", page)}, from memory: press the tyre on a scale (wheel.tyreRate)`,
    "tyre-damping": (value) => `tyre damping ${show(value ?? 0, "damping", page)}, from memory`,
    damper: () =>
      'damper 0.3 of critical going in, 0.55 coming out, in proportion to speed (common practice): real shocks flatten when fast; give "damper" a curve',
    "bump-stop": () => "bump stop a rubber pad of common size and hardness: a factor of two either way",
    strap: () => "strap stretch by common practice",
  };
  const lines = model.assumed.map(({ what, value }) => said[what](value));
  if ((event.kind === "drop" && event.otherLower !== undefined) || (event.kind === "bump" && event.oneWheel)) {
    lines.push("body's radius of gyration in roll 0.65 of half the track, from memory");
  }
  return lines.flatMap((line) => hang("- ", `${line}.`, page.width));
}

function cautionLines({ energy }: Landing, page: Page): readonly string[] {
  const lines = [
    "One axle, straight up and down: pitch, the front axle, side forces, friction, the frame's flex and the tyre's roll over edges are left out; the wheel's fore and aft way does not slow it.",
    ...(energy.off === null ? [] : [`Energy comes out even to ${energy.off.toExponential(0)} of what moved.`]),
    "This is no proof of strength. Rule books come first; a licensed engineer decides; try it slowly and look for cracks.",
  ];
  return lines.flatMap((line) => hang("- ", line, page.width));
}
