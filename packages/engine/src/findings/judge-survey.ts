import type { Finding, FindingValue } from "./finding.ts";
import type { Judged } from "./judge.ts";
import { sayEither, sayMirrored, sayRemedy, saySettling, saySuspicion, sayUndetermined } from "./say-survey.ts";

const SOURCE = "your readings";

/** Readings that the others contradict, readings that agree worse than they claim, and places that none tells. */
export function judgeSurvey({ car }: Judged): Finding[] {
  if (!car.survey) return [];
  const { survey, result, uses } = car.survey;
  const used = new Set(uses.map(({ point }) => point));
  const isUsed = (point: number): boolean => used.has(survey.points[point]!.name);
  const placeOf = (point: number): string =>
    uses.find((use) => use.point === survey.points[point]!.name)?.path ?? "survey.points";
  const finding = (
    code: Finding["code"],
    gravity: Finding["gravity"],
    place: string,
    values: Finding["values"],
  ): Finding => ({
    code,
    gravity,
    place,
    source: SOURCE,
    values,
  });
  const suspicious = result.suspicions.map((each) =>
    finding("survey-suspicious-reading", "mind", `survey.readings[${each.reading}]`, {
      says: saySuspicion(survey, each, car.units),
      either: sayEither(survey, each),
    }),
  );
  const misfit = result.agreement?.isMisfit
    ? [finding("survey-misfit", "mind", "survey", { scatter: ratioOf(result.scatter ?? 0) })]
    : [];
  const undetermined = result.undetermined
    .filter(({ point }) => isUsed(point))
    .map((each) =>
      finding("survey-undetermined", "must", placeOf(each.point), {
        says: sayUndetermined(survey, each),
        remedy: sayRemedy(survey, each),
      }),
    );
  const mirrored = result.mirrored
    .filter(({ points }) => points.some(({ point }) => isUsed(point)))
    .map((each) =>
      finding("survey-mirrored", "must", placeOf(each.points.find(({ point }) => isUsed(point))!.point), {
        says: sayMirrored(survey, each),
        remedy: saySettling(survey, each, car.units),
      }),
    );
  return [...undetermined, ...mirrored, ...suspicious, ...misfit];
}

const ratioOf = (value: number): FindingValue => ({ value, dimension: "ratio" });
