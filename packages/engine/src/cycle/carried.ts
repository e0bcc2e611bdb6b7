import type { Mount } from "../car/car.ts";
import { cross, dot, scale, squareTo, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import type { ArmAxis } from "../linkage/kind.ts";
import { type MotionState, AT as STATE_PLACES } from "../linkage/motion-state.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/** A point or a direction fixed to one of the car's bodies, made ready to be carried along in the hot loop. */
export interface Carried {
  readonly carrier: Carrier;
  /**
   * Nine numbers, three vectors: base, square, quarter. Chassis: the base is the point or direction itself. Spindle: the
   * base is counted from the wheel centre, in the design position. Arm: the base is the foot on the hinge line (of a
   * direction, its part along the line), square leads from there to the point, quarter is that a quarter turn on.
   */
  readonly parts: Float64Array;
}

export const CARRIER = { chassis: 0, spindle: 1, firstArm: 2, secondArm: 3 } as const;
export type Carrier = (typeof CARRIER)[keyof typeof CARRIER];

const ZERO = vec(0, 0, 0);

function carried(carrier: Carrier, base: Vec3, square: Vec3 = ZERO, quarter: Vec3 = ZERO): Carried {
  const parts = new Float64Array(9);
  parts[0] = base.x;
  parts[1] = base.y;
  parts[2] = base.z;
  parts[3] = square.x;
  parts[4] = square.y;
  parts[5] = square.z;
  parts[6] = quarter.x;
  parts[7] = quarter.y;
  parts[8] = quarter.z;
  return { carrier, parts };
}

/** Makes a mount ready; its body must be one that the linkage has. */
export function carriedPoint(mount: Mount, arms: readonly ArmAxis[], wheelCentre: Vec3): Carried {
  if (mount.on === "chassis") return carried(CARRIER.chassis, mount.point);
  if (mount.on === "spindle") return carried(CARRIER.spindle, subtract(mount.point, wheelCentre));
  const { carrier, arm } = armOf(mount.on, arms);
  const square = squareTo(subtract(mount.point, arm.point), arm.axis);
  return carried(carrier, subtract(mount.point, square), square, cross(arm.axis, square));
}

/** Makes a direction of the design position ready; its body must be one that the linkage has. */
export function carriedDirection(direction: Vec3, on: Mount["on"], arms: readonly ArmAxis[]): Carried {
  if (on === "chassis") return carried(CARRIER.chassis, direction);
  if (on === "spindle") return carried(CARRIER.spindle, direction);
  const { carrier, arm } = armOf(on, arms);
  const along = scale(arm.axis, dot(direction, arm.axis));
  const square = subtract(direction, along);
  return carried(carrier, along, square, cross(arm.axis, square));
}

function armOf(on: Mount["on"], arms: readonly ArmAxis[]): { readonly carrier: Carrier; readonly arm: ArmAxis } {
  const index = arms.findIndex(({ body }) => body === on);
  const arm = arms[index];
  if (!arm) throw new Error(`bug in armwright: this linkage has no ${on}`);
  return { carrier: index === 0 ? CARRIER.firstArm : CARRIER.secondArm, arm };
}

/** Writes position, velocity and acceleration (by travel; m, m/m, m/m²) of a point into the nine places of `out`. */
export function carryMotion(point: Carried, s: MotionState, out: Float64Array): void {
  const { carrier, parts } = point;
  const x = parts[0]!;
  const y = parts[1]!;
  const z = parts[2]!;
  if (carrier === CARRIER.chassis) {
    out[0] = x;
    out[1] = y;
    out[2] = z;
    out[3] = 0;
    out[4] = 0;
    out[5] = 0;
    out[6] = 0;
    out[7] = 0;
    out[8] = 0;
    return;
  }
  if (carrier === CARRIER.spindle) {
    const rx = s[AT.rotation]! * x + s[AT.rotation + 1]! * y + s[AT.rotation + 2]! * z;
    const ry = s[AT.rotation + 3]! * x + s[AT.rotation + 4]! * y + s[AT.rotation + 5]! * z;
    const rz = s[AT.rotation + 6]! * x + s[AT.rotation + 7]! * y + s[AT.rotation + 8]! * z;
    const px = s[AT.spin]!;
    const py = s[AT.spin + 1]!;
    const pz = s[AT.spin + 2]!;
    const qx = s[AT.spinRate]!;
    const qy = s[AT.spinRate + 1]!;
    const qz = s[AT.spinRate + 2]!;
    const cx = py * rz - pz * ry;
    const cy = pz * rx - px * rz;
    const cz = px * ry - py * rx;
    out[0] = s[AT.wheelCentre]! + rx;
    out[1] = s[AT.wheelCentre + 1]! + ry;
    out[2] = s[AT.wheelCentre + 2]! + rz;
    out[3] = s[AT.velocity]! + cx;
    out[4] = s[AT.velocity + 1]! + cy;
    out[5] = s[AT.velocity + 2]! + cz;
    out[6] = s[AT.acceleration]! + qy * rz - qz * ry + py * cz - pz * cy;
    out[7] = s[AT.acceleration + 1]! + qz * rx - qx * rz + pz * cx - px * cz;
    out[8] = s[AT.acceleration + 2]! + qx * ry - qy * rx + px * cy - py * cx;
    return;
  }
  const arm = carrier === CARRIER.firstArm ? AT.firstArm : AT.secondArm;
  const c = s[arm]!;
  const n = s[arm + 1]!;
  const rate = s[arm + 3]!;
  const acceleration = s[arm + 4]!;
  const rx = c * parts[3]! + n * parts[6]!;
  const ry = c * parts[4]! + n * parts[7]!;
  const rz = c * parts[5]! + n * parts[8]!;
  const tx = c * parts[6]! - n * parts[3]!;
  const ty = c * parts[7]! - n * parts[4]!;
  const tz = c * parts[8]! - n * parts[5]!;
  const rate2 = rate * rate;
  out[0] = x + rx;
  out[1] = y + ry;
  out[2] = z + rz;
  out[3] = rate * tx;
  out[4] = rate * ty;
  out[5] = rate * tz;
  out[6] = acceleration * tx - rate2 * rx;
  out[7] = acceleration * ty - rate2 * ry;
  out[8] = acceleration * tz - rate2 * rz;
}
