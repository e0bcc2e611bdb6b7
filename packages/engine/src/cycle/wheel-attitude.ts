import type { Car } from "../car/car.ts";
import { spinAxisOf, wheelCentreOf } from "../car/wheel-centre.ts";
import { addScaled, type Vec3, vec } from "../geometry/vec3.ts";
import { type MotionState, AT as STATE_PLACES } from "../linkage/motion-state.ts";
import { ROW as ROW_PLACES } from "./row.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;
const ROW = ROW_PLACES;

/** What the wheel's attitude needs of the car. */
export interface WheelAttitude {
  readonly axis: Vec3;
  readonly loadedRadius: number;
  readonly designContact: Vec3;
  /** Wheelbase ÷ height of the centre of gravity, and that times the rear wheels' share of the braking. */
  readonly driveLever: number;
  readonly brakeLever: number;
}

export function wheelAttitude(car: Car): WheelAttitude {
  const axis = spinAxisOf(car.wheel);
  const lever = car.chassis.wheelbase / car.chassis.centreOfGravityHeight;
  return {
    axis,
    loadedRadius: car.wheel.loadedRadius,
    designContact: lowestPoint(wheelCentreOf(car.wheel), axis, car.wheel.loadedRadius),
    driveLever: lever,
    brakeLever: lever * car.chassis.rearBrakeShare,
  };
}

/** Lowest point of a disc of the given radius in the wheel plane, m. */
export function lowestPoint(centre: Vec3, axis: Vec3, radius: number): Vec3 {
  const level = Math.sqrt(axis.x * axis.x + axis.y * axis.y);
  const down = vec(axis.x * axis.z, axis.y * axis.z, -(level * level));
  return addScaled(centre, down, radius / level);
}

/**
 * Camber, toe and their gains, contact point, roll centre, side view, anti-squat and anti-lift of one position.
 * Roll centre: the front-view line of the contact point's motion, carried by the spindle with the wheel locked to it,
 * met square at the centre plane (ISO 8855 axes; kinematic roll centre as Milliken and Milliken, Race Car Vehicle Dynamics,
 * ch. 17, from memory; equals the planar double wishbone construction). Anti-squat and anti-lift by virtual work: a force F forward at the wheel (drive torque reacted
 * on the body, so it acts at the wheel centre; brake torque reacted on the spindle, so it acts at the contact point)
 * pushes the wheel by −F·dx/dz, against the load transfer F·h/L: anti = −(dx/dz)·L/h, times the rear share of braking.
 */
export function writeWheelAttitude(w: WheelAttitude, s: MotionState, row: Float64Array): void {
  const { x: a, y: b, z: c } = w.axis;
  const sx = s[AT.rotation]! * a + s[AT.rotation + 1]! * b + s[AT.rotation + 2]! * c;
  const sy = s[AT.rotation + 3]! * a + s[AT.rotation + 4]! * b + s[AT.rotation + 5]! * c;
  const sz = s[AT.rotation + 6]! * a + s[AT.rotation + 7]! * b + s[AT.rotation + 8]! * c;
  const px = s[AT.spin]!;
  const py = s[AT.spin + 1]!;
  const pz = s[AT.spin + 2]!;
  const level2 = sx * sx + sy * sy;
  const level = Math.sqrt(level2);
  // The axis moves with s′ = ω × s.
  const dx = py * sz - pz * sy;
  const dy = pz * sx - px * sz;
  const dz = px * sy - py * sx;
  row[ROW.camber] = -Math.atan(sz / level);
  row[ROW.toe] = Math.atan2(sx, sy);
  row[ROW.camberGain] = -dz / level;
  row[ROW.toeGain] = (dx * sy - dy * sx) / level2;
  const wx = s[AT.wheelCentre]!;
  const wy = s[AT.wheelCentre + 1]!;
  const wz = s[AT.wheelCentre + 2]!;
  const k = w.loadedRadius / level;
  const rx = k * sx * sz;
  const ry = k * sy * sz;
  const rz = -k * level2;
  const cx = wx + rx;
  const cy = wy + ry;
  const cz = wz + rz;
  row[ROW.wheelX] = wx;
  row[ROW.wheelY] = wy;
  row[ROW.wheelZ] = wz;
  row[ROW.contactX] = cx;
  row[ROW.contactY] = cy;
  row[ROW.contactZ] = cz;
  row[ROW.halfTrackChange] = cy - w.designContact.y;
  // The rear wheel farther back makes the wheelbase longer.
  row[ROW.wheelbaseChange] = w.designContact.x - cx;
  const vx = s[AT.velocity]! + py * rz - pz * ry;
  const vy = s[AT.velocity + 1]! + pz * rx - px * rz;
  const vz = s[AT.velocity + 2]! + px * ry - py * rx;
  row[ROW.contactVelocityX] = vx;
  row[ROW.contactVelocityY] = vy;
  row[ROW.contactVelocityZ] = vz;
  row[ROW.frontViewTurn] = px;
  row[ROW.sideViewTurn] = py;
  row[ROW.rollCentreHeight] = (cy * vy) / vz;
  row[ROW.sideSwingAngle] = Math.atan2(-vx, vz);
  row[ROW.antiSquat] = (-s[AT.velocity]! / s[AT.velocity + 2]!) * w.driveLever;
  row[ROW.antiLift] = (-vx / vz) * w.brakeLever;
}
