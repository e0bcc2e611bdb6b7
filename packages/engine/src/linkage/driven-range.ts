import type { RangeCause, RangeEnd, TravelRange } from "./kind.ts";

/** A linkage that is driven by one arm's angle, looked at in one position. */
export interface DrivenPosition {
  /** Wheel-centre height less that of the design position, m. */
  readonly travel: number;
  /** d travel / d angle, m/rad. */
  readonly slope: number;
  /** How far the closures are from falling into line; 0 at a toggle, negative where the linkage does not close. */
  readonly margin: number;
}

export interface DrivenRange extends TravelRange {
  /** Arm angles of the two ends, rad; droopAngle < bumpAngle. */
  readonly droopAngle: number;
  readonly bumpAngle: number;
}

/** Step of the search outward, rad. Margin and slope are smooth over degrees, so that none can dip and return inside it. */
const STEP = Math.PI / 720;

/**
 * Searches outward from the design position, by the driving angle, for the first place on either side where the linkage
 * binds or toggles, and closes in on it to the last bit of the angle. `at` may be asked for any angle.
 */
export function findDrivenRange(at: (angle: number) => DrivenPosition): DrivenRange {
  const bump = searchOutward(at, STEP);
  const droop = searchOutward(at, -STEP);
  return { bump: bump.end, droop: droop.end, bumpAngle: bump.angle, droopAngle: droop.angle };
}

function searchOutward(at: (angle: number) => DrivenPosition, step: number): { end: RangeEnd; angle: number } {
  let inside = 0;
  let outside = step;
  const limit = Math.PI;
  while (Math.abs(outside) < limit && isOpen(at(outside))) {
    inside = outside;
    outside += step;
  }
  for (let i = 0; i < 60; i += 1) {
    const middle = 0.5 * (inside + outside);
    if (isOpen(at(middle))) inside = middle;
    else outside = middle;
  }
  const beyond = at(outside);
  const cause: RangeCause = beyond.margin > 0 ? "bind" : "toggle";
  return { end: { travel: at(inside).travel, cause }, angle: inside };
}

const isOpen = (position: DrivenPosition): boolean => position.margin > 0 && position.slope > 0;
