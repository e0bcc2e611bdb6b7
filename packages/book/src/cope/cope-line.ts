import { addScaled, cross, dot, subtract, unitVector, type Vec3 } from "@armwright/engine";

/** The end of a tube that has to sit on other tubes. Lengths in m. */
export interface CopedEnd {
  /** A point on the tube's axis from which cuts are counted, e.g. where the axes meet. */
  readonly origin: Vec3;
  /** Unit vector along the axis, out of the tube at this end. */
  readonly outward: Vec3;
  /** Unit vector square to the axis: where the wrapped paper's edges meet (angle 0). */
  readonly seam: Vec3;
  readonly outerRadius: number;
  readonly wall: number;
  /** The tubes that it sits on, each taken as endless. */
  readonly onto: readonly RoundTube[];
}

export interface RoundTube {
  readonly point: Vec3;
  /** Unit vector. */
  readonly direction: Vec3;
  readonly radius: number;
}

/** One place of the cut, going round the tube. */
export interface CopePoint {
  /** From the seam, rad, right-handed about `outward`. */
  readonly angle: number;
  /**
   * Where the tube is cut, m along `outward` from the origin (mostly negative: short of the axes' meeting). Null where the
   * tube passes beside everything it sits on.
   */
  readonly cut: number | null;
  /** Which of the tubes it meets there. */
  readonly meets: number | null;
}

export const COPE_POINTS = 360;

/**
 * The line to cut a tube's end along, so that it sits on the others without a gap inside and without cutting into them: at
 * each angle the shortest that any part of the wall allows. A line along the tube, at radius ρ and angle φ, meets a tube of
 * radius R about the axis (q, u) where |w − (w·u)u| = R, w = p + s·d − q: a quadratic in s, of which the nearer root counts.
 */
export function copeLine(end: CopedEnd, points: number = COPE_POINTS): readonly CopePoint[] {
  const side = cross(end.outward, end.seam);
  return Array.from({ length: points + 1 }, (_, index) => {
    const angle = (2 * Math.PI * index) / points;
    const radial = addScaled(addScaled({ x: 0, y: 0, z: 0 }, end.seam, Math.cos(angle)), side, Math.sin(angle));
    let cut: number | null = null;
    let meets: number | null = null;
    end.onto.forEach((tube, which) => {
      const at = shortestOf(end, radial, tube);
      if (at !== null && (cut === null || at < cut)) [cut, meets] = [at, which];
    });
    return { angle, cut, meets };
  });
}

/** Square of the sine of 2°: tubes nearer to in line than this are not coped onto each other, they are sleeved or butted. */
const NEARLY_IN_LINE = Math.sin(Math.PI / 90) ** 2;

/** How many places through the wall are tried before the best is closed in on. */
const THROUGH_WALL = 16;

/** The smallest first meeting over the wall's thickness: of a line through a convex body it is convex in ρ. */
function shortestOf(end: CopedEnd, radial: Vec3, tube: RoundTube): number | null {
  const inner = end.outerRadius - end.wall;
  const at = (radius: number): number => firstMeeting(end, addScaled(end.origin, radial, radius), tube) ?? Infinity;
  let best = 0;
  const values = Array.from({ length: THROUGH_WALL + 1 }, (_, i) => at(inner + (end.wall * i) / THROUGH_WALL));
  values.forEach((value, i) => {
    if (value < values[best]!) best = i;
  });
  if (values[best] === Infinity) return null;
  // Convex: where an edge of the wall is lowest of all tried, and its neighbour higher, it is the lowest.
  if ((best === 0 || best === THROUGH_WALL) && values[best === 0 ? 1 : best - 1]! > values[best]!) return values[best]!;
  let low = inner + (end.wall * Math.max(best - 1, 0)) / THROUGH_WALL;
  let high = inner + (end.wall * Math.min(best + 1, THROUGH_WALL)) / THROUGH_WALL;
  for (let step = 0; step < 60; step += 1) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (at(a) <= at(b)) high = b;
    else low = a;
  }
  return Math.min(values[best]!, at((low + high) / 2));
}

/** Where a line along the tube first meets another tube, coming from inside, m from `from`; null where it passes by. */
function firstMeeting({ outward }: CopedEnd, from: Vec3, { point, direction, radius }: RoundTube): number | null {
  const w = subtract(from, point);
  const across = addScaled(w, direction, -dot(w, direction));
  const slope = addScaled(outward, direction, -dot(outward, direction));
  const a = dot(slope, slope);
  if (a < NEARLY_IN_LINE) return null;
  const b = dot(across, slope);
  const c = dot(across, across) - radius * radius;
  const under = b * b - a * c;
  if (under < 0) return null;
  return (-b - Math.sqrt(under)) / a;
}

/** A seam that lies in the plane of both axes, on the side of the acute angle; any, where the axes are in line. */
export function usualSeam(outward: Vec3, onto: Vec3): Vec3 {
  const flat = addScaled(onto, outward, -dot(onto, outward));
  if (dot(flat, flat) > 1e-12) return unitVector(flat);
  const other = Math.abs(outward.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  return unitVector(addScaled(other, outward, -dot(other, outward)));
}
