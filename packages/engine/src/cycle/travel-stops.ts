import type { Car } from "../car/car.ts";
import type { Gathering } from "./carried-list.ts";
import { ROW as ROW_PLACES } from "./row.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const ROW = ROW_PLACES;

/** Strap, bump stop and underbody: what they need in the hot loop. Points are places in the list of what is carried. */
export interface TravelStops {
  readonly strap?: { readonly upper: number; readonly lower: number; readonly length: number };
  readonly bumpStop?: {
    readonly base: number;
    readonly strikes: number;
    readonly reach: number;
    readonly solid: number;
  };
  /** Height of the underbody's lowest point in the design position, m. */
  readonly lowest?: number;
}

export function travelStops(car: Car, gathering: Gathering): TravelStops {
  const { strap, bumpStop, underbody } = car;
  return {
    ...(strap && {
      strap: { upper: gathering.point(strap.upper), lower: gathering.point(strap.lower), length: strap.length },
    }),
    ...(bumpStop && {
      bumpStop: {
        base: gathering.point(bumpStop.base),
        strikes: gathering.point(bumpStop.strikes),
        reach: bumpStop.reach,
        solid: bumpStop.solid,
      },
    }),
    ...(underbody.length > 0 && { lowest: Math.min(...underbody.map(({ point }) => point.z)) }),
  };
}

/**
 * Strap slack, gap at the bump stop, what is left of it until it is solid, and the underbody's clearance to a level ground
 * under both wheels, the body level; all m, negative once past. `now`: see CarriedList. Needs the contact point already
 * written.
 */
export function writeTravelStops(stops: TravelStops, now: Float64Array, row: Float64Array): void {
  const { strap, bumpStop, lowest } = stops;
  if (strap) row[ROW.strapSlack] = strap.length - apart(strap.upper, strap.lower, now);
  if (bumpStop) {
    const gap = apart(bumpStop.base, bumpStop.strikes, now);
    row[ROW.bumpStopGap] = gap - bumpStop.reach;
    row[ROW.bumpStopLeft] = gap - bumpStop.solid;
  }
  if (lowest !== undefined) row[ROW.groundClearance] = lowest - row[ROW.contactZ]!;
}

function apart(a: number, b: number, now: Float64Array): number {
  const dx = now[a]! - now[b]!;
  const dy = now[a + 1]! - now[b + 1]!;
  const dz = now[a + 2]! - now[b + 2]!;
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}
