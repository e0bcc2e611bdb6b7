import type { UnitSystem } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { type Adjustment, type Spread, varianceOf } from "./adjust.ts";
import { guessCauses } from "./cause.ts";
import { chiSquareTail } from "./distribution.ts";
import { componentsOf, equationOf } from "./equations.ts";
import { agreesRoughly, keepsSides, type OtherSolution, otherSolutions, settle } from "./mirror.ts";
import type { SolvedPoint, SolvedReading, SurveyResult, Suspicion } from "./result.ts";
import { FALSE_ALARM_RATE, isMisfit, type SetAside, type Snooped, type SnoopOptions, snoop, testAll } from "./snoop.ts";
import { startingPlaces } from "./start.ts";
import { type Survey, sdOf } from "./survey.ts";
import { findUndetermined } from "./undetermined.ts";

/** A result with the linear algebra that further questions (next reading, propagation) go on from. */
export interface SolvedSurvey {
  readonly result: SurveyResult;
  readonly adjustment: Adjustment;
  readonly spread: Spread;
}

export interface SurveyOptions extends SnoopOptions {
  /** For guesses at what went wrong: whether the tape is marked in inches. */
  readonly units?: UnitSystem;
}

/** Places all points from all readings that were taken. Never throws; the same survey gives the same result. */
export function solveSurvey(survey: Survey, options: SurveyOptions = {}): SolvedSurvey {
  const taken = survey.readings.flatMap((reading, i) => (reading.isDeferred ? [] : [i]));
  let found = snoop(survey, taken, startingPlaces(survey, taken), options);
  let others = otherSolutions(survey, found.used, found.adjustment);
  for (let round = 0; round < MOST_FLIPS; round += 1) {
    const better = betterStart(survey, taken, found, others);
    if (!better) break;
    const again = snoop(survey, taken, better, options);
    if (costOf(again, survey) >= costOf(found, survey)) break;
    found = again;
    others = otherSolutions(survey, found.used, found.adjustment);
  }
  return { result: resultOf(survey, found, others, options), adjustment: found.adjustment, spread: found.spread };
}

const MOST_FLIPS = 6;

/** A solution with fewer readings against it is better; then one on the stated sides; then one that fits better. */
const costOf = ({ setAside, adjustment }: Snooped, survey: Survey): number =>
  setAside.length * 1e6 + (keepsSides(survey, adjustment.at) ? 0 : 1e9) + Math.min(adjustment.sum, 1e5);

/** A mirrored solution of all readings that is better than this one. */
function betterStart(
  survey: Survey,
  taken: readonly number[],
  found: Snooped,
  others: readonly OtherSolution[],
): readonly Vec3[] | null {
  const here = found.adjustment;
  const isOnSides = keepsSides(survey, here.at);
  for (const { adjustment, moved } of others) {
    const sidesThere = keepsSides(survey, adjustment.at);
    if (sidesThere !== isOnSides) {
      if (sidesThere) return adjustment.at;
      continue;
    }
    if (adjustment.sum < here.sum * (1 - 1e-6) - 1e-6 && agreesRoughly(survey, moved, here.at, adjustment.at)) {
      return adjustment.at;
    }
  }
  // With readings set aside, the branch that all of them prefer may be another.
  if (found.setAside.length === 0) return null;
  const whole = otherSolutions(survey, taken, here).find(
    ({ adjustment }) => keepsSides(survey, adjustment.at) && adjustment.sum < 0.5 * sumOver(survey, taken, here),
  );
  return whole?.adjustment.at ?? null;
}

function sumOver(survey: Survey, readings: readonly number[], { at, unknowns }: Adjustment): number {
  return readings.reduce((sum, index) => {
    const reading = survey.readings[index]!;
    const sd = sdOf(survey, reading);
    return componentsOf(survey, reading, at).reduce((s, each) => s + equationOf(each, sd, unknowns).misfit ** 2, sum);
  }, 0);
}

/** Another solution whose sum is within this of the chosen one's cannot be ruled out: 99.9 % point of chi-square, 1. */
const AS_GOOD = 10.83;

