import { NO_ROTATION } from "../geometry/pose.ts";
import { addScaled, distance as distanceOf, scale, subtract, type Vec3 } from "../geometry/vec3.ts";
import { nearestOfSegmentAndBox } from "./capsule-box.ts";
import { nearestOfSegments } from "./capsule-capsule.ts";
import { nearestOfSegmentAndWheel } from "./capsule-wheel.ts";
import { coreOf, type PointPair } from "./core.ts";
import { distanceOfCores, TOUCHING } from "./gjk.ts";
import { overHalfSpace } from "./half-space.ts";
import { overlapOfCores } from "./overlap.ts";
import { placeSolid, type RoundedSolid, type Solid } from "./shapes.ts";

/** How far overlapping cores are drawn apart, m, to see which of their points would part last. */
const PROBE = 1e-3;

export interface Separation {
  /** Free gap, m; negative when the solids overlap: then the least shift that parts them. */
  readonly distance: number;
  /** Nearest points of the two surfaces (the last to part when they overlap; good to 1e-5 m once the cores do), onB = onA + distance · normal. */
  readonly onA: Vec3;
  readonly onB: Vec3;
  /** Unit vector from a toward b, along which b has to move to come free. */
  readonly normal: Vec3;
}

/**
 * The gap between two solids, its sign and where it is. The one signed distance above and below zero: it changes by
 * no more than the solids move, so a limit can be root-found through it.
 * Closed form for half-spaces and for capsules with capsules and boxes, Newton's steps on one unknown for a capsule
 * with a wheel, GJK for the rest; expanding polytope once the cores themselves overlap, that is deeper than both radii.
 * Throws on two half-spaces: both stand still on the car, nothing is between them to measure.
 */
export function separation(a: Solid, b: Solid): Separation {
  if (a.shape === "half-space") {
    if (b.shape === "half-space") throw new Error("bug in the caller: two half-spaces have no separation");
    return seenFromOther(overHalfSpace(b, a));
  }
  return b.shape === "half-space" ? overHalfSpace(a, b) : ofRounded(a, b);
}

function ofRounded(a: RoundedSolid, b: RoundedSolid): Separation {
  const pair = nearestOfCores(a, b);
  const apart = distanceOf(pair.a, pair.b);
  const radii = a.radius + b.radius;
  if (apart > TOUCHING) {
    const normal = scale(subtract(pair.b, pair.a), 1 / apart);
    return between(pair.a, normal, a.radius, apart - radii);
  }
  const { depth, normal } = overlapOfCores(coreOf(a), coreOf(b));
  const deepest = nearestOfCores(a, shifted(b, scale(normal, depth + PROBE)));
  return between(deepest.a, normal, a.radius, -depth - radii);
}

const shifted = (solid: RoundedSolid, translation: Vec3): RoundedSolid =>
  placeSolid({ rotation: NO_ROTATION, translation }, solid);

function between(onCore: Vec3, normal: Vec3, radius: number, distance: number): Separation {
  const onA = addScaled(onCore, normal, radius);
  return { distance, onA, onB: addScaled(onA, normal, distance), normal };
}

/** Nearest points of the two cores; they coincide where the cores overlap. */
function nearestOfCores(a: RoundedSolid, b: RoundedSolid): PointPair {
  if (a.shape === "capsule") {
    if (b.shape === "capsule") return nearestOfSegments(a, b);
    return b.shape === "box" ? nearestOfSegmentAndBox(a, b) : nearestOfSegmentAndWheel(a, b);
  }
  if (b.shape === "capsule") {
    const { a: onB, b: onA } = nearestOfCores(b, a);
    return { a: onA, b: onB };
  }
  const found = distanceOfCores(coreOf(a), coreOf(b));
  return found.distance > 0 ? found : { a: found.a, b: found.a };
}

const seenFromOther = ({ distance, onA, onB, normal }: Separation): Separation => ({
  distance,
  onA: onB,
  onB: onA,
  normal: scale(normal, -1),
});
