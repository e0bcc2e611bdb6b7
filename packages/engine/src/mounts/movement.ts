import type { ArmId } from "../car/car.ts";
import { CARRIER, type Carried, carriedDirection, carriedPoint, carryMotion } from "../cycle/carried.ts";
import type { Corner } from "../cycle/corner.ts";
import { stations } from "../cycle/cycle.ts";
import { FORWARD, length, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import { AT, designState, type MotionState } from "../linkage/motion-state.ts";
import type { LowerPoint } from "./grid.ts";
import type { MountRequest } from "./request.ts";

/** The wheel at evenly spaced travels from full droop to full bump, ride height moved onto one of them. */
export interface Movement {
  readonly travels: Float64Array;
  readonly states: readonly MotionState[];
  readonly ride: number;
  /** Widest travel from one station to the next, m. */
  readonly widest: number;
}

/** Throws RangeError where ride height is not between the stops, or the linkage does not reach them. */
export function movementOf(corner: Corner, droop: number, bump: number, count: number): Movement {
  if (!(droop < 0 && bump > 0)) throw new RangeError("full droop lies below ride height, full bump above it");
  const travels = stations(droop, bump, Math.max(5, count));
  let ride = 1;
  for (let k = 1; k < travels.length - 1; k += 1) if (Math.abs(travels[k]!) < Math.abs(travels[ride]!)) ride = k;
  travels[ride] = 0;
  const state = designState();
  const states: MotionState[] = new Array(travels.length);
  const solve = (k: number): void => {
    if (corner.mechanism.solve(travels[k]!, state) < 0)
      throw new RangeError(`the linkage does not reach a travel of ${travels[k]} m`);
    states[k] = Float64Array.from(state);
  };
  for (let k = ride; k < travels.length; k += 1) solve(k);
  state.set(states[ride]!);
  for (let k = ride - 1; k >= 0; k -= 1) solve(k);
  let widest = 0;
  for (let k = 1; k < travels.length; k += 1) widest = Math.max(widest, travels[k]! - travels[k - 1]!);
  return { travels, states, ride, widest };
}

/** The way of one lower mount, and what the tests need of it. */
export interface LowerPath {
  readonly on: ArmId | "spindle";
  /** Positions, three numbers a station, m. */
  readonly at: Float64Array;
  /** Way made up to each station, m. */
  readonly way: Float64Array;
  /** Velocity (m/m) at full droop, ride height, full bump; and the lower eye's bolt there. Three numbers each. */
  readonly velocity: Float64Array;
  readonly bolt: Float64Array;
  readonly upperBolt: Vec3;
  /** The lower eye's bolt at every station; null where both bolts lie along the arm's hinge: eyes then tilt most at an end. */
  readonly bolts: Float64Array | null;
  /** At full bump, from the hinge line square out to the mount, unit; null on the spindle, where the path is taken. */
  readonly square: Vec3 | null;
  /** True where lengths at the ends are the extremes as soon as the motion ratio is above zero at both: an arm. */
  readonly isExact: boolean;
  /** Greatest speed and acceleration at the stations. */
  readonly fastest: number;
  readonly sharpest: number;
  /** Fastest that the body turns at droop, ride and bump, rad/m: what an error of the mount does to its velocity. */
  readonly turning: readonly number[];
  /** Angle between the body's places at full droop and at full bump, rad. */
  readonly swing: number;
}

const motion = new Float64Array(9);

/** `boltsAs`: directions in the design position where they are not along the hinge. */
export function lowerPath(
  corner: Corner,
  movement: Movement,
  { point, on }: LowerPoint,
  boltsAs: NonNullable<MountRequest["bolts"]> = {},
): LowerPath {
  const { states, ride } = movement;
  const count = states.length;
  const arm = on === "spindle" ? -1 : corner.arms.findIndex(({ body }) => body === on);
  const hinge = corner.arms[arm]?.axis ?? FORWARD;
  const mount = carriedPoint({ point, on }, corner.arms, corner.wheelCentre);
  const bolt = carriedDirection(boltsAs.lower ?? hinge, on, corner.arms);
  const bolts = arm >= 0 && !boltsAs.lower && !boltsAs.upper ? null : new Float64Array(3 * count);
  const at = new Float64Array(3 * count);
  const way = new Float64Array(count);
  const ends = [0, ride, count - 1];
  const velocity = new Float64Array(9);
  const boltAtEnds = new Float64Array(9);
  let fastest = 0;
  let sharpest = 0;
  for (let k = 0; k < count; k += 1) {
    carryMotion(mount, states[k]!, motion);
    at.set(motion.subarray(0, 3), 3 * k);
    fastest = Math.max(fastest, Math.hypot(motion[3]!, motion[4]!, motion[5]!));
    sharpest = Math.max(sharpest, Math.hypot(motion[6]!, motion[7]!, motion[8]!));
    if (k > 0)
      way[k] =
        way[k - 1]! +
        Math.hypot(at[3 * k]! - at[3 * k - 3]!, at[3 * k + 1]! - at[3 * k - 2]!, at[3 * k + 2]! - at[3 * k - 1]!);
    bolts?.set(directionNow(bolt, states[k]!), 3 * k);
    const end = ends.indexOf(k);
    if (end < 0) continue;
    velocity.set(motion.subarray(3, 6), 3 * end);
    boltAtEnds.set(directionNow(bolt, states[k]!), 3 * end);
  }
  return {
    on,
    at,
    way,
    velocity,
    bolt: boltAtEnds,
    upperBolt: boltsAs.upper ?? hinge,
    bolts,
    square: arm < 0 ? null : squareOut(mount, at, count),
    isExact: arm >= 0 && turnsOneWay(states, arm),
    fastest,
    sharpest,
    turning: ends.map((k) => turning(states[k]!, arm)),
    swing: swingBetween(states[0]!, states[count - 1]!, arm),
  };
}

/** A direction carried along: a point without the origin. */
function directionNow(direction: Carried, s: MotionState): Float64Array {
  if (direction.carrier !== CARRIER.spindle) {
    carryMotion(direction, s, direction9);
    return direction9.subarray(0, 3);
  }
  const [x, y, z] = [direction.parts[0]!, direction.parts[1]!, direction.parts[2]!];
  const r = AT.rotation;
  for (let i = 0; i < 3; i += 1) direction9[i] = s[r + 3 * i]! * x + s[r + 3 * i + 1]! * y + s[r + 3 * i + 2]! * z;
  return direction9.subarray(0, 3);
}

const direction9 = new Float64Array(9);

function squareOut(mount: Carried, at: Float64Array, count: number): Vec3 | null {
  const k = 3 * (count - 1);
  const out = subtract(vec(at[k]!, at[k + 1]!, at[k + 2]!), vec(mount.parts[0]!, mount.parts[1]!, mount.parts[2]!));
  const size = length(out);
  return size > 0 ? vec(out.x / size, out.y / size, out.z / size) : null;
}

const armPlace = (arm: number): number => (arm === 0 ? AT.firstArm : AT.secondArm);

/** The arm's angle only rises with travel, over less than half a turn. */
function turnsOneWay(states: readonly MotionState[], arm: number): boolean {
  const angle = armPlace(arm) + 2;
  const rises = states.every(
    (state, k) => state[angle + 1]! > 0 && (k === 0 || state[angle]! > states[k - 1]![angle]!),
  );
  return rises && states[states.length - 1]![angle]! - states[0]![angle]! < Math.PI;
}

function turning(s: MotionState, arm: number): number {
  if (arm >= 0) return Math.abs(s[armPlace(arm) + 3]!);
  return Math.hypot(s[AT.spin]!, s[AT.spin + 1]!, s[AT.spin + 2]!);
}

function swingBetween(a: MotionState, b: MotionState, arm: number): number {
  if (arm >= 0) return Math.abs(b[armPlace(arm) + 2]! - a[armPlace(arm) + 2]!);
  let trace = 0;
  for (let i = 0; i < 9; i += 1) trace += a[AT.rotation + i]! * b[AT.rotation + i]!;
  return Math.acos(Math.min(1, Math.max(-1, 0.5 * (trace - 1))));
}