function resultOf(
  survey: Survey,
  found: Snooped,
  others: readonly OtherSolution[],
  options: SurveyOptions,
): SurveyResult {
  const { adjustment, spread, setAside } = found;
  const { at, unknowns, sum, equations } = adjustment;
  const undetermined = findUndetermined(survey, adjustment, spread);
  const covariance = wholeCovariance(found);
  const points: SolvedPoint[] = survey.points.map(({ name }, i) => ({
    name,
    at: at[i]!,
    sd: {
      x: Math.sqrt(Math.max(0, covariance[3 * i]![3 * i]!)),
      y: Math.sqrt(Math.max(0, covariance[3 * i + 1]![3 * i + 1]!)),
      z: Math.sqrt(Math.max(0, covariance[3 * i + 2]![3 * i + 2]!)),
    },
    isUndetermined: undetermined.some(({ point }) => point === i),
  }));
  const degreesOfFreedom = equations.length - (unknowns.count - spread.free.length);
  const mirrored =
    spread.free.length > 0
      ? []
      : others
          .filter(
            (other) =>
              other.adjustment.sum < sum + AS_GOOD &&
              keepsSides(survey, other.adjustment.at) &&
              agreesRoughly(survey, other.moved, at, other.adjustment.at),
          )
          .map((other) => settle(survey, at, other));
  return {
    status: survey.points.length === 0 ? "no-points" : adjustment.status === "converged" ? "solved" : "not-converged",
    points,
    covariance,
    readings: solvedReadings(survey, found),
    degreesOfFreedom,
    sumOfSquares: sum,
    scatter: degreesOfFreedom > 0 ? Math.sqrt(sum / degreesOfFreedom) : null,
    agreement:
      degreesOfFreedom > 0
        ? { probability: chiSquareTail(sum, degreesOfFreedom), isMisfit: isMisfit(sum, degreesOfFreedom) }
        : null,
    suspicions: setAside.map((each) => suspicionOf(survey, each, found, options.units ?? "inch-pound")),
    falseAlarmRate: options.falseAlarmRate ?? FALSE_ALARM_RATE,
    undetermined,
    mirrored,
  };
}

function wholeCovariance({ adjustment: { unknowns }, spread: { covariance } }: Snooped): readonly Float64Array[] {
  const places = unknowns.of.flat();
  return places.map((row) =>
    Float64Array.from(places, (column) => (row < 0 || column < 0 ? 0 : covariance[row]![column]!)),
  );
}

function solvedReadings(survey: Survey, { used, adjustment, spread }: Snooped): readonly SolvedReading[] {
  const tests = testAll(survey, used, adjustment, spread);
  return survey.readings.map((reading, index) => {
    const isUsed = used.includes(index);
    const own = tests.filter((each) => each.reading === index);
    const sd = sdOf(survey, reading);
    const numbers = componentsOf(survey, reading, adjustment.at).map((component, k) => {
      const variance = varianceOf(equationOf(component, sd, adjustment.unknowns), spread.covariance);
      return {
        part: component.part,
        observed: component.observed,
        adjusted: component.computed,
        residual: component.computed - component.observed,
        sd,
        adjustedSd: sd * Math.sqrt(variance),
        redundancy: own[k]?.redundancy ?? null,
        test: own[k]?.test ?? null,
      };
    });
    return { isUsed, numbers };
  });
}

function suspicionOf(
  survey: Survey,
  { reading: index, part, test, limit, alternatives }: SetAside,
  { adjustment, spread }: Snooped,
  units: UnitSystem,
): Suspicion {
  const reading = survey.readings[index]!;
  const sd = sdOf(survey, reading);
  const component = componentsOf(survey, reading, adjustment.at).find((each) => each.part === part)!;
  const variance = varianceOf(equationOf(component, sd, adjustment.unknowns), spread.covariance);
  const added = "add" in reading ? reading.add : 0;
  const others = component.computed - added;
  const causes = guessCauses(reading, others, 3 * sd * Math.sqrt(1 + variance), units);
  return {
    reading: index,
    part,
    reads: component.observed - added,
    others,
    othersSd: sd * Math.sqrt(variance),
    test,
    limit,
    causes,
    alternatives,
  };
}
