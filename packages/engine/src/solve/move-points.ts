import type { Car, Dimension } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { markOf, onMark } from "../units/marks.ts";
import { typedLength } from "../units/typed.ts";
import { type Found, finish, operationsOf } from "./finish.ts";
import { leastOver, type Tell } from "./least.ts";
import type { Movable } from "./movables.ts";
import type { SolveNote } from "./note.ts";
import { type Obstacles, obstaclesOf } from "./obstacles.ts";
import { bareCar, rowsOver } from "./over-travel.ts";
import { AXES, type Axis, COORDINATE_WORDS, pointAt, withPointAt } from "./point-places.ts";
import type { SolveAnswer, SolveChange, SolveChoice, SolveContext, SolveCurve } from "./question.ts";
import { AXIS_WORDS, type Reach } from "./zone.ts";

/** Points moved together in a zone until a number of the motion over travel is least. */
export interface MoveTask {
  readonly question: string;
  readonly movable: Movable;
  readonly reach: Reach;
  /** m, rising. */
  readonly travels: readonly number[];
  readonly label: string;
  readonly dimension: Dimension;
  readonly wanted: number;
  readonly measure: (rows: readonly Float64Array[]) => number;
  /** Offsets that are tried first, m. */
  readonly starts?: readonly Vec3[];
  readonly readingsOf?: Found["readingsOf"];
  readonly choices?: readonly SolveChoice[];
  readonly notes?: readonly SolveNote[];
}

/** The number that a task is about, of a car; Infinity where the linkage does not go together over the whole travel. */
export function taskValue({ travels, measure }: Pick<MoveTask, "travels" | "measure">, car: Car): number {
  const rows = rowsOver(bareCar(car), travels);
  return rows ? measure(rows) : Number.POSITIVE_INFINITY;
}

/** A place for the points, from where they are now. */
export interface Offset {
  readonly offset: Vec3;
  readonly value: number;
}

/**
 * The best offset within the zone, before rounding, that brings nothing nearer to an obstacle than it may be; null where
 * there is none, or the linkage goes together nowhere in it.
 */
export function leastOffset(task: MoveTask, car: Car, obstacles?: Obstacles, tell?: Tell): Offset | null {
  const bare = bareCar(car);
  const axes = activeAxes(task.reach);
  const value = (offset: Vec3): number => {
    const moved = offsetBy(bare, task.movable, offset);
    const found = taskValue(task, moved);
    return Number.isFinite(found) && obstacles?.inTheWay(moved) ? Number.POSITIVE_INFINITY : found;
  };
  const toOffset = (x: readonly number[]): Vec3 => {
    const offset = { x: 0, y: 0, z: 0 };
    axes.forEach((axis, i) => {
      offset[axis] = x[i]!;
    });
    return offset;
  };
  if (axes.length === 0) return null;
  const starts = [{ x: 0, y: 0, z: 0 }, ...(task.starts ?? [])].map((start) => axes.map((axis) => start[axis]));
  const box = axes.map((axis) => ({ from: -task.reach[axis], to: task.reach[axis] }));
  const found = leastOver((x) => value(toOffset(x)), box, starts, tell);
  return found && { offset: toOffset(found.at), value: found.value };
}

/** The best there is, and, where an obstacle lies there, the best that keeps clear of all of them. */
function clearOffset(
  task: MoveTask,
  car: Car,
  tell: Tell,
): { readonly best: Offset | null; readonly obstacles?: Obstacles; readonly note?: SolveNote } {
  const obstacles = obstaclesOf(car, task.travels);
  const free = leastOffset(task, car, undefined, (share) => tell(obstacles ? FREE_SHARE * share : share));
  const label = free && obstacles?.inTheWay(offsetBy(bareCar(car), task.movable, free.offset));
  if (!free || !obstacles || !label) return { best: free, ...(obstacles && { obstacles }) };
  const best = leastOffset(task, car, obstacles, (share) => tell(FREE_SHARE + (1 - FREE_SHARE) * share));
  const note = { code: "in-the-way", label, value: free.value, dimension: task.dimension } as const;
  return { best, obstacles, note };
}

/** Work of the search without obstacles, which is the cheaper one. */
const FREE_SHARE = 0.3;

