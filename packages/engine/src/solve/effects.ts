import { compareStudies } from "../compare/compare-studies.ts";
import { rowAt } from "../cycle/cycle.ts";
import { ROW } from "../cycle/row.ts";
import type { Direction } from "../limits/find-limits.ts";
import type { Study } from "../study/study.ts";
import type { SolveAnswer, SolveReading } from "./question.ts";

/** What a change does to the results that a builder asks for first, each car between its own stops; and to the findings. */
export function effectsOf(before: Study, after: Study): Pick<SolveAnswer, "effects" | "findings"> {
  const { stops, findings } = compareStudies(before, after);
  const reading = (
    label: string,
    dimension: SolveReading["dimension"],
    of: (study: Study) => number | null,
    signed = false,
  ): SolveReading => ({ label, dimension, signed, before: of(before), after: of(after) });
  const shaft = before.corner.shaft && after.corner.shaft;
  return {
    effects: [
      ...stops.map(({ direction, a, b }) => ({
        label: `full ${direction}`,
        dimension: "length" as const,
        signed: true,
        before: a,
        after: b,
      })),
      reading("camber change over the travel", "angle", (study) => rangeIn(study, ROW.camber)),
      reading("toe change over the travel", "angle", (study) => rangeIn(study, ROW.toe)),
      ...(shaft
        ? [
            reading("plunge over the travel", "length", (study) => rangeIn(study, ROW.plunge)),
            reading("largest joint angle", "angle", (study) => largestJointAngle(study)),
          ]
        : []),
      ...(before.corner.shock && after.corner.shock
        ? [reading("motion ratio at ride height", "ratio", (study) => atRide(study, ROW.motionRatio))]
        : []),
      ...(["bump", "droop"] as const).map((direction) => firstLimit(direction, before, after)),
    ],
    findings,
  };
}

function* rowsOf({ cycle }: Study): Generator<Float64Array> {
  for (let i = 0; i < cycle.travels.length; i += 1) yield rowAt(cycle, i);
}

function rangeIn(study: Study, place: number): number | null {
  const values = [...rowsOf(study)].map((row) => row[place]!);
  return values.length === 0 ? null : Math.max(...values) - Math.min(...values);
}

function largestJointAngle(study: Study): number | null {
  const values = [...rowsOf(study)].flatMap((row) => [row[ROW.innerJointAngle]!, row[ROW.outerJointAngle]!]);
  return values.length === 0 ? null : Math.max(...values);
}

function atRide(study: Study, place: number): number | null {
  const index = study.cycle.travels.indexOf(0);
  return index < 0 ? null : rowAt(study.cycle, index)[place]!;
}

function firstLimit(direction: Direction, before: Study, after: Study): SolveReading {
  const a = before.travel[direction].first;
  const b = after.travel[direction].first;
  return {
    label: `first in the way, ${direction}`,
    dimension: "length",
    signed: true,
    before: a?.travel ?? null,
    after: b?.travel ?? null,
    ...(a && { nameBefore: a.label }),
    ...(b && { nameAfter: b.label }),
  };
}
