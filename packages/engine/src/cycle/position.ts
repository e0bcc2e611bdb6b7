import type { BodyId } from "../car/car.ts";
import {
  DESIGN_POSE,
  type Pose,
  placeDirection,
  placePoint,
  type Rotation,
  rotate,
  turnAbout,
} from "../geometry/pose.ts";
import { subtract, type Vec3, vec } from "../geometry/vec3.ts";
import type { Member, MemberEnd } from "../linkage/kind.ts";
import { AT, type MotionState } from "../linkage/motion-state.ts";
import type { Corner } from "./corner.ts";

/** Where every body is at one travel, for drawing, clearances and readings. */
export interface Position {
  readonly travel: number;
  readonly wheelCentre: Vec3;
  /** Unit vector, outboard. */
  readonly spinAxis: Vec3;
  readonly poses: Partial<Record<BodyId, Pose>>;
}

/** Reads a solved state as poses of the bodies. */
export function positionOf(corner: Corner, state: MotionState): Position {
  const rotation = Array.from(state.subarray(AT.rotation, AT.rotation + 9)) as unknown as Rotation;
  const centre = vec(state[AT.wheelCentre]!, state[AT.wheelCentre + 1]!, state[AT.wheelCentre + 2]!);
  const spindle: Pose = { rotation, translation: subtract(centre, rotate(rotation, corner.wheelCentre)) };
  const poses: Partial<Record<BodyId, Pose>> = { chassis: DESIGN_POSE, spindle };
  corner.arms.forEach((arm, index) => {
    const offset = index === 0 ? AT.firstArm : AT.secondArm;
    poses[arm.body] = turnAbout(arm.point, arm.axis, state[offset + 2]!);
  });
  return {
    travel: state[AT.travel]!,
    wheelCentre: centre,
    spinAxis: placeDirection(spindle, corner.spinAxis),
    poses,
  };
}

/** Pose of a body that the car is known to have. */
export function poseOf(position: Position, body: BodyId): Pose {
  const pose = position.poses[body];
  if (!pose) throw new Error(`bug in armwright: no ${body} in this linkage`);
  return pose;
}

/** Where a point of a body is now. */
export const placeOn = (position: Position, point: Vec3, on: BodyId): Vec3 => placePoint(poseOf(position, on), point);

/** Where a member's two ends are now. */
export const placeMember = (position: Position, member: Member): readonly [Vec3, Vec3] => {
  const end = (e: MemberEnd): Vec3 => placeOn(position, e.point, e.on);
  return [end(member.from), end(member.to)];
};

/**
 * How well the position closes, m: the largest gap between what two bodies that share a pivot say of its place, and the
 * largest change of a link's length. Zero but for rounding.
 */
export function closureResidual(corner: Corner, position: Position): number {
  let worst = 0;
  for (const pivot of corner.pivots) {
    if (pivot.shank.body === "link") continue;
    const gap = subtract(
      placeOn(position, pivot.point, pivot.shank.body),
      placeOn(position, pivot.point, pivot.boltSide),
    );
    worst = Math.max(worst, Math.hypot(gap.x, gap.y, gap.z));
  }
  for (const member of corner.members) {
    if (member.body !== "link") continue;
    const [a, b] = placeMember(position, member);
    const now = subtract(b, a);
    const given = subtract(member.to.point, member.from.point);
    worst = Math.max(worst, Math.abs(Math.hypot(now.x, now.y, now.z) - Math.hypot(given.x, given.y, given.z)));
  }
  return worst;
}
