import type { Rotation } from "../geometry/pose.ts";
import { cross, dot, FORWARD, length, scale, squareTo, UP, unit, type Vec3 } from "../geometry/vec3.ts";

/**
 * A member's own axes as rows of a rotation from vehicle axes: x along it, z along the section's depth, y = z × x.
 * `depth` need not be square to the member. Left out, or along the member: as near upright as can be, and forward for an
 * upright member.
 */
export function memberAxes(along: Vec3, depth?: Vec3): Rotation {
  const x = unit(along);
  const wanted = [depth, UP, FORWARD].find((way) => way !== undefined && isAcross(way, x)) ?? UP;
  const z = unit(squareTo(wanted, x));
  const y = cross(z, x);
  return [x.x, x.y, x.z, y.x, y.y, y.z, z.x, z.y, z.z];
}

/** Sine to the member below which a direction says nothing of its roll. */
const LEAST_SINE = 1e-3;

function isAcross(way: Vec3, x: Vec3): boolean {
  const size = length(way);
  if (!(size > 0)) return false;
  const way1 = scale(way, 1 / size);
  return 1 - dot(way1, x) ** 2 > LEAST_SINE ** 2;
}
