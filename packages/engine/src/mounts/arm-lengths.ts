import { cross, dot, squareTo, subtract, type Vec3 } from "../geometry/vec3.ts";

/** L² = a + b·cos t + c·sin t: a shock from a fixed point to one that turns about a fixed axis by t from its design position. */
export interface LengthTerms {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** Points in m, the lower one in its design position on an arm that turns about the line through `point` along `axis`. */
export function lengthTerms(upper: Vec3, lower: Vec3, point: Vec3, axis: Vec3): LengthTerms {
  const square = squareTo(subtract(lower, point), axis);
  const toUpper = subtract(upper, subtract(lower, square));
  return {
    a: dot(toUpper, toUpper) + dot(square, square),
    b: -2 * dot(toUpper, square),
    c: -2 * dot(toUpper, cross(axis, square)),
  };
}

export interface LengthExtremes {
  readonly shortest: number;
  readonly longest: number;
  /** The length only falls from the one end to the other. */
  readonly falls: boolean;
}

/** Extreme lengths over t from `from` to `to` (rad, less than a whole turn): at the ends, or where the slope is zero between them. */
export function lengthExtremes({ a, b, c }: LengthTerms, from: number, to: number): LengthExtremes {
  const at = (t: number): number => Math.sqrt(Math.max(0, a + b * Math.cos(t) + c * Math.sin(t)));
  const start = at(from);
  const end = at(to);
  let shortest = Math.min(start, end);
  let longest = Math.max(start, end);
  const peak = Math.atan2(c, b);
  let turns = false;
  for (let n = -2; n <= 2; n += 1) {
    for (const t of [peak + 2 * n * Math.PI, peak + (2 * n + 1) * Math.PI]) {
      if (!(t > from && t < to)) continue;
      turns = true;
      shortest = Math.min(shortest, at(t));
      longest = Math.max(longest, at(t));
    }
  }
  return { shortest, longest, falls: !turns && end < start };
}
