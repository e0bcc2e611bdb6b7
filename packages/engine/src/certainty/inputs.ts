import { worthFor } from "../adjust/effect.ts";
import { turnEffects } from "../adjust/turn-effects.ts";
import type { Car } from "../car/car.ts";
import { cornerPlaces } from "../solve/car-places.ts";
import { AXES, type Axis, type PointPlace, pointAt, SHAFT_INNER, withPointAt } from "../solve/point-places.ts";
import { DEGREE, INCH } from "../units/convert.ts";

/** One coordinate of one point, which may be off. */
export interface UncertainCoordinate {
  readonly kind: "point";
  readonly place: PointPlace;
  readonly axis: Axis;
  /** Standard deviation, m. */
  readonly sd: number;
  readonly from: "survey" | "stated" | "tacking" | "joint";
  /** Its row in the survey's covariance, where it is from there. */
  readonly surveyRow?: number;
}

/** What is set on the finished car by turning adjusters, no nearer than a thread lets it. */
export interface UncertainSetting {
  readonly kind: "setting";
  readonly setting: Setting;
  /** Standard deviation, rad. */
  readonly sd: number;
  readonly from: "turning";
}

export type Setting = "camber" | "toe";
export type UncertainInput = UncertainCoordinate | UncertainSetting;

/** What may be off, with how it hangs together. Coordinates come point by point, three each; settings last. */
export interface Inputs {
  readonly list: readonly UncertainInput[];
  /** m², m·rad and rad², in the order of the list. */
  readonly covariance: readonly Float64Array[];
  /** The document gives tolerances or a survey; otherwise common practice stands for them. */
  readonly isGiven: boolean;
}

/** ± of common practice, two standard deviations, m; and turns of an adjuster: half a thread. */
export const USUAL_TACKED = INCH / 16;
export const USUAL_JOINT = INCH / 16;
export const USUAL_TURNED = 0.5;
/** ± of camber and toe where no adjuster serves to set them, so that they are as welded, rad; from memory. */
export const USUAL_SETTING = 0.4 * DEGREE;

/** Points that are bought parts on the car, not welded tabs. */
const BOUGHT = ["wheel.hubFace", "driveshaft.output.point", "driveshaft.outer.centre"];

/**
 * Every coordinate of the corner that may be off: surveyed ones with what the survey says of them, and how they move
 * together; those with a ± of their own; the others by the stated build tolerances, each by itself. Then camber and toe as
 * they are set. A ± is two standard deviations.
 */
export function uncertainInputs(car: Car): Inputs {
  const coordinates = coordinateInputs(car);
  const settings = settingCovariance(car);
  const points = coordinates.list.length;
  const covariance = Array.from({ length: points + 2 }, (_, i) => {
    const row = new Float64Array(points + 2);
    if (i < points) row.set(coordinates.covariance[i]!);
    else row.set(settings[i - points]!, points);
    return row;
  });
  const setting = (name: Setting, k: 0 | 1): UncertainSetting => ({
    kind: "setting",
    setting: name,
    sd: Math.sqrt(settings[k][k]),
    from: "turning",
  });
  return {
    list: [...coordinates.list, setting("camber", 0), setting("toe", 1)],
    covariance,
    isGiven: car.tolerances !== undefined || car.survey !== undefined || car.ownTolerances !== undefined,
  };
}

function coordinateInputs(car: Car): {
  readonly list: readonly UncertainCoordinate[];
  readonly covariance: readonly Float64Array[];
} {
  const tacked = (car.tolerances?.tacked ?? USUAL_TACKED) / 2;
  const joint = (car.tolerances?.joint ?? USUAL_JOINT) / 2;
  const places = [...cornerPlaces(car), ...(car.driveshaft ? [SHAFT_INNER] : [])];
  const uses = new Map((car.survey?.uses ?? []).map(({ path, point }) => [path, point]));
  const stated = new Map((car.ownTolerances ?? []).map(({ path, plusMinus }) => [path, plusMinus / 2]));
  const surveyed = (place: PointPlace): number => {
    const name = uses.get(place.path);
    return name === undefined ? -1 : (car.survey?.result.points.findIndex((point) => point.name === name) ?? -1);
  };
  const rows = places.flatMap((place) => {
    const point = surveyed(place);
    return AXES.map((axis, k) => ({ place, axis, row: point < 0 ? -1 : 3 * point + k }));
  });
  const isBought = ({ path }: PointPlace): boolean => BOUGHT.includes(path);
  const own = (place: PointPlace): number => stated.get(place.path) ?? (isBought(place) ? joint : tacked);
  const known = car.survey?.result.covariance ?? [];
  const covariance = rows.map(({ row, place }, i) =>
    Float64Array.from(rows, (other, j) => {
      if (row >= 0 && other.row >= 0) return known[row]?.[other.row] ?? 0;
      return i === j ? own(place) ** 2 : 0;
    }),
  );
  const fromOf = (place: PointPlace, row: number): UncertainCoordinate["from"] => {
    if (row >= 0) return "survey";
    if (stated.has(place.path)) return "stated";
    return isBought(place) ? "joint" : "tacking";
  };
  const list = rows.map(({ place, axis, row }, i): UncertainCoordinate => {
    const sd = Math.sqrt(Math.max(covariance[i]![i]!, 0));
    return { kind: "point", place, axis, sd, from: fromOf(place, row), ...(row >= 0 && { surveyRow: row }) };
  });
  return { list, covariance };
}

type Pair = readonly [readonly [number, number], readonly [number, number]];

/**
 * How far camber and toe may be off as they are set, rad²: every adjuster may stand its ± of a turn off what was wanted,
 * each by itself, and turns both angles as its slopes at ride height say (JCGM 100:2008, 5.1.2, and F.1.2.3 for the two
 * together).
 */
function settingCovariance(car: Car): Pair {
  const turned = (car.tolerances?.turned ?? USUAL_TURNED) / 2;
  const effects = turnEffects(car).flatMap(({ perTurn, perLength }) =>
    perTurn && perLength ? [{ perTurn, perLength }] : [],
  );
  const sum = (a: Setting, b: Setting): number =>
    effects.reduce((total, { perTurn }) => total + perTurn[a] * perTurn[b] * turned ** 2, 0);
  /** Where no adjuster serves to set an angle, it is as it was welded. */
  const isSet = (angle: Setting): boolean =>
    effects.some(({ perLength }) => worthFor(angle, perLength, car.wheel.loadedRadius) > 0);
  const usual = (USUAL_SETTING / 2) ** 2;
  const camber = isSet("camber") ? sum("camber", "camber") : usual;
  const toe = isSet("toe") ? sum("toe", "toe") : usual;
  const both = isSet("camber") && isSet("toe") ? sum("camber", "toe") : 0;
  return [
    [camber, both],
    [both, toe],
  ];
}

/** The car with one input moved by `by`, m or rad. */
export function movedBy(car: Car, input: WhatMoves, by: number): Car {
  if (input.kind === "setting") {
    return { ...car, wheel: { ...car.wheel, [input.setting]: car.wheel[input.setting] + by } };
  }
  const point = pointAt(car, input.place);
  return withPointAt(car, input.place, { ...point, [input.axis]: point[input.axis] + by });
}

export type WhatMoves =
  | Pick<UncertainCoordinate, "kind" | "place" | "axis">
  | Pick<UncertainSetting, "kind" | "setting">;
