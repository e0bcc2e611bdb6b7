import type { Car, Linkage } from "../car/car.ts";
import { wheelCentreOf } from "../car/wheel-centre.ts";
import { makeCorner } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { placePoint } from "../geometry/pose.ts";
import { distance } from "../geometry/vec3.ts";
import type { Lengths } from "../linkage/kind.ts";
import { kindOf } from "../linkage/kinds.ts";
import { designState } from "../linkage/motion-state.ts";
import { carriedCar, poseIn } from "./carried-car.ts";
import { carriedLinkage } from "./carried-linkage.ts";

/**
 * One small step of an adjuster, longer by `change` (m): the linkage is taken apart at it, put together again, and the wheel
 * brought back to its old height, so that the car is in its design position with all lengths agreeing with its points.
 * Null where it cannot be put together, or not on the branch that it was in.
 */
export function screwStep(car: Car, adjusterId: string, change: number): Car | null {
  const kind = kindOf<Linkage>(car.linkage);
  const { linkage, moved, lengths } = kind.adjust(car.linkage, adjusterId, change);
  const shifted = carriedCar(car, linkage, moved);
  const corner = makeCorner(shifted, lengths);
  const state = designState();
  const travel = wheelCentreOf(car.wheel).z - corner.wheelCentre.z;
  if (corner.mechanism.solve(travel, state) < 0) return null;
  const { poses } = positionOf(corner, state);
  const settled = carriedLinkage(linkage, (point, on) => placePoint(poseIn(poses, on), point));
  const after = carriedCar(shifted, settled, poses);
  const residual = adjustResidual(car, after, lengths);
  return residual.lengths < LENGTH_TOLERANCE && residual.height < HEIGHT_TOLERANCE && residual.move < BRANCH_JUMP
    ? after
    : null;
}

/** m: a thousand times finer than a bolt can tell, well above rounding. */
const LENGTH_TOLERANCE = 1e-9;
const HEIGHT_TOLERANCE = 1e-12;
/** m: a step of a few millimetres that throws the wheel farther than this has changed its branch. */
const BRANCH_JUMP = 0.05;

export interface AdjustResidual {
  /** Largest miss of a link's length and of a distance within the spindle, m. */
  readonly lengths: number;
  /** Change of the wheel centre's height, m. */
  readonly height: number;
  /** How far any point of the spindle has moved, m. */
  readonly move: number;
}

/** How well an adjusted car keeps what it has to keep; `lengths` (m) are those that were to change, by member id. */
export function adjustResidual(before: Car, after: Car, lengths: Lengths): AdjustResidual {
  const old = spindlePoints(before);
  const now = spindlePoints(after);
  let worst = 0;
  let move = 0;
  now.forEach((point, i) => {
    move = Math.max(move, distance(point, old[i]!));
    for (let j = 0; j < i; j += 1) {
      worst = Math.max(worst, Math.abs(distance(point, now[j]!) - distance(old[i]!, old[j]!)));
    }
  });
  const wanted = { ...linkLengths(before), ...lengths };
  for (const [id, length] of Object.entries(linkLengths(after)))
    worst = Math.max(worst, Math.abs(length - wanted[id]!));
  return { lengths: worst, height: Math.abs(wheelCentreOf(after.wheel).z - wheelCentreOf(before.wheel).z), move };
}

const spindlePoints = (car: Car) => [
  car.wheel.hubFace,
  wheelCentreOf(car.wheel),
  ...kindOf<Linkage>(car.linkage)
    .pivots(car.linkage)
    .filter((pivot) => pivot.boltSide === "spindle")
    .map((pivot) => pivot.point),
];

/** Eye-to-eye length of every two-point link, m, by member id. */
export const linkLengths = (car: Car): Lengths =>
  Object.fromEntries(
    kindOf<Linkage>(car.linkage)
      .members(car.linkage)
      .filter((member) => member.body === "link")
      .map((member) => [member.id, distance(member.from.point, member.to.point)]),
  );
