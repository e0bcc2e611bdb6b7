import type { Car } from "../car/car.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import type { CarSurvey } from "../survey/car-survey.ts";
import { type CycleCertainty, cycleCertainty } from "./cycle-certainty.ts";
import { type Inputs, type UncertainInput, uncertainInputs } from "./inputs.ts";
import { type LimitCertainty, limitCertainty } from "./limit-certainty.ts";

/** How sure a study is. */
export interface StudyCertainty {
  readonly inputs: Inputs;
  /** Every quantity at the droop stop, at ride height and at the bump stop. */
  readonly cycle: CycleCertainty;
  readonly limits: readonly LimitCertainty[];
  /** What to be careful with, the most telling first. */
  readonly matters: readonly Matter[];
}

/** A weld, a bought part, a setting or a reading of the survey, and how much hangs on it. */
export interface Matter {
  readonly source: MatterSource;
  /** 0…1: its share of the results' variances, all counted alike. */
  readonly weight: number;
  /** Results that hang on it most, with its share in each. */
  readonly of: readonly { readonly result: MatterResult; readonly share: number }[];
}

export type MatterSource =
  | { readonly kind: "input"; readonly input: UncertainInput }
  /** Place in the survey's readings. */
  | { readonly kind: "reading"; readonly reading: number };

export type MatterResult =
  | { readonly kind: "quantity"; readonly id: string; readonly label: string; readonly travel: number }
  | { readonly kind: "limit"; readonly label: string; readonly direction: "bump" | "droop" };

/** Quantities that a builder is careful for. */
const MAIN = [
  "camber",
  "toe",
  "halfTrackChange",
  "shockLength",
  "motionRatio",
  "innerJoint",
  "outerJoint",
  "slipEngagement",
  "strapSlack",
  "bumpStopGap",
];
/** Limits that are nearer than this many of their standard deviations count. */
const NEAR = 6;
const MOST = 6;

export function studyCertainty(car: Car, travel: TravelReport, inputs: Inputs = uncertainInputs(car)): StudyCertainty {
  const cycle = cycleCertainty(car, [travel.droop.stop.travel, 0, travel.bump.stop.travel], inputs);
  const limits = limitCertainty(car, inputs, travel);
  return { inputs, cycle, limits, matters: mattersOf(cycle, limits, inputs, car.survey) };
}

interface Weighed {
  readonly result: MatterResult;
  readonly shares: readonly { readonly source: MatterSource; readonly share: number }[];
}

function mattersOf(
  cycle: CycleCertainty,
  limits: readonly LimitCertainty[],
  inputs: Inputs,
  survey: CarSurvey | undefined,
): readonly Matter[] {
  const split = splitter(inputs, survey);
  const quantities = cycle.readings.flatMap(({ quantity, travel, sd, shares, gradient, isSimulated }): Weighed[] => {
    if (!MAIN.includes(quantity.id) || !(sd !== null && sd > 1e-7) || isSimulated) return [];
    const { id, label } = quantity;
    return [{ result: { kind: "quantity", id, label, travel }, shares: split(shares, gradient) }];
  });
  const near = limits.flatMap(({ limit, direction, left, sd, shares, gradient }): Weighed[] => {
    if (!(left < NEAR * sd)) return [];
    return [{ result: { kind: "limit", label: limit.label, direction }, shares: split(shares, gradient) }];
  });
  const all = [...quantities, ...near];
  const found = new Map<
    string,
    { source: MatterSource; weight: number; of: { result: MatterResult; share: number }[] }
  >();
  for (const { result, shares } of all) {
    for (const { source, share } of shares) {
      const key = source.kind === "reading" ? `reading ${source.reading}` : keyOf(source.input);
      const entry = found.get(key) ?? { source, weight: 0, of: [] };
      entry.weight += share / all.length;
      if (share > 0.05) entry.of.push({ result, share });
      found.set(key, entry);
    }
  }
  return [...found.values()]
    .sort((a, b) => b.weight - a.weight)
    .slice(0, MOST)
    .map(({ source, weight, of }) => ({
      source,
      weight,
      of: of
        .sort((a, b) => b.share - a.share)
        .filter(isFirstOfItsName)
        .slice(0, 3),
    }));
}

const keyOf = (input: UncertainInput): string =>
  input.kind === "point" ? `${input.place.path} ${input.axis}` : input.setting;

/** One result is told once, at the travel where most of it hangs on this. */
const isFirstOfItsName = (
  { result }: { readonly result: MatterResult },
  index: number,
  all: readonly { readonly result: MatterResult }[],
): boolean => all.findIndex((other) => other.result.label === result.label) === index;

/**
 * Shares by source. What a survey's points bring is split among its readings: with the points' covariance Q = (AᵀA)⁻¹ and
 * A's rows over their standard deviations, a result of gradient g has the variance Σ (gᵀQaₖ)², one term a reading.
 */
function splitter(
  inputs: Inputs,
  carSurvey: CarSurvey | undefined,
): (shares: Float64Array, gradient: Float64Array) => Weighed["shares"] {
  const plain = (shares: Float64Array, isOwn: (input: UncertainInput) => boolean): Weighed["shares"] =>
    inputs.list.flatMap((input, i) =>
      isOwn(input) ? [{ source: { kind: "input", input } as const, share: shares[i]! }] : [],
    );
  if (!carSurvey) return (shares) => plain(shares, () => true);
  const { list } = inputs;
  const { survey, result, solved } = carSurvey;
  const { unknowns, equations } = solved.adjustment;
  const used = survey.readings.flatMap((_, i) =>
    result.readings[i]!.isUsed ? result.readings[i]!.numbers.map(() => i) : [],
  );
  const surveyed = list.flatMap((input, i) =>
    input.kind === "point" && input.surveyRow !== undefined ? [{ i, row: input.surveyRow }] : [],
  );
  const unknownOf = (row: number): number => unknowns.of[Math.floor(row / 3)]![(row % 3) as 0 | 1 | 2];
  // Qaₖ for every equation, at the surveyed coordinates.
  const moves = equations.map((equation) =>
    surveyed.map(({ row }) => {
      const unknown = unknownOf(row);
      if (unknown < 0) return 0;
      const spread = solved.spread.covariance[unknown]!;
      return equation.unknowns.reduce((sum, other, k) => sum + spread[other]! * equation.slopes[k]!, 0);
    }),
  );
  return (shares, gradient) => {
    const own = plain(shares, (input) => !(input.kind === "point" && input.surveyRow !== undefined));
    const part = surveyed.reduce((sum, { i }) => sum + shares[i]!, 0);
    if (!(part > 0)) return own;
    const squares = moves.map(
      (move) => move.reduce((sum, value, k) => sum + value * gradient[surveyed[k]!.i]!, 0) ** 2,
    );
    const total = squares.reduce((sum, square) => sum + square, 0);
    const byReading = new Map<number, number>();
    squares.forEach((square, k) => {
      const reading = used[k]!;
      byReading.set(reading, (byReading.get(reading) ?? 0) + (part * square) / (total || 1));
    });
    return [
      ...own,
      ...[...byReading].map(([reading, share]) => ({ source: { kind: "reading", reading } as const, share })),
    ];
  };
}
