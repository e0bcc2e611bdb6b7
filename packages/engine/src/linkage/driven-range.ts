import type { RangeEnd, TravelRange } from "./kind.ts";

/** A linkage that is driven by one arm's angle, looked at in one position on one branch of its closures. */
export interface DrivenPosition {
  /** Wheel-centre height less that of the design position, m. */
  readonly travel: number;
  /** d travel / d angle, m/rad. */
  readonly slope: number;
  /** How far each closure is from falling into line: 0 at a toggle, negative where it does not close. */
  readonly margins: readonly number[];
}

/** For each closure, whether it is taken as in the design position (1) or the other way round (−1). */
export type Branches = readonly (1 | -1)[];

/** A stretch of the motion along which the driving angle goes one way. */
export interface DrivenStretch {
  readonly branches: Branches;
  /** Driving angle at the lower and the higher end of the travel, rad. */
  readonly lowAngle: number;
  readonly highAngle: number;
  /** m */
  readonly lowTravel: number;
  readonly highTravel: number;
}

export interface DrivenRange {
  readonly range: TravelRange;
  /** In order of travel, without gaps. */
  readonly stretches: readonly DrivenStretch[];
}

/** Step of the search outward, rad. Margins and slope are smooth over degrees, so that none can dip and return inside it. */
const STEP = Math.PI / 360;
const MOST_STRETCHES = 6;

/**
 * Follows the motion outward from the design position to where the wheel's height turns back, on either side. Where a
 * closure falls into line on the way (a toggle), the driving arm turns back while the wheel goes on: the motion continues
 * on the closure's other branch.
 */
export function findDrivenRange(
  at: (angle: number, branches: Branches) => DrivenPosition,
  closures: number,
): DrivenRange {
  const bump = followOutward(at, closures, 1);
  const droop = followOutward(at, closures, -1);
  const [firstUp, ...laterUp] = bump.stretches;
  const [firstDown, ...laterDown] = droop.stretches;
  // The design position lies inside one stretch.
  const middle: DrivenStretch = {
    branches: firstUp!.branches,
    lowAngle: firstDown!.lowAngle,
    lowTravel: firstDown!.lowTravel,
    highAngle: firstUp!.highAngle,
    highTravel: firstUp!.highTravel,
  };
  return {
    range: { bump: bump.end, droop: droop.end },
    stretches: [...laterDown.reverse(), middle, ...laterUp],
  };
}

interface Followed {
  readonly end: RangeEnd;
  readonly stretches: DrivenStretch[];
}

function followOutward(
  at: (angle: number, branches: Branches) => DrivenPosition,
  closures: number,
  outward: 1 | -1,
): Followed {
  const stretches: DrivenStretch[] = [];
  const toggles: number[] = [];
  let branches: Branches = Array.from({ length: closures }, () => 1 as const);
  let way: 1 | -1 = outward;
  let start = 0;
  let startTravel = 0;
  for (;;) {
    const along = branches;
    const turning = way;
    const isOpen = (angle: number): boolean => {
      const position = at(angle, along);
      return position.margins.every((margin) => margin > 0) && position.slope * turning * outward > 0;
    };
    let inside = start;
    let outside = start + turning * STEP;
    while (Math.abs(outside) < Math.PI && isOpen(outside)) {
      inside = outside;
      outside += turning * STEP;
    }
    for (let i = 0; i < 60; i += 1) {
      const middle = 0.5 * (inside + outside);
      if (isOpen(middle)) inside = middle;
      else outside = middle;
    }
    const endTravel = inside === start ? startTravel : at(inside, along).travel;
    const [lowAngle, highAngle] = outward > 0 ? [start, inside] : [inside, start];
    const [lowTravel, highTravel] = outward > 0 ? [startTravel, endTravel] : [endTravel, startTravel];
    stretches.push({ branches: along, lowAngle, highAngle, lowTravel, highTravel });
    const closed = at(outside, along).margins.findIndex((margin) => !(margin > 0));
    if (closed < 0 || stretches.length >= MOST_STRETCHES || inside === start) {
      return { end: { travel: endTravel, toggles }, stretches };
    }
    toggles.push(endTravel);
    branches = along.map((branch, index) => (index === closed ? (-branch as 1 | -1) : branch));
    way = -turning as 1 | -1;
    start = inside;
    startTravel = endTravel;
  }
}

/** The stretch that a travel lies in; null outside the range. */
export function stretchAt(stretches: readonly DrivenStretch[], travel: number): DrivenStretch | null {
  for (const stretch of stretches) {
    if (travel >= stretch.lowTravel && travel <= stretch.highTravel) return stretch;
  }
  return null;
}
