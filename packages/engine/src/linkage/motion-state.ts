/**
 * Where the corner's moving bodies are at one travel, with first and second derivative by travel (per metre of
 * wheel-centre height). One flat array, because it is written and read in the hottest loop; the rest of the engine sees
 * it through `cycle/position.ts`. Vehicle axes, metres, radians.
 *
 * A state also seeds the next solve: a solver starts from what it finds here.
 */
export type MotionState = Float64Array;

/** Offsets into a MotionState. */
export const AT = {
  /** Wheel-centre height less its height in the design position, m. */
  travel: 0,
  /** Spindle's rotation from the design position, 9 numbers row by row. */
  rotation: 1,
  /** Wheel centre, m. */
  wheelCentre: 10,
  /** Spindle's angular velocity, rad per m of travel. */
  spin: 13,
  /** Velocity of the wheel centre, m per m; its z is 1. */
  velocity: 16,
  /** Derivative of `spin`, rad per m². */
  spinRate: 19,
  /** Derivative of `velocity`, per m; its z is 0. */
  acceleration: 22,
  /** First arm: cosine, sine of its angle from the design position, angle (rad), first and second derivative. */
  firstArm: 25,
  /** Second arm, likewise. */
  secondArm: 30,
  /** Spindle's rotation as a unit quaternion w, x, y, z, where a solver keeps it so. */
  quaternion: 35,
} as const;

export const STATE_SIZE = 39;

/** A state in the design position, from which any solver can set out. */
export function designState(): MotionState {
  const state = new Float64Array(STATE_SIZE);
  state[AT.rotation] = 1;
  state[AT.rotation + 4] = 1;
  state[AT.rotation + 8] = 1;
  state[AT.firstArm] = 1;
  state[AT.secondArm] = 1;
  state[AT.quaternion] = 1;
  return state;
}
