import type { Shock } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { ArmAxis } from "../linkage/kind.ts";
import type { MotionState } from "../linkage/motion-state.ts";
import { CARRIER, type Carried, carriedPoint, carryMotion } from "./carried.ts";
import { ROW } from "./row.ts";

export interface ShockMotion {
  readonly upper: Carried;
  readonly lower: Carried;
}

export const shockMotion = (shock: Shock, arms: readonly ArmAxis[], wheelCentre: Vec3): ShockMotion => ({
  upper: carriedPoint(shock.upper, arms, wheelCentre),
  lower: carriedPoint(shock.lower, arms, wheelCentre),
});

const scratch = new Float64Array(18);

/**
 * Shock length L, motion ratio −dL/dz and its slope −d²L/dz² (exact, from velocity and acceleration of both mounts), angle
 * to the arm and lean from upright (rad). The angle to the arm is that between the shock and the line from the hinge
 * square out to the lower mount, 90° when square; where the lower mount rides on the spindle there is no such line, and
 * it is taken against the mount's path instead (90° when the shock lies along the path).
 */
export function writeShockMotion(shock: ShockMotion, s: MotionState, row: Float64Array): void {
  carryMotion(shock.upper, s, scratch, 0);
  carryMotion(shock.lower, s, scratch, 9);
  const dx = scratch[0]! - scratch[9]!;
  const dy = scratch[1]! - scratch[10]!;
  const dz = scratch[2]! - scratch[11]!;
  const vx = scratch[3]! - scratch[12]!;
  const vy = scratch[4]! - scratch[13]!;
  const vz = scratch[5]! - scratch[14]!;
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const per = 1 / length;
  const rate = (dx * vx + dy * vy + dz * vz) * per;
  const curve =
    (vx * vx + vy * vy + vz * vz - rate * rate) * per +
    (dx * (scratch[6]! - scratch[15]!) + dy * (scratch[7]! - scratch[16]!) + dz * (scratch[8]! - scratch[17]!)) * per;
  row[ROW.shockLength] = length;
  row[ROW.motionRatio] = -rate;
  row[ROW.motionRatioSlope] = -curve;
  row[ROW.shockLean] = Math.atan2(Math.sqrt(dx * dx + dy * dy), dz);
  const { lower } = shock;
  if (lower.carrier >= CARRIER.firstArm) {
    const ax = scratch[9]! - lower.parts[0]!;
    const ay = scratch[10]! - lower.parts[1]!;
    const az = scratch[11]! - lower.parts[2]!;
    const cosine = -(dx * ax + dy * ay + dz * az);
    row[ROW.shockToArm] = Math.acos(limit((cosine * per) / Math.sqrt(ax * ax + ay * ay + az * az)));
    return;
  }
  const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
  row[ROW.shockToArm] = speed > 0 ? Math.asin(limit(Math.abs(rate) / speed)) : 0;
}

const limit = (value: number): number => Math.min(1, Math.max(-1, value));
