import {
  DEGREE,
  formatLength,
  formatNumber,
  formatValue,
  type SpringStudy,
  type Study,
  studySprings,
  unitOf,
} from "@armwright/engine";
import type { Block } from "../paper/flow.ts";
import type { Column } from "../paper/table.ts";
import { flowSheets } from "./flow-sheets.ts";
import { lengthsIn, type Makings, type Sheet } from "./sheet.ts";

/** Turns to degrees, springs and preload, strap and stop: what is set on the finished car. */
export function settingsSheets(makings: Makings): readonly Sheet[] {
  const { study } = makings;
  const blocks: Block[] = [];
  const part = (title: string, columns: readonly Column[], rows: readonly (readonly string[])[], note: string) => {
    if (rows.length === 0) return;
    blocks.push(
      { kind: "head", words: title },
      { kind: "table", columns, rows, style: { isForm: true, size: "text" } },
      { kind: "words", words: note, style: { ink: "ink-2" }, gap: 1.5 },
    );
  };
  part(
    "Adjusters, one turn longer",
    [
      { head: "adjuster", share: 40, bold: true },
      { head: "longer by", share: 18, align: "end" },
      { head: "camber", share: 14, align: "end" },
      { head: "toe", share: 14, align: "end" },
      { head: "toe at the rim", share: 14, align: "end" },
    ],
    adjusterRows(study),
    "Jam nuts loose before, tight after. At least 1 1/2 thread diameters stay in the bung: look through the witness hole.",
  );
  const springs = studySprings(study);
  const setting = [
    { head: "", share: 60 },
    { head: "set to", share: 22, align: "end" as const, bold: true },
    { head: "as built", share: 18 },
  ];
  if (springs)
    part(
      "Springs",
      setting,
      springRows(springs, study),
      "Shock fully open and the wheel hanging before a collar is turned.",
    );
  part(
    "Strap and bump stop",
    setting,
    stopRows(study),
    "The strap is tight before the shock is open; the stop is solid before it is closed.",
  );
  return flowSheets({ id: "settings", title: "Settings", note: lengthsIn(makings) }, blocks, makings);
}

function adjusterRows({ adjusters, car }: Study): string[][] {
  const degrees = (angle: number | undefined): string =>
    angle === undefined ? "—" : `${formatNumber(angle / DEGREE, 2, true).replace("-", "−")}°`;
  return adjusters.map(({ adjuster, advance, perTurn }) => [
    adjuster.label,
    advance === null ? "thread not given" : formatLength(advance, car.units, { denominator: 32 }),
    degrees(perTurn?.camber),
    degrees(perTurn?.toe),
    perTurn
      ? formatLength(Math.sin(perTurn.toe) * car.wheel.rimDiameter, car.units, { denominator: 32, sign: true }).replace(
          "-",
          "−",
        )
      : "—",
  ]);
}

function springRows({ springs, rest, crossover }: SpringStudy, { car }: Study): string[][] {
  const mark = (metres: number): string => `${formatLength(metres, car.units)} ${unitOf("length", car.units)}`;
  const spring = (name: string, { rate, freeLength }: SpringStudy["springs"]["main"]): string[] => [
    name,
    `${formatValue(rate, "rate", car.units)}, ${mark(freeLength)} free`,
    "",
  ];
  return [
    ...(springs.tender ? [spring("tender spring, above the slider", springs.tender)] : []),
    spring(springs.tender ? "main spring" : "spring", springs.main),
    ["preload, collar turned down from touching, shock open", mark(springs.preload), ""],
    ["that is, turns of the collar", formatNumber(springs.preload / springs.collarPitch, 1), ""],
    ...(crossover ? [["crossover: shock length where slider meets stop", mark(crossover.shockLength), ""]] : []),
    ["car sits, above (+) or below (−) as drawn", travelWords(-rest.travel, car.units), ""],
    ["shock eye to eye there", mark(rest.state.shockLength), ""],
  ];
}

const travelWords = (travel: number, units: Study["car"]["units"]): string =>
  `${formatLength(travel, units, { sign: true }).replace("-", "−")} ${unitOf("length", units)}`;

function stopRows({ car, travel }: Study): string[][] {
  const mark = (metres: number): string => `${formatLength(metres, car.units)} ${unitOf("length", car.units)}`;
  const { strap, bumpStop } = car;
  return [
    ...(strap ? [["strap, hole to hole when taut", mark(strap.length), ""]] : []),
    ...(bumpStop
      ? [
          ["bump stop, base to free face", mark(bumpStop.reach), ""],
          ["bump stop, base to face when solid", mark(bumpStop.solid), ""],
        ]
      : []),
    ["wheel travel, ride to full bump", travelWords(travel.bump.stop.travel, car.units), ""],
    ["wheel travel, ride to full droop", travelWords(travel.droop.stop.travel, car.units), ""],
  ];
}
