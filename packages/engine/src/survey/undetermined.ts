import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { type Vec3, vec } from "../geometry/vec3.ts";
import { type Adjustment, blindPart, type Spread } from "./adjust.ts";
import { type Candidate, candidatesOf } from "./candidates.ts";
import type { Undetermined } from "./result.ts";
import { AXES, type PointIndex, pointsOf, type Survey } from "./survey.ts";

/** Less than this share of a point's move in the null space is rounding. */
const LEAST_SHARE = 1e-3;
/** Nearly along an axis: within 20 degrees. */
const NEARLY = Math.cos((20 * Math.PI) / 180);

/** What no reading tells, by point and direction, each with the one reading that would tell it best. */
export function findUndetermined(
  survey: Survey,
  { at, unknowns }: Adjustment,
  { free }: Spread,
): readonly Undetermined[] {
  if (free.length === 0) return [];
  const blocks = unknowns.of.map((places) => blockOf(places, free));
  const blind = blocks.map(([xx, yy, zz]) => xx![0]! + yy![1]! + zz![2]! > LEAST_SHARE);
  const candidates = candidatesOf(survey, at, unknowns);
  return blocks.flatMap((block, point) => {
    if (!blind[point]) return [];
    const eigen = new EigenvalueDecomposition(new Matrix(block), { assumeSymmetric: true });
    const most = eigen.realEigenvalues[2]!;
    return [2, 1, 0].flatMap((k) => {
      if (!(eigen.realEigenvalues[k]! > Math.max(LEAST_SHARE, 0.05 * most))) return [];
      const [x, y, z] = eigen.eigenvectorMatrix.getColumn(k);
      const way = positive(vec(x!, y!, z!));
      const axis = AXES.reduce((best, each) => (Math.abs(way[each]) > Math.abs(way[best]) ? each : best), "x");
      const remedy = remedyFor(point, way, candidates, free, blind);
      return [{ point, way, axis, isAlongAxis: Math.abs(way[axis]) > NEARLY, remedy: remedy?.reading ?? null }];
    });
  });
}

/** The point's part of the projector onto what nothing tells. */
function blockOf(places: readonly number[], free: readonly Float64Array[]): number[][] {
  return places.map((a) =>
    places.map((b) => (a < 0 || b < 0 ? 0 : free.reduce((sum, vector) => sum + vector[a]! * vector[b]!, 0))),
  );
}

const positive = (way: Vec3): Vec3 => {
  const axis = AXES.reduce((best, each) => (Math.abs(way[each]) > Math.abs(way[best]) ? each : best), "x");
  return way[axis] < 0 ? vec(-way.x, -way.y, -way.z) : way;
};

/**
 * Of the readings to this point the one that changes most along the direction; a tape is asked for before a plumb bob
 * where it tells at least two thirds as much, and one put off by the builder before all.
 */
function remedyFor(
  point: PointIndex,
  way: Vec3,
  candidates: readonly Candidate[],
  free: readonly Float64Array[],
  blind: readonly boolean[],
): Candidate | null {
  let best: Candidate | null = null;
  let most = 0.1;
  for (const candidate of candidates) {
    const points = pointsOf(candidate.reading);
    if (!points.includes(point)) continue;
    const tells = Math.max(...candidate.equations.map((equation) => blindPart(equation, free) * candidate.sd));
    const along = Math.abs(directionOf(candidate, point, way));
    const partnerKnown = points.every((other) => other === point || !blind[other]);
    const worth =
      Math.min(tells, along) *
      (partnerKnown ? 1 : 0.3) *
      (candidate.deferred === undefined ? (candidate.reading.kind === "tape" ? 1 : 0.65) : 2);
    if (worth > most) {
      most = worth;
      best = candidate;
    }
  }
  return best;
}

function directionOf(candidate: Candidate, point: PointIndex, way: Vec3): number {
  const { reading, places: at } = candidate;
  if (reading.kind === "tape") {
    const other = reading.from === point ? reading.to : reading.from;
    const p = at[point]!;
    const q = at[other]!;
    const size = Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z);
    return size > 0 ? ((p.x - q.x) * way.x + (p.y - q.y) * way.y + (p.z - q.z) * way.z) / size : 0;
  }
  if (reading.kind === "height") return way.z;
  if (reading.kind === "out") return way.y;
  if (reading.kind === "along") return way.x;
  return 1;
}
