import { ROW } from "../cycle/row.ts";
import { chosen } from "./camber-questions.ts";
import { plungeMovables } from "./movables.ts";
import { moveToLeast } from "./move-points.ts";
import { rangeOf, searchTravels } from "./over-travel.ts";
import type { SolveQuestion } from "./question.ts";
import { movableInput, reachFrom, round, travelInputs, zoneInputs } from "./zone.ts";

export const LEAST_PLUNGE: SolveQuestion = {
  id: "least-plunge",
  title: "Least plunge of the half shaft",
  meaning:
    "Moves chassis pivots, spindle pivots or a joint of the shaft along a line (or in a zone) until the half shaft gets least longer and shorter over the travel.",
  kinds: ["h-arm", "double-a-arm", "trailing-arm", "five-link"],
  needs: ({ study }) => (study.car.driveshaft ? null : "driveshaft"),
  inputs: (context) => [
    movableInput(plungeMovables(context.study.car)),
    // Along the shaft, as far as a tab or a spacer goes: ours.
    ...zoneInputs({ x: 0, y: round(context, 2, 50), z: 0 }),
    ...travelInputs(context),
    {
      id: "within",
      label: "plunge that is still good",
      dimension: "length",
      // Common practice, no source: a slip that works by more wears.
      default: round(context, 0.25, 6),
      least: 0,
      most: 1,
      signed: false,
    },
  ],
  solve: (context, values) => {
    const movable = chosen(plungeMovables(context.study.car), values);
    return moveToLeast(context, {
      question: LEAST_PLUNGE.id,
      movable,
      reach: reachFrom(values, movable),
      travels: searchTravels(Number(values["from"]), Number(values["to"])),
      label: "plunge over the travel",
      dimension: "length",
      wanted: Number(values["within"]),
      measure: (rows) => rangeOf(rows, ROW.shaftLength),
      notes: movable.id.startsWith("shaft") ? [{ code: "shaft-cut-anew" }] : [],
    });
  },
};
