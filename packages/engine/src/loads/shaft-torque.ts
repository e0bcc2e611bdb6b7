import type { Driveshaft, JointKind } from "../car/car.ts";
import {
  add,
  addScaled,
  angleBetween,
  cross,
  distance,
  dot,
  length,
  scale,
  squareTo,
  subtract,
  unit,
  type Vec3,
  vec,
} from "../geometry/vec3.ts";

/** What a driven half shaft does to the stub axle, the mean over a turn, vehicle axes. */
export interface ShaftTorque {
  /** About the spin axis, on the wheel, N·m; forward drive positive. */
  readonly atWheel: number;
  /** Along the shaft itself, and about the gearbox output, N·m. */
  readonly inShaft: number;
  readonly atOutput: number;
  /** Bend of the joints, rad. */
  readonly innerAngle: number;
  readonly outerAngle: number;
  /** Couple on the stub axle, the secondary part with it, N·m. */
  readonly couple: Vec3;
  /** Of the couple what is square to the stub axle, N·m: its mean, and the most it comes to in a turn. */
  readonly secondary: number;
  readonly secondaryMost: number;
  /** On the stub axle at the outer joint's centre, N: what keeps the shaft between two bent joints in balance. */
  readonly force: Vec3;
  /** Where it acts now, m. */
  readonly point: Vec3;
}

/** Where a shaft is: joint centres now, and the stub axle's direction (outboard, unit). */
export interface ShaftPlace {
  readonly inner: Vec3;
  readonly outer: Vec3;
  readonly spinAxis: Vec3;
}

/** Two directions nearer than this are one, and a joint between them makes no secondary couple, rad. */
const STRAIGHT = 1e-12;

/**
 * Couple that a bent joint passes on, per unit of torque along `axis`: the joint presses on an axle square to the plane of
 * its cross. A constant-velocity joint halves the angle at every place, so the couple lies along the bisector:
 * axis + tan(β/2)·e, with e square to the axis, toward the other shaft. At a U-joint with φ the turn of the yoke the couple
 * is axis + tan β·(sin²φ·e − sin φ cos φ·(axis × e)) (statics of the cross: no moment about either pair of trunnions),
 * whose mean over a turn is axis + ½·tan β·e and whose square part comes to tan β at most.
 */
function coupleOf(kind: JointKind, axis: Vec3, other: Vec3) {
  const angle = angleBetween(axis, other);
  const share = kind === "u-joint" ? Math.tan(angle) / 2 : Math.tan(angle / 2);
  const most = kind === "u-joint" ? Math.tan(angle) : share;
  const aside = squareTo(other, axis);
  const couple = angle > STRAIGHT ? addScaled(axis, unit(aside), share) : axis;
  return { angle, couple, secondary: share, most };
}

/**
 * The shaft for a torque at the wheel (N·m). Shaft in balance by itself: the couples of its two joints and a pair of forces
 * at the joint centres, (M_inner − M_outer)/L × d. Left out: friction of spline and joints (so no push or pull along the
 * shaft), the shaft's weight, and that the torque of U-joints swings twice in a turn.
 */
export function shaftTorque(shaft: Driveshaft, place: ShaftPlace, atWheel: number): ShaftTorque {
  const way = subtract(place.outer, place.inner);
  const span = length(way);
  const d = span > 0 ? scale(way, 1 / span) : place.spinAxis;
  const outer = coupleOf(shaft.outer.kind, place.spinAxis, d);
  const couple = scale(outer.couple, atWheel);
  const inShaft = dot(couple, d);
  const inner = coupleOf(shaft.inner.kind, d, shaft.outputAxis);
  const fromOutput = scale(inner.couple, inShaft);
  const unbalanced = subtract(fromOutput, couple);
  return {
    atWheel,
    inShaft,
    atOutput: dot(fromOutput, shaft.outputAxis),
    innerAngle: inner.angle,
    outerAngle: outer.angle,
    couple,
    secondary: Math.abs(atWheel) * outer.secondary,
    secondaryMost: Math.abs(atWheel) * outer.most,
    force: span > 0 ? scale(cross(unbalanced, d), 1 / span) : vec(0, 0, 0),
    point: place.outer,
  };
}

/** What is left over of the shaft's own balance, N·m: zero but for rounding. */
export function shaftResidual(shaft: Driveshaft, place: ShaftPlace, torque: ShaftTorque): number {
  const d = unit(subtract(place.outer, place.inner));
  const fromOutput = scale(coupleOf(shaft.inner.kind, d, shaft.outputAxis).couple, torque.inShaft);
  const lever = scale(d, distance(place.outer, place.inner));
  return length(add(subtract(fromOutput, torque.couple), cross(lever, scale(torque.force, -1))));
}
