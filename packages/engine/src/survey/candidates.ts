import type { Vec3 } from "../geometry/vec3.ts";
import { componentsOf, equationOf, type Unknowns } from "./equations.ts";
import type { Equation } from "./fit-least-squares.ts";
import { coordinateReading } from "./mirror.ts";
import { AXES, type PointIndex, pointsOf, type Survey, type SurveyReading, sdOf } from "./survey.ts";

/** A reading that could be taken, with what it would change. */
export interface Candidate {
  readonly reading: SurveyReading;
  readonly deferred?: number;
  readonly sd: number;
  readonly expected: number;
  readonly equations: readonly Equation[];
  /** Where all points stand. */
  readonly places: readonly Vec3[];
}

/** Shorter than this, m, is not worth a tape. */
const SHORTEST = 0.05;

/** Readings that were put off, then every coordinate and every tape between two points that has not been taken. */
export function candidatesOf(survey: Survey, at: readonly Vec3[], unknowns: Unknowns): readonly Candidate[] {
  const make = (reading: SurveyReading, deferred?: number): Candidate => {
    const sd = sdOf(survey, reading);
    const components = componentsOf(survey, reading, at);
    const added = "add" in reading ? reading.add : 0;
    return {
      reading,
      ...(deferred !== undefined && { deferred }),
      sd,
      expected: (components[0]?.computed ?? 0) - added,
      equations: components.map((each) => equationOf(each, sd, unknowns)),
      places: at,
    };
  };
  const put = survey.readings.flatMap((reading, i) => (reading.isDeferred ? [make(reading, i)] : []));
  const taken = new Set(survey.readings.map(keyOf));
  const fresh: Candidate[] = [];
  const offer = (reading: SurveyReading): void => {
    if (!taken.has(keyOf(reading))) fresh.push(make(reading));
  };
  for (let i = 0; i < at.length; i += 1) {
    for (const axis of AXES)
      if (unknowns.of[i]![AXES.indexOf(axis) as 0 | 1 | 2] >= 0) offer(coordinateReading(axis, i));
    for (let j = i + 1; j < at.length; j += 1) {
      const apart = Math.hypot(at[i]!.x - at[j]!.x, at[i]!.y - at[j]!.y, at[i]!.z - at[j]!.z);
      if (apart >= SHORTEST && anyFree(unknowns, [i, j])) offer(tapeBetween(i, j));
    }
  }
  return [...put, ...fresh];
}

export const tapeBetween = (from: PointIndex, to: PointIndex): SurveyReading => ({
  kind: "tape",
  from,
  to,
  reads: 0,
  add: 0,
  isDeferred: true,
});

const anyFree = (unknowns: Unknowns, points: readonly PointIndex[]): boolean =>
  points.some((i) => unknowns.of[i]!.some((unknown) => unknown >= 0));

const keyOf = (reading: SurveyReading): string =>
  `${reading.kind} ${[...pointsOf(reading)].sort((a, b) => a - b).join(" ")}`;
