import type { Vec3 } from "../geometry/vec3.ts";
import { type Adjustment, adjust, covarianceOf, type Spread, spreadOf, varianceOf } from "./adjust.ts";
import { chiSquareLimit, normalLimit, tauLimit } from "./distribution.ts";
import { type Component, componentsOf, equationOf } from "./equations.ts";
import { type Survey, sdOf } from "./survey.ts";

/** The share of sound numbers that the test calls wrong (Baarda's usual choice). */
export const FALSE_ALARM_RATE = 0.001;
/** Less redundancy than this controls nothing. */
export const LEAST_REDUNDANCY = 1e-3;
/** One-sided 95 % point of the normal law: what tells one test from another. */
const TOLD_APART = 1.645;
/** Suspects that are tried by leaving each out. */
const MOST_TRIED = 6;

export interface SnoopOptions {
  readonly falseAlarmRate?: number;
  /** `stated`: standard deviations are believed (Baarda's w). `found`: only their ratios are (Pope's tau). */
  readonly spread?: "stated" | "found";
}

/** A reading set aside. */
export interface SetAside {
  readonly reading: number;
  readonly part: Component["part"];
  readonly test: number;
  readonly limit: number;
  /** Readings that would explain it as well. */
  readonly alternatives: readonly number[];
}

export interface Snooped {
  readonly used: readonly number[];
  readonly adjustment: Adjustment;
  readonly spread: Spread;
  readonly setAside: readonly SetAside[];
}

/** One number of a reading in use, with its test. */
export interface Tested {
  readonly reading: number;
  readonly component: Component;
  readonly sd: number;
  readonly misfit: number;
  readonly redundancy: number;
  /** Baarda's w; null where nothing else controls the number. */
  readonly test: number | null;
}

/**
 * Data snooping (W. Baarda, A testing procedure for use in geodetic networks, 1968): the number with the largest
 * standardised residual past the limit is set aside with its reading, the net adjusted anew, until none is left. What was
 * set aside early and agrees with the rest in the end is taken back.
 */
export function snoop(
  survey: Survey,
  readings: readonly number[],
  start: readonly Vec3[],
  options: SnoopOptions = {},
): Snooped {
  const { falseAlarmRate = FALSE_ALARM_RATE, spread: believed = "stated" } = options;
  let used = [...readings];
  let adjustment = adjust(survey, used, start);
  let spread = spreadOf(adjustment.equations, adjustment.unknowns.count);
  const setAside: SetAside[] = [];
  const redo = (): void => {
    adjustment = adjust(survey, used, adjustment.at);
    spread = spreadOf(adjustment.equations, adjustment.unknowns.count);
  };
  for (;;) {
    const tested = testAll(survey, used, adjustment, spread);
    const freedom = tested.length - (adjustment.unknowns.count - spread.free.length);
    const scatter = believed === "found" && freedom > 0 ? Math.sqrt(adjustment.sum / freedom) : 1;
    const limit = believed === "found" ? tauLimit(falseAlarmRate, freedom) : normalLimit(falseAlarmRate);
    if (freedom < 1 || limit === null || scatter === 0) break;
    let worst: Tested | null = null;
    for (const each of tested) {
      if (each.test !== null && Math.abs(each.test) > Math.abs(worst?.test ?? 0)) worst = each;
    }
    if (!worst || Math.abs(worst.test!) / scatter <= limit) break;
    const suspects = suspectsFor(survey, used, worst, tested, adjustment, spread, scatter);
    const [guilty] = suspects;
    setAside.push({
      reading: guilty!.reading,
      part: guilty!.component.part,
      test: guilty!.test! / scatter,
      limit,
      alternatives: suspects.slice(1).map(({ reading }) => reading),
    });
    used = used.filter((index) => index !== guilty!.reading);
    redo();
  }
  // Taken back one at a time, last set aside first: an early one may only have been pulled off by a worse one.
  for (const each of [...setAside].reverse()) {
    if (setAside.length < 2 || !agrees(survey, each.reading, adjustment, spread, normalLimit(falseAlarmRate))) continue;
    setAside.splice(setAside.indexOf(each), 1);
    used = readings.filter((index) => used.includes(index) || index === each.reading);
    redo();
  }
  return { used, adjustment, spread, setAside };
}

