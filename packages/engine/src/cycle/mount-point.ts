import type { Mount } from "../car/car.ts";
import { cross, dot, scale, squareTo, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import type { ArmAxis } from "../linkage/kind.ts";
import { AT, type MotionState } from "../linkage/motion-state.ts";

/** A point on one of the car's bodies, made ready to be carried along in the hot loop. */
export interface MountPoint {
  readonly carrier: Carrier;
  /** Chassis: the point. Spindle: from the wheel centre, design position. Arm: foot on the hinge line. */
  readonly base: Vec3;
  /** Arm: from the foot to the point, and the same a quarter turn on. */
  readonly square: Vec3;
  readonly quarter: Vec3;
}

export const CARRIER = { chassis: 0, spindle: 1, firstArm: 2, secondArm: 3 } as const;
export type Carrier = (typeof CARRIER)[keyof typeof CARRIER];

const ZERO = vec(0, 0, 0);

/** Reads a mount for `mountMotion`; its body must be one that the linkage has. */
export function mountPoint(mount: Mount, arms: readonly ArmAxis[], wheelCentre: Vec3): MountPoint {
  if (mount.on === "chassis") return { carrier: CARRIER.chassis, base: mount.point, square: ZERO, quarter: ZERO };
  if (mount.on === "spindle") {
    return { carrier: CARRIER.spindle, base: subtract(mount.point, wheelCentre), square: ZERO, quarter: ZERO };
  }
  const index = arms.findIndex((arm) => arm.body === mount.on);
  const arm = arms[index];
  if (!arm) throw new Error(`bug in armwright: this linkage has no ${mount.on}`);
  const reach = subtract(mount.point, arm.point);
  const square = squareTo(reach, arm.axis);
  const foot = subtract(mount.point, square);
  return {
    carrier: index === 0 ? CARRIER.firstArm : CARRIER.secondArm,
    base: foot,
    square,
    quarter: cross(arm.axis, square),
  };
}

/** Writes position, velocity and acceleration (by travel; m, m/m, m/m²) of a mount into nine places of `out`. */
export function mountMotion(mount: MountPoint, s: MotionState, out: Float64Array, offset: number): void {
  const { base, square, quarter } = mount;
  if (mount.carrier === CARRIER.chassis) {
    out[offset] = base.x;
    out[offset + 1] = base.y;
    out[offset + 2] = base.z;
    for (let i = 3; i < 9; i += 1) out[offset + i] = 0;
    return;
  }
  if (mount.carrier === CARRIER.spindle) {
    const rx = s[AT.rotation]! * base.x + s[AT.rotation + 1]! * base.y + s[AT.rotation + 2]! * base.z;
    const ry = s[AT.rotation + 3]! * base.x + s[AT.rotation + 4]! * base.y + s[AT.rotation + 5]! * base.z;
    const rz = s[AT.rotation + 6]! * base.x + s[AT.rotation + 7]! * base.y + s[AT.rotation + 8]! * base.z;
    const px = s[AT.spin]!;
    const py = s[AT.spin + 1]!;
    const pz = s[AT.spin + 2]!;
    const qx = s[AT.spinRate]!;
    const qy = s[AT.spinRate + 1]!;
    const qz = s[AT.spinRate + 2]!;
    const cx = py * rz - pz * ry;
    const cy = pz * rx - px * rz;
    const cz = px * ry - py * rx;
    out[offset] = s[AT.wheelCentre]! + rx;
    out[offset + 1] = s[AT.wheelCentre + 1]! + ry;
    out[offset + 2] = s[AT.wheelCentre + 2]! + rz;
    out[offset + 3] = s[AT.velocity]! + cx;
    out[offset + 4] = s[AT.velocity + 1]! + cy;
    out[offset + 5] = s[AT.velocity + 2]! + cz;
    out[offset + 6] = s[AT.acceleration]! + qy * rz - qz * ry + py * cz - pz * cy;
    out[offset + 7] = s[AT.acceleration + 1]! + qz * rx - qx * rz + pz * cx - px * cz;
    out[offset + 8] = s[AT.acceleration + 2]! + qx * ry - qy * rx + px * cy - py * cx;
    return;
  }
  const arm = mount.carrier === CARRIER.firstArm ? AT.firstArm : AT.secondArm;
  const c = s[arm]!;
  const n = s[arm + 1]!;
  const rate = s[arm + 3]!;
  const acceleration = s[arm + 4]!;
  const rx = c * square.x + n * quarter.x;
  const ry = c * square.y + n * quarter.y;
  const rz = c * square.z + n * quarter.z;
  const tx = c * quarter.x - n * square.x;
  const ty = c * quarter.y - n * square.y;
  const tz = c * quarter.z - n * square.z;
  const rate2 = rate * rate;
  out[offset] = base.x + rx;
  out[offset + 1] = base.y + ry;
  out[offset + 2] = base.z + rz;
  out[offset + 3] = rate * tx;
  out[offset + 4] = rate * ty;
  out[offset + 5] = rate * tz;
  out[offset + 6] = acceleration * tx - rate2 * rx;
  out[offset + 7] = acceleration * ty - rate2 * ry;
  out[offset + 8] = acceleration * tz - rate2 * rz;
}

/** Turns a direction of a carrier, given in the design position, into where it points now; three places of `out`. */
export function carryDirection(
  carrier: Carrier,
  along: Vec3,
  square: Vec3,
  quarter: Vec3,
  s: MotionState,
  out: Float64Array,
  offset: number,
): void {
  if (carrier === CARRIER.chassis) {
    out[offset] = along.x;
    out[offset + 1] = along.y;
    out[offset + 2] = along.z;
    return;
  }
  if (carrier === CARRIER.spindle) {
    const r = AT.rotation;
    out[offset] = s[r]! * along.x + s[r + 1]! * along.y + s[r + 2]! * along.z;
    out[offset + 1] = s[r + 3]! * along.x + s[r + 4]! * along.y + s[r + 5]! * along.z;
    out[offset + 2] = s[r + 6]! * along.x + s[r + 7]! * along.y + s[r + 8]! * along.z;
    return;
  }
  const arm = carrier === CARRIER.firstArm ? AT.firstArm : AT.secondArm;
  const c = s[arm]!;
  const n = s[arm + 1]!;
  out[offset] = along.x + c * square.x + n * quarter.x;
  out[offset + 1] = along.y + c * square.y + n * quarter.y;
  out[offset + 2] = along.z + c * square.z + n * quarter.z;
}

/** A direction fixed to a body, made ready for `carryDirection`. */
export interface CarriedDirection {
  readonly carrier: Carrier;
  readonly along: Vec3;
  readonly square: Vec3;
  readonly quarter: Vec3;
}

export function carriedDirection(direction: Vec3, on: Mount["on"], arms: readonly ArmAxis[]): CarriedDirection {
  if (on === "chassis") return { carrier: CARRIER.chassis, along: direction, square: ZERO, quarter: ZERO };
  if (on === "spindle") return { carrier: CARRIER.spindle, along: direction, square: ZERO, quarter: ZERO };
  const index = arms.findIndex((arm) => arm.body === on);
  const { axis } = arms[index]!;
  const along = scale(axis, dot(direction, axis));
  const square = subtract(direction, along);
  return {
    carrier: index === 0 ? CARRIER.firstArm : CARRIER.secondArm,
    along,
    square,
    quarter: cross(axis, square),
  };
}
