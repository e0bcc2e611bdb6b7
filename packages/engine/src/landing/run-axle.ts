import type { Corner } from "../cycle/corner.ts";
import { AXLE, AXLE_SIZE, type AxleModel, axleOuts, axleRates, type Ground } from "./axle-rates.ts";
import { OUT_SIZE } from "./corner-rates.ts";
import { tryStep } from "./dormand-prince.ts";
import { type Landing, readLanding } from "./landing.ts";
import type { Bump, Drop } from "./landing-event.ts";
import { hangingStart, restStart } from "./landing-start.ts";
import { AT } from "./model-places.ts";
import { bumpRoad, type Road, roadAt } from "./road.ts";
import { STEP, STEP_SIZE, type StepRules, USUAL_STEPS } from "./run-corner.ts";

/** Both wheels of the axle, each as a landing of its own, and how far the body rolled, rad (left side up positive). */
export interface AxleLanding {
  readonly left: Landing;
  readonly right: Landing;
  readonly roll: { readonly most: number; readonly least: number };
}

const AFTER = 2.5;
const TOUCHED = 1e-12;
const LEAST_STEP = 1e-13;
const FIRST_STEP = 1e-4;
/** Speeds may be off by a hundred times what heights may, works by what is small to any landing, J. */
const SPEED_ERROR = 100;
const WORK_ERROR = 1e-3;

/** One wheel first: the right one's ground lies lower, or the bump is under the left wheel only. */
export function runAxle(
  corners: { readonly left: Corner; readonly right: Corner },
  model: AxleModel,
  event: Drop | Bump,
  rules: StepRules = USUAL_STEPS,
): AxleLanding {
  const road = event.kind === "bump" ? bumpRoad(event.height, event.length, event.speed) : null;
  const lower = event.kind === "drop" ? (event.otherLower ?? 0) : 0;
  const rightRoad = event.kind === "bump" && !event.oneWheel ? road : null;
  const g = model.left.constants[AT.gravity]!;
  const start = (side: "left" | "right") =>
    event.kind === "drop" ? hangingStart(model[side], event.height) : restStart(model[side]);
  const left = start("left");
  const right = start("right");
  const y = new Float64Array(AXLE_SIZE);
  y[AXLE.body] = (left.body + right.body) / 2;
  y[AXLE.roll] = (left.body - right.body) / (2 * model.halfTrack);
  y[AXLE.leftWheel] = left.wheel;
  y[AXLE.rightWheel] = right.wheel;
  const until =
    AFTER +
    (event.kind === "drop"
      ? Math.sqrt((2 * (event.height + lower)) / g)
      : ((road!.heights.length - 1) * road!.step) / event.speed);
  const paths = stepThrough(model, { left: road, right: rightRoad, lower }, y, until, rules);
  const read = (side: "left" | "right", onRoad: Road | null) =>
    readLanding(corners[side], model[side], onRoad, Float64Array.from(paths[side]), paths.steps);
  return { left: withoutEnergy(read("left", road)), right: withoutEnergy(read("right", rightRoad)), roll: paths.roll };
}

/** A single corner's energy does not balance where the other one lifts the body: none is told. */
const withoutEnergy = (landing: Landing): Landing => ({
  ...landing,
  energy: { given: 0, taken: landing.energy.taken, off: null },
});

interface Grounds {
  readonly left: Road | null;
  readonly right: Road | null;
  /** The right one's ground lies so much lower, m. */
  readonly lower: number;
}

