import type { BodyId, Shock } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { distance, dot, length, squareTo, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { Member } from "../linkage/kind.ts";
import { AT, type MotionState } from "../linkage/motion-state.ts";

/** Bound of how fast any point of a part moves in a state, m per m of travel. */
export type Fastest = (state: MotionState) => number;

export const STILL: Fastest = () => 0;

export const sum =
  (a: Fastest, b: Fastest): Fastest =>
  (state) =>
    a(state) + b(state);

/** The tyre: its centre's speed, and its farthest point turned with the spindle. */
export function tyreSpeed({ car }: Corner): Fastest {
  const reach = Math.hypot(car.wheel.freeRadius, car.wheel.sectionWidth / 2);
  return (s) => speedOf(s, AT.velocity) + speedOf(s, AT.spin) * reach;
}

/** A point of a body: exact for arms, the triangle's bound for the spindle. */
export function pointSpeed(corner: Corner, point: Vec3, on: BodyId): Fastest {
  if (on === "chassis") return STILL;
  const index = corner.arms.findIndex(({ body }) => body === on);
  const arm = corner.arms[index];
  if (!arm) {
    const reach = distance(point, corner.wheelCentre);
    return (s) => speedOf(s, AT.velocity) + speedOf(s, AT.spin) * reach;
  }
  const reach = length(squareTo(subtract(point, arm.point), arm.axis));
  const rate = (index === 0 ? AT.firstArm : AT.secondArm) + 3;
  return (s) => Math.abs(s[rate]!) * reach;
}

/** A straight part moves no faster than the faster of its two ends. */
export const memberSpeed = (corner: Corner, { from, to }: Member): Fastest =>
  faster(pointSpeed(corner, from.point, from.on), pointSpeed(corner, to.point, to.on));

export const shockSpeed = (corner: Corner, { upper, lower }: Shock): Fastest =>
  faster(pointSpeed(corner, upper.point, upper.on), pointSpeed(corner, lower.point, lower.on));

const faster =
  (a: Fastest, b: Fastest): Fastest =>
  (state) =>
    Math.max(a(state), b(state));

function speedOf(s: MotionState, at: number): number {
  const v = { x: s[at]!, y: s[at + 1]!, z: s[at + 2]! };
  return Math.sqrt(dot(v, v));
}
