import {
  type CarSurvey,
  formatLength,
  formatNumber,
  INCH,
  nextReadings,
  sayCause,
  sayEither,
  sayMirrored,
  sayReading,
  sayReadingValue,
  sayRemedy,
  saySettling,
  saySuspicion,
  sayUndetermined,
  unitOf,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { counted } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { wishOf } from "./survey-next.ts";

/** Coordinates with their ±, what is suspicious, what cannot be told, what to tape next. */
export function surveyLines(
  car: { readonly name: string },
  survey: CarSurvey,
  all: boolean,
  page: Page,
): readonly string[] {
  return [
    ...hang("", car.name, page.width).map(page.bold),
    ...hang("", summaryOf(survey), page.width),
    ...section(page, "Suspicious readings, not used", suspicionLines(survey, page)),
    ...section(page, "What cannot be told", undeterminedLines(survey, page)),
    ...section(page, "Two solutions", mirroredLines(survey, page)),
    ...section(page, `Where the points are, ${unitOf("length", page.units)}`, pointLines(survey, page)),
    ...section(page, all ? "Every reading" : "Readings that miss most", readingLines(survey, all, page)),
    ...section(page, "What to tape next", nextLines(survey, page)),
    ...section(page, "Before you cut", cautionLines(survey, page)),
  ];
}

function summaryOf({ survey, result }: CarSurvey): string {
  const taken = survey.readings.filter(({ isDeferred }) => !isDeferred).length;
  const put = survey.readings.length - taken;
  const state =
    result.status === "solved"
      ? ""
      : result.status === "no-points"
        ? " There are no points."
        : " THE POINTS DID NOT SETTLE: take what stands below as a sketch only.";
  const fit =
    result.scatter === null
      ? "Nothing is read twice over, so no reading can be checked."
      : result.agreement?.isMisfit
        ? `THE READINGS MISS EACH OTHER ${formatNumber(result.scatter, 1)} TIMES AS FAR AS THEIR ± ALLOWS.`
        : `They agree as well as their ± says (${formatNumber(result.scatter, 2)} of it, ${result.degreesOfFreedom} to spare).`;
  return `${counted(survey.points.length, "point")}, ${counted(taken, "reading")}${put > 0 ? `, ${put} put off` : ""}. ${fit}${state}`;
}

function suspicionLines({ survey, result }: CarSurvey, page: Page): readonly string[] {
  return result.suspicions.flatMap((each) => [
    ...hang("", `${saySuspicion(survey, each, page.units)}.`, page.width).map(page.red),
    ...each.causes.flatMap((cause) => hang("   Perhaps ", sayCause(cause, page.units), page.width)),
    ...(each.alternatives.length === 0 ? [] : hang("   ", sayEither(survey, each), page.width)),
  ]);
}

const undeterminedLines = ({ survey, result }: CarSurvey, page: Page): readonly string[] =>
  result.undetermined.flatMap((each) => {
    const said = sayUndetermined(survey, each);
    return [
      ...hang("", `${said.charAt(0).toUpperCase()}${said.slice(1)}.`, page.width).map(page.red),
      ...hang("   ", sayRemedy(survey, each), page.width),
    ];
  });

const mirroredLines = ({ survey, result }: CarSurvey, page: Page): readonly string[] =>
  result.mirrored.flatMap((each) => {
    const said = sayMirrored(survey, each);
    return [
      ...hang("", `${said.charAt(0).toUpperCase()}${said.slice(1)}.`, page.width).map(page.red),
      ...hang("   ", saySettling(survey, each, page.units), page.width),
    ];
  });

function pointLines({ survey, result }: CarSurvey, page: Page): readonly string[] {
  const { units } = page;
  const within = (sd: number): string => plusMinus(2 * sd, units);
  return [
    ...table(
      [
        { head: ["point"], align: "left", gives: true },
        { head: ["forward"], align: "mark" },
        { head: ["±"], align: "right" },
        { head: ["left"], align: "mark" },
        { head: ["±"], align: "right" },
        { head: ["up"], align: "mark" },
        { head: ["±"], align: "right" },
      ],
      result.points.map(({ name, at, sd }, i) => {
        const blind = new Set(
          result.undetermined
            .filter(({ point }) => point === i)
            .flatMap(({ way }) => (["x", "y", "z"] as const).filter((axis) => Math.abs(way[axis]) > 0.25)),
        );
        const cells = (["x", "y", "z"] as const).flatMap((axis) =>
          blind.has(axis)
            ? ["?", "?"]
            : [formatLength(at[axis], units), survey.points[i]!.fixed[axis] !== undefined ? "held" : within(sd[axis])],
        );
        return { cells: [name, ...cells], ...(blind.size > 0 && { paint: page.red }) };
      }),
      page.width,
    ),
    ...hang("", "± is two standard deviations: about 95 in 100 are within.", page.width),
  ];
}

/** Finer than a tape, since it is no reading: hundredths of an inch, tenths of a millimetre. */
const plusMinus = (metres: number, units: Page["units"]): string =>
  units === "metric" ? formatNumber(metres * 1000, 1) : formatNumber(metres / INCH, 2);

const MOST_READINGS = 5;

function readingLines({ survey, result }: CarSurvey, all: boolean, page: Page): readonly string[] {
  const { units } = page;
  const rows = survey.readings.flatMap((reading, i) => {
    const solved = result.readings[i]!;
    if (!solved.isUsed) return [];
    return solved.numbers.map((number) => ({ reading, number }));
  });
  const sorted = all
    ? rows
    : [...rows].sort((a, b) => Math.abs(b.number.test ?? 0) - Math.abs(a.number.test ?? 0)).slice(0, MOST_READINGS);
  if (sorted.length === 0) return [];
  return [
    ...table(
      [
        { head: ["", "reading"], align: "left", gives: true },
        { head: ["", "read"], align: "right" },
        { head: ["points", "make it"], align: "right" },
        { head: ["in spreads", "of its own"], align: "right" },
        { head: ["checked", "by others"], align: "right" },
      ],
      sorted.map(({ reading, number }) => ({
        cells: [
          `${sayReading(survey, reading)}${number.part === "" ? "" : `, ${number.part}`}`,
          sayReadingValue(reading, number.observed, units),
          sayReadingValue(reading, number.adjusted, units),
          number.test === null ? "—" : formatNumber(number.test, 1, true),
          number.redundancy === null ? "—" : `${formatNumber(100 * number.redundancy, 0)} %`,
        ],
      })),
      page.width,
    ),
    ...hang(
      "",
      `What was read has what is added to it in it. Past ${formatNumber(3.29, 2)} spreads a reading is set aside: one sound one in a thousand is, too (Baarda's test).`,
      page.width,
    ),
  ];
}

function nextLines(carSurvey: CarSurvey, page: Page): readonly string[] {
  const { survey, solved } = carSurvey;
  const { units } = page;
  return nextReadings(survey, solved, wishOf(carSurvey), 3).flatMap((next, i) => {
    const expected = `should read ${sayReadingValue(next.reading, next.expected, units)}`;
    const what = next.isNeeded
      ? "tells what nothing has told so far"
      : `${expected}; brings the points' ± together from ${plusMinus(2 * next.before, units)} to ${plusMinus(2 * next.after, units)}`;
    const put = next.deferred === undefined ? "" : " (put off so far)";
    return hang(`${i + 1}. `, `${sayReading(survey, next.reading)}${put}: ${what}.`, page.width);
  });
}

function cautionLines({ survey, result }: CarSurvey, page: Page): readonly string[] {
  const alone = survey.readings.filter((_, i) =>
    result.readings[i]!.numbers.some(({ redundancy }) => redundancy !== null && redundancy < 0.02),
  ).length;
  return [
    ...(alone > 0
      ? hang(
          "",
          `${counted(alone, "reading is", "readings are")} checked by no other: a slip there would not show.`,
          page.width,
        )
      : []),
    ...hang(
      "",
      "The ± is as good as the ± of the readings. A tape that sags or a floor that slopes is in none of them.",
      page.width,
    ),
  ];
}
