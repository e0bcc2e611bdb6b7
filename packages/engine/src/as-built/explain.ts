import type { Car } from "../car/car.ts";
import {
  type Inputs,
  movedBy,
  type Setting,
  type UncertainCoordinate,
  type UncertainInput,
  uncertainInputs,
} from "../certainty/inputs.ts";
import { slopesOf } from "../certainty/slopes.ts";
import { makeCorner } from "../cycle/corner.ts";
import { chiSquareTail } from "../survey/distribution.ts";
import { DEGREE } from "../units/convert.ts";
import { type CardReading, cardValues, logReadings, startsFor } from "./card-reading.ts";
import type { LoggedReading } from "./logged-reading.ts";
import { strongestLimit } from "./strongest-limit.ts";
import { inner, whitener } from "./whitened.ts";

/** One way in which the car can differ from its plan. */
export type Cause =
  | { readonly kind: "point"; readonly input: UncertainCoordinate; readonly sd: number }
  | { readonly kind: "setting"; readonly setting: "camber" | "toe"; readonly sd: number };

export interface ComparedReading {
  readonly logged: LoggedReading;
  readonly card: CardReading;
  /** What the plan says, SI; null where the plan does not reach there. */
  readonly predicted: number | null;
  /** Standard deviations of prediction and of reading. */
  readonly predictedSd: number;
  readonly readingSd: number;
  /** (read − predicted) over the standard deviation of both; null where there is no prediction. */
  readonly misfit: number | null;
}

export interface Explanation {
  readonly cause: Cause;
  /** m, or rad of a setting; in the document's direction. */
  readonly by: number;
  /** Its standard deviation. */
  readonly sd: number;
  /** `by` over its standard deviation: its square is what it takes off the sum of squared misfits. */
  readonly test: number;
}

export interface AsBuiltStudy {
  readonly readings: readonly ComparedReading[];
  /** Sum of squared misfits of the plan as it stands, prediction and reading both counted; and the chance of as much or more. */
  readonly sum: number;
  readonly probability: number;
  /** Whether plan and car agree as well as tape and building allow. */
  readonly agrees: boolean;
  /** Single causes, the likeliest first; those that the readings cannot tell from the first are `alike`. */
  readonly explanations: readonly Explanation[];
  readonly alike: number;
  /** Every cause together within the build tolerances, the least that explains the readings. */
  readonly together: readonly { readonly cause: Cause; readonly by: number }[];
  /** How far camber and toe at ride height are from the plan by all readings together, rad, with standard deviations. */
  readonly settings: Readonly<Record<Setting, { readonly by: number; readonly sd: number }>>;
  /** The plan moved to the likeliest single cause. */
  readonly explained: Car | null;
}

/** Nobody builds farther off than this, m and rad: what would have to be, explains nothing. Common practice. */
const MOST_POINT = 0.04;
const MOST_SETTING = 5 * DEGREE;
/**
 * Improvement in the sum of squares that tells two explanations apart: 95 % of chi-square with one degree of freedom
 * (M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, table 26.8).
 */
const TOLD_APART = 3.84;
/** Of honest cars so many are said not to agree: most by their strongest single cause, some by the sum of all misfits. */
export const DISAGREES = 0.05;
const BY_SUM = 0.005;

