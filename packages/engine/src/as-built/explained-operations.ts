import type { Car } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import { pointAt } from "../solve/point-places.ts";
import { typedAngle, typedLength, typedPoint } from "../units/typed.ts";
import type { Explanation } from "./explain.ts";

/** To 1/32 in, as the cause is told. */
const STYLE = { denominator: 32 } as const;

/**
 * The edits that make the plan the car as it was built, as they would be typed. A surveyed point is typed from then on: the
 * readings say where it was meant to be, and a coordinate beside the survey's name would be passed over.
 */
export function explainedOperations(car: Car, { cause, by }: Pick<Explanation, "cause" | "by">): readonly Operation[] {
  if (cause.kind === "setting") {
    return [{ path: `wheel.${cause.setting}`, value: typedAngle(car.wheel[cause.setting] + by, car.units) }];
  }
  const { place, axis } = cause.input;
  const planned = pointAt(car, place);
  const built = planned[axis] + by;
  if (!car.survey?.uses.some(({ path }) => path === place.path)) {
    return [{ path: `${place.path}.${axis}`, value: typedLength(built, car.units, STYLE) }];
  }
  const typed = typedPoint({ ...planned, [axis]: built }, car.units, STYLE);
  return [
    { path: `${place.path}.surveyed`, value: undefined },
    ...(["x", "y", "z"] as const).map((each) => ({ path: `${place.path}.${each}`, value: typed[each] })),
  ];
}
