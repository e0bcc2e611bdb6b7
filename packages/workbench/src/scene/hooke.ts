import type { JointKind, Vec3 } from "@armwright/engine";
import { carried, cross, squareUnit, turned, UP, unit } from "./kit/space.ts";

/** Where the yokes of a half shaft stand: unit vectors in vehicle axes, each along the line through a yoke's two ears. */
export interface YokeDirections {
  /** Gearbox output's yoke, square to the output axis. */
  readonly output: Vec3;
  /** The shaft's inner yoke, square to the shaft. */
  readonly shaftInner: Vec3;
  /** The shaft's outer yoke, square to the shaft. */
  readonly shaftOuter: Vec3;
  /** Stub axle's yoke, square to the spin axis; hub and wheel turn with it. */
  readonly stub: Vec3;
}

export interface ShaftTurn {
  /** Output axis, shaft (inner to outer joint) and spin axis: unit vectors pointing outboard. */
  readonly outputAxis: Vec3;
  readonly shaft: Vec3;
  readonly spinAxis: Vec3;
  readonly inner: JointKind;
  readonly outer: JointKind;
  /** Outer yoke against the inner one along the shaft, rad, right-handed about it; 0 = in phase. */
  readonly yokePhase: number;
  /** How far the output has turned, rad, right-handed about its axis; at 0 its yoke stands upright. */
  readonly turn: number;
}

/** Follows a turn of the output through both joints to the wheel. */
export function yokeDirections(t: ShaftTurn): YokeDirections {
  const output = turned(squareUnit(UP, t.outputAxis), t.outputAxis, t.turn);
  const shaftInner = across(t.inner, output, t.outputAxis, t.shaft);
  const shaftOuter = turned(shaftInner, t.shaft, t.yokePhase);
  const stub = across(t.outer, shaftOuter, t.shaft, t.spinAxis);
  return { output, shaftInner, shaftOuter, stub };
}

/**
 * The driven yoke of a joint, from the driving yoke's ears.
 * U-joint: the cross is rigid, so its second arm is square to the first; it is also square to the driven axis. This is
 * tan θ₂ = tan θ₁ / cos β in vector form (Mechanical Engineer's Data Handbook, §2.4.3, p. 72).
 * Constant-velocity joint: the driven part turns as far as the driving one, so that it is carried by the smallest rotation
 * between the two axes.
 */
function across(kind: JointKind, ears: Vec3, driving: Vec3, driven: Vec3): Vec3 {
  return kind === "u-joint" ? unit(cross(driven, ears)) : carried(cross(driving, ears), driving, driven);
}
