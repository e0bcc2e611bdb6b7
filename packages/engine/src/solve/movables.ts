import type { Car } from "../car/car.ts";
import { wheelCentreOf } from "../car/wheel-centre.ts";
import { AXES, type Axis, type PointPlace, pivotPlaces, SHAFT_INNER, SHAFT_OUTER } from "./point-places.ts";

/** Points that are moved together, by the same amount. */
export interface Movable {
  readonly id: string;
  readonly label: string;
  readonly points: readonly PointPlace[];
  /** Directions in which it can be moved. */
  readonly axes: readonly Axis[];
}

/** Each pivot of the linkage by itself. */
export const singlePivots = (car: Car): readonly Movable[] =>
  pivotPlaces(car.linkage).map((place) => ({ id: place.id, label: place.label, points: [place], axes: AXES }));

/** What sets how camber changes, the likeliest first: the upper link, the upper arm's chassis side, the upper links, the pivots of a trailing arm. */
export function camberMovables(car: Car): readonly Movable[] {
  const singles = singlePivots(car);
  switch (car.linkage.kind) {
    case "h-arm":
      return firstOf(singles, ["upperLink.inner", "upperLink.outer"]);
    case "double-a-arm": {
      const inner = together("upperArm.inner", "upper arm's chassis pivots", singles, (id) =>
        id.startsWith("upperArm.inner"),
      );
      return [...inner, ...firstOf(singles, ["upperArm.outer"])];
    }
    case "trailing-arm":
      return firstOf(singles, ["trailingArm.outboardPivot", "trailingArm.inboardPivot"]);
    case "five-link":
      return [...upperLinks(car, singles), ...singles];
  }
}

/** Chassis or spindle pivots together, and the shaft's own joints. */
export function plungeMovables(car: Car): readonly Movable[] {
  const sides = new Map(pivotPlaces(car.linkage).map(({ id, side }) => [id, side]));
  const singles = singlePivots(car);
  return [
    ...together("chassis-pivots", "all chassis pivots", singles, (id) => sides.get(id) === "chassis"),
    ...together("spindle-pivots", "all spindle pivots", singles, (id) => sides.get(id) === "spindle"),
    { id: "shaft-inner", label: SHAFT_INNER.label, points: [SHAFT_INNER], axes: AXES },
    // It sits on the stub axle's own line, which runs across the car but for camber and toe.
    { id: "shaft-outer", label: SHAFT_OUTER.label, points: [SHAFT_OUTER], axes: ["y"] },
  ];
}

const firstOf = (all: readonly Movable[], ids: readonly string[]): readonly Movable[] =>
  ids.flatMap((id) => all.filter((each) => each.id === id));

function together(
  id: string,
  label: string,
  all: readonly Movable[],
  belongs: (id: string) => boolean,
): readonly Movable[] {
  const points = all.filter((each) => belongs(each.id)).flatMap((each) => each.points);
  return points.length === 0 ? [] : [{ id, label, points, axes: AXES }];
}

/** Chassis ends of the links whose ends lie above the wheel centre, together. */
function upperLinks(car: Car, singles: readonly Movable[]): readonly Movable[] {
  const { linkage } = car;
  if (linkage.kind !== "five-link") return [];
  const height = wheelCentreOf(car.wheel).z;
  const ids = linkage.links
    .filter(({ inner, outer }) => inner.z > height && outer.z > height)
    .map(({ name }) => `links.${name}.inner`);
  return ids.length < 2
    ? []
    : together("upper-links.inner", "upper links' chassis ends", singles, (id) => ids.includes(id));
}