export function moveToLeast(context: SolveContext, task: MoveTask): SolveAnswer {
  const { car } = context.study;
  const measure = (each: Car): number | null => finite(taskValue(task, each));
  const { best, obstacles, note } = clearOffset(task, car, context.tell ?? (() => {}));
  const before = measure(car);
  const aim = { label: task.label, dimension: task.dimension, sense: "at-most", wanted: task.wanted, before } as const;
  const common = {
    question: task.question,
    readings: [],
    choices: task.choices ?? [],
    measure,
    ...(task.readingsOf && { readingsOf: task.readingsOf }),
  };
  const notes: SolveNote[] = [...(task.notes ?? []), ...rightNotes(context)];
  if (note) notes.unshift(note);
  if (!best) {
    const code = activeAxes(task.reach).length === 0 ? "nothing-may-move" : "does-not-go-together";
    notes.unshift({ code });
    return finish(context, { ...common, aim: { ...aim, best: null }, changes: [], operations: [], curves: [], notes });
  }
  const isBetter = before === null || best.value < before - GAIN * Math.max(1e-6, before);
  const typed = isBetter ? onMarks(task, car, best.offset, obstacles) : null;
  const changes =
    typed && (before === null || typed.value < before) ? changesTo(task, car, typed.points, best.offset) : [];
  for (const axis of activeAxes(task.reach)) {
    if (changes.length > 0 && Math.abs(best.offset[axis]) > task.reach[axis] * (1 - 1e-6))
      notes.push({ code: "at-the-edge", label: AXIS_WORDS[axis] });
  }
  return finish(context, {
    ...common,
    aim: { ...aim, best: isBetter ? best.value : before },
    changes,
    operations: operationsOf(changes, ({ after }) => typedLength(after, car.units)),
    curves: curvesThrough(task, car, best.offset),
    notes,
  });
}

/** A gain of less than this share is none. */
const GAIN = 1e-6;

export const activeAxes = (reach: Reach): readonly Axis[] => AXES.filter((axis) => reach[axis] > 0);

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

export const offsetBy = (car: Car, { points }: Movable, offset: Vec3): Car =>
  points.reduce((made, place) => {
    const { x, y, z } = pointAt(made, place);
    return withPointAt(made, place, { x: x + offset.x, y: y + offset.y, z: z + offset.z });
  }, car);

/** The best of the marks around the offset, each point's moved coordinates on a mark and within the zone. */
function onMarks(
  task: MoveTask,
  car: Car,
  exact: Vec3,
  obstacles: Obstacles | undefined,
): { readonly points: readonly Vec3[]; readonly value: number } | null {
  const bare = bareCar(car);
  const { points } = task.movable;
  const mark = markOf(car.units);
  const axes = activeAxes(task.reach);
  // On one or two directions farther marks too: along a narrow valley the nearest mark is seldom the best.
  const each = axes.length < 3 ? 4 : 2;
  const around = (offset: number): readonly number[] =>
    Array.from({ length: 2 * each }, (_, i) => (Math.floor(offset / mark) + i - each + 1) * mark);
  let offsets: readonly Vec3[] = [{ x: 0, y: 0, z: 0 }];
  for (const axis of axes)
    offsets = offsets.flatMap((each) => around(exact[axis]).map((o) => ({ ...each, [axis]: o })));
  let best: { readonly points: readonly Vec3[]; readonly value: number } | null = null;
  for (const offset of offsets) {
    const own = points.map((place) => pointAt(car, place));
    const moved = own.map((point) => {
      const next = { ...point };
      for (const axis of axes) if (offset[axis] !== 0) next[axis] = onMark(point[axis] + offset[axis], car.units);
      return next;
    });
    const isInside = moved.every((point, i) =>
      axes.every((axis) => Math.abs(point[axis] - own[i]![axis]) <= task.reach[axis] + 1e-9),
    );
    if (!isInside) continue;
    const made = points.reduce((each, place, i) => withPointAt(each, place, moved[i]!), bare);
    const value = taskValue(task, made);
    if (Number.isFinite(value) && (!best || value < best.value) && !obstacles?.inTheWay(made))
      best = { points: moved, value };
  }
  return best;
}

function changesTo(task: MoveTask, car: Car, to: readonly Vec3[], exact: Vec3): readonly SolveChange[] {
  return task.movable.points.flatMap((place, i) => {
    const own = pointAt(car, place);
    return activeAxes(task.reach)
      .filter((axis) => to[i]![axis] !== own[axis])
      .map((axis) => ({
        path: `${place.path}.${axis}`,
        label: `${place.label}, ${COORDINATE_WORDS[axis]}`,
        dimension: "length" as const,
        before: own[axis],
        exact: own[axis] + exact[axis],
        after: to[i]![axis],
      }));
  });
}

const CURVE_POINTS = 33;

/** How the number goes when the points are moved along one direction, the others at their best. */
function curvesThrough(task: MoveTask, car: Car, best: Vec3): readonly SolveCurve[] {
  const bare = bareCar(car);
  return activeAxes(task.reach).map((axis) => {
    const offsets = Array.from(
      { length: CURVE_POINTS },
      (_, i) => task.reach[axis] * ((2 * i) / (CURVE_POINTS - 1) - 1),
    );
    return {
      label: `${task.movable.label} ${AXIS_WORDS[axis]}`,
      offsets,
      values: offsets.map((o) => finite(taskValue(task, offsetBy(bare, task.movable, { ...best, [axis]: o })))),
    };
  });
}

export function rightNotes({ subject }: SolveContext): readonly SolveNote[] {
  const sections = subject.ownRight.filter((section) => section === "linkage" || section === "driveshaft");
  return sections.length === 0 ? [] : [{ code: "right-is-own", sections }];
}
