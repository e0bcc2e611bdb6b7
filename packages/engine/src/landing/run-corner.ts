import { IN, OUT, OUT_SIZE, WORK_SIZE, writeRates } from "./corner-rates.ts";
import { type Road, roadAt } from "./road.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const O = OUT;
const I = IN;

/** Places in a step of a path: then come the places of OUT. */
export const STEP = {
  time: 0,
  body: 1,
  bodySpeed: 2,
  wheel: 3,
  wheelSpeed: 4,
  /** Turned into heat by the damper so far, J. */
  damperWork: 5,
  /** By the tyre, less what a moving road put in, J. */
  tyreWork: 6,
  out: 7,
} as const;
export const STEP_SIZE = STEP.out + OUT_SIZE;

export interface CornerStart {
  readonly body: number;
  readonly bodySpeed: number;
  readonly wheel: number;
  readonly wheelSpeed: number;
}

export interface PathEnd {
  /** Steps in the path, the start with them. */
  readonly steps: number;
  readonly rejected: number;
  readonly touchdowns: number;
  /** False where the path was too short to hold it all. */
  readonly isWhole: boolean;
}

export interface StepRules {
  /** Error of a height in one step, m; of a speed a hundred times as much, m/s. */
  readonly error: number;
  /** s */
  readonly longest: number;
}

export const USUAL_STEPS: StepRules = { error: 1e-8, longest: 2e-3 };
const SPEED_ERROR = 100;
const FIRST_STEP = 1e-4;
/** A touchdown is found when the tyre is pressed in by no more than this, m. */
const TOUCHED = 1e-12;
const MOST_TRIES = 40;
/** Up to this error a step may grow fivefold: (0.9 ÷ 5)⁵. */
const EASY = 0.18 ** 5;
/** Below this a step is not made shorter, s. */
const LEAST_STEP = 1e-13;

/**
 * Moves one corner through time: Dormand and Prince's embedded Runge-Kutta pair of order 5(4) (J. Comp. Appl. Math. 6, 1980)
 * with step control, all in local scalars. In the air it goes on without the tyre, and steps exactly up to each touchdown,
 * where the tyre's damping makes the force jump. No closure holds a number that changes: each change would cost an allocation. `path` takes one step after another, see STEP.
 */