/** The finished car against its plan: how well they agree, and what would explain it if they do not. */
export function explainAsBuilt(
  car: Car,
  log: readonly LoggedReading[],
  inputs: Inputs = uncertainInputs(car),
): AsBuiltStudy {
  const corner = makeCorner(car);
  const cards = new Map(logReadings(corner).map((card) => [keyOf(card), card]));
  const used = log.flatMap((logged) => {
    const card = cards.get(keyOf(logged));
    return card ? [{ logged, card, travel: logged.travel }] : [];
  });
  const starts = startsFor(corner, used);
  const predict = (of: Car): readonly (number | null)[] => cardValues(makeCorner(of, {}, corner), used, starts);
  const planned = predict(car);
  const slopes = slopesOf(car, inputs.list, predict);
  const spread = productOf(inputs.covariance, slopes);
  const readingSd = used.map(({ logged, card }) => (logged.plusMinus ?? card.plusMinus) / 2);
  const readings = used.map(({ logged, card }, k): ComparedReading => {
    const predicted = planned[k]!;
    const variance = Math.max(dotOfColumns(slopes, spread, k, k), 0);
    const off = predicted === null ? null : logged.reads - predicted;
    return {
      logged,
      card,
      predicted,
      predictedSd: Math.sqrt(variance),
      readingSd: readingSd[k]!,
      misfit: off === null ? null : off / Math.sqrt(variance + readingSd[k]! ** 2),
    };
  });
  const rows = readings.flatMap(({ misfit }, k) => (misfit === null ? [] : [k]));
  // Covariance of the misfits: what building brings, and reading.
  const both = rows.map((k) =>
    Float64Array.from(rows, (l) => dotOfColumns(slopes, spread, k, l) + (k === l ? readingSd[k]! ** 2 : 0)),
  );
  const whiten = whitener(both);
  const off = whiten(rows.map((k) => used[k]!.logged.reads - planned[k]!));
  const sum = inner(off, off);
  const probability = rows.length === 0 ? 1 : chiSquareTail(sum, rows.length);
  const singles = inputs.list
    .map((input, i) => singleOf(causeOf(input), whiten(rows.map((k) => slopes[i]![k]!)), off))
    .filter((single) => single !== null);
  const explanations = singles
    .map(({ explanation }) => explanation)
    .filter(({ cause, by }) => Math.abs(by) <= (cause.kind === "point" ? MOST_POINT : MOST_SETTING))
    .sort((a, b) => b.test ** 2 - a.test ** 2);
  const [best] = explanations;
  const limit = strongestLimit(
    singles.map(({ way }) => way),
    DISAGREES - BY_SUM,
  );
  // Each cause's part of the least that explains the readings: its covariance with them, times their weighted misfits.
  const parts = inputs.list.map((_, i) => whiten(rows.map((k) => spread[i]![k]!)));
  const together = inputs.list.map((input, i) => ({ cause: causeOf(input), by: inner(parts[i]!, off) }));
  const settingOf = (name: Setting): { readonly by: number; readonly sd: number } => {
    const i = inputs.list.findIndex((input) => input.kind === "setting" && input.setting === name);
    const part = parts[i];
    if (!part) return { by: 0, sd: 0 };
    return { by: inner(part, off), sd: Math.sqrt(Math.max(inputs.covariance[i]![i]! - inner(part, part), 0)) };
  };
  return {
    readings,
    sum,
    probability,
    agrees: probability > BY_SUM && (!best || Math.abs(best.test) < limit),
    explanations: explanations.slice(0, MOST_SHOWN),
    alike: best ? explanations.filter(({ test }) => best.test ** 2 - test ** 2 < TOLD_APART).length : 0,
    together: together
      .filter(({ cause, by }) => Math.abs(by) > 0.25 * cause.sd)
      .sort((a, b) => Math.abs(b.by / b.cause.sd) - Math.abs(a.by / a.cause.sd)),
    settings: { camber: settingOf("camber"), toe: settingOf("toe") },
    explained: best && rows.length > 0 ? withCause(car, best.cause, best.by) : null,
  };
}

/** Standard deviations that a single cause has to be worth before it is named. */
const LEAST_TEST = 2;

/** The single causes worth naming, likeliest first: those that the readings cannot tell apart; none where nothing stands out. */
export const likelyCauses = ({ explanations, alike }: AsBuiltStudy): readonly Explanation[] =>
  explanations.slice(0, alike).filter(({ test }) => Math.abs(test) > LEAST_TEST);

/** Explanations that are told. */
const MOST_SHOWN = 12;

const causeOf = (input: UncertainInput): Cause =>
  input.kind === "point"
    ? { kind: "point", input, sd: input.sd }
    : { kind: "setting", setting: input.setting, sd: input.sd };

const keyOf = ({ kind, of }: Pick<LoggedReading, "kind" | "of">): string => `${kind} ${of ?? ""}`;

/** The car with one cause at work. */
export function withCause(car: Car, cause: Cause, by: number): Car {
  return movedBy(car, cause.kind === "point" ? cause.input : cause, by);
}

/**
 * One cause alone beside the errors of building and reading, as large as fits best: generalised least squares,
 * a = sᵀV⁻¹d / sᵀV⁻¹s with u(a) = 1/√(sᵀV⁻¹s), d the misfits, s how they follow the cause, V their covariance (as Baarda's
 * test for one error at a time, 1968, with the causes in the place of readings). Null where no reading follows it.
 */
function singleOf(
  cause: Cause,
  slope: Float64Array,
  off: Float64Array,
): { readonly explanation: Explanation; readonly way: Float64Array } | null {
  const weight = inner(slope, slope);
  if (!(weight > 1e-6)) return null;
  const by = inner(slope, off) / weight;
  const sd = 1 / Math.sqrt(weight);
  return { explanation: { cause, by, sd, test: by / sd }, way: slope.map((each) => each * sd) };
}

/** Covariance times slopes: how each input hangs together with each reading. */
function productOf(covariance: Inputs["covariance"], slopes: readonly Float64Array[]): readonly Float64Array[] {
  const width = slopes[0]?.length ?? 0;
  return covariance.map((row) => {
    const product = new Float64Array(width);
    for (let j = 0; j < row.length; j += 1) {
      const share = row[j]!;
      if (share === 0) continue;
      const slope = slopes[j]!;
      for (let k = 0; k < width; k += 1) product[k]! += share * slope[k]!;
    }
    return product;
  });
}

function dotOfColumns(a: readonly Float64Array[], b: readonly Float64Array[], k: number, l: number): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]![k]! * b[i]![l]!;
  return sum;
}
