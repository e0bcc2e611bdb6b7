import {
  type Dimension,
  formatNumber,
  formatValue,
  NO_VALUE,
  type SolveAnswer,
  type SolveContext,
  type SolveCurve,
  type SolveQuestion,
  type SolveReading,
  type SolveValues,
  sayFinding,
  saySolveNote,
  toUnit,
  unitOf,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { bare, markTravel, sayTape } from "../text/say.ts";
import { type Column, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { GRAVITY } from "./findings.ts";
import { askedLines } from "./solve-questions.ts";

/** An answer: whether it is reached, what to change, what else changes with it. */
export function solveLines(
  context: SolveContext,
  question: SolveQuestion,
  asked: SolveValues,
  answer: SolveAnswer,
  page: Page,
): readonly string[] {
  const { car } = context.study;
  return [
    ...hang("", `${car.name}: ${question.title}`, page.width).map(page.bold),
    "",
    ...aimLines(answer, page),
    ...section(page, "What to change", changeLines(answer, page)),
    ...section(page, "What it does", readingLines([...answer.readings, ...answer.effects], answer, page)),
    ...section(page, "Findings that come and go", findingLines(answer, page)),
    ...section(page, choiceTitle(answer), choiceLines(answer, page)),
    ...answer.curves.flatMap((curve) =>
      section(page, `${answer.aim.label} over ${curve.label}`, curveLines(curve, answer, page)),
    ),
    ...section(page, "Asked with", askedLines(question.inputs(context), asked, page)),
    ...section(
      page,
      "To mind",
      answer.notes.flatMap((note) => hang("- ", saySolveNote(note, car), page.width)),
    ),
  ];
}

const OUTCOME: Readonly<Record<SolveAnswer["outcome"], string>> = {
  reached: "REACHED",
  already: "ALREADY SO",
  nearest: "NOT REACHED",
  none: "NO ANSWER",
};

function aimLines({ aim, outcome, operations }: SolveAnswer, page: Page): readonly string[] {
  const { label, dimension, sense, wanted, before, best, after } = aim;
  const show = (value: number | null) => fine(value, dimension, page);
  const limit =
    wanted === null ? "" : ` Wanted: ${sense === "at-least" ? "at least" : "no more than"} ${show(wanted)}.`;
  const missing = best !== null && isWithin(best, aim) ? IN_THE_ROUNDING : BEST_THERE_IS;
  const remark =
    outcome === "already" ? " It is good as it is; this betters it." : outcome === "nearest" ? missing : "";
  const found =
    operations.length === 0
      ? "nothing better was found."
      : `${show(after)} with the values below${best === null ? "" : `, ${show(best)} before they are rounded`}.${remark}`;
  return hang(
    "",
    `${OUTCOME[outcome]}. ${label.charAt(0).toUpperCase()}${label.slice(1)}: ${show(before)} now; ${found}${limit}`,
    page.width,
  ).map(outcome === "nearest" || outcome === "none" ? page.bold : (line) => line);
}

const BEST_THERE_IS = " This is the best there is within what was asked.";
const IN_THE_ROUNDING = " What is short is only in the rounding: a rod end or a finer mark takes it up.";

const isWithin = (value: number, { sense, wanted }: SolveAnswer["aim"]): boolean =>
  wanted !== null && (sense === "at-least" ? value >= wanted - 1e-9 : value <= wanted + 1e-9);

/** One digit more than a builder reads, because an answer is told beside the limit it was held to. */
function fine(value: number | null, dimension: Dimension, { units }: Page): string {
  if (value === null) return "none";
  if (dimension === "length") return sayTape(value, units);
  if (dimension === "angle") return `${formatNumber(toUnit(value, dimension, units), 2)} ${unitOf(dimension, units)}`;
  return formatValue(value, dimension, units);
}

/** With more rows than this only the first are shown; all are in the file and the JSON. */
const MOST_CHANGES = 30;

function changeLines({ changes }: SolveAnswer, page: Page): readonly string[] {
  if (changes.length === 0) return [];
  const cell = (value: number | null, dimension: Dimension): string =>
    dimension === "angle" && value !== null
      ? formatNumber(toUnit(value, dimension, page.units), 2)
      : bare(value, dimension, page.units);
  const rows = changes.slice(0, MOST_CHANGES).map(({ path, label, dimension, before, exact, after }) => ({
    cells: [
      path,
      dimension === "angle" ? `${label}, in degrees` : label,
      cell(before, dimension),
      cell(after, dimension),
      formatNumber(toUnit(exact, dimension, page.units), dimension === "angle" || page.units === "metric" ? 2 : 3),
    ],
  }));
  const columns: readonly Column[] = [
    { head: ["field"], align: "left", gives: true },
    { head: ["what"], align: "left", gives: true },
    { head: [`now, ${unitOf("length", page.units)}`], align: "mark" },
    { head: [`to, ${unitOf("length", page.units)}`], align: "mark" },
    { head: ["unrounded"], align: "right" },
  ];
  const rest = changes.length - rows.length;
  return [...table(columns, rows, page.width), ...(rest > 0 ? [`and ${rest} more fields.`] : [])];
}

function readingLines(readings: readonly SolveReading[], { operations }: SolveAnswer, page: Page): readonly string[] {
  if (readings.length === 0 || operations.length === 0) return [];
  const cell = (value: number | null, { dimension, signed }: SolveReading, name: string | undefined): string => {
    if (value === null) return NO_VALUE;
    const text =
      dimension === "angle"
        ? `${formatNumber(toUnit(value, dimension, page.units), 2, signed)} deg`
        : formatValue(value, dimension, page.units, { sign: signed });
    return name === undefined ? text : `${text}, ${name}`;
  };
  const rows = readings.map((reading) => {
    const at =
      reading.at === undefined ? "" : ` at ${markTravel(reading.at, page.units)} ${unitOf("length", page.units)}`;
    return {
      cells: [
        `${reading.label}${at}`,
        cell(reading.before, reading, reading.nameBefore),
        cell(reading.after, reading, reading.nameAfter),
      ],
    };
  });
  return table(
    [
      { head: [""], align: "left" },
      { head: ["now"], align: "left", gives: true },
      { head: ["then"], align: "left", gives: true },
    ],
    rows,
    page.width,
  );
}

function findingLines({ findings: { appeared, gone } }: SolveAnswer, page: Page): readonly string[] {
  const told = (lead: string, list: typeof appeared) =>
    list
      .filter(({ gravity }) => gravity !== "note")
      .flatMap((finding) => {
        const lines = hang(
          `${lead}  ${GRAVITY[finding.gravity]}  `,
          sayFinding(finding, page.units).sentence,
          page.width,
        );
        return lead === "new " && finding.gravity === "must" ? lines.map((line) => page.bold(page.red(line))) : lines;
      });
  return [...told("new ", appeared), ...told("gone", gone)];
}

const choiceTitle = ({ choices }: SolveAnswer): string =>
  choices.every(({ value }) => value === null)
    ? "What comes nearer than wanted on the way forward"
    : "Other ways, each by itself, best first";

function choiceLines({ choices, aim }: SolveAnswer, page: Page): readonly string[] {
  if (choices.length === 0) return [];
  const isWay = choices.some(({ value }) => value !== null);
  const length = unitOf("length", page.units);
  const rows = choices.map(({ label, offset, value }) => ({
    cells: isWay
      ? [label, markTravel(offset, page.units), fine(value, aim.dimension, page)]
      : [label, offset === 0 ? "as it stands" : markTravel(offset, page.units)],
  }));
  const columns: readonly Column[] = [
    { head: [isWay ? "what is moved" : "what"], align: "left", gives: true },
    { head: [isWay ? `by, ${length}` : `after, ${length}`], align: "mark" },
    ...(isWay ? [{ head: [aim.label], align: "left" } as const] : []),
  ];
  return table(columns, rows, page.width);
}

/** Every so many of a curve's places are shown. */
const EACH = 4;

function curveLines({ offsets, values }: SolveCurve, { aim }: SolveAnswer, page: Page): readonly string[] {
  const rows = offsets.flatMap((offset, i) =>
    i % EACH === 0
      ? [
          {
            cells: [
              markTravel(offset, page.units),
              values[i] === null ? "does not go together" : fine(values[i]!, aim.dimension, page),
            ],
          },
        ]
      : [],
  );
  return table(
    [
      { head: [`moved, ${unitOf("length", page.units)}`], align: "mark" },
      { head: [aim.label], align: "left" },
    ],
    rows,
    page.width,
  );
}
