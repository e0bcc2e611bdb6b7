import type { BodyId, Car, Mount } from "../car/car.ts";
import { type Position, placeOn } from "../cycle/position.ts";
import { distance, scale, subtract, type Vec3 } from "../geometry/vec3.ts";

/** Parts that carry along the line between their two ends. */
export const STRUTS = ["shock", "bump-stop", "strap"] as const;
export type StrutName = (typeof STRUTS)[number];

/** Where a strut is at a position. */
export interface StrutPlace {
  readonly name: StrutName;
  readonly upper: { readonly on: BodyId; readonly point: Vec3 };
  readonly lower: { readonly on: BodyId; readonly point: Vec3 };
  /** From the upper to the lower end, unit: how compression pushes the lower body. */
  readonly push: Vec3;
  readonly length: number;
}

/** Null where the car has no such part, or its two ends fall together. */
export function strutPlaceOf(car: Car, position: Position, name: StrutName): StrutPlace | null {
  const ends = endsOf(car, name);
  if (!ends) return null;
  const upper = { on: ends.upper.on, point: placeOn(position, ends.upper.point, ends.upper.on) };
  const lower = { on: ends.lower.on, point: placeOn(position, ends.lower.point, ends.lower.on) };
  const length = distance(upper.point, lower.point);
  if (!(length > 0)) return null;
  return { name, upper, lower, push: scale(subtract(lower.point, upper.point), 1 / length), length };
}

/** A bump stop's base counts as its upper end, the pad it strikes as its lower one. */
function endsOf(car: Car, name: StrutName): { readonly upper: Mount; readonly lower: Mount } | null {
  if (name === "shock") return car.shock ?? null;
  if (name === "strap") return car.strap ?? null;
  return car.bumpStop ? { upper: car.bumpStop.base, lower: car.bumpStop.strikes } : null;
}
