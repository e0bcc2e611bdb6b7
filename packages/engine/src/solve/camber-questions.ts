import type { Car } from "../car/car.ts";
import { makeCorner, solveAt } from "../cycle/corner.ts";
import { ROW } from "../cycle/row.ts";
import { scale, type Vec3 } from "../geometry/vec3.ts";
import { equalAndParallel } from "./equal-parallel.ts";
import { camberMovables, type Movable } from "./movables.ts";
import { moveToLeast } from "./move-points.ts";
import { bareCar, rangeOf, searchTravels } from "./over-travel.ts";
import type { NumberInput, SolveContext, SolveQuestion, SolveReading, SolveValues } from "./question.ts";
import { movableInput, reachFrom, round, travelInputs, within, zoneInputs } from "./zone.ts";

const KINDS = ["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const;

export const CONSTANT_CAMBER: SolveQuestion = {
  id: "constant-camber",
  title: "Least change of camber over the travel",
  meaning:
    "Moves the upper link's end (or what does its work in other linkages) within a zone until camber changes least; equal and parallel to the lower arm is tried first.",
  kinds: KINDS,
  needs: () => null,
  inputs: (context) => [
    movableInput(camberMovables(context.study.car)),
    ...camberZone(context),
    ...travelInputs(context),
    within(0.25),
  ],
  solve: (context, values) => {
    const { car } = context.study;
    const movable = chosen(camberMovables(car), values);
    return moveToLeast(context, {
      question: CONSTANT_CAMBER.id,
      movable,
      reach: reachFrom(values, movable),
      travels: searchTravels(Number(values["from"]), Number(values["to"])),
      label: "camber change over the travel",
      dimension: "angle",
      wanted: Number(values["within"]),
      measure: (rows) => rangeOf(rows, ROW.camber),
      starts: parallelStarts(car, movable),
    });
  },
};

export const CAMBER_AT_TWO: SolveQuestion = {
  id: "camber-at-two",
  title: "Wanted camber at two travels",
  meaning:
    "Moves the upper link's end (or what does its work in other linkages) within a zone until camber at two travels is as near as can be to what is wanted; at ride height it stays as drawn.",
  kinds: KINDS,
  needs: () => null,
  inputs: (context) => {
    const { travel, car } = context.study;
    const at = (id: string, label: string, now: number): NumberInput => ({
      id,
      label,
      dimension: "length",
      default: now,
      least: -1,
      most: 1,
      signed: true,
    });
    const camber = (id: string, label: string): NumberInput => ({
      id,
      label,
      dimension: "angle",
      default: car.wheel.camber,
      least: -0.5,
      most: 0.5,
      signed: true,
    });
    return [
      at("at", "first travel", travel.bump.stop.travel),
      camber("camber", "camber wanted there"),
      at("at-2", "second travel", travel.droop.stop.travel),
      camber("camber-2", "camber wanted there"),
      movableInput(camberMovables(car)),
      ...camberZone(context),
      within(0.25),
    ];
  },
  solve: (context, values) => {
    const { car } = context.study;
    const movable = chosen(camberMovables(car), values);
    const wishes = [
      { travel: Number(values["at"]), camber: Number(values["camber"]) },
      { travel: Number(values["at-2"]), camber: Number(values["camber-2"]) },
    ].sort((a, b) => a.travel - b.travel);
    return moveToLeast(context, {
      question: CAMBER_AT_TWO.id,
      movable,
      reach: reachFrom(values, movable),
      travels: wishes.map(({ travel }) => travel),
      label: "camber off by, at the worse of both",
      dimension: "angle",
      wanted: Number(values["within"]),
      measure: (rows) => Math.max(...wishes.map(({ camber }, i) => Math.abs(rows[i]![ROW.camber]! - camber))),
      starts: parallelStarts(car, movable),
      readingsOf: (after) =>
        wishes.map(
          ({ travel }): SolveReading => ({
            label: "camber",
            at: travel,
            dimension: "angle",
            signed: true,
            before: camberAt(car, travel),
            after: camberAt(after, travel),
          }),
        ),
    });
  },
};

const camberAt = (car: Car, travel: number): number | null =>
  solveAt(makeCorner(bareCar(car)), travel)?.row[ROW.camber] ?? null;

/**
 * How far a point may go where nobody says: room to re-drill or move a tab, ours; camber within a quarter of a degree is as
 * near as an angle finder is read. A trailing arm's camber is set by how its hinge line is raked, all else's by the
 * upper points' place seen from behind.
 */
function camberZone(context: SolveContext): readonly NumberInput[] {
  const each = round(context, 2, 50);
  return context.study.car.linkage.kind === "trailing-arm"
    ? zoneInputs({ x: 2 * each, y: 0, z: each })
    : zoneInputs({ x: 0, y: each, z: each });
}

export const chosen = (movables: readonly Movable[], values: SolveValues): Movable =>
  movables.find(({ id }) => id === values["point"])!;

/** Equal and parallel as a start: by its chassis end, or as much the other way by its spindle end. */
function parallelStarts(car: Car, { id }: Movable): readonly Vec3[] {
  const move = equalAndParallel(car);
  if (!move) return [];
  return [id.endsWith(".outer") ? scale(move, -1) : move];
}
