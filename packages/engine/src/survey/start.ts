import { distance, type Vec3, vec } from "../geometry/vec3.ts";
import { componentsOf, equationOf, type Unknowns } from "./equations.ts";
import { type Equation, fitLeastSquares } from "./fit-least-squares.ts";
import { AXES, type PointIndex, pointsOf, type Survey, type SurveyReading, sdOf } from "./survey.ts";

/** Where no reading gives a size, points are looked for this far apart, m. */
const ARM = 0.5;

/**
 * Starting places without a guess of anyone's: points are placed one after the other, each from readings to what already
 * stands, the best controlled first, each out of several starts. The same survey gives the same start.
 */
export function startingPlaces(survey: Survey, readings: readonly number[]): readonly Vec3[] {
  const at: Vec3[] = survey.points.map(({ fixed, rough, side }) => {
    const known = { ...rough, ...fixed };
    const out = side === "right" ? -ARM : side === "left" ? ARM : 0;
    return vec(known.x ?? 0, known.y ?? out, known.z ?? ARM);
  });
  const placed = survey.points.map(({ fixed, rough }) =>
    AXES.every((axis) => fixed[axis] !== undefined || rough[axis] !== undefined),
  );
  const touching: number[][] = survey.points.map(() => []);
  for (const index of readings) for (const point of pointsOf(survey.readings[index]!)) touching[point]!.push(index);
  while (placed.includes(false)) {
    const next = bestControlled(survey, touching, placed);
    const own = touching[next]!.filter((index) => isTo(next, survey.readings[index]!, placed));
    at[next] = placePoint(survey, next, own, at);
    placed[next] = true;
  }
  return at;
}

const isTo = (point: PointIndex, reading: SurveyReading, placed: readonly boolean[]): boolean =>
  pointsOf(reading).every((other) => other === point || placed[other]);

const NUMBERS: Readonly<Record<SurveyReading["kind"], number>> = {
  tape: 1,
  height: 1,
  out: 1,
  along: 1,
  level: 1,
  "in-line": 2,
  offset: 3,
  mirror: 3,
};

function bestControlled(
  survey: Survey,
  touching: readonly (readonly number[])[],
  placed: readonly boolean[],
): PointIndex {
  let best = -1;
  let most = Number.NEGATIVE_INFINITY;
  for (let point = 0; point < placed.length; point += 1) {
    if (placed[point]) continue;
    const { fixed } = survey.points[point]!;
    let numbers = AXES.filter((axis) => fixed[axis] !== undefined).length;
    const axes = new Set<string>();
    for (const index of touching[point]!) {
      const reading = survey.readings[index]!;
      if (!isTo(point, reading, placed)) continue;
      numbers += NUMBERS[reading.kind];
      if (reading.kind === "height" || reading.kind === "out" || reading.kind === "along") axes.add(reading.kind);
      if (reading.kind === "mirror" || reading.kind === "offset") axes.add("x").add("y").add("z");
    }
    // A plumbed or mirrored coordinate leaves no second solution, so that such points come first.
    const control = Math.min(numbers, 4) + 0.5 * Math.min(axes.size, 3) + 0.01 * Math.min(numbers, 50);
    if (control > most) {
      most = control;
      best = point;
    }
  }
  return best;
}

function placePoint(survey: Survey, point: PointIndex, own: readonly number[], at: readonly Vec3[]): Vec3 {
  const { fixed, rough, side } = survey.points[point]!;
  const start = at[point]!;
  if (own.length === 0) return start;
  const isFixed = AXES.map((axis) => survey.adjustment === "constrained" && fixed[axis] !== undefined);
  const free = [0, 1, 2].filter((k) => !isFixed[k]);
  const of = survey.points.map((_, i) =>
    i === point ? ([0, 1, 2].map((k) => free.indexOf(k)) as [number, number, number]) : ([-1, -1, -1] as const),
  );
  const unknowns: Unknowns = { of, count: free.length };
  const placeOf = (values: ArrayLike<number>): Vec3 => {
    const xyz = AXES.map((axis, k) => (of[point]![k as 0 | 1 | 2] < 0 ? start[axis] : values[free.indexOf(k)]!));
    return vec(xyz[0]!, xyz[1]!, xyz[2]!);
  };
  const places = [...at];
  const model = (values: Float64Array): readonly Equation[] => {
    places[point] = placeOf(values);
    return own.flatMap((index) => {
      const reading = survey.readings[index]!;
      return componentsOf(survey, reading, places).map((each) => equationOf(each, sdOf(survey, reading), unknowns));
    });
  };
  const found = startsFor(survey, point, own, at).map((from, order) => {
    const values = Float64Array.from(free.map((k) => from[AXES[k]!]));
    const fit = fitLeastSquares(model, values, { most: 30 });
    const place = placeOf(fit.unknowns);
    const wrongSide = (side === "left" && place.y < 0) || (side === "right" && place.y > 0);
    const off =
      Object.keys(rough).length > 0
        ? distance(place, vec(rough.x ?? place.x, rough.y ?? place.y, rough.z ?? place.z))
        : 0;
    return { place, sum: fit.sum, wrongSide, off, order };
  });
  const least = Math.min(...found.map(({ sum }) => sum));
  // Solutions that fit about as well are told apart by the side and by what is roughly known.
  const good = found.filter(({ sum }) => sum <= 2 * least + 20);
  good.sort(
    (a, b) =>
      Number(a.wrongSide) - Number(b.wrongSide) ||
      (Math.abs(a.off - b.off) > 1e-3 ? a.off - b.off : 0) ||
      (Math.abs(a.sum - b.sum) > 1e-6 * (1 + least) ? a.sum - b.sum : 0) ||
      a.order - b.order,
  );
  return good[0]!.place;
}

/** Round the middle of what the point is read to, on every side of it. */
function startsFor(survey: Survey, point: PointIndex, own: readonly number[], at: readonly Vec3[]): readonly Vec3[] {
  const others = own.flatMap((index) => pointsOf(survey.readings[index]!).filter((other) => other !== point));
  const tapes = own.flatMap((index) => {
    const reading = survey.readings[index]!;
    return reading.kind === "tape" ? [reading.reads + reading.add] : [];
  });
  const far = tapes.length > 0 ? tapes.reduce((sum, each) => sum + each, 0) / tapes.length : ARM;
  const start = at[point]!;
  const middle =
    others.length === 0
      ? start
      : vec(
          others.reduce((sum, other) => sum + at[other]!.x, 0) / others.length,
          others.reduce((sum, other) => sum + at[other]!.y, 0) / others.length,
          others.reduce((sum, other) => sum + at[other]!.z, 0) / others.length,
        );
  const { fixed, rough } = survey.points[point]!;
  const known = { ...rough, ...fixed };
  const hold = (p: Vec3): Vec3 => vec(known.x ?? p.x, known.y ?? p.y, known.z ?? p.z);
  const ways = [
    [0.6, 0.5, 0.4],
    [-0.6, 0.5, 0.4],
    [0.6, 0.5, -0.4],
    [-0.6, 0.5, -0.4],
    [0.6, -0.5, 0.4],
    [-0.6, -0.5, 0.4],
    [0.6, -0.5, -0.4],
    [-0.6, -0.5, -0.4],
  ] as const;
  return [start, ...ways.map(([x, y, z]) => vec(middle.x + x * far, middle.y + y * far, middle.z + z * far))].map(hold);
}
