import { solveLinear } from "../geometry/solve-linear.ts";
import { cross, dot, type Vec3, vec } from "../geometry/vec3.ts";
import type { FiveLinkConstants } from "./five-link-constants.ts";
import { CLOSE_ENOUGH, STEP, type StepEnd, stepFiveLink } from "./five-link-step.ts";
import { type MotionState, AT as STATE_PLACES, STATE_SIZE } from "./motion-state.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/** Newton's method that needs more than this has left the neighbourhood that the prediction was meant for. */
export const FEW_ITERATIONS = 6;
/** Farther than this from a known position, m, a prediction is not trusted. */
const TRUSTED_STEP = 0.025;

/** A state's prediction is trusted where its derivatives change little on the way: not near where the height turns back. */
export function isTrusted(s: MotionState, travel: number): boolean {
  const h = travel - s[AT.travel]!;
  if (!(h <= TRUSTED_STEP && h >= -TRUSTED_STEP) || s[AT.velocity + 2] !== 1) return false;
  const ux = s[AT.spin]!;
  const uy = s[AT.spin + 1]!;
  const uz = s[AT.spin + 2]!;
  const ax = s[AT.spinRate]!;
  const ay = s[AT.spinRate + 1]!;
  const az = s[AT.spinRate + 2]!;
  return h * h * (ax * ax + ay * ay + az * az) < 0.06 * (1 + ux * ux + uy * uy + uz * uz);
}

const MOST_ITERATIONS = 40;

const iterate = new Float64Array(STATE_SIZE);
const found = new Float64Array(15);

/**
 * Flat kernel: Newton's method from a second-order prediction out of `from`. Leaves position and derivatives by travel in
 * `into`, which may be `from`. Gives the iterations, or −1 where they would be more than `most`, `into` then untouched.
 */
export function solveFiveLink(
  five: FiveLinkConstants,
  travel: number,
  from: MotionState,
  into: MotionState,
  most: number = MOST_ITERATIONS,
): number {
  const s = iterate;
  const h = travel - from[AT.travel]!;
  const hh = 0.5 * h * h;
  s[AT.wheelCentre] = from[AT.wheelCentre]! + h * from[AT.velocity]! + hh * from[AT.acceleration]!;
  s[AT.wheelCentre + 1] = from[AT.wheelCentre + 1]! + h * from[AT.velocity + 1]! + hh * from[AT.acceleration + 1]!;
  s[AT.wheelCentre + 2] = five.wheelCentre.z + travel;
  for (let i = AT.quaternion; i < AT.quaternion + 4; i += 1) s[i] = from[i]!;
  found[2] = h * from[AT.spin]! + hh * from[AT.spinRate]!;
  found[3] = h * from[AT.spin + 1]! + hh * from[AT.spinRate + 1]!;
  found[4] = h * from[AT.spin + 2]! + hh * from[AT.spinRate + 2]!;
  turn(s, found);
  let iteration = 0;
  let end: StepEnd = STEP.far;
  while (end !== STEP.close) {
    iteration += 1;
    end = stepFiveLink(five, s, found);
    if (end === STEP.singular) end = stepWithExchange(five, s, found);
    if (end === STEP.singular || (end === STEP.far && iteration >= most)) return -1;
    s[AT.wheelCentre] = s[AT.wheelCentre]! + found[0]!;
    s[AT.wheelCentre + 1] = s[AT.wheelCentre + 1]! + found[1]!;
    turn(s, found);
  }
  into[AT.travel] = travel;
  for (let i = AT.rotation; i < AT.wheelCentre + 3; i += 1) into[i] = s[i]!;
  for (let i = AT.quaternion; i < AT.quaternion + 4; i += 1) into[i] = s[i]!;
  into[AT.velocity] = found[5]!;
  into[AT.velocity + 1] = found[6]!;
  into[AT.velocity + 2] = 1;
  into[AT.spin] = found[7]!;
  into[AT.spin + 1] = found[8]!;
  into[AT.spin + 2] = found[9]!;
  into[AT.acceleration] = found[10]!;
  into[AT.acceleration + 1] = found[11]!;
  into[AT.acceleration + 2] = 0;
  into[AT.spinRate] = found[12]!;
  into[AT.spinRate + 1] = found[13]!;
  into[AT.spinRate + 2] = found[14]!;
  return iteration;
}

/** What one link says of a position. */
export interface LinkRow {
  /** From the wheel centre to the spindle end, and from the chassis end to the spindle end, m. */
  readonly reach: Vec3;
  readonly along: Vec3;
  /** Half the change of the length squared, (|along|² − L²)/2, m², and its gradient by the spindle's rotation. */
  readonly miss: number;
  readonly turning: Vec3;
}

