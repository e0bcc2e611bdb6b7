import type { Mechanism, RangeEnd, TravelRange } from "./kind.ts";

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
    const look = (angle: number): DrivenPosition => at(angle, along);
    const isOpen = ({ margins, slope }: DrivenPosition): boolean =>
      margins.every((margin) => margin > 0) && slope * turning * outward > 0;
    const close = (angle: number, travel: number): void => {
      const [lowAngle, highAngle] = outward > 0 ? [start, angle] : [angle, start];
      const [lowTravel, highTravel] = outward > 0 ? [startTravel, travel] : [travel, startTravel];
      stretches.push({ branches: along, lowAngle, highAngle, lowTravel, highTravel });
      start = angle;
      startTravel = travel;
    };
    const walk = walkToEnd(look, isOpen, start, turning);
    toggles.push(...walk.inLine.map((angle) => look(angle).travel));
    if (walk.touch) {
      // Both closures meet in one point, as in a parallelogram laid flat: the motion goes straight on, over to the other.
      const { angle, closure } = walk.touch;
      const before = look(angle - turning * BESIDE).travel;
      const flipped = flip(along, closure);
      const after = at(angle + turning * BESIDE, flipped).travel;
      const travel = 0.5 * (before + after);
      close(angle, travel);
      toggles.push(travel);
      branches = flipped;
    } else {
      const { inside, outside } = halve((angle) => isOpen(look(angle)), walk.inside, walk.outside);
      const isStuck = inside === start;
      const travel = isStuck ? startTravel : look(inside).travel;
      close(inside, travel);
      const closure = look(outside).margins.findIndex((margin) => !(margin > 0));
      if (closure < 0 || isStuck) return { end: { travel, toggles }, stretches };
      toggles.push(travel);
      branches = flip(along, closure);
      way = -turning as 1 | -1;
    }
    if (stretches.length >= MOST_STRETCHES) return { end: { travel: startTravel, toggles }, stretches };
  }
}

interface WalkEnd {
  /** Last angle where the linkage is open and the first where it is not. */
  readonly inside: number;
  readonly outside: number;
  /** Angles on the way at which a closure comes close to falling into line, but does not. */
  readonly inLine: readonly number[];
  /** Where a closure's margin touches zero and opens again. */
  readonly touch?: { readonly angle: number; readonly closure: number };
}

/** A margin (sine squared of the angle between the two members) below this is nearly in line: half a degree. */
const NEARLY_IN_LINE = 1e-4;
/** A margin below this is zero but for rounding. */
const IN_LINE = 1e-12;
/** A margin that dips below this between two steps is looked at closer. */
const DIPS = 0.02;
/** Beside a touch by this, rad, the closure can be told from its twin again. */
const BESIDE = 1e-7;

function walkToEnd(
  look: (angle: number) => DrivenPosition,
  isOpen: (position: DrivenPosition) => boolean,
  start: number,
  turning: 1 | -1,
): WalkEnd {
  const inLine: number[] = [];
  let inside = start;
  let outside = start + turning * STEP;
  let before: readonly number[] = [];
  let here: readonly number[] = [];
  while (Math.abs(outside) < Math.PI) {
    const position = look(outside);
    const closes = position.margins.every((margin) => margin > 0);
    for (const [closure, margin] of here.entries()) {
      // Where another closure does not close, this one's margin says nothing.
      const dips = closes && margin < DIPS && before[closure]! > margin && position.margins[closure]! > margin;
      if (!dips) continue;
      const angle = lowest((a) => look(a).margins[closure]!, inside - turning * STEP, outside);
      const least = look(angle).margins[closure]!;
      if (least < -IN_LINE) {
        // It does not close for a moment, between two steps at which it does: the range ends there.
        const isPast = (inside - angle) * turning > 0;
        return { inside: isPast ? inside - turning * STEP : inside, outside: angle, inLine };
      }
      if (least < IN_LINE) return { inside, outside, inLine, touch: { angle, closure } };
      if (least < NEARLY_IN_LINE) inLine.push(angle);
    }
    if (!isOpen(position)) break;
    before = here;
    here = position.margins;
    inside = outside;
    outside += turning * STEP;
  }
  return { inside, outside, inLine };
}

/** Golden section for the lowest value between two angles. */
function lowest(value: (angle: number) => number, from: number, to: number): number {
  let a = from;
  let b = to;
  for (let i = 0; i < 60; i += 1) {
    const p = a + (b - a) * 0.381966;
    const q = a + (b - a) * 0.618034;
    if (value(p) < value(q)) b = q;
    else a = p;
  }
  return 0.5 * (a + b);
}

function halve(isOpen: (angle: number) => boolean, open: number, shut: number): { inside: number; outside: number } {
  let inside = open;
  let outside = shut;
  for (let i = 0; i < 60; i += 1) {
    const middle = 0.5 * (inside + outside);
    if (isOpen(middle)) inside = middle;
    else outside = middle;
  }
  return { inside, outside };
}

const flip = (branches: Branches, closure: number): Branches =>
  branches.map((branch, index) => (index === closure ? (-branch as 1 | -1) : branch));

/** The stretch that a travel lies in; null outside the range. */
export function stretchAt(stretches: readonly DrivenStretch[], travel: number): DrivenStretch | null {
  for (const stretch of stretches) {
    if (travel >= stretch.lowTravel && travel <= stretch.highTravel) return stretch;
  }
  return null;
}

/** Within this of the end of a stretch, m, a linkage that is a hair off may have its own end. */
const WELL_INSIDE = 0.02;

/**
 * A linkage's range, found when it is first needed. One that is a hair off another (`like`) moves within that one's
 * stretches as long as it stays well inside them, and does without its own.
 */
export function drivenRange(
  find: () => DrivenRange,
  like: Mechanism | undefined,
): { readonly own: () => DrivenRange; readonly stretchAt: (travel: number) => DrivenStretch | null } {
  let found: DrivenRange | undefined;
  const own = (): DrivenRange => {
    found ??= find();
    return found;
  };
  const theirs = (like?.stretches ?? []).filter(
    ({ lowTravel, highTravel }) => highTravel - lowTravel > 2 * WELL_INSIDE,
  );
  const isWellInside = (travel: number, { lowTravel, highTravel }: DrivenStretch): boolean =>
    travel > lowTravel + WELL_INSIDE && travel < highTravel - WELL_INSIDE;
  return {
    own,
    stretchAt: (travel) => {
      for (const stretch of theirs) if (isWellInside(travel, stretch)) return stretch;
      return stretchAt(own().stretches, travel);
    },
  };
}