function stepThrough(model: AxleModel, grounds: Grounds, start: Float64Array, until: number, rules: StepRules) {
  const two = new Float64Array(2);
  const outs = axleOuts();
  const isDown = { left: false, right: false };
  const groundAt = (side: "left" | "right", time: number): Ground => {
    const road = grounds[side];
    two.fill(0);
    if (road) roadAt(road, time, two);
    const height = two[0]! - (side === "right" ? grounds.lower : 0);
    return { height, rate: two[1]!, isDown: isDown[side] };
  };
  const rates = (time: number, y: Float64Array, out: Float64Array): void =>
    axleRates(model, y, { left: groundAt("left", time), right: groundAt("right", time) }, out, outs);
  const errors = new Float64Array(AXLE_SIZE).fill(rules.error);
  for (const place of [AXLE.bodySpeed, AXLE.rollSpeed, AXLE.leftWheelSpeed, AXLE.rightWheelSpeed]) {
    errors[place] = rules.error * SPEED_ERROR;
  }
  errors.fill(WORK_ERROR, AXLE.leftDamperWork);
  const pressed = (side: "left" | "right", time: number, y: Float64Array): number =>
    groundAt(side, time).height - y[side === "left" ? AXLE.leftWheel : AXLE.rightWheel]!;
  const paths: { left: number[]; right: number[] } = { left: [], right: [] };
  const roll = { most: 0, least: 0 };
  let steps = 0;
  const scratch = new Float64Array(AXLE_SIZE);
  const keep = (time: number, y: Float64Array): void => {
    rates(time, y, scratch);
    const lift = model.halfTrack * y[AXLE.roll]!;
    const liftSpeed = model.halfTrack * y[AXLE.rollSpeed]!;
    keepSide(paths.left, time, y, AXLE.leftWheel, AXLE.leftDamperWork, lift, liftSpeed, outs.left);
    keepSide(paths.right, time, y, AXLE.rightWheel, AXLE.rightDamperWork, -lift, -liftSpeed, outs.right);
    roll.most = Math.max(roll.most, y[AXLE.roll]!);
    roll.least = Math.min(roll.least, y[AXLE.roll]!);
    steps += 1;
  };
  let y = start;
  let time = 0;
  let next = FIRST_STEP;
  isDown.left = pressed("left", 0, y) > 0;
  isDown.right = pressed("right", 0, y) > 0;
  keep(0, y);
  while (time < until) {
    const h = Math.min(next, rules.longest, until - time);
    const tried = tryStep(rates, time, y, h, errors);
    const change = tried.error > 0 ? Math.min(5, Math.max(0.2, 0.9 * tried.error ** -0.2)) : 5;
    if (tried.error > 1 && h > LEAST_STEP) {
      next = h * Math.min(1, change);
      continue;
    }
    const touching = (["left", "right"] as const).filter(
      (side) => !isDown[side] && pressed(side, time + h, tried.y) > TOUCHED,
    );
    const sooner = touching.map((side) => {
      const before = -pressed(side, time, y);
      return (h * (before + TOUCHED / 2)) / (before + pressed(side, time + h, tried.y));
    });
    const soonest = Math.min(...sooner);
    if (touching.length > 0 && soonest > LEAST_STEP && soonest < h) {
      next = soonest;
      continue;
    }
    time += h;
    y = tried.y;
    next = h * change;
    for (const side of ["left", "right"] as const) {
      const isNow = pressed(side, time, y) > 0;
      if (isNow !== isDown[side]) next = FIRST_STEP;
      isDown[side] = isNow;
    }
    keep(time, y);
  }
  return { ...paths, steps, roll };
}

function keepSide(
  path: number[],
  time: number,
  y: Float64Array,
  wheelAt: number,
  workAt: number,
  lift: number,
  liftSpeed: number,
  out: Float64Array,
): void {
  const step = new Float64Array(STEP_SIZE);
  step[STEP.time] = time;
  step[STEP.body] = y[AXLE.body]! + lift;
  step[STEP.bodySpeed] = y[AXLE.bodySpeed]! + liftSpeed;
  step[STEP.wheel] = y[wheelAt]!;
  step[STEP.wheelSpeed] = y[wheelAt + 1]!;
  step[STEP.damperWork] = y[workAt]!;
  step[STEP.tyreWork] = y[workAt + 1]!;
  for (let i = 0; i < OUT_SIZE; i += 1) step[STEP.out + i] = out[i]!;
  path.push(...step);
}
