import type { BumpStop } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import type { DirectionReport, LimitReport } from "../limits/travel-report.ts";
import type { SpringStudy } from "../springs/spring-study.ts";
import { shockPlaceAt, wheelSpringAt } from "../springs/wheel-spring.ts";
import { STANDARD_GRAVITY } from "../units/convert.ts";
import type { StopsWish } from "./assumptions.ts";
import { type BumpStopLaw, bumpStopAt, lawSpread, SOLID_RATE } from "./bump-stop-law.ts";
import { lawOf } from "./law-of.ts";
import { type LineMotion, leverOf, lineMotionAt } from "./line-motion.ts";
import { runDown } from "./run-down.ts";
import { dampingOf } from "./study-strap.ts";

/** All that is known of a bump stop. */
export interface BumpStopStudy {
  readonly stop: BumpStop;
  readonly law: BumpStopLaw;
  readonly gapAtRide: number;
  /** First touched, and squeezed solid; null where the wheel does not come to it. */
  readonly touched: LineMotion | null;
  readonly solid: LineMotion | null;
  /** Where it lands from the line that its arm turns about, m; null where that is no arm. */
  readonly lever: number | null;
  readonly hardLimit: LimitReport | null;
  /** Wheel travel from solid to the first hard limit, m; negative where the limit comes first. */
  readonly margin: number | null;
  /** Shaft left in the shock with the stop solid, m; null without a shock. */
  readonly shaftLeft: number | null;
  /** Energy that the stop takes until solid, J, and its push then, N; with the softest and the stiffest law. */
  readonly takes: { readonly energy: number; readonly soft: number; readonly stiff: number };
  readonly push: { readonly touched: number; readonly solid: number; readonly soft: number; readonly stiff: number };
  /** Null where weights or springs are not known or it is never touched. */
  readonly drop: DropOnStop | null;
  /** Holes to move the collar toward the arm (positive) or away from it; null without holes or no need. */
  readonly holes: number | null;
}

/** A flat drop, as it comes to the stop. */
export interface DropOnStop {
  /** Speed of the fall, m/s, and of the wheel against the body as the stop is touched. */
  readonly speed: number;
  readonly speedAtTouch: number;
  /** J, as it is touched. */
  readonly arrives: number;
  /** Where the wheel comes to rest against the body, m; the solid travel where it still moves there. */
  readonly travel: number;
  /** J left to be taken hard, at the solid stop; 0 where it takes all. */
  readonly left: number;
  /** Push of the stop at the deepest, N; beyond solid where it comes to that. */
  readonly force: number;
  /** Of the stop at the wheel: push × its ratio, N. */
  readonly atWheel: number;
  /** Highest flat drop that it takes without going solid, m. */
  readonly mostHeight: number;
}

export function studyBumpStop(
  corner: Corner,
  bump: DirectionReport,
  springs: SpringStudy | null,
  wish: StopsWish,
): BumpStopStudy | null {
  const { bumpStop: stop, shock } = corner.car;
  const line = (travel: number): LineMotion | null =>
    stop ? lineMotionAt(corner, stop.base, stop.strikes, travel) : null;
  const atRide = line(0);
  if (!stop || !atRide) return null;
  const met = (code: LimitReport["code"]): LineMotion | null => {
    const limit = bump.limits.find((each) => each.code === code);
    return limit ? line(limit.travel) : null;
  };
  const touched = met("bump-stop-touched");
  const solid = met("bump-stop-solid");
  const law = lawOf(stop);
  const { soft, stiff } = lawSpread(law);
  const full = (one: BumpStopLaw) => bumpStopAt(one, one.stroke);
  const hardLimit = bump.first;
  const margin = solid && hardLimit ? hardLimit.travel - solid.travel : null;
  const place = solid && shockPlaceAt(corner, solid.travel);
  return {
    stop,
    law,
    gapAtRide: atRide.length - stop.reach,
    touched,
    solid,
    lever: leverOf(corner, stop.strikes),
    hardLimit,
    margin,
    shaftLeft: shock && place ? place.shockLength - shock.shortest : null,
    takes: { energy: full(law).energy, soft: full(soft).energy, stiff: full(stiff).energy },
    push: {
      touched: bumpStopAt(law, 1e-9).force,
      solid: full(law).force,
      soft: full(soft).force,
      stiff: full(stiff).force,
    },
    drop: touched && springs && dropOn(corner, stop, touched, solid, springs, wish),
    holes:
      stop.holeSpacing === undefined || margin === null || !solid
        ? null
        : Math.ceil(((wish.marginBump - margin) * Math.abs(solid.ratio)) / stop.holeSpacing - 1e-9) + 0,
  };
}

