import type { Mount, UnitSystem } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { toUnit } from "./convert.ts";
import { formatLength, type LengthStyle } from "./format.ts";

/** A length on a tape's mark, as a builder types it: `12 3/16`, 12, 310.5. */
export function typedLength(metres: number, units: UnitSystem, style?: LengthStyle): number | string {
  const text = formatLength(metres, units, style);
  return /^-?\d+(?:\.\d+)?$/.test(text) ? Number(text) : text;
}

/** An angle to a hundredth of a degree, as it is typed. */
export const typedAngle = (radians: number, units: UnitSystem): number =>
  Math.round(toUnit(radians, "angle", units) * 100) / 100 + 0;

export const typedPoint = ({ x, y, z }: Vec3, units: UnitSystem, style?: LengthStyle) => ({
  x: typedLength(x, units, style),
  y: typedLength(y, units, style),
  z: typedLength(z, units, style),
});

export const typedMount = ({ point, on }: Mount, units: UnitSystem) => ({ ...typedPoint(point, units), on });
