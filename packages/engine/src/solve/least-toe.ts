import { ROW } from "../cycle/row.ts";
import { chosen } from "./camber-questions.ts";
import { type Movable, singlePivots } from "./movables.ts";
import { activeAxes, leastOffset, type MoveTask, moveToLeast } from "./move-points.ts";
import { rangeOf, searchTravels } from "./over-travel.ts";
import type { Axis } from "./point-places.ts";
import type { SolveChoice, SolveContext, SolveQuestion, SolveValues } from "./question.ts";
import { AXIS_WORDS, movableInput, type Reach, reachFrom, round, travelInputs, within, zoneInputs } from "./zone.ts";

/** The choice that tries each point along each direction by itself. */
const ANY = "any";
/** Ways that are told, best first. */
const TOLD = 6;
/** Work of trying all ways, of the whole. */
const TRIED_SHARE = 0.9;

export const LEAST_TOE: SolveQuestion = {
  id: "least-toe",
  title: "Least change of toe over the travel",
  meaning:
    "Finds which pivot, moved along which direction, leaves least toe change; or moves a named pivot within a zone.",
  kinds: ["h-arm", "double-a-arm", "trailing-arm", "five-link"],
  needs: () => null,
  inputs: (context) => {
    // As far as a tab is moved, ours; a tenth of a degree is 1/16 in across a 33 in tyre.
    const each = round(context, 1, 25);
    return [
      movableInput(singlePivots(context.study.car), [
        { id: ANY, label: "whichever pivot does most, along one direction" },
      ]),
      ...zoneInputs({ x: each, y: each, z: each }),
      ...travelInputs(context),
      within(0.1),
    ];
  },
  solve: (context, values) => {
    if (values["point"] !== ANY)
      return moveToLeast(context, taskFor(values, chosen(singlePivots(context.study.car), values)));
    const ways = tryAll(context, values);
    const best = ways[0];
    // Where nothing goes together anywhere, the first pivot's answer says so.
    const movable = best?.movable ?? singlePivots(context.study.car)[0]!;
    const reach = reachFrom(values, movable);
    const line: Reach = best ? only(reach, best.axis) : reach;
    const choices = ways.slice(0, TOLD).map(
      ({ movable: { label }, axis, offset, value }): SolveChoice => ({
        label: `${label}, ${AXIS_WORDS[axis]}`,
        offset,
        value,
      }),
    );
    const tell = (share: number): void => context.tell?.(TRIED_SHARE + (1 - TRIED_SHARE) * share);
    return moveToLeast({ ...context, tell }, { ...taskFor(values, movable), reach: line, choices });
  },
};

const taskFor = (values: SolveValues, movable: Movable): MoveTask => ({
  question: LEAST_TOE.id,
  movable,
  reach: reachFrom(values, movable),
  travels: searchTravels(Number(values["from"]), Number(values["to"])),
  label: "toe change over the travel",
  dimension: "angle",
  wanted: Number(values["within"]),
  measure: (rows) => rangeOf(rows, ROW.toe),
});

interface Way {
  readonly movable: Movable;
  readonly axis: Axis;
  readonly offset: number;
  readonly value: number;
}

function tryAll({ study, tell }: SolveContext, values: SolveValues): readonly Way[] {
  const movables = singlePivots(study.car);
  const ways = movables.flatMap((movable, i) => {
    tell?.((TRIED_SHARE * i) / movables.length);
    const task = taskFor(values, movable);
    return activeAxes(task.reach).flatMap((axis): Way[] => {
      const best = leastOffset({ ...task, reach: only(task.reach, axis) }, study.car);
      return best ? [{ movable, axis, offset: best.offset[axis], value: best.value }] : [];
    });
  });
  return ways.sort((a, b) => a.value - b.value);
}

const only = (reach: Reach, axis: Axis): Reach => ({ x: 0, y: 0, z: 0, [axis]: reach[axis] });
