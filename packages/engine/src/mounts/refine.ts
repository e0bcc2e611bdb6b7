import { addScaled, between, distance, subtract, unit, type Vec3, vec } from "../geometry/vec3.ts";
import { type Judged, judgeMounts } from "./candidate.ts";
import { type LowerPoint, tubeLine } from "./grid.ts";
import { demerit } from "./rank.ts";
import type { LowerZone, ShockOption, UpperZone } from "./request.ts";
import type { Search } from "./search.ts";

/** Steps are halved from that of the grid down to this, m. */
const FINEST = 0.0005;

/**
 * A better place near a grid point: one coordinate after the other, each step kept where the candidate still passes every
 * test and is better, inside the zones. Never worse than where it set out.
 */
export function refine(search: Search, start: Judged): Judged {
  const { request, corner } = search;
  const ways = [...upperWays(search, request.upper), ...lowerWays(search, start.lower)];
  const merit = (judged: Judged): number =>
    demerit(request.requirements, { ...judged, ratioRise: judged.motionRatioAtBump - judged.motionRatio });
  let best = start;
  for (let step = 0.5 * request.step; step >= FINEST; step *= 0.5) {
    let moved = true;
    for (let round = 0; moved && round < 20; round += 1) {
      moved = false;
      for (const way of ways) {
        for (const sign of [1, -1]) {
          const next = way(best, sign * step);
          if (!next) continue;
          const judged = judgeMounts(search, best.shock, next.upper, next.lower);
          if (judged.fails === null && merit(judged) < merit(best) - 1e-9) {
            best = judged;
            moved = true;
          }
        }
      }
    }
  }
  return best;
  void corner;
}
