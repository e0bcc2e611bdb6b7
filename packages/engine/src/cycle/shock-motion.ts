import type { Shock } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { ArmAxis } from "../linkage/kind.ts";
import type { MotionState } from "../linkage/motion-state.ts";
import { CARRIER as CARRIERS, type Carried, carriedPoint, carryMotion } from "./carried.ts";
import { ROW as ROW_PLACES } from "./row.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const ROW = ROW_PLACES;
const CARRIER = CARRIERS;

export interface ShockMotion {
  readonly upper: Carried;
  readonly lower: Carried;
}

export const shockMotion = (shock: Shock, arms: readonly ArmAxis[], wheelCentre: Vec3): ShockMotion => ({
  upper: carriedPoint(shock.upper, arms, wheelCentre),
  lower: carriedPoint(shock.lower, arms, wheelCentre),
});

const upper = new Float64Array(9);
const lower = new Float64Array(9);

/**
 * Shock length L, motion ratio −dL/dz and its slope −d²L/dz² (exact, from velocity and acceleration of both mounts), angle
 * to the arm and lean from upright (rad). The angle to the arm is that between the shock and the line from the hinge
 * square out to the lower mount, 90° when square; where the lower mount rides on the spindle there is no such line, and
 * it is taken against the mount's path instead (90° when the shock lies along the path).
 */
export function writeShockMotion(shock: ShockMotion, s: MotionState, row: Float64Array): void {
  carryMotion(shock.upper, s, upper);
  carryMotion(shock.lower, s, lower);
  const dx = upper[0]! - lower[0]!;
  const dy = upper[1]! - lower[1]!;
  const dz = upper[2]! - lower[2]!;
  const vx = upper[3]! - lower[3]!;
  const vy = upper[4]! - lower[4]!;
  const vz = upper[5]! - lower[5]!;
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const per = 1 / length;
  const rate = (dx * vx + dy * vy + dz * vz) * per;
  const curve =
    (vx * vx + vy * vy + vz * vz - rate * rate) * per +
    (dx * (upper[6]! - lower[6]!) + dy * (upper[7]! - lower[7]!) + dz * (upper[8]! - lower[8]!)) * per;
  row[ROW.shockLength] = length;
  row[ROW.motionRatio] = -rate;
  row[ROW.motionRatioSlope] = -curve;
  row[ROW.shockLean] = Math.atan2(Math.sqrt(dx * dx + dy * dy), dz);
  const { carrier, parts } = shock.lower;
  if (carrier >= CARRIER.firstArm) {
    const ax = lower[0]! - parts[0]!;
    const ay = lower[1]! - parts[1]!;
    const az = lower[2]! - parts[2]!;
    const cosine = -(dx * ax + dy * ay + dz * az);
    row[ROW.shockToArm] = Math.acos(limit((cosine * per) / Math.sqrt(ax * ax + ay * ay + az * az)));
    return;
  }
  const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
  row[ROW.shockToArm] = speed > 0 ? Math.asin(limit(Math.abs(rate) / speed)) : 0;
}

const limit = (value: number): number => Math.min(1, Math.max(-1, value));
