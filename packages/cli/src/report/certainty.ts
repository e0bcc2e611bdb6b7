import {
  type CertainReading,
  formatLength,
  formatNumber,
  type LimitCertainty,
  type Matter,
  type MatterResult,
  NO_VALUE,
  type Study,
  sayInput,
  sayInputKind,
  sayMatter,
  toUnit,
  USUAL_JOINT,
  USUAL_TACKED,
  USUAL_TURNED,
  unitOf,
} from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare, sayAmount } from "../text/say.ts";
import { type Row, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

/** Numbers whose ± a builder asks for first; every other one is in the JSON. */
const SHOWN = [
  "camber",
  "toe",
  "halfTrackChange",
  "wheelbaseChange",
  "shockLength",
  "motionRatio",
  "innerJoint",
  "outerJoint",
  "shaftLength",
  "slipEngagement",
  "strapSlack",
  "bumpStopGap",
  "rollCentre",
  "wheelRate",
];

/** How sure the numbers at droop, ride and bump are, and what they hang on. */
export function certaintyLines({ certainty }: Study, page: Page): readonly string[] {
  const { readings, travels } = certainty.cycle;
  const ids = SHOWN.filter((id) => readings.some(({ quantity }) => quantity.id === id));
  const rows = ids.flatMap((id): Row[] => {
    const own = readings.filter(({ quantity }) => quantity.id === id);
    const [first] = own;
    if (!first) return [];
    const { label, dimension } = first.quantity;
    return [
      { cells: [label, ...own.map((each) => plusMinus(each, page)), unitOf(dimension, page.units), mostOf(own)] },
    ];
  });
  const names = ["droop", "ride", "bump"];
  return [
    ...table(
      [
        { head: ["± of", ""], align: "left", gives: true },
        ...travels.map((travel, i) => ({
          head: [names[i] ?? "", formatLength(travel, page.units, { sign: true })] as const,
          align: "right" as const,
        })),
        { head: ["", ""], align: "left" },
        { head: ["hangs most on", ""], align: "left", gives: true },
      ],
      rows,
      page.width,
    ),
    ...hang(
      "",
      "± is two standard deviations: about 95 of 100 cars built so are within. Camber and toe at ride height are as they are set.",
      page.width,
    ),
  ];
}

/** Finer than a tape, since it is no reading: hundredths of an inch, a millimetre or a degree. */
function plusMinus({ sd, quantity: { dimension } }: CertainReading, { units }: Page): string {
  if (sd === null) return NO_VALUE;
  const value = 2 * sd;
  if (dimension === "length" || dimension === "angle") return formatNumber(toUnit(value, dimension, units), 2);
  if (dimension === "ratio") return formatNumber(value, 3);
  return bare(value, dimension, units);
}

/** What brings most, at the height where the ± is widest. */
function mostOf(readings: readonly CertainReading[]): string {
  const widest = readings.reduce((a, b) => ((b.sd ?? 0) > (a.sd ?? 0) ? b : a));
  const [cause] = widest.causes;
  return cause ? sayInput(cause.input) : "";
}

/** How sure it is that the chosen stops come before each near hard limit. */
export function limitCertaintyLines(limits: readonly LimitCertainty[], page: Page): readonly string[] {
  const near = limits
    .filter(({ left, sd }) => left < 4 * sd + 0.03)
    .sort((a, b) => b.chance - a.chance || a.left - b.left);
  if (near.length === 0) return [];
  const unit = unitOf("length", page.units);
  return table(
    [
      { head: ["", "hard limit"], align: "left", gives: true },
      { head: ["past your stop,", `${unit} of travel`], align: "mark" },
      { head: ["", "±"], align: "left" },
      { head: ["comes before the stop", "in so many of 100 cars"], align: "right" },
      { head: ["hangs most on", ""], align: "left", gives: true },
    ],
    near.map(({ direction, limit, left, sd, chance, causes }) => ({
      cells: [
        `${direction}: ${limit.label}`,
        formatLength(left, page.units, { sign: true }),
        formatLength(2 * sd, page.units),
        sayChance(chance),
        causes[0] ? sayInput(causes[0].input) : "",
      ],
      ...(left < 2 * sd ? { paint: page.bold } : {}),
    })),
    page.width,
  );
}

const sayChance = (chance: number): string =>
  chance < 0.005 ? "under 1" : chance > 0.995 ? "over 99" : formatNumber(100 * chance, 0);

/** Welds, settings and readings that most hangs on. */
export function matterLines({ car, certainty }: Study, page: Page): readonly string[] {
  const lead = hang("", "What brings most of the ±, as a share of its square:", page.width);
  return lead
    .concat(
      certainty.matters
        .filter(({ of }) => of.length > 0)
        .flatMap(({ source, of }, i) => {
          const what = sayMatter(source, car.survey);
          const kind = source.kind === "reading" ? "reading" : sayInputKind(source.input);
          return hang(`${i + 1}. `, `${what} (${kind}): ${of.map(sayPart).join(", ")}.`, page.width);
        }),
    )
    .concat(restsOn(car, page));

  function sayPart({ result, share }: Matter["of"][number]): string {
    return `${formatNumber(100 * share, 0)} % of ${sayResult(result)}`;
  }

  function sayResult(result: MatterResult): string {
    if (result.kind === "limit") return `${result.label}, ${result.direction}`;
    return `${result.label}${sayWhere(result.travel)}`;
  }

  function sayWhere(travel: number): string {
    if (Math.abs(travel) < 5e-4) return " at ride height";
    return ` ${sayAmount(travel, "length", page.units)} ${travel > 0 ? "up" : "down"}`;
  }
}

/** What the ± is made from. */
export function restsOn({ tolerances, survey, ownTolerances, units }: Study["car"], page: Page): readonly string[] {
  const tacked = sayAmount(tolerances?.tacked ?? USUAL_TACKED, "length", units);
  const joint = sayAmount(tolerances?.joint ?? USUAL_JOINT, "length", units);
  const turned = formatNumber(tolerances?.turned ?? USUAL_TURNED, 2).replace(/\.?0+$/, "");
  const own = (given: number | undefined): string => (given === undefined ? " (common practice)" : "");
  const parts = [
    `welded places ± ${tacked}${own(tolerances?.tacked)}`,
    `bought parts ± ${joint}${own(tolerances?.joint)}`,
    `adjusters ± ${turned} turn${own(tolerances?.turned)}`,
    ...(survey ? ["the survey's own ± where points come from it"] : []),
    ...(ownTolerances ? [`${ownTolerances.length} with a ± of their own`] : []),
  ];
  return hang("", `Rests on: ${parts.join(", ")}. Flex and slop of joints are not in it.`, page.width);
}
