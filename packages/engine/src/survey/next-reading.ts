import type { Vec3 } from "../geometry/vec3.ts";
import { blindPart, covarianceOf, varianceOf } from "./adjust.ts";
import { candidatesOf } from "./candidates.ts";
import type { NextReading } from "./result.ts";
import type { SolvedSurvey } from "./solve-survey.ts";
import type { PointIndex, Survey } from "./survey.ts";

/** What the next reading is to narrow. */
export type Wish =
  /** The places of these points together: root of the sum of their variances, m. */
  | { readonly kind: "points"; readonly points: readonly PointIndex[] }
  /** One result that changes with the points as its gradient says (result's unit per m). */
  | { readonly kind: "result"; readonly gradient: readonly (readonly [point: PointIndex, by: Vec3])[] };

/**
 * Readings worth taking, best first: each candidate is tried on the covariance (an update of rank one for each number), and
 * what leaves the least spread of the wish is best. Readings that tell what nothing has told come before all.
 */
export function nextReadings(survey: Survey, solved: SolvedSurvey, wish: Wish, most = 5): readonly NextReading[] {
  const { unknowns, at } = solved.adjustment;
  const { covariance, free } = solved.spread;
  const goals = goalsOf(wish, solved);
  const before = Math.sqrt(goals.reduce((sum, goal) => sum + varianceOf(goal, covariance), 0));
  const tried = candidatesOf(survey, at, unknowns).map((candidate) => {
    const { reading, deferred, sd, expected, equations } = candidate;
    let gain = 0;
    let blind = 0;
    let own = 0;
    for (const equation of equations) {
      const variance = varianceOf(equation, covariance);
      own = Math.max(own, variance);
      for (const goal of goals) gain += covarianceOf(goal, equation, covariance) ** 2 / (1 + variance);
      const tells = blindPart(equation, free) * sd;
      if (tells > 0.1 && goals.some((goal) => blindPart(goal, free) > 1e-6)) blind = Math.max(blind, tells);
    }
    const after = Math.sqrt(Math.max(0, before ** 2 - gain));
    const next: NextReading = {
      reading,
      ...(deferred !== undefined && { deferred }),
      expected,
      expectedSd: Math.sqrt(own) * sd,
      before,
      after,
      isNeeded: blind > 0,
      kind: reading.kind,
    };
    return { next, blind };
  });
  return tried
    .sort(
      (a, b) =>
        b.blind - a.blind ||
        Number(b.next.deferred !== undefined) - Number(a.next.deferred !== undefined) ||
        a.next.after - b.next.after,
    )
    .slice(0, most)
    .map(({ next }) => next);
}

function goalsOf(wish: Wish, { adjustment: { unknowns } }: SolvedSurvey) {
  if (wish.kind === "points") {
    return wish.points.flatMap((point) =>
      unknowns.of[point]!.flatMap((unknown) => (unknown < 0 ? [] : [{ misfit: 0, unknowns: [unknown], slopes: [1] }])),
    );
  }
  const places: number[] = [];
  const slopes: number[] = [];
  for (const [point, { x, y, z }] of wish.gradient) {
    for (const [k, slope] of [x, y, z].entries()) {
      const unknown = unknowns.of[point]![k as 0 | 1 | 2];
      if (unknown < 0) continue;
      places.push(unknown);
      slopes.push(slope);
    }
  }
  return [{ misfit: 0, unknowns: places, slopes }];
}
