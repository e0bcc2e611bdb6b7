import type { Driveshaft } from "../car/car.ts";
import { ROW as ROW_PLACES } from "../cycle/row.ts";
import { distance, subtract, type Vec3 } from "../geometry/vec3.ts";
import { type MotionState, AT as STATE_PLACES } from "../linkage/motion-state.ts";
import { rippleOf } from "./speed-ripple.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;
const ROW = ROW_PLACES;

export interface ShaftMotion {
  readonly inner: Vec3;
  readonly outputAxis: Vec3;
  /** Outer joint centre from the wheel centre, and the stub axle's direction, both in the design position. */
  readonly outer: Vec3;
  readonly stubAxis: Vec3;
  readonly designLength: number;
  /** Engagement in the design position, m; 0 where there is no slip. */
  readonly engagement: number;
  /** Cosine and sine of the phase of the shaft's yokes. */
  readonly cosPhase: number;
  readonly sinPhase: number;
  readonly innerRipples: boolean;
  readonly outerRipples: boolean;
}

export const shaftMotion = (shaft: Driveshaft, wheelCentre: Vec3, spinAxis: Vec3): ShaftMotion => ({
  inner: shaft.inner.centre,
  outputAxis: shaft.outputAxis,
  outer: subtract(shaft.outer.centre, wheelCentre),
  stubAxis: spinAxis,
  designLength: distance(shaft.inner.centre, shaft.outer.centre),
  engagement: shaft.slip?.engagement ?? 0,
  cosPhase: Math.cos(shaft.yokePhase),
  sinPhase: Math.sin(shaft.yokePhase),
  innerRipples: shaft.inner.kind === "u-joint",
  outerRipples: shaft.outer.kind === "u-joint",
});

/**
 * Joint angles (rad, 0 when straight), distance between joint centres, plunge (m, positive when longer), engagement, and
 * the speed ripple of the pair by the formula of `rippleOf`.
 */
export function writeShaftMotion(shaft: ShaftMotion, s: MotionState, row: Float64Array): void {
  const { inner, outputAxis: g, outer, stubAxis: a } = shaft;
  const r0 = s[AT.rotation]!;
  const r1 = s[AT.rotation + 1]!;
  const r2 = s[AT.rotation + 2]!;
  const r3 = s[AT.rotation + 3]!;
  const r4 = s[AT.rotation + 4]!;
  const r5 = s[AT.rotation + 5]!;
  const r6 = s[AT.rotation + 6]!;
  const r7 = s[AT.rotation + 7]!;
  const r8 = s[AT.rotation + 8]!;
  const dx = s[AT.wheelCentre]! + r0 * outer.x + r1 * outer.y + r2 * outer.z - inner.x;
  const dy = s[AT.wheelCentre + 1]! + r3 * outer.x + r4 * outer.y + r5 * outer.z - inner.y;
  const dz = s[AT.wheelCentre + 2]! + r6 * outer.x + r7 * outer.y + r8 * outer.z - inner.z;
  const sx = r0 * a.x + r1 * a.y + r2 * a.z;
  const sy = r3 * a.x + r4 * a.y + r5 * a.z;
  const sz = r6 * a.x + r7 * a.y + r8 * a.z;
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  // Normals of the two planes: output axis × shaft, shaft × stub axis.
  const mx = g.y * dz - g.z * dy;
  const my = g.z * dx - g.x * dz;
  const mz = g.x * dy - g.y * dx;
  const nx = dy * sz - dz * sy;
  const ny = dz * sx - dx * sz;
  const nz = dx * sy - dy * sx;
  const alongInner = g.x * dx + g.y * dy + g.z * dz;
  const alongOuter = sx * dx + sy * dy + sz * dz;
  row[ROW.innerJointAngle] = Math.atan2(Math.sqrt(mx * mx + my * my + mz * mz), alongInner);
  row[ROW.outerJointAngle] = Math.atan2(Math.sqrt(nx * nx + ny * ny + nz * nz), alongOuter);
  row[ROW.shaftLength] = length;
  const plunge = length - shaft.designLength;
  row[ROW.plunge] = plunge;
  row[ROW.slipEngagement] = shaft.engagement - plunge;
  const { innerRipples, outerRipples, cosPhase, sinPhase } = shaft;
  if (!innerRipples && !outerRipples) {
    row[ROW.speedRipple] = 0;
    row[ROW.rippleAngle] = 0;
    return;
  }
  // Cosine and sine of the angle between the planes, times a common factor; no angle where a joint is straight.
  const turned = (mx * nx + my * ny + mz * nz) * length;
  const across = (my * nz - mz * ny) * dx + (mz * nx - mx * nz) * dy + (mx * ny - my * nx) * dz;
  const size = Math.sqrt(turned * turned + across * across);
  const cosBetween = size > 0 ? turned / size : 1;
  const sinBetween = size > 0 ? across / size : 0;
  const ripple = rippleOf(
    innerRipples ? alongInner / length : 1,
    outerRipples ? alongOuter / length : 1,
    cosBetween * cosPhase + sinBetween * sinPhase,
    sinBetween * cosPhase - cosBetween * sinPhase,
  );
  row[ROW.speedRipple] = ripple.total;
  row[ROW.rippleAngle] = ripple.equivalentAngle;
}