export function runCorner(
  P: Float64Array,
  road: Road | null,
  start: CornerStart,
  until: number,
  { error, longest }: StepRules,
  path: Float64Array,
): PathEnd {
  const out = new Float64Array(WORK_SIZE);
  const ground = new Float64Array(2);
  const room = Math.floor(path.length / STEP_SIZE);
  const byHeight = 1 / error;
  const bySpeed = byHeight / SPEED_ERROR;
  let isDown = false;
  const rates = (): void => {
    if (road) {
      roadAt(road, out[I.time]!, ground);
      out[I.road] = ground[0]!;
      out[I.roadRate] = ground[1]!;
    }
    writeRates(P, out, isDown);
  };
  let time = 0;
  let body = start.body;
  let bodySpeed = start.bodySpeed;
  let wheel = start.wheel;
  let wheelSpeed = start.wheelSpeed;
  let damperWork = 0;
  let tyreWork = 0;
  let steps = 0;
  let rejected = 0;
  let touchdowns = 0;
  if (road) roadAt(road, 0, ground);
  isDown = ground[0]! - wheel > 0;
  out[I.body] = body;
  out[I.bodySpeed] = bodySpeed;
  out[I.wheel] = wheel;
  out[I.wheelSpeed] = wheelSpeed;
  out[I.time] = 0;
  rates();
  path[STEP.body] = body;
  path[STEP.bodySpeed] = bodySpeed;
  path[STEP.wheel] = wheel;
  path[STEP.wheelSpeed] = wheelSpeed;
  for (let i = 0; i < OUT_SIZE; i += 1) path[STEP.out + i] = out[i]!;
  steps = 1;
  let a1 = out[O.body]!;
  let b1 = out[O.wheel]!;
  let p1 = out[O.damperPower]!;
  let q1 = out[O.tyrePower]!;
  let next = FIRST_STEP;
  let tries = 0;
  while (time < until) {
    if (steps >= room) return { steps, rejected, touchdowns, isWhole: false };
    let h = next;
    if (h > longest) h = longest;
    if (time + h > until) h = until - time;
    const v1 = bodySpeed;
    const u1 = wheelSpeed;
    const v2 = bodySpeed + h * ((1 / 5) * a1);
    const u2 = wheelSpeed + h * ((1 / 5) * b1);
    const y2 = body + h * ((1 / 5) * v1);
    const w2 = wheel + h * ((1 / 5) * u1);
    out[I.body] = y2;
    out[I.bodySpeed] = v2;
    out[I.wheel] = w2;
    out[I.wheelSpeed] = u2;
    out[I.time] = time + (1 / 5) * h;
    rates();
    const a2 = out[O.body]!;
    const b2 = out[O.wheel]!;
    const v3 = bodySpeed + h * ((3 / 40) * a1 + (9 / 40) * a2);
    const u3 = wheelSpeed + h * ((3 / 40) * b1 + (9 / 40) * b2);
    const y3 = body + h * ((3 / 40) * v1 + (9 / 40) * v2);
    const w3 = wheel + h * ((3 / 40) * u1 + (9 / 40) * u2);
    out[I.body] = y3;
    out[I.bodySpeed] = v3;
    out[I.wheel] = w3;
    out[I.wheelSpeed] = u3;
    out[I.time] = time + (3 / 10) * h;
    rates();
    const a3 = out[O.body]!;
    const b3 = out[O.wheel]!;
    const p3 = out[O.damperPower]!;
    const q3 = out[O.tyrePower]!;
    const v4 = bodySpeed + h * ((44 / 45) * a1 - (56 / 15) * a2 + (32 / 9) * a3);
    const u4 = wheelSpeed + h * ((44 / 45) * b1 - (56 / 15) * b2 + (32 / 9) * b3);
    const y4 = body + h * ((44 / 45) * v1 - (56 / 15) * v2 + (32 / 9) * v3);
    const w4 = wheel + h * ((44 / 45) * u1 - (56 / 15) * u2 + (32 / 9) * u3);
    out[I.body] = y4;
    out[I.bodySpeed] = v4;
    out[I.wheel] = w4;
    out[I.wheelSpeed] = u4;
    out[I.time] = time + (4 / 5) * h;
    rates();
    const a4 = out[O.body]!;
    const b4 = out[O.wheel]!;
    const p4 = out[O.damperPower]!;
    const q4 = out[O.tyrePower]!;
    const v5 = bodySpeed + h * ((19372 / 6561) * a1 - (25360 / 2187) * a2 + (64448 / 6561) * a3 - (212 / 729) * a4);
    const u5 = wheelSpeed + h * ((19372 / 6561) * b1 - (25360 / 2187) * b2 + (64448 / 6561) * b3 - (212 / 729) * b4);
    const y5 = body + h * ((19372 / 6561) * v1 - (25360 / 2187) * v2 + (64448 / 6561) * v3 - (212 / 729) * v4);
    const w5 = wheel + h * ((19372 / 6561) * u1 - (25360 / 2187) * u2 + (64448 / 6561) * u3 - (212 / 729) * u4);
    out[I.body] = y5;
    out[I.bodySpeed] = v5;
    out[I.wheel] = w5;
    out[I.wheelSpeed] = u5;
    out[I.time] = time + (8 / 9) * h;
    rates();
    const a5 = out[O.body]!;
    const b5 = out[O.wheel]!;
    const p5 = out[O.damperPower]!;
    const q5 = out[O.tyrePower]!;
    const v6 =
      bodySpeed +
      h * ((9017 / 3168) * a1 - (355 / 33) * a2 + (46732 / 5247) * a3 + (49 / 176) * a4 - (5103 / 18656) * a5);
    const u6 =
      wheelSpeed +
      h * ((9017 / 3168) * b1 - (355 / 33) * b2 + (46732 / 5247) * b3 + (49 / 176) * b4 - (5103 / 18656) * b5);
    const y6 =
      body + h * ((9017 / 3168) * v1 - (355 / 33) * v2 + (46732 / 5247) * v3 + (49 / 176) * v4 - (5103 / 18656) * v5);
    const w6 =
      wheel + h * ((9017 / 3168) * u1 - (355 / 33) * u2 + (46732 / 5247) * u3 + (49 / 176) * u4 - (5103 / 18656) * u5);
    out[I.body] = y6;
    out[I.bodySpeed] = v6;
    out[I.wheel] = w6;
    out[I.wheelSpeed] = u6;
    out[I.time] = time + h;
    rates();
    const a6 = out[O.body]!;
    const b6 = out[O.wheel]!;
    const p6 = out[O.damperPower]!;
    const q6 = out[O.tyrePower]!;
    const v7 =
      bodySpeed + h * ((35 / 384) * a1 + (500 / 1113) * a3 + (125 / 192) * a4 - (2187 / 6784) * a5 + (11 / 84) * a6);
    const u7 =
      wheelSpeed + h * ((35 / 384) * b1 + (500 / 1113) * b3 + (125 / 192) * b4 - (2187 / 6784) * b5 + (11 / 84) * b6);
    const y7 =
      body + h * ((35 / 384) * v1 + (500 / 1113) * v3 + (125 / 192) * v4 - (2187 / 6784) * v5 + (11 / 84) * v6);
    const w7 =
      wheel + h * ((35 / 384) * u1 + (500 / 1113) * u3 + (125 / 192) * u4 - (2187 / 6784) * u5 + (11 / 84) * u6);
    out[I.body] = y7;
    out[I.bodySpeed] = v7;
    out[I.wheel] = w7;
    out[I.wheelSpeed] = u7;
    out[I.time] = time + h;
    rates();
    const a7 = out[O.body]!;
    const b7 = out[O.wheel]!;
    const p7 = out[O.damperPower]!;
    const q7 = out[O.tyrePower]!;
    const offBody =
      h *
      ((71 / 57600) * v1 -
        (71 / 16695) * v3 +
        (71 / 1920) * v4 -
        (17253 / 339200) * v5 +
        (22 / 525) * v6 -
        (1 / 40) * v7) *
      byHeight;
    const offWheel =
      h *
      ((71 / 57600) * u1 -
        (71 / 16695) * u3 +
        (71 / 1920) * u4 -
        (17253 / 339200) * u5 +
        (22 / 525) * u6 -
        (1 / 40) * u7) *
      byHeight;
    const offBodySpeed =
      h *
      ((71 / 57600) * a1 -
        (71 / 16695) * a3 +
        (71 / 1920) * a4 -
        (17253 / 339200) * a5 +
        (22 / 525) * a6 -
        (1 / 40) * a7) *
      bySpeed;
    const offWheelSpeed =
      h *
      ((71 / 57600) * b1 -
        (71 / 16695) * b3 +
        (71 / 1920) * b4 -
        (17253 / 339200) * b5 +
        (22 / 525) * b6 -
        (1 / 40) * b7) *
      bySpeed;
    const off = Math.sqrt(
      (offBody * offBody + offWheel * offWheel + offBodySpeed * offBodySpeed + offWheelSpeed * offWheelSpeed) / 4,
    );
    // A power is dear, and most steps are far from needing one.
    const change = off > EASY ? Math.max(0.2, 0.9 * off ** -0.2) : 5;
    if (off > 1 && h > LEAST_STEP) {
      rejected += 1;
      next = h * Math.min(1, change);
      continue;
    }
    const pressed = ground[0]! - w7;
    if (!isDown && pressed > TOUCHED && tries < MOST_TRIES) {
      // Past the touch: back to where a straight line, then ever shorter ones, meet it.
      const before = touchGap(road, time, wheel, ground);
      tries += 1;
      next = (h * (before + TOUCHED / 2)) / (before + pressed);
      // So near that the step has no room left: this is it.
      if (next > LEAST_STEP) continue;
    }
    time += h;
    body = y7;
    bodySpeed = v7;
    wheel = w7;
    wheelSpeed = u7;
    damperWork += h * ((35 / 384) * p1 + (500 / 1113) * p3 + (125 / 192) * p4 - (2187 / 6784) * p5 + (11 / 84) * p6);
    tyreWork += h * ((35 / 384) * q1 + (500 / 1113) * q3 + (125 / 192) * q4 - (2187 / 6784) * q5 + (11 / 84) * q6);
    next = h * change;
    tries = 0;
    if (isDown !== pressed > 0) {
      if (!isDown) touchdowns += 1;
      isDown = !isDown;
      // From here on the other way: what follows begins anew.
      out[I.body] = body;
      out[I.bodySpeed] = bodySpeed;
      out[I.wheel] = wheel;
      out[I.wheelSpeed] = wheelSpeed;
      out[I.time] = time;
      rates();
      a1 = out[O.body]!;
      b1 = out[O.wheel]!;
      p1 = out[O.damperPower]!;
      q1 = out[O.tyrePower]!;
      next = FIRST_STEP;
    } else {
      a1 = a7;
      b1 = b7;
      p1 = p7;
      q1 = q7;
    }
    const at = steps * STEP_SIZE;
    path[at] = time;
    path[at + 1] = body;
    path[at + 2] = bodySpeed;
    path[at + 3] = wheel;
    path[at + 4] = wheelSpeed;
    path[at + 5] = damperWork;
    path[at + 6] = tyreWork;
    for (let i = 0; i < OUT_SIZE; i += 1) path[at + 7 + i] = out[i]!;
    steps += 1;
  }
  return { steps, rejected, touchdowns, isWhole: true };
}

/** How far the tyre is above the ground, m. */
function touchGap(road: Road | null, time: number, wheel: number, ground: Float64Array): number {
  if (road) roadAt(road, time, ground);
  return wheel - ground[0]!;
}
