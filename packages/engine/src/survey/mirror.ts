import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { addScaled, distance, dot, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import { type Adjustment, adjust } from "./adjust.ts";
import { componentsOf } from "./equations.ts";
import type { Mirrored } from "./result.ts";
import { AXES, type Axis, type PointIndex, pointsOf, type Survey, type SurveyReading } from "./survey.ts";

/** Another solution of the same readings. */
export interface OtherSolution {
  readonly adjustment: Adjustment;
  readonly moved: readonly PointIndex[];
}

/** Solutions nearer than this, m, are one. */
const SAME_PLACE = 0.004;

/**
 * Solutions that are this one mirrored: each point is thrown across the plane through what it is read to, and the whole net
 * across the planes of the car, and the net is adjusted again from there.
 */
export function otherSolutions(survey: Survey, readings: readonly number[], now: Adjustment): readonly OtherSolution[] {
  const found: OtherSolution[] = [];
  for (const start of mirroredStarts(survey, readings, now)) {
    const adjustment = adjust(survey, readings, start);
    const moved = survey.points.flatMap((_, i) => (distance(adjustment.at[i]!, now.at[i]!) > SAME_PLACE ? [i] : []));
    if (moved.length === 0) continue;
    const isKnown = found.some((other) =>
      other.adjustment.at.every((place, i) => distance(place, adjustment.at[i]!) <= SAME_PLACE),
    );
    if (!isKnown) found.push({ adjustment, moved });
  }
  return found.sort((a, b) => a.adjustment.sum - b.adjustment.sum);
}

/** Whether every point is on the side that it is stated to be on. */
export const keepsSides = (survey: Survey, at: readonly Vec3[]): boolean =>
  survey.points.every(({ side }, i) => !((side === "left" && at[i]!.y < 0) || (side === "right" && at[i]!.y > 0)));

/** Whether a solution is at least as near to what is roughly known, for the points that differ. */
export const agreesRoughly = (
  survey: Survey,
  moved: readonly PointIndex[],
  here: readonly Vec3[],
  there: readonly Vec3[],
): boolean => {
  const off = (at: readonly Vec3[]): number =>
    moved.reduce((sum, i) => {
      const { rough } = survey.points[i]!;
      return (
        sum + AXES.reduce((s, axis) => s + (rough[axis] === undefined ? 0 : Math.abs(rough[axis] - at[i]![axis])), 0)
      );
    }, 0);
  return off(there) <= off(here) + 1e-6;
};

function mirroredStarts(
  survey: Survey,
  readings: readonly number[],
  { at, unknowns }: Adjustment,
): (readonly Vec3[])[] {
  const starts: (readonly Vec3[])[] = [];
  const touching: SurveyReading[][] = survey.points.map(() => []);
  for (const index of readings) {
    const reading = survey.readings[index]!;
    for (const point of pointsOf(reading)) touching[point]!.push(reading);
  }
  for (const [i, point] of at.entries()) {
    if (unknowns.of[i]!.every((unknown) => unknown < 0)) continue;
    const over = acrossPartners(i, at, touching[i]!);
    if (over && distance(over, point) > SAME_PLACE) starts.push(at.map((place, j) => (j === i ? over : place)));
  }
  const free = (i: number): boolean => unknowns.of[i]!.some((unknown) => unknown >= 0);
  for (const axis of AXES) {
    const mid = axis === "y" ? 0 : mean(at.map((place) => place[axis]));
    starts.push(at.map((place, i) => (free(i) ? { ...place, [axis]: 2 * mid - place[axis] } : place)));
  }
  return starts;
}

const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;

/** The point thrown across the plane that best holds its tapes' other ends, upright to every coordinate that was plumbed. */
function acrossPartners(point: PointIndex, at: readonly Vec3[], touching: readonly SurveyReading[]): Vec3 | null {
  const ends: Vec3[] = [];
  const held = new Set<Axis>();
  for (const reading of touching) {
    if (reading.kind === "tape") ends.push(at[reading.from === point ? reading.to : reading.from]!);
    if (reading.kind === "height" || reading.kind === "level") held.add("z");
    if (reading.kind === "out") held.add("y");
    if (reading.kind === "along") held.add("x");
    if (reading.kind === "mirror" || reading.kind === "offset") for (const axis of AXES) held.add(axis);
  }
  const ways = AXES.filter((axis) => !held.has(axis));
  if (ends.length === 0 || ways.length === 0) return null;
  const middle = vec(mean(ends.map((p) => p.x)), mean(ends.map((p) => p.y)), mean(ends.map((p) => p.z)));
  const scatter = ways.map((a) =>
    ways.map((b) => ends.reduce((s, p) => s + (p[a] - middle[a]) * (p[b] - middle[b]), 0)),
  );
  const eigen = new EigenvalueDecomposition(new Matrix(scatter), { assumeSymmetric: true });
  const thinnest = eigen.eigenvectorMatrix.getColumn(0);
  const normal = { x: 0, y: 0, z: 0, ...Object.fromEntries(ways.map((axis, k) => [axis, thinnest[k]!])) };
  const here = at[point]!;
  return addScaled(here, normal, -2 * dot(subtract(here, middle), normal));
}

/** What tells another solution from this one: a side to be stated, else the one coordinate that differs most. */
export function settle(survey: Survey, here: readonly Vec3[], { moved, adjustment }: OtherSolution): Mirrored {
  const there = adjustment.at;
  const points = moved.map((point) => ({ point, other: there[point]! }));
  const sided = moved.find((i) => survey.points[i]!.side === undefined && here[i]!.y * there[i]!.y < 0);
  if (sided !== undefined) {
    return { points, sumOfSquares: adjustment.sum, settledBy: { kind: "side", point: sided } };
  }
  let best: { point: PointIndex; axis: Axis; apart: number } = { point: moved[0]!, axis: "x", apart: -1 };
  for (const point of moved) {
    for (const axis of AXES) {
      const apart = Math.abs(here[point]![axis] - there[point]![axis]);
      if (apart > best.apart) best = { point, axis, apart };
    }
  }
  const reading = coordinateReading(best.axis, best.point);
  return {
    points,
    sumOfSquares: adjustment.sum,
    settledBy: {
      kind: "reading",
      reading,
      here: componentsOf(survey, reading, here)[0]!.computed,
      there: componentsOf(survey, reading, there)[0]!.computed,
    },
  };
}

export function coordinateReading(axis: Axis, point: PointIndex): SurveyReading {
  const kind = ({ x: "along", y: "out", z: "height" } as const)[axis];
  return { kind, point, reads: 0, add: 0, isDeferred: true };
}
