import type { CornerModel } from "./corner-model.ts";
import { OUT, suspensionForces, WORK_SIZE } from "./corner-rates.ts";
import { AT } from "./model-places.ts";

/** A whole rear axle: the left and the right corner under one body that heaves and rolls. */
export interface AxleModel {
  readonly left: CornerModel;
  readonly right: CornerModel;
  /** From the centreline to a wheel, m. */
  readonly halfTrack: number;
  /** Of the sprung mass over the axle about its middle: radius of gyration, m. */
  readonly gyration: number;
}

/** From memory, no source: radius of gyration in roll as a share of half the track. */
export const USUAL_GYRATION = 0.65;

/** Places in the axle's state: heights and speeds of the body's middle (m), its roll (rad, left side up positive), and each wheel. */
export const AXLE = {
  body: 0,
  bodySpeed: 1,
  roll: 2,
  rollSpeed: 3,
  leftWheel: 4,
  leftWheelSpeed: 5,
  rightWheel: 6,
  rightWheelSpeed: 7,
  leftDamperWork: 8,
  leftTyreWork: 9,
  rightDamperWork: 10,
  rightTyreWork: 11,
} as const;
export const AXLE_SIZE = 12;

/** Ground under one wheel now: height and rate, and whether the tyre is on it. */
export interface Ground {
  readonly height: number;
  readonly rate: number;
  readonly isDown: boolean;
}

/**
 * Rates of the axle's state. Body: mass the two corners' sprung masses, m·Y″ = F_l + F_r − m·g, m·k²·φ″ = a·(F_l − F_r), a half
 * of the track; small roll angles, forces at the wheels upright, each suspension moved by its own wheel against its own end
 * of the body. Left out: pitch, the front axle, anti-roll bars, side forces and the roll centre they act through.
 */
export function axleRates(
  { left, right, halfTrack, gyration }: AxleModel,
  y: Float64Array,
  ground: { readonly left: Ground; readonly right: Ground },
  rates: Float64Array,
  outs: { readonly left: Float64Array; readonly right: Float64Array },
): void {
  const mass = left.sprungMass + right.sprungMass;
  const lift = halfTrack * y[AXLE.roll]!;
  const liftSpeed = halfTrack * y[AXLE.rollSpeed]!;
  side(left, y, AXLE.leftWheel, lift, liftSpeed, ground.left, AXLE.leftDamperWork, rates, outs.left);
  side(right, y, AXLE.rightWheel, -lift, -liftSpeed, ground.right, AXLE.rightDamperWork, rates, outs.right);
  const up = outs.left[OUT.atWheel]!;
  const other = outs.right[OUT.atWheel]!;
  const g = left.constants[AT.gravity]!;
  const heave = (up + other) / mass - g;
  const roll = (halfTrack * (up - other)) / (mass * gyration * gyration);
  rates[AXLE.body] = y[AXLE.bodySpeed]!;
  rates[AXLE.bodySpeed] = heave;
  rates[AXLE.roll] = y[AXLE.rollSpeed]!;
  rates[AXLE.rollSpeed] = roll;
  outs.left[OUT.body] = heave + halfTrack * roll;
  outs.right[OUT.body] = heave - halfTrack * roll;
}

function side(
  { constants: P, unsprungMass, tyreRate, tyreDamping }: CornerModel,
  y: Float64Array,
  wheelAt: number,
  lift: number,
  liftSpeed: number,
  { height, rate, isDown }: Ground,
  workAt: number,
  rates: Float64Array,
  out: Float64Array,
): void {
  const wheel = y[wheelAt]!;
  const wheelSpeed = y[wheelAt + 1]!;
  suspensionForces(P, wheel - y[AXLE.body]! - lift, wheelSpeed - y[AXLE.bodySpeed]! - liftSpeed, out);
  const pressed = height - wheel;
  const pressing = rate - wheelSpeed;
  const isPressed = isDown && pressed > 0;
  const tyre = isPressed ? Math.max(0, tyreRate * pressed + tyreDamping * pressing) : 0;
  out[OUT.tyreForce] = tyre;
  out[OUT.tyrePower] = isPressed ? (tyre - tyreRate * pressed) * pressing - tyre * rate : 0;
  const acceleration = (tyre - out[OUT.atWheel]!) / unsprungMass - P[AT.gravity]!;
  out[OUT.wheel] = acceleration;
  rates[wheelAt] = wheelSpeed;
  rates[wheelAt + 1] = acceleration;
  rates[workAt] = out[OUT.damperPower]!;
  rates[workAt + 1] = out[OUT.tyrePower]!;
}

export const axleOuts = () => ({ left: new Float64Array(WORK_SIZE), right: new Float64Array(WORK_SIZE) });
