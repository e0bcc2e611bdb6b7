import { between, type Vec3, vec } from "../geometry/vec3.ts";
import { dipBetween } from "./between-stations.ts";
import type { Judged } from "./candidate.ts";
import { lowerPath, movementOf } from "./movement.ts";
import { shockRadius } from "./request.ts";
import type { Search } from "./search.ts";

/** A ball of the shock's sweep, m. */
export interface Ball {
  readonly centre: Vec3;
  readonly radius: number;
}

/** Places along the shock at which its round is taken, and positions of the wheel. */
const ALONG = 200;
const STATIONS = 121;

/**
 * Balls that together hold the shock with `clearance` (m) round it at every travel: at each station along its middle line, half
 * the step between two places s taken in by √(r² + s²/4), what lies between two stations by the bound on a distance to what
 * stands still.
 */
export function sweptBalls({ corner, request }: Search, judged: Judged, clearance: number): readonly Ball[] {
  const movement = movementOf(corner, request.travel.droop, request.travel.bump, STATIONS);
  const { at, fastest, sharpest } = lowerPath(corner, movement, judged.lower, request.bolts);
  const wanted = shockRadius(judged.shock) + clearance;
  const reach = wanted + dipBetween(movement.widest, fastest, sharpest, wanted);
  const balls: Ball[] = [];
  for (let k = 0; k < movement.travels.length; k += 1) {
    const foot = vec(at[3 * k]!, at[3 * k + 1]!, at[3 * k + 2]!);
    const step = Math.hypot(judged.upper.x - foot.x, judged.upper.y - foot.y, judged.upper.z - foot.z) / ALONG;
    const radius = Math.hypot(reach, step / 2);
    for (let i = 0; i <= ALONG; i += 1) balls.push({ centre: between(judged.upper, foot, i / ALONG), radius });
  }
  return balls;
}
