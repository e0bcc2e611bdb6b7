import type { Mount } from "../car/car.ts";
import { carriedPoint, carryMotion } from "../cycle/carried.ts";
import { type Corner, solveAt } from "../cycle/corner.ts";
import { type Vec3, vec } from "../geometry/vec3.ts";

/** A line between two mounts at one travel: a strap or a bump stop. Vehicle axes, the body standing still. */
export interface LineMotion {
  readonly travel: number;
  /** From mount to mount, m. */
  readonly length: number;
  /** −dL/dz: shortening by wheel travel, at this position; negative where it lengthens in bump. */
  readonly ratio: number;
  /** Between the line and the second mount's path as seen from the first, rad, 0…π/2: 0 is straight along the path. */
  readonly offPath: number;
  /** Where the two mounts are, m. */
  readonly from: Vec3;
  readonly to: Vec3;
  /** Of the second mount's path as the wheel rises, unit vector. */
  readonly path: Vec3;
}

/** Null outside the linkage's range. */
export function lineMotionAt(corner: Corner, from: Mount, to: Mount, travel: number): LineMotion | null {
  const solved = solveAt(corner, travel);
  if (!solved) return null;
  const a = new Float64Array(9);
  const b = new Float64Array(9);
  carryMotion(carriedPoint(from, corner.arms, corner.wheelCentre), solved.state, a);
  carryMotion(carriedPoint(to, corner.arms, corner.wheelCentre), solved.state, b);
  const [dx, dy, dz, vx, vy, vz] = [0, 1, 2, 3, 4, 5].map((i) => b[i]! - a[i]!) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const length = Math.hypot(dx, dy, dz);
  const speed = Math.hypot(vx, vy, vz);
  const rate = (dx * vx + dy * vy + dz * vz) / length;
  return {
    travel,
    length,
    ratio: -rate,
    offPath: speed > 0 ? Math.acos(Math.min(1, Math.abs(rate) / speed)) : Math.PI / 2,
    from: vec(a[0]!, a[1]!, a[2]!),
    to: vec(b[0]!, b[1]!, b[2]!),
    path: speed > 0 ? vec(vx / speed, vy / speed, vz / speed) : vec(0, 0, 1),
  };
}

/** Distance of a mount from the line that its arm turns about, m; null where it rides on no arm. */
export function leverOf({ arms }: Corner, { point, on }: Mount): number | null {
  const arm = arms.find(({ body }) => body === on);
  if (!arm) return null;
  const [x, y, z] = [point.x - arm.point.x, point.y - arm.point.y, point.z - arm.point.z];
  const along = x * arm.axis.x + y * arm.axis.y + z * arm.axis.z;
  return Math.sqrt(Math.max(0, x * x + y * y + z * z - along * along));
}
