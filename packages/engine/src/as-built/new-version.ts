import type { Car } from "../car/car.ts";
import { pointAt } from "../solve/point-places.ts";
import { typedAngle, typedLength } from "../units/typed.ts";
import type { Explanation } from "./explain.ts";

/** The one field that the explanation changes, as it would be typed: the plan then is the car as it was built. */
export function explainedField(
  car: Car,
  { cause, by }: Explanation,
): { readonly path: string; readonly value: number | string } {
  if (cause.kind === "setting") {
    return { path: `wheel.${cause.setting}`, value: typedAngle(car.wheel[cause.setting] + by, car.units) };
  }
  const { place, axis } = cause.input;
  return { path: `${place.path}.${axis}`, value: typedLength(pointAt(car, place)[axis] + by, car.units) };
}
