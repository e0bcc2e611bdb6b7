import type { Strap } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import type { DirectionReport, LimitReport } from "../limits/travel-report.ts";
import { criticalDamping } from "../springs/damping.ts";
import type { SpringStudy } from "../springs/spring-study.ts";
import { shockPlaceAt, wheelSpringAt } from "../springs/wheel-spring.ts";
import { STANDARD_GRAVITY } from "../units/convert.ts";
import type { StopsWish } from "./assumptions.ts";
import { type LineMotion, lineMotionAt } from "./line-motion.ts";
import { runDown } from "./run-down.ts";
import { strapAt } from "./strap-stretch.ts";

/** All that is known of a strap. */
export interface StrapStudy {
  readonly strap: Strap;
  readonly atRide: LineMotion;
  readonly slackAtRide: number;
  /** Where it comes taut; null where it never does. */
  readonly taut: LineMotion | null;
  /** The first hard limit in droop; null where none is met. */
  readonly hardLimit: LimitReport | null;
  /** Wheel travel from taut to there, m; negative where the limit comes first; null where there is none. */
  readonly margin: number | null;
  /** Shaft left in the shock with the strap just taut, m; null without a shock. */
  readonly shaftLeft: number | null;
  /** Null where it never comes taut or weights and springs are not known and no speed is given. */
  readonly snatch: Snatch | null;
  /** Holes to let it out (positive) or take it in, to the hole nearest on the safe side; null without holes or no need. */
  readonly holes: number | null;
}

export interface Snatch {
  /** Of the wheel as the strap comes taut, m/s. */
  readonly speed: number;
  /** J, at that moment. */
  readonly energy: number;
  /** Greatest pull, N, stretch (m) and travel then. */
  readonly force: number;
  readonly stretch: number;
  readonly travel: number;
  /** Wheel travel left to the first hard limit then, m; negative: it is struck. */
  readonly margin: number | null;
}

export function studyStrap(
  corner: Corner,
  droop: DirectionReport,
  springs: SpringStudy | null,
  wish: StopsWish,
): StrapStudy | null {
  const { strap, shock } = corner.car;
  const atRide = strap && lineMotionAt(corner, strap.upper, strap.lower, 0);
  if (!strap || !atRide) return null;
  const tautAt = droop.limits.find(({ code }) => code === "strap");
  const taut = tautAt ? lineMotionAt(corner, strap.upper, strap.lower, tautAt.travel) : null;
  const hardLimit = droop.first;
  const margin = taut && hardLimit ? taut.travel - hardLimit.travel : null;
  const place = taut && shockPlaceAt(corner, taut.travel);
  const snatch = taut && snatchOf(corner, strap, taut, hardLimit, springs, wish);
  const spacing = strap.holeSpacing;
  const short = snatch?.margin ?? margin;
  return {
    strap,
    atRide,
    slackAtRide: strap.length - atRide.length,
    taut,
    hardLimit,
    margin,
    shaftLeft: shock && place ? shock.longest - place.shockLength : null,
    snatch,
    holes: spacing === undefined || short === null || !taut ? null : holesFor(short - wish.marginDroop, taut, spacing),
  };
}

/** Wheel travel to spare as holes of the strap: let out by whole holes that fit, taken in by as many as are needed. */
const holesFor = (spare: number, { ratio }: LineMotion, spacing: number): number =>
  Math.floor((spare * Math.abs(ratio)) / spacing + 1e-9) + 0;

/**
 * Where the search for its stretch ends: at twice the strap's length, which no webbing survives (nylon breaks at 20 to 30 %,
 * from memory); and a strap that hardly moves with the wheel is taken to move by so much of its way, so that there is an end.
 */
const LEAST_RATIO = 0.2;

/**
 * The wheel falls away from a body that stands still: from where the car sits, springs and weight drive it, dampers hold it
 * back; then the strap takes what energy it has. Springs push on while it stretches.
 */
export function snatchOf(
  corner: Corner,
  strap: Strap,
  taut: LineMotion,
  hardLimit: LimitReport | null,
  springs: SpringStudy | null,
  wish: StopsWish,
): Snatch | null {
  const mass = corner.car.chassis.unsprungMass;
  if (mass === undefined || (!springs && wish.snatchSpeed === undefined)) return null;
  const drive = (travel: number): number => mass * STANDARD_GRAVITY + springForce(corner, springs, travel);
  const damping = springs ? dampingOf(springs, wish.dampingRebound) : 0;
  const start = Math.max(springs?.rest.travel ?? 0, taut.travel);
  const run = { from: start, to: taut.travel, energy: 0, mass, damping, force: drive };
  const energy = wish.snatchSpeed === undefined ? runDown(run).left : (mass * wish.snatchSpeed ** 2) / 2;
  const farthest = taut.travel - strap.length / Math.max(LEAST_RATIO, Math.abs(taut.ratio));
  const to = Math.max(farthest, corner.mechanism.range.droop.travel * (1 - 1e-6));
  const pull = (travel: number): number => {
    const line = lineMotionAt(corner, strap.upper, strap.lower, travel);
    return line ? strapAt(strap, line.length).force * line.ratio : 0;
  };
  const force = (travel: number): number => drive(travel) - pull(travel);
  const end = runDown({ from: taut.travel, to, energy, mass, damping, force });
  const line = lineMotionAt(corner, strap.upper, strap.lower, end.travel);
  if (!line) return null;
  return {
    speed: Math.sqrt((2 * energy) / mass),
    energy,
    force: strapAt(strap, line.length).force,
    stretch: line.length - strap.length,
    travel: end.travel,
    margin: hardLimit && end.travel - hardLimit.travel,
  };
}

function springForce(corner: Corner, springs: SpringStudy | null, travel: number): number {
  const place = springs && shockPlaceAt(corner, travel);
  if (!springs || !place) return 0;
  const pace = { pace: "fast", restedAt: springs.rest.state.shockLength } as const;
  return wheelSpringAt(springs.shockSpring, place, pace).wheelForce;
}

/** Damping at the wheel, N·s/m, taken level over the travel: a share of what is critical where the car sits. */
export function dampingOf(springs: SpringStudy, share: number): number {
  const { state } = springs.positions[1]!;
  return share * (criticalDamping(state.wheelRate, springs.sprungMass, state.motionRatio)?.atWheel ?? 0);
}
