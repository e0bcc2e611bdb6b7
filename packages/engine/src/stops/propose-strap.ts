import type { Car, Mount, UnitSystem } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import type { Operation } from "../document/operation.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import type { SpringStudy } from "../springs/spring-study.ts";
import { shockPlaceAt } from "../springs/wheel-spring.ts";
import { INCH } from "../units/convert.ts";
import { markOf, onMark } from "../units/marks.ts";
import { typedLength, typedMount } from "../units/typed.ts";
import type { StopsWish } from "./assumptions.ts";
import { lineMotionAt } from "./line-motion.ts";
import { placeOnArm } from "./place-on-arm.ts";
import { snatchOf } from "./study-strap.ts";

export interface StrapProposal {
  readonly upper: Mount;
  readonly lower: Mount;
  readonly length: number;
  /** Travel at which it comes taut, m. */
  readonly taut: number;
  /** Holes from where it is; null where it has none. */
  readonly holes: number | null;
  /** What made it shorter than the droop aimed at: a limit's label, or null. */
  readonly because: string | null;
  readonly operations: readonly Operation[];
}

/** No strap fits: there is no arm to put it on, or no room before the first hard limit. */
export type NoProposal = { readonly refused: "no-arm" | "no-room" };

/** Where a strap goes that has no mounts yet. Common practice, no source: well out on the arm, where it pulls least. */
const OUT_ON_ARM = 0.75;
/** Over the tube's surface, m, for its clevis; and in from the lower mount without a shock to go by. From memory. */
const OVER_TUBE = INCH / 2;
const IN_OVER_FRAME = 6 * INCH;

/** Ten inches of marks: no strap is shortened by more. */
const MOST_STEPS = 160;

/**
 * Mounts where there are none (lower on the arm, well out and on the other side of it than the shock; upper straight over
 * it or in over the frame), and the longest length with which the droop aimed at is not passed, the shock keeps its shaft
 * and the strap, stretched by a snatch, still ends the travel before the first hard limit.
 */
export function proposeStrap(
  made: { readonly car: Car; readonly corner: Corner; readonly travel: TravelReport },
  springs: SpringStudy | null,
  wish: StopsWish,
): StrapProposal | NoProposal {
  const { car, corner, travel } = made;
  const hard = travel.droop.first;
  const wanted = -(car.targets.droop ?? Math.abs(travel.droop.stop.travel));
  const goal = hard ? Math.max(wanted, hard.travel + wish.marginDroop) : wanted;
  const mounts = car.strap ?? newMounts(corner, goal, wish.strapLength);
  if (!mounts) return { refused: "no-arm" };
  const { upper, lower } = mounts;
  const atGoal = lineMotionAt(corner, upper, lower, goal);
  if (!atGoal) return { refused: "no-room" };
  const own = car.strap;
  const mark = markOf(car.units);
  const step = own?.holeSpacing ?? mark;
  const from = own ? own.length : Math.floor(atGoal.length / mark + 1e-6) * mark;
  const first = own ? Math.floor((atGoal.length - from) / step + 1e-6) : 0;
  for (let n = first; n > first - MOST_STEPS; n -= 1) {
    const strap = { ...own, upper, lower, length: from + n * step };
    const taut = tautAt(corner, upper, lower, strap.length, goal);
    if (taut === null) return { refused: "no-room" };
    const line = lineMotionAt(corner, upper, lower, taut);
    // Half a mark short reads as what is asked for.
    const place = shockPlaceAt(corner, taut);
    if (!line) continue;
    if (car.shock && place && car.shock.longest - place.shockLength < wish.shaftAtDroop - mark / 2) continue;
    const snatch = snatchOf(corner, strap, line, hard, springs, wish);
    if (snatch?.margin !== undefined && snatch.margin !== null && snatch.margin < 0) continue;
    return {
      upper,
      lower,
      length: strap.length,
      taut,
      holes: own?.holeSpacing === undefined ? null : n,
      because: hard && taut > wanted + 2 * mark ? hard.label : null,
      operations: own
        ? [{ path: "strap.length", value: typedLength(strap.length, car.units) }, STOP]
        : [
            {
              path: "strap",
              value: {
                upper: typedMount(upper, car.units),
                lower: typedMount(lower, car.units),
                length: typedLength(strap.length, car.units),
              },
            },
            STOP,
          ],
    };
  }
  return { refused: "no-room" };
}

const STOP: Operation = { path: "stops.droop", value: "strap" };

/** Travel at which the holes are `length` apart, m, between ride and `goal`; null where they are already at ride. */
function tautAt(corner: Corner, upper: Mount, lower: Mount, length: number, goal: number): number | null {
  const apart = (travel: number): number => lineMotionAt(corner, upper, lower, travel)?.length ?? Number.NaN;
  if (!(apart(0) < length)) return null;
  let near = 0;
  let far = goal * 1.05;
  for (let step = 0; step < 50; step += 1) {
    const middle = (near + far) / 2;
    if (apart(middle) < length) near = middle;
    else far = middle;
  }
  return near;
}

function newMounts(corner: Corner, goal: number, length: number): { upper: Mount; lower: Mount } | null {
  const place = placeOnArm(corner, OUT_ON_ARM, OVER_TUBE);
  if (!place) return null;
  const { shock, units } = corner.car;
  const lower: Mount = { ...place, point: onMarks(place.point, units) };
  const y = shock && shock.upper.on === "chassis" ? shock.upper.point.y : lower.point.y - IN_OVER_FRAME;
  const at = lineMotionAt(corner, { point: lower.point, on: "chassis" }, lower, goal);
  if (!at) return null;
  const across = at.to.y - y;
  const up = Math.sqrt(Math.max(length ** 2 - across ** 2, (length / 2) ** 2));
  const { x, y: out, z } = onMarks({ x: lower.point.x, y, z: at.to.z + up }, units);
  const mark = markOf(units);
  // A strap has a mark's length as well: so far out and up that one of them is just taut where it shall be.
  let best: { readonly upper: Mount; readonly over: number } | null = null;
  for (const [outward, upward] of PLACES_ABOUT) {
    const point = { x, y: onMark(out + outward * mark, units), z: onMark(z + upward * mark, units) };
    const upper: Mount = { point, on: "chassis" };
    const taut = lineMotionAt(corner, upper, lower, goal)?.length ?? Number.NaN;
    const over = taut - Math.floor(taut / mark + 1e-6) * mark;
    if (!best || over < best.over) best = { upper, over };
    if (over < mark * NEAR) break;
  }
  return best && { lower, upper: best.upper };
}

/** An upper mount is tried so many marks farther out and up, the nearest first; so near to a mark of length is good. */
const ABOUT = [-8, -7, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7, 8];
const PLACES_ABOUT = ABOUT.flatMap((outward) => ABOUT.map((upward) => [outward, upward] as const)).sort(
  (a, b) => Math.hypot(...a) - Math.hypot(...b),
);
const NEAR = 1 / 8;

/** Where a tape can put it, so that what is worked out is what will be there. */
const onMarks = ({ x, y, z }: Vec3, units: UnitSystem): Vec3 => ({
  x: onMark(x, units),
  y: onMark(y, units),
  z: onMark(z, units),
});
