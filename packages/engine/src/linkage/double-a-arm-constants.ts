import type { AArm, DoubleAArmLinkage } from "../car/car.ts";
import { anySquareTo, cross, dot, squareTo, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import { liftingAxis } from "./arm-axis.ts";
import type { Lengths } from "./kind.ts";
import { givenLength } from "./parts.ts";

/** The line an arm turns about. */
export const armLine = (arm: AArm) => liftingAxis(arm.innerFront, arm.innerRear, arm.outer);

/** Member id of the distance between the two balls, which belongs to the spindle. */
export const KINGPIN = "spindle.kingpin";

/** Constants of one double A-arm; points are those of the design position, in vehicle axes, m. */
export interface DoubleAArmConstants {
  /** Lower line: point and axis; its ball from the point: part along the axis, part square to it, and that a quarter on. */
  readonly c1: Vec3;
  readonly a1: Vec3;
  readonly lAlong: Vec3;
  readonly lSquare: Vec3;
  readonly lQuarter: Vec3;
  /** Upper line and ball likewise. */
  readonly c2: Vec3;
  readonly a2: Vec3;
  readonly uAlong: Vec3;
  readonly uSquare: Vec3;
  readonly uQuarter: Vec3;
  readonly uSquared: number;
  readonly kingpin: number;
  /** The spindle's own frame in the design position: e along the kingpin, g from `helper`, k = e × g. */
  readonly helper: Vec3;
  readonly e0: Vec3;
  readonly g0: Vec3;
  readonly k0: Vec3;
  /** Toe-link outer end and wheel centre from the lower ball, in that frame. */
  readonly te: number;
  readonly tg: number;
  readonly tk: number;
  readonly we: number;
  readonly wg: number;
  readonly wk: number;
  readonly toeInner: Vec3;
  readonly toeLength: number;
  readonly designHeight: number;
  readonly upperBranch: 1 | -1;
  readonly toeBranch: 1 | -1;
}

export function doubleAArmConstants(
  linkage: DoubleAArmLinkage,
  wheelCentre: Vec3,
  lengths: Lengths,
): DoubleAArmConstants {
  const { lowerArm, upperArm, toeLink } = linkage;
  const { point: c1, axis: a1 } = armLine(lowerArm);
  const { point: c2, axis: a2 } = armLine(upperArm);
  const split = (v: Vec3, a: Vec3) => {
    const square = squareTo(v, a);
    return { along: subtract(v, square), square, quarter: cross(a, square) };
  };
  const l = split(subtract(lowerArm.outer, c1), a1);
  const upperReach = subtract(upperArm.outer, c2);
  const u = split(upperReach, a2);
  const e0 = unit(subtract(upperArm.outer, lowerArm.outer));
  const helper = anySquareTo(e0);
  const g0 = unit(squareTo(helper, e0));
  const k0 = cross(e0, g0);
  const t = subtract(toeLink.outer, lowerArm.outer);
  const w = subtract(wheelCentre, lowerArm.outer);
  // Sign of Q at the design angles tells which closure the car is built in.
  const upperQ = dot(u.quarter, subtract(lowerArm.outer, c2));
  const toeQ = dot(cross(e0, squareTo(t, e0)), subtract(toeLink.inner, lowerArm.outer));
  return {
    c1,
    a1,
    lAlong: l.along,
    lSquare: l.square,
    lQuarter: l.quarter,
    c2,
    a2,
    uAlong: u.along,
    uSquare: u.square,
    uQuarter: u.quarter,
    uSquared: dot(upperReach, upperReach),
    kingpin: givenLength(lengths, KINGPIN, lowerArm.outer, upperArm.outer),
    helper,
    e0,
    g0,
    k0,
    te: dot(t, e0),
    tg: dot(t, g0),
    tk: dot(t, k0),
    we: dot(w, e0),
    wg: dot(w, g0),
    wk: dot(w, k0),
    toeInner: toeLink.inner,
    toeLength: givenLength(lengths, "toeLink", toeLink.inner, toeLink.outer),
    designHeight: wheelCentre.z,
    upperBranch: upperQ < 0 ? 1 : -1,
    toeBranch: toeQ < 0 ? 1 : -1,
  };
}
