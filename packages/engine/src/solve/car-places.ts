import type { Car } from "../car/car.ts";
import { onMark } from "../units/marks.ts";
import {
  AXES,
  COORDINATE_WORDS,
  type PointPlace,
  pivotPlaces,
  pointAt,
  SHAFT_INNER,
  SHAFT_OUTER,
} from "./point-places.ts";
import type { SolveChange } from "./question.ts";

/** Every point of the corner: wheel, linkage, shaft's outer joint, shock, strap and bump stop with their mounts. */
export function cornerPlaces(car: Car): readonly PointPlace[] {
  const mounts = (section: "shock" | "strap" | "bumpStop", ends: readonly string[], label: string) =>
    car[section]
      ? ends.map((end) => ({ path: `${section}.${end}`, label: `${label}, ${end}`, steps: [section, end, "point"] }))
      : [];
  const places: readonly PointPlace[] = [
    { path: "wheel.hubFace", label: "hub face", steps: ["wheel", "hubFace"] },
    ...pivotPlaces(car.linkage).map(({ path, label, steps }) => ({ path, label, steps })),
    ...(car.linkage.kind === "trailing-arm"
      ? [{ path: "linkage.trailingArm.hub", label: "arm at the hub", steps: ["linkage", "trailingArm", "hub"] }]
      : []),
    ...(car.driveshaft ? [SHAFT_OUTER] : []),
    ...mounts("shock", ["upper", "lower"], "shock"),
    ...mounts("strap", ["upper", "lower"], "strap"),
    ...mounts("bumpStop", ["base", "strikes"], "bump stop"),
  ];
  // What the document leaves out follows by itself.
  const assumed = new Set(car.assumed.map(({ path }) => path));
  return places.filter(({ path }) => !assumed.has(path));
}

/** Every point that is fixed to the body and no part of the corner. */
export const bodyPlaces = (car: Car): readonly PointPlace[] => [
  ...(car.driveshaft ? [SHAFT_INNER] : []),
  ...car.underbody.map(({ name }, i) => ({ path: `underbody[${i}]`, label: name, steps: ["underbody", i, "point"] })),
  ...(car.chassisMesh?.points ?? []).map((_, i) => ({
    path: `chassisMesh.points[${i}].car`,
    label: `mesh point ${i + 1}`,
    steps: ["chassisMesh", "points", i, "car"],
  })),
  ...car.keepOuts.flatMap((keepOut, i) =>
    KEEP_OUT_POINTS[keepOut.shape].map((end) => ({
      path: `keepOuts[${i}].${end}`,
      label: `${keepOut.name}, ${end}`,
      steps: ["keepOuts", i, end],
    })),
  ),
];

const KEEP_OUT_POINTS = { box: ["centre"], tube: ["from", "to"], "half-space": ["point"] } as const;

/** Coordinates that differ between two states of a car, put on marks. `side`: of the right one, y is written with a minus. */
export function changesBetween(
  before: Car,
  after: Car,
  places: readonly PointPlace[],
  side: "left" | "right",
): readonly SolveChange[] {
  return places.flatMap((place) => {
    const a = pointAt(before, place);
    const b = pointAt(after, place);
    return AXES.filter((axis) => Math.abs(a[axis] - b[axis]) > NOTHING).flatMap((axis) => {
      const sign = side === "right" && axis === "y" ? -1 : 1;
      const typed = onMark(b[axis], before.units);
      if (Math.abs(typed - a[axis]) < NOTHING) return [];
      const change: SolveChange = {
        path: `${side === "right" ? "right." : ""}${place.path}.${axis}`,
        label: `${place.label}, ${COORDINATE_WORDS[axis]}`,
        dimension: "length",
        before: sign * a[axis],
        exact: sign * b[axis],
        after: sign * typed,
      };
      return [change];
    });
  });
}

/** m */
const NOTHING = 1e-9;

/** Sections of the right side's own, as places in it. */
export const onlyIn = (places: readonly PointPlace[], sections: readonly string[]): readonly PointPlace[] =>
  places.filter(({ path }) => sections.some((section) => path.startsWith(`${section}.`)));
