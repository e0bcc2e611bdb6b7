import { addScaled, type Vec3, vec } from "../geometry/vec3.ts";
import type { Wheel } from "./car.ts";

/**
 * Spin axis, unit vector pointing outboard, from camber and toe (rad) on the left side:
 * camber = −asin(s·z), toe = atan2(s·x, s·y).
 */
export const spinAxisOf = (wheel: Wheel): Vec3 =>
  vec(
    Math.cos(wheel.camber) * Math.sin(wheel.toe),
    Math.cos(wheel.camber) * Math.cos(wheel.toe),
    -Math.sin(wheel.camber),
  );

/** Where the spin axis meets the wheel's centre plane, m: in from the hub face by the wheel's offset. */
export const wheelCentreOf = (wheel: Wheel): Vec3 => addScaled(wheel.hubFace, spinAxisOf(wheel), -wheel.offset);