/** The five links at a wheel centre (m) and the state's rotation, in the constants' order. */
export function linkRows(five: FiveLinkConstants, s: MotionState, x: number, y: number, z: number): readonly LinkRow[] {
  const { inner, arm, halfSquare } = five;
  return Array.from(halfSquare, (square, i) => {
    const [bx, by, bz] = [arm[3 * i]!, arm[3 * i + 1]!, arm[3 * i + 2]!];
    const turned = (row: number): number => s[row]! * bx + s[row + 1]! * by + s[row + 2]! * bz;
    const reach = vec(turned(AT.rotation), turned(AT.rotation + 3), turned(AT.rotation + 6));
    const along = vec(x + reach.x - inner[3 * i]!, y + reach.y - inner[3 * i + 1]!, z + reach.z - inner[3 * i + 2]!);
    // along·(ω × reach) = ω·(reach × along)
    return { reach, along, miss: 0.5 * dot(along, along) - square, turning: cross(reach, along) };
  });
}

/** Does what `stepFiveLink` does, but slower and with rows exchanged, for the rare position where that is needed. */
function stepWithExchange(five: FiveLinkConstants, s: MotionState, out: Float64Array): StepEnd {
  const rows = linkRows(five, s, s[AT.wheelCentre]!, s[AT.wheelCentre + 1]!, s[AT.wheelCentre + 2]!);
  const matrix = rows.map(({ along, turning }) => [along.x, along.y, turning.x, turning.y, turning.z]);
  const solve = (right: (row: LinkRow) => number) => solveLinear(matrix, rows.map(right));
  const step = solve(({ miss }) => -miss);
  const rate = solve(({ along }) => -along.z);
  if (!step || !rate) return STEP.singular;
  const spin = vec(rate[2]!, rate[3]!, rate[4]!);
  const curve = solve(({ reach, along }) => {
    const swing = cross(spin, reach);
    const velocity = vec(rate[0]! + swing.x, rate[1]! + swing.y, 1 + swing.z);
    return -(dot(velocity, velocity) + dot(along, cross(spin, swing)));
  });
  if (!curve) return STEP.singular;
  out.set([...step, ...rate, ...curve]);
  return rows.every(({ miss }) => Math.abs(miss) < CLOSE_ENOUGH) ? STEP.close : STEP.far;
}

/** Turns the spindle farther by the rotation vector (rad) at places 2 to 4 of a step, keeping a unit quaternion so that no error of shape builds up. */
export function turn(s: MotionState, step: ArrayLike<number>): void {
  const vx = step[2]!;
  const vy = step[3]!;
  const vz = step[4]!;
  const half = 0.5 * Math.sqrt(vx * vx + vy * vy + vz * vz);
  // sin(half)/(2 half), by its series where it is flat.
  const k = half > 1e-4 ? (0.5 * Math.sin(half)) / half : 0.5 * (1 - (half * half) / 6);
  const a = Math.cos(half);
  const b = vx * k;
  const c = vy * k;
  const d = vz * k;
  const q0 = s[AT.quaternion]!;
  const q1 = s[AT.quaternion + 1]!;
  const q2 = s[AT.quaternion + 2]!;
  const q3 = s[AT.quaternion + 3]!;
  let w = a * q0 - b * q1 - c * q2 - d * q3;
  let i = a * q1 + b * q0 + c * q3 - d * q2;
  let j = a * q2 - b * q3 + c * q0 + d * q1;
  let n = a * q3 + b * q2 - c * q1 + d * q0;
  const per = 1 / Math.sqrt(w * w + i * i + j * j + n * n);
  w *= per;
  i *= per;
  j *= per;
  n *= per;
  s[AT.quaternion] = w;
  s[AT.quaternion + 1] = i;
  s[AT.quaternion + 2] = j;
  s[AT.quaternion + 3] = n;
  s[AT.rotation] = 1 - 2 * (j * j + n * n);
  s[AT.rotation + 1] = 2 * (i * j - w * n);
  s[AT.rotation + 2] = 2 * (i * n + w * j);
  s[AT.rotation + 3] = 2 * (i * j + w * n);
  s[AT.rotation + 4] = 1 - 2 * (i * i + n * n);
  s[AT.rotation + 5] = 2 * (j * n - w * i);
  s[AT.rotation + 6] = 2 * (i * n - w * j);
  s[AT.rotation + 7] = 2 * (j * n + w * i);
  s[AT.rotation + 8] = 1 - 2 * (i * i + j * j);
}
