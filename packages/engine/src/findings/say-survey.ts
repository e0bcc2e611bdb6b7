import type { UnitSystem } from "../car/car.ts";
import type { Cause, Mirrored, Suspicion, Undetermined } from "../survey/result.ts";
import type { Axis, Survey, SurveyReading } from "../survey/survey.ts";
import { formatLength, formatNumber, formatValue } from "../units/format.ts";
import type { SaidFinding } from "./say-finding.ts";

type Words = Record<string, string>;

/** Sentences on the survey that a car's points come from. */
export const SURVEY_SENTENCES = {
  "survey-suspicious-reading": (w: Words): SaidFinding => ({
    sentence: `Survey: ${w["says"]}. It is not used.${w["either"] ? ` ${w["either"]}` : ""}`,
    remedy: w["either"]
      ? "Take these again, and correct or drop the wrong one."
      : "Take it again, and correct or drop it.",
  }),
  "survey-misfit": (w: Words): SaidFinding => ({
    sentence: `The survey's readings miss each other ${w["scatter"]} times as far as their ± allows.`,
    remedy: "Take again what shows the largest residuals, or state a wider ±.",
  }),
  "survey-undetermined": (w: Words): SaidFinding => ({
    sentence: `Survey: ${w["says"]}; the car uses this point.`,
    remedy: w["remedy"] ?? "",
  }),
  "survey-mirrored": (w: Words): SaidFinding => ({
    sentence: `Survey: ${w["says"]}.`,
    remedy: w["remedy"] ?? "",
  }),
};

/** What a reading is, in the builder's words: `gearbox flange to left frame tube, tape`. */
export function sayReading(survey: Pick<Survey, "points">, reading: SurveyReading): string {
  const name = (point: number): string => survey.points[point]?.name ?? "?";
  switch (reading.kind) {
    case "tape":
      return `${name(reading.from)} to ${name(reading.to)}`;
    case "height":
      return `${name(reading.point)}, height ${reading.above === undefined ? "off the floor" : `above ${name(reading.above)}`}`;
    case "out":
      return `${name(reading.point)}, out from ${reading.from === undefined ? "the centreline" : `the string at ${name(reading.from)}`}`;
    case "along":
      return `${name(reading.point)}, forward of ${reading.from === undefined ? "the mark" : name(reading.from)}`;
    case "level":
      return `bar from ${name(reading.from)} to ${name(reading.to)}, angle`;
    case "in-line":
      return `${name(reading.point)} on the line from ${name(reading.from)} to ${name(reading.to)}`;
    case "offset":
      return `${name(reading.to)} off ${name(reading.from)}`;
    case "mirror":
      return `${name(reading.left)} and ${name(reading.right)} mirrored`;
  }
}

/** A number of a reading in its unit, as it is read. */
export const sayReadingValue = (reading: SurveyReading, value: number, units: UnitSystem): string =>
  reading.kind === "level" ? formatValue(value, "angle", units) : formatLength(value, units);

/** `gearbox flange to left frame tube: reads 23 7/16, the others say 24 7/16`. */
export function saySuspicion(
  survey: Survey,
  { reading: index, part, reads, others }: Suspicion,
  units: UnitSystem,
): string {
  const reading = survey.readings[index]!;
  const value = (number: number): string => sayReadingValue(reading, number, units);
  if (reading.kind === "in-line" || reading.kind === "mirror") {
    return `${sayReading(survey, reading)}: taken as so, the others say that it is ${value(Math.abs(others))} off ${PARTS[part]}`;
  }
  const which = part === "" ? "" : ` ${PARTS[part]}`;
  return `${sayReading(survey, reading)}: reads ${value(reads)}${which}, the others say ${value(others)}`;
}

/** `Either this one is wrong or A; the readings cannot say which.` Empty where it is told from every other. */
export function sayEither(survey: Survey, { alternatives }: Suspicion): string {
  if (alternatives.length === 0) return "";
  const names = alternatives.map((index) => sayReading(survey, survey.readings[index]!));
  return `Either this one is wrong, or ${names.join(", or ")}: the readings cannot say which.`;
}

const PARTS = {
  "": "",
  x: "along the car",
  y: "across the car",
  z: "in height",
  across: "across the line",
  "up-and-down": "in height",
} as const;

/** What may have gone wrong at the tape. */
export function sayCause(cause: Cause, units: UnitSystem): string {
  switch (cause.kind) {
    case "slip":
      return `a slip of ${formatValue(Math.abs(cause.by), "length", units)}: read one mark too ${cause.by > 0 ? "far" : "short"}?`;
    case "wrong-end":
      return `a foot ${cause.by > 0 ? "too much" : "too little"}: the wrong foot mark, or the wrong end of the tape?`;
    case "digits-swapped":
      return `two figures swapped: was it ${formatLength(cause.meant, units)}?`;
    case "sign":
      return "the sign: left for right, front for rear, or the bar read from its other end?";
    case "addition":
      return `the ${formatLength(cause.add, units)} added to it: forgotten, or counted twice?`;
  }
}

const HOW: Readonly<Record<Axis, string>> = { x: "how far forward", y: "how far out", z: "how high" };

/** `how far forward the upper bracket is cannot be told`. */
export function sayUndetermined(survey: Survey, { point, axis, way, isAlongAxis }: Undetermined): string {
  const name = survey.points[point]!.name;
  if (isAlongAxis) return `${HOW[axis]} the ${name} is cannot be told`;
  const parts = (["x", "y", "z"] as const)
    .filter((each) => Math.abs(way[each]) > 0.25)
    .map((each) => `${DIRECTIONS[each][way[each] > 0 ? 0 : 1]}`);
  return `where the ${name} is cannot be told along a line ${parts.join(" and ")}`;
}

const DIRECTIONS = { x: ["forward", "rearward"], y: ["left", "right"], z: ["up", "down"] } as const;

/** `one tape from it to the hub face would fix it`. */
export function sayRemedy(survey: Survey, { point, remedy }: Undetermined): string {
  if (!remedy) return "Take one more reading to it.";
  if (remedy.kind === "tape") {
    const other = remedy.from === point ? remedy.to : remedy.from;
    return `One tape from it to the ${survey.points[other]!.name} would fix it.`;
  }
  return `One reading would fix it: ${sayReading(survey, remedy)}.`;
}

/** That there are two solutions, by the names of the points that differ. */
export const sayMirrored = (survey: Survey, { points }: Mirrored): string =>
  `the readings leave two places for ${listed(points.map(({ point }) => `the ${survey.points[point]!.name}`))}, one the other's mirror image`;

/** What would settle which of the two it is. */
export function saySettling(survey: Survey, { settledBy }: Mirrored, units: UnitSystem): string {
  if (settledBy.kind === "side")
    return `Say which side of the centreline the ${survey.points[settledBy.point]!.name} is on.`;
  const { reading, here, there } = settledBy;
  return `One reading settles it: ${sayReading(survey, reading)}. Taken here as ${sayReadingValue(reading, here, units)}; in the other place it would read ${sayReadingValue(reading, there, units)}. A rough figure will do.`;
}

const listed = (names: readonly string[]): string =>
  names.length > 4
    ? `${names.slice(0, 3).join(", ")} and ${formatNumber(names.length - 3, 0)} more`
    : names.length < 2
      ? (names[0] ?? "nothing")
      : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