/** Every number in use with its residual's test. */
export function testAll(
  survey: Survey,
  used: readonly number[],
  { at, unknowns }: Adjustment,
  spread: Spread,
): Tested[] {
  return used.flatMap((index) => {
    const reading = survey.readings[index]!;
    const sd = sdOf(survey, reading);
    return componentsOf(survey, reading, at).map((component) => {
      const equation = equationOf(component, sd, unknowns);
      const redundancy = Math.max(0, 1 - varianceOf(equation, spread.covariance));
      const test = redundancy < LEAST_REDUNDANCY ? null : equation.misfit / Math.sqrt(redundancy);
      return { reading: index, component, sd, misfit: equation.misfit, redundancy, test };
    });
  });
}

/**
 * The reading that is most likely wrong, and after it those that cannot be told from it. With one wrong reading the tests
 * of two have a difference of standard deviation √(2(1 − |r|)), r the correlation of their residuals (W. Förstner,
 * Reliability and discernability of extended Gauss-Markov models, 1983): what comes within 1.645 of these cannot be ruled
 * out. Each of them is left out in turn; the one without which the rest fits best comes first.
 */
function suspectsFor(
  survey: Survey,
  used: readonly number[],
  worst: Tested,
  tested: readonly Tested[],
  { at, sum, unknowns }: Adjustment,
  { covariance }: Spread,
  scatter: number,
): readonly Tested[] {
  const equationFor = ({ component, sd }: Tested) => equationOf(component, sd, unknowns);
  /** Standard deviation of the difference of two tests. */
  const apart = (one: Tested, other: Tested): number => {
    const shared = Math.abs(covarianceOf(equationFor(one), equationFor(other), covariance));
    const alike = Math.min(1, shared / Math.sqrt(one.redundancy * other.redundancy));
    return Math.sqrt(Math.max(2 * (1 - alike), 1e-6));
  };
  const sizeOf = ({ test }: Tested): number => Math.abs(test ?? 0) / scatter;
  const near = ofOneReadingEach(tested).filter(
    (each) => each.reading !== worst.reading && sizeOf(worst) - sizeOf(each) < TOLD_APART * apart(worst, each),
  );
  if (near.length === 0) return [worst];
  // Straight tests are near enough for all but these: there the rest is adjusted without each.
  const tried = [worst, ...near.slice(0, MOST_TRIED - 1)].map((suspect) => {
    const rest = used.filter((index) => index !== suspect.reading);
    const fall = Math.max(0, sum - adjust(survey, rest, at).sum);
    return { suspect, size: Math.sqrt(fall) / scatter };
  });
  tried.sort((a, b) => b.size - a.size);
  const best = tried[0]!;
  return tried
    .filter((each) => each === best || best.size - each.size < TOLD_APART * apart(best.suspect, each.suspect))
    .map(({ suspect }) => suspect);
}

/** Of each reading the number with the largest test, the largest first. */
function ofOneReadingEach(tested: readonly Tested[]): readonly Tested[] {
  const largest = new Map<number, Tested>();
  for (const each of tested) {
    const known = largest.get(each.reading);
    if (each.test !== null && Math.abs(each.test) > Math.abs(known?.test ?? 0)) largest.set(each.reading, each);
  }
  return [...largest.values()].sort((a, b) => Math.abs(b.test!) - Math.abs(a.test!));
}

function agrees(
  survey: Survey,
  index: number,
  { at, unknowns }: Adjustment,
  { covariance }: Spread,
  limit: number,
): boolean {
  const reading = survey.readings[index]!;
  const sd = sdOf(survey, reading);
  return componentsOf(survey, reading, at).every((component) => {
    const equation = equationOf(component, sd, unknowns);
    return Math.abs(equation.misfit) / Math.sqrt(1 + varianceOf(equation, covariance)) <= limit;
  });
}

/** Whether the sum of squares is past what honest readings give once in a hundred surveys. */
export const MISFIT_RATE = 0.01;
export const isMisfit = (sum: number, freedom: number): boolean => sum > chiSquareLimit(MISFIT_RATE, freedom);
