import type { Car } from "../car/car.ts";
import { cornerPlaces } from "../solve/car-places.ts";
import { AXES, type Axis, type PointPlace, pointAt, SHAFT_INNER, withPointAt } from "../solve/point-places.ts";
import { INCH } from "../units/convert.ts";

/** One coordinate of one point, which may be off. */
export interface UncertainInput {
  readonly place: PointPlace;
  readonly axis: Axis;
  /** Standard deviation, m. */
  readonly sd: number;
  readonly from: "survey" | "tacking" | "joint";
}

/** What may be off, with how it hangs together. */
export interface Inputs {
  readonly list: readonly UncertainInput[];
  /** m², in the order of the list. */
  readonly covariance: readonly Float64Array[];
  /** The document gives tolerances or a survey; otherwise common practice stands for them. */
  readonly isGiven: boolean;
}

/** ± of common practice, two standard deviations, m. */
export const USUAL_TACKED = INCH / 16;
export const USUAL_JOINT = INCH / 16;

/** Points that are bought parts on the car, not welded tabs. */
const BOUGHT = ["wheel.hubFace", "driveshaft.output.point", "driveshaft.outer.centre"];

/**
 * Every coordinate of the corner that may be off: surveyed ones with what the survey says of them, and how they move together;
 * the others by the stated build tolerances, each by itself. A ± is two standard deviations.
 */
export function uncertainInputs(car: Car): Inputs {
  const tacked = (car.tolerances?.tacked ?? USUAL_TACKED) / 2;
  const joint = (car.tolerances?.joint ?? USUAL_JOINT) / 2;
  const places = [...cornerPlaces(car), ...(car.driveshaft ? [SHAFT_INNER] : [])];
  const uses = new Map((car.survey?.uses ?? []).map(({ path, point }) => [path, point]));
  const surveyed = (place: PointPlace): number => {
    const name = uses.get(place.path);
    return name === undefined ? -1 : (car.survey?.result.points.findIndex((point) => point.name === name) ?? -1);
  };
  const rows = places.flatMap((place) => {
    const point = surveyed(place);
    return AXES.map((axis, k) => ({ place, axis, row: point < 0 ? -1 : 3 * point + k }));
  });
  const own = (place: PointPlace): number => (BOUGHT.includes(place.path) ? joint : tacked);
  const known = car.survey?.result.covariance ?? [];
  const covariance = rows.map(({ row, place }, i) =>
    Float64Array.from(rows, (other, j) => {
      if (row >= 0 && other.row >= 0) return known[row]?.[other.row] ?? 0;
      return i === j ? own(place) ** 2 : 0;
    }),
  );
  return {
    list: rows.map(({ place, axis, row }, i) => ({
      place,
      axis,
      sd: Math.sqrt(Math.max(covariance[i]![i]!, 0)),
      from: row >= 0 ? "survey" : BOUGHT.includes(place.path) ? "joint" : "tacking",
    })),
    covariance,
    isGiven: car.tolerances !== undefined || car.survey !== undefined,
  };
}

/** The car with one coordinate moved by `by`, m. */
export function movedBy(car: Car, { place, axis }: Pick<UncertainInput, "place" | "axis">, by: number): Car {
  const point = pointAt(car, place);
  return withPointAt(car, place, { ...point, [axis]: point[axis] + by });
}
