import type { KeepOut } from "../car/car.ts";
import {
  addScaled,
  anySquareTo,
  cross,
  dot,
  length,
  scale,
  squareTo,
  subtract,
  UP,
  unit,
  type Vec3,
} from "../geometry/vec3.ts";
import { clippedTo, convexHull, type Point2 } from "./convex-outline.ts";
import type { Ball } from "./swept-balls.ts";

/** A template for a notch: what to cut out of one face of the keep-out, drawn true to size. */
export interface NotchOutline {
  /** Which face, by where it looks. */
  readonly face: "front" | "rear" | "outer" | "inner" | "top" | "bottom" | "plane";
  /** Origin of the outline: the face's corner where `across` and `up` begin (a plane's: its point), m. */
  readonly origin: Vec3;
  /** Unit directions of the outline's two axes on the face, and out of the face. */
  readonly across: Vec3;
  readonly up: Vec3;
  readonly normal: Vec3;
  /** Size of the whole face along both; null of a plane. */
  readonly size: Point2 | null;
  /** Corners in order, counterclockwise as seen from outside, m. Convex. */
  readonly points: readonly Point2[];
  /** How deep the cut goes behind the face, m. */
  readonly depth: number;
}

type Face = Omit<NotchOutline, "points">;

/**
 * Outline of the sweep's part behind a face, seen square to it: the hull of the rounds in which the balls pass through the
 * face's plane, or of the balls themselves where their middle is behind it, cut off at the face's edges. `low` and `high`: the
 * notch as a box in the keep-out's own axes; the face is taken behind which it is least deep. Null of a tube, which is bent or coped and not notched, and where nothing meets.
 */
export function notchOutline(
  keepOut: KeepOut,
  balls: readonly Ball[],
  low: readonly number[],
  high: readonly number[],
): NotchOutline | null {
  let best: NotchOutline | null = null;
  for (const face of facesOf(keepOut, low, high)) {
    const points: Point2[] = [];
    let depth = face.depth;
    for (const { centre, radius } of balls) {
      const from = subtract(centre, face.origin);
      const out = dot(from, face.normal);
      if (out >= radius) continue;
      if (!face.size) depth = Math.max(depth, radius - out);
      const round = out > 0 ? Math.sqrt(radius * radius - out * out) : radius;
      addRound(points, dot(from, face.across), dot(from, face.up), round);
    }
    const whole = convexHull(points);
    const cut = face.size ? clippedTo(whole, face.size) : whole;
    if (cut.length < 3 || (best && best.depth <= depth)) continue;
    best = { ...face, points: cut, depth };
  }
  return best;
}

const AROUND = 48;

/** A polygon round the circle, no corner nearer than it. */
function addRound(points: Point2[], x: number, y: number, radius: number): void {
  const outer = radius / Math.cos(Math.PI / AROUND);
  for (let i = 0; i < AROUND; i += 1) {
    const angle = (2 * Math.PI * i) / AROUND;
    points.push({ x: x + outer * Math.cos(angle), y: y + outer * Math.sin(angle) });
  }
}

function facesOf(keepOut: KeepOut, low: readonly number[], high: readonly number[]): readonly Face[] {
  if (keepOut.shape === "tube") return [];
  if (keepOut.shape === "half-space") {
    const { point, normal } = keepOut;
    const { across, up } = axesOf(normal);
    return [{ face: "plane", origin: point, across, up, normal, size: null, depth: 0 }];
  }
  const { centre, half, axisX, axisY } = keepOut;
  const axes = [axisX, axisY, cross(axisX, axisY)];
  const halves = [half.x, half.y, half.z];
  return axes.flatMap((axis, n) =>
    [1, -1].map((sign): Face => {
      const normal = scale(axis, sign);
      // The box's own other two axes, so turned that up is as near to upward as may be and across × up looks outward.
      const others = [axes[(n + 1) % 3]!, axes[(n + 2) % 3]!];
      const otherHalves = [halves[(n + 1) % 3]!, halves[(n + 2) % 3]!];
      const second = Math.abs(others[1]!.z) >= Math.abs(others[0]!.z) ? 1 : 0;
      const up = scale(others[second]!, others[second]!.z < 0 ? -1 : 1);
      const across = cross(up, normal);
      const [halfUp, halfAcross] = [otherHalves[second]!, otherHalves[1 - second]!];
      const middle = addScaled(centre, normal, halves[n]!);
      return {
        face: looking(normal),
        origin: addScaled(addScaled(middle, across, -halfAcross), up, -halfUp),
        across,
        up,
        normal,
        size: { x: 2 * halfAcross, y: 2 * halfUp },
        depth: halves[n]! + (sign > 0 ? -low[n]! : high[n]!),
      };
    }),
  );
}

function axesOf(normal: Vec3): { readonly across: Vec3; readonly up: Vec3 } {
  const upward = squareTo(UP, normal);
  const up = length(upward) > 1e-6 ? unit(upward) : anySquareTo(normal);
  return { across: cross(up, normal), up };
}

function looking({ x, y, z }: Vec3): NotchOutline["face"] {
  const [a, b, c] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  if (a >= b && a >= c) return x > 0 ? "front" : "rear";
  if (b >= c) return y > 0 ? "outer" : "inner";
  return z > 0 ? "top" : "bottom";
}
