import type { CarSurvey, Wish } from "@armwright/engine";

/** What the next reading is to narrow: the points that the car uses, or all where it uses none. */
export function wishOf({ survey, uses }: Pick<CarSurvey, "survey" | "uses">): Wish {
  const used = new Set(uses.map(({ point }) => point));
  const all = survey.points.map((_, i) => i);
  const chosen = all.filter((i) => used.has(survey.points[i]!.name));
  return { kind: "points", points: chosen.length > 0 ? chosen : all };
}
