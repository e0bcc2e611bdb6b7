import type { Vec3 } from "../geometry/vec3.ts";
import { type Adjustment, adjust, covarianceOf, type Spread, spreadOf, varianceOf } from "./adjust.ts";
import { chiSquareLimit, normalLimit, tauLimit } from "./distribution.ts";
import { type Component, componentsOf, equationOf } from "./equations.ts";
import { type Survey, sdOf } from "./survey.ts";

/** The share of sound numbers that the test calls wrong (Baarda's usual choice). */
export const FALSE_ALARM_RATE = 0.001;
/** Less redundancy than this controls nothing. */
export const LEAST_REDUNDANCY = 1e-3;
/** Tests that go this much hand in hand cannot be told apart. */
const HAND_IN_HAND = 0.97;

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
    const alternatives = handInHand(survey, worst, tested, adjustment, spread);
    setAside.push({
      reading: worst.reading,
      part: worst.component.part,
      test: worst.test! / scatter,
      limit,
      alternatives,
    });
    used = used.filter((index) => index !== worst.reading);
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

/** Readings whose tests rise and fall with this one's: the correlation of the two residuals is nearly one. */
function handInHand(
  survey: Survey,
  worst: Tested,
  tested: readonly Tested[],
  { unknowns }: Adjustment,
  { covariance }: Spread,
): readonly number[] {
  const own = equationOf(worst.component, worst.sd, unknowns);
  const found = tested.flatMap((other) => {
    if (other.reading === worst.reading || other.test === null) return [];
    const shared = -covarianceOf(own, equationOf(other.component, other.sd, unknowns), covariance);
    return Math.abs(shared) / Math.sqrt(worst.redundancy * other.redundancy) > HAND_IN_HAND ? [other.reading] : [];
  });
  return [...new Set(found)].filter((index) => survey.readings[index] !== undefined);
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