/**
 * The car falls flat with its wheels hanging at the droop stop; the sprung weight then runs down onto springs, dampers and
 * stop: K' = m·g − F_springs − F_stop·MR_stop − c·v along the travel. Tyre and wheel weight are left out.
 */
function dropOn(
  corner: Corner,
  stop: BumpStop,
  touched: LineMotion,
  solid: LineMotion | null,
  springs: SpringStudy,
  wish: StopsWish,
): DropOnStop {
  const mass = springs.sprungMass;
  const { droop } = springs.stops;
  const law = lawOf(stop);
  const damping = dampingOf(springs, wish.dampingBump);
  const pace = { pace: "fast", restedAt: springs.rest.state.shockLength } as const;
  const forces = new Map<number, number>();
  const force = (travel: number): number => {
    const known = forces.get(travel);
    if (known !== undefined) return known;
    const place = shockPlaceAt(corner, travel);
    const line = lineMotionAt(corner, stop.base, stop.strikes, travel);
    const up = place ? wheelSpringAt(springs.shockSpring, place, pace).wheelForce : 0;
    const push = line ? bumpStopAt(law, Math.min(law.stroke, stop.reach - line.length)).force * line.ratio : 0;
    const made = mass * STANDARD_GRAVITY - up - push;
    forces.set(travel, made);
    return made;
  };
  const end = solid?.travel ?? corner.mechanism.range.bump.travel * (1 - 1e-6);
  const fall = (height: number) => {
    const start = { from: droop, to: touched.travel, energy: mass * STANDARD_GRAVITY * height, mass, damping, force };
    const first = runDown(start);
    const rest = first.left > 0 ? runDown({ ...start, from: touched.travel, to: end, energy: first.left }) : first;
    return { arrives: first.left, travel: rest.travel, left: rest.left };
  };
  const { arrives, travel, left } = fall(wish.dropHeight);
  const line = lineMotionAt(corner, stop.base, stop.strikes, travel);
  const squeeze = line ? Math.max(0, stop.reach - line.length) : 0;
  const solidPush = bumpStopAt(law, law.stroke).force;
  // What is left is taken by steel and brackets, as stiff at the wheel as seen through the stop's ratio.
  const ratio = Math.abs(line?.ratio ?? 0);
  const deepest = left > 0 ? Math.sqrt(solidPush ** 2 + 2 * SOLID_RATE * left) : bumpStopAt(law, squeeze).force;
  return {
    speed: Math.sqrt(2 * STANDARD_GRAVITY * wish.dropHeight),
    speedAtTouch: Math.sqrt((2 * arrives) / mass),
    arrives,
    travel,
    left,
    force: deepest,
    atWheel: deepest * ratio,
    mostHeight: mostHeight((height) => fall(height).left > 0),
  };
}

const HIGHEST = 4;

function mostHeight(goesSolid: (height: number) => boolean): number {
  let low = 0;
  let high = HIGHEST;
  if (!goesSolid(high)) return high;
  if (goesSolid(0)) return 0;
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (goesSolid(middle)) high = middle;
    else low = middle;
  }
  return low;
}
