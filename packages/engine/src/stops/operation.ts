import type { Mount, UnitSystem } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { formatLength } from "../units/format.ts";

/** A change of the car document: a value, as a builder types it, put in at a place. */
export interface Operation {
  readonly path: string;
  readonly value: TypedValue;
}

export type TypedValue = number | string | { readonly [field: string]: TypedValue };

/** A length to the sixteenth (half a millimetre) that a tape can be set to, as typed. */
export function typedLength(metres: number, units: UnitSystem): number | string {
  const text = formatLength(metres, units);
  return /^-?[\d.]+$/.test(text) ? Number(text) : text;
}

export const typedPoint = ({ x, y, z }: Vec3, units: UnitSystem) => ({
  x: typedLength(x, units),
  y: typedLength(y, units),
  z: typedLength(z, units),
});

export const typedMount = ({ point, on }: Mount, units: UnitSystem) => ({ ...typedPoint(point, units), on });
