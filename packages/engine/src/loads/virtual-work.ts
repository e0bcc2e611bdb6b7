import { type Corner, solveAt } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { ROW } from "../cycle/row.ts";
import { dot, vec } from "../geometry/vec3.ts";
import { AT } from "../linkage/motion-state.ts";
import { spindleAction } from "./spindle-action.ts";
import type { WheelLoad } from "./wheel-load.ts";

/** Work that a load on the wheel does for each metre of wheel travel, N: what springs and stops hold back at the wheel. */
export interface WorkAtWheel {
  /** N, up positive. */
  readonly perTravel: number;
  /** Shock shortening ÷ travel; null without a shock. */
  readonly motionRatio: number | null;
  /** Shock force that holds it alone, N; null where the shock does not move. */
  readonly shockForce: number | null;
}

/**
 * By virtual work, apart from any joint force: F·v + M·ω of what the wheel hands to the spindle, by the velocities of the
 * linkage. A second route to `balance`, and all that a landing needs of it. Null outside the linkage's range.
 */
export function workAtWheel(corner: Corner, travel: number, load: WheelLoad): WorkAtWheel | null {
  const solved = solveAt(corner, travel);
  if (!solved) return null;
  const { state, row } = solved;
  const { onSpindle } = spindleAction(corner, positionOf(corner, state), load);
  const velocity = vec(state[AT.velocity]!, state[AT.velocity + 1]!, state[AT.velocity + 2]!);
  const spin = vec(state[AT.spin]!, state[AT.spin + 1]!, state[AT.spin + 2]!);
  const perTravel = dot(onSpindle.force, velocity) + dot(onSpindle.moment, spin);
  const motionRatio = corner.shock ? row[ROW.motionRatio]! : null;
  return { perTravel, motionRatio, shockForce: motionRatio ? perTravel / motionRatio : null };
}
