import { INCH, MILLIMETRE } from "../units/convert.ts";
import type { Movable } from "./movables.ts";
import { AXES, type Axis } from "./point-places.ts";
import type { ChoiceInput, NumberInput, SolveContext, SolveValues } from "./question.ts";

/** How far a point may be moved each way, m; 0 where it may not. One direction left makes a line, two a patch, three a box. */
export type Reach = Readonly<Record<Axis, number>>;

export const AXIS_WORDS: Readonly<Record<Axis, string>> = { x: "fore and aft", y: "in and out", z: "up and down" };

const INPUT_IDS: Readonly<Record<Axis, string>> = { x: "fore-aft", y: "in-out", z: "up-down" };

/** Farthest that a point may be asked to move, m. */
const FARTHEST = 0.5;

export const zoneInputs = (defaults: Reach): readonly NumberInput[] =>
  AXES.map((axis) => ({
    id: INPUT_IDS[axis],
    label: `how far it may go ${AXIS_WORDS[axis]}, each way`,
    dimension: "length",
    default: defaults[axis],
    least: 0,
    most: FARTHEST,
    signed: false,
  }));

/** Inches in one unit system, a round number of millimetres in the other, m. */
export const round = ({ study }: SolveContext, inches: number, millimetres: number): number =>
  study.car.units === "metric" ? millimetres * MILLIMETRE : inches * INCH;

export function reachFrom(values: SolveValues, { axes }: Movable): Reach {
  const of = (axis: Axis): number => (axes.includes(axis) ? Number(values[INPUT_IDS[axis]]) : 0);
  return { x: of("x"), y: of("y"), z: of("z") };
}

export const movableInput = (movables: readonly Movable[], more: ChoiceInput["choices"] = []): ChoiceInput => {
  const choices = [...more, ...movables.map(({ id, label }) => ({ id, label }))];
  return { id: "point", label: "what is moved", dimension: "word", default: choices[0]?.id ?? "", choices };
};

/** From the full droop to the full bump that the car has now. */
export function travelInputs({ study }: SolveContext): readonly NumberInput[] {
  const travel = (id: string, label: string, now: number): NumberInput => ({
    id,
    label,
    dimension: "length",
    default: now,
    least: -1,
    most: 1,
    signed: true,
  });
  return [
    travel("from", "from this travel", study.travel.droop.stop.travel),
    travel("to", "to this travel", study.travel.bump.stop.travel),
  ];
}

export const within = (degrees: number): NumberInput => ({
  id: "within",
  label: "change that is still good",
  dimension: "angle",
  default: (degrees * Math.PI) / 180,
  least: 0,
  most: 0.5,
  signed: false,
});
