import type { Car } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { ArmAxis } from "../linkage/kind.ts";
import type { MotionState } from "../linkage/motion-state.ts";
import { type MountPoint, mountMotion, mountPoint } from "./mount-point.ts";
import { ROW } from "./row.ts";

/** Strap, bump stop and underbody: what they need in the hot loop. */
export interface TravelStops {
  readonly strap?: { readonly upper: MountPoint; readonly lower: MountPoint; readonly length: number };
  readonly bumpStop?: {
    readonly base: MountPoint;
    readonly strikes: MountPoint;
    readonly reach: number;
    readonly solid: number;
  };
  /** Height of the underbody's lowest point in the design position, m. */
  readonly lowest?: number;
}

export function travelStops(car: Car, arms: readonly ArmAxis[], wheelCentre: Vec3): TravelStops {
  const at = (mount: Parameters<typeof mountPoint>[0]) => mountPoint(mount, arms, wheelCentre);
  const { strap, bumpStop, underbody } = car;
  return {
    ...(strap && { strap: { upper: at(strap.upper), lower: at(strap.lower), length: strap.length } }),
    ...(bumpStop && {
      bumpStop: {
        base: at(bumpStop.base),
        strikes: at(bumpStop.strikes),
        reach: bumpStop.reach,
        solid: bumpStop.solid,
      },
    }),
    ...(underbody.length > 0 && { lowest: Math.min(...underbody.map(({ point }) => point.z)) }),
  };
}

const scratch = new Float64Array(18);

/**
 * Strap slack, gap at the bump stop, what is left of it until it is solid, and the underbody's clearance to a level ground
 * under both wheels, the body level; all m, negative once past. Needs the contact point already written.
 */
export function writeTravelStops(stops: TravelStops, s: MotionState, row: Float64Array): void {
  const { strap, bumpStop, lowest } = stops;
  if (strap) row[ROW.strapSlack] = strap.length - apart(strap.upper, strap.lower, s);
  if (bumpStop) {
    const gap = apart(bumpStop.base, bumpStop.strikes, s);
    row[ROW.bumpStopGap] = gap - bumpStop.reach;
    row[ROW.bumpStopLeft] = gap - bumpStop.solid;
  }
  if (lowest !== undefined) row[ROW.groundClearance] = lowest - row[ROW.contactZ]!;
}

function apart(a: MountPoint, b: MountPoint, s: MotionState): number {
  mountMotion(a, s, scratch, 0);
  mountMotion(b, s, scratch, 9);
  const dx = scratch[0]! - scratch[9]!;
  const dy = scratch[1]! - scratch[10]!;
  const dz = scratch[2]! - scratch[11]!;
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}
