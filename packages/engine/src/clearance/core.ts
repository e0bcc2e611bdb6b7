import {
  add,
  addScaled,
  anySquareTo,
  cross,
  dot,
  midpoint,
  ORIGIN,
  scale,
  subtract,
  type Vec3,
} from "../geometry/vec3.ts";
import type { RoundedSolid } from "./shapes.ts";

/**
 * The convex core of a rounded solid, as the sum (Minkowski) of a centre, segments ±edge and at most one disc:
 * a capsule is one segment, a box three, a wheel one segment and a disc square to it.
 */
export interface Core {
  readonly centre: Vec3;
  /** Half of each segment, m. */
  readonly edges: readonly Vec3[];
  readonly disc?: Disc;
}

/** Spanned by two of its radii, square to each other, m. */
interface Disc {
  readonly radiusX: Vec3;
  readonly radiusY: Vec3;
}

export function coreOf(solid: RoundedSolid): Core {
  switch (solid.shape) {
    case "capsule":
      return { centre: midpoint(solid.from, solid.to), edges: [scale(subtract(solid.to, solid.from), 0.5)] };
    case "box": {
      const { axisX, axisY, half } = solid;
      return {
        centre: solid.centre,
        edges: [scale(axisX, half.x), scale(axisY, half.y), scale(cross(axisX, axisY), half.z)],
      };
    }
    case "wheel": {
      const radiusX = scale(anySquareTo(solid.axis), solid.coreRadius);
      return {
        centre: solid.centre,
        edges: [scale(solid.axis, solid.coreHalfWidth)],
        disc: { radiusX, radiusY: cross(solid.axis, radiusX) },
      };
    }
  }
}

/** The point of the core that lies farthest along `direction` (any length); one of them where several do. */
export function farthestPoint(core: Core, direction: Vec3): Vec3 {
  let point = core.centre;
  for (const edge of core.edges) point = dot(edge, direction) < 0 ? subtract(point, edge) : add(point, edge);
  return core.disc === undefined ? point : add(point, farthestOnRim(core.disc, direction));
}

/** From the disc's centre to the point of its rim farthest along `direction`; the centre where it looks straight at it. */
export function farthestOnRim({ radiusX, radiusY }: Disc, direction: Vec3): Vec3 {
  const x = dot(radiusX, direction);
  const y = dot(radiusY, direction);
  const across = Math.sqrt(x * x + y * y);
  // Within the plane of the two radii whatever the rounding of x and y, also where both are next to nothing.
  return across > 0 ? addScaled(scale(radiusX, x / across), radiusY, y / across) : ORIGIN;
}

/** A point of the difference of two cores, point of a − point of b, with the two points that it comes from. */
export interface DifferencePoint {
  readonly difference: Vec3;
  readonly a: Vec3;
  readonly b: Vec3;
}

/** The point of the difference a − b that lies farthest along `direction` (any length). */
export function farthestDifference(coreA: Core, coreB: Core, direction: Vec3): DifferencePoint {
  const a = farthestPoint(coreA, direction);
  const b = farthestPoint(coreB, scale(direction, -1));
  return { difference: subtract(a, b), a, b };
}

/** A point of core a and a point of core b. */
export interface PointPair {
  readonly a: Vec3;
  readonly b: Vec3;
}
