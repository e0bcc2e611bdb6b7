import { anySquareTo, cross, dot, length, scale, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import type { Equation } from "./fit-least-squares.ts";
import { AXES, type Axis, outward, type PointIndex, type Survey, type SurveyReading, sdOf } from "./survey.ts";

/** One number of a reading: what the points make it, and how it changes with them. Metres or radians. */
export interface Component {
  /** What it is of the reading; empty where the reading is one number. */
  readonly part: "" | Axis | "across" | "up-and-down";
  readonly observed: number;
  readonly computed: number;
  /** By the coordinates of each point. */
  readonly gradient: readonly (readonly [point: PointIndex, by: Vec3])[];
}

const UNIT: Readonly<Record<Axis, Vec3>> = {
  x: { x: 1, y: 0, z: 0 },
  y: { x: 0, y: 1, z: 0 },
  z: { x: 0, y: 0, z: 1 },
};

/** A reading's equations at trial places of the points. */
export function componentsOf(survey: Survey, reading: SurveyReading, at: readonly Vec3[]): readonly Component[] {
  const place = (point: PointIndex): Vec3 => at[point]!;
  switch (reading.kind) {
    case "tape": {
      const apart = subtract(place(reading.to), place(reading.from));
      const size = length(apart);
      // Points on each other have no direction between them: any will do to part them.
      const along = size > 1e-12 ? scale(apart, 1 / size) : UNIT.x;
      return [one(reading.reads + reading.add, size, [reading.to, along], [reading.from, scale(along, -1)])];
    }
    case "height":
      return [coordinate("z", 1, reading.reads + reading.add, reading.point, reading.above, at)];
    case "out":
      return [
        coordinate(
          "y",
          outward(survey.points[reading.point]!),
          reading.reads + reading.add,
          reading.point,
          reading.from,
          at,
        ),
      ];
    case "along":
      return [coordinate("x", 1, reading.reads + reading.add, reading.point, reading.from, at)];
    case "level": {
      const { x, y, z } = subtract(place(reading.to), place(reading.from));
      const flat = Math.max(Math.hypot(x, y), 1e-9);
      const square = flat * flat + z * z;
      const by = { x: (-z * x) / (flat * square), y: (-z * y) / (flat * square), z: flat / square };
      return [one(reading.reads, Math.atan2(z, flat), [reading.to, by], [reading.from, scale(by, -1)])];
    }
    case "in-line":
      return inLine(reading, place);
    case "offset":
      return AXES.flatMap((axis) => {
        const by = reading.by[axis];
        if (by === undefined) return [];
        return [{ ...coordinate(axis, 1, by, reading.to, reading.from, at), part: axis }];
      });
    case "mirror": {
      const { left, right } = reading;
      return AXES.map((axis) => {
        const sign = axis === "y" ? 1 : -1;
        return {
          part: axis,
          observed: 0,
          computed: place(left)[axis] + sign * place(right)[axis],
          gradient: [[left, UNIT[axis]] as const, [right, scale(UNIT[axis], sign)] as const],
        };
      });
    }
  }
}

function one(observed: number, computed: number, ...gradient: Component["gradient"]): Component {
  return { part: "", observed, computed, gradient };
}

function coordinate(
  axis: Axis,
  sign: 1 | -1,
  observed: number,
  point: PointIndex,
  from: PointIndex | undefined,
  at: readonly Vec3[],
): Component {
  const by = scale(UNIT[axis], sign);
  const base = from === undefined ? 0 : at[from]![axis];
  const computed = sign * (at[point]![axis] - base);
  return from === undefined
    ? one(observed, computed, [point, by])
    : one(observed, computed, [point, by], [from, scale(by, -1)]);
}

/** How far the point is off the line, level and across, and up and down. */
function inLine(
  { point, from, to }: Extract<SurveyReading, { readonly kind: "in-line" }>,
  place: (point: PointIndex) => Vec3,
): readonly Component[] {
  const line = subtract(place(to), place(from));
  const size = length(line);
  const along = size > 1e-9 ? scale(line, 1 / size) : UNIT.x;
  const out = subtract(place(point), place(from));
  const share = size > 1e-9 ? dot(out, along) / size : 0;
  const level = cross(UNIT.z, along);
  const across = length(level) > 1e-6 ? unit(level) : unit(anySquareTo(along));
  const upright = cross(along, across);
  return (
    [
      ["across", across],
      ["up-and-down", upright],
    ] as const
  ).map(([part, way]) => ({
    part,
    observed: 0,
    computed: dot(out, way),
    gradient: [
      [point, way],
      [from, scale(way, share - 1)],
      [to, scale(way, -share)],
    ],
  }));
}

/** Which unknown each coordinate of each point is; -1 where it is fixed. */
export interface Unknowns {
  readonly of: readonly (readonly [x: number, y: number, z: number])[];
  readonly count: number;
}

export function unknownsOf(survey: Survey): Unknowns {
  let count = 0;
  const of = survey.points.map(({ fixed }) => {
    const places = AXES.map((axis) =>
      survey.adjustment === "constrained" && fixed[axis] !== undefined ? -1 : count++,
    );
    return [places[0]!, places[1]!, places[2]!] as const;
  });
  return { of, count };
}

/** A component as an equation of the least-squares fit. */
export function equationOf({ observed, computed, gradient }: Component, sd: number, unknowns: Unknowns): Equation {
  const places: number[] = [];
  const slopes: number[] = [];
  for (const [point, by] of gradient) {
    for (let k = 0; k < 3; k += 1) {
      const unknown = unknowns.of[point]![k as 0 | 1 | 2];
      const slope = by[AXES[k]!];
      if (unknown < 0 || slope === 0) continue;
      places.push(unknown);
      slopes.push(slope / sd);
    }
  }
  return { misfit: (computed - observed) / sd, unknowns: places, slopes };
}

/** Places of the points out of the unknowns; fixed coordinates from `base`. */
export const placesFrom = (values: ArrayLike<number>, unknowns: Unknowns, base: readonly Vec3[]): readonly Vec3[] =>
  base.map((point, i) => {
    const [x, y, z] = unknowns.of[i]!;
    return {
      x: x < 0 ? point.x : values[x]!,
      y: y < 0 ? point.y : values[y]!,
      z: z < 0 ? point.z : values[z]!,
    };
  });

export function valuesOf(at: readonly Vec3[], unknowns: Unknowns): Float64Array {
  const values = new Float64Array(unknowns.count);
  for (const [i, point] of at.entries()) {
    for (const [k, axis] of AXES.entries()) {
      const unknown = unknowns.of[i]![k as 0 | 1 | 2];
      if (unknown >= 0) values[unknown] = point[axis];
    }
  }
  return values;
}

/** Every equation of the readings named, at trial places. */
export const equationsAt = (
  survey: Survey,
  readings: readonly number[],
  unknowns: Unknowns,
  at: readonly Vec3[],
): readonly Equation[] =>
  readings.flatMap((index) => {
    const reading = survey.readings[index]!;
    const sd = sdOf(survey, reading);
    return componentsOf(survey, reading, at).map((component) => equationOf(component, sd, unknowns));
  });
