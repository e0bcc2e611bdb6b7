import { addScaled, distance, dot, FORWARD, LEFT, subtract, UP, unit, type Vec3 } from "../geometry/vec3.ts";
import { type Judged, judgeMounts, trialOf } from "./candidate.ts";
import { tubeLine, upperTube } from "./grid.ts";
import { demerit } from "./rank.ts";
import { DEFAULT_EASY_SLACK } from "./request.ts";
import type { Search } from "./search.ts";
import { slackOf } from "./slack.ts";

/** Steps are halved from half of the grid's down to this, m. */
const FINEST = 0.001;
/** Rounds at one step; what still moves then goes on at the next. */
const MOST_ROUNDS = 6;

/**
 * A better place near a grid point: one coordinate after the other (descent by coordinates), each step kept where the
 * candidate passes every test and is better, inside the zones. Never worse than where it set out.
 */
export function refine(search: Search, start: Judged): Judged {
  const easy = search.request.easySlack ?? DEFAULT_EASY_SLACK;
  const uppers = upperFreedoms(search);
  const lowers = lowerFreedoms(search, start.lower.zone);
  const merit = (judged: Judged): number => {
    const slack = easy > 0 ? slackOf(trialOf(search, judged.shock, judged.lower), judged.upper) : 0;
    const missing = easy > 0 ? Math.max(0, 1 - slack / easy) : 0;
    const ratioRise = judged.motionRatioAtBump - judged.motionRatio;
    const merits = { ...judged, ratioRise, loadPath: judged.loadPath?.length ?? 0 };
    return demerit(search.request.requirements, merits) + 2 * missing * missing;
  };
  let best = start;
  let least = merit(start);
  const attempt = (upper: Vec3 | null, lower: Vec3 | null): boolean => {
    if (!upper || !lower) return false;
    const judged = judgeMounts(search, start.shock, upper, { ...start.lower, point: lower });
    if (judged.fails !== null) return false;
    const here = merit(judged);
    if (!(here < least - 1e-9)) return false;
    best = judged;
    least = here;
    return true;
  };
  for (let step = 0.5 * search.request.step; step >= FINEST; step *= 0.5) {
    for (let round = 0; round < MOST_ROUNDS; round += 1) {
      let moved = false;
      for (const way of [step, -step]) {
        for (const free of uppers) moved = attempt(shifted(best.upper, free, way), best.lower.point) || moved;
        for (const free of lowers) moved = attempt(best.upper, shifted(best.lower.point, free, way)) || moved;
      }
      if (!moved) break;
    }
  }
  return best;
}

/** A direction in which a mount may move, counted from a point of its zone. */
interface Freedom {
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly most: number;
}

function shifted(point: Vec3, { origin, direction, most }: Freedom, by: number): Vec3 | null {
  const place = dot(subtract(point, origin), direction) + by;
  return place >= 0 && place <= most ? addScaled(point, direction, by) : null;
}

const lineFreedom = (from: Vec3, to: Vec3): readonly Freedom[] =>
  distance(from, to) > 0 ? [{ origin: from, direction: unit(subtract(to, from)), most: distance(from, to) }] : [];

function boxFreedoms(a: Vec3, b: Vec3): readonly Freedom[] {
  const origin = { x: Math.min(a.x, b.x), y: Math.min(a.y, b.y), z: Math.min(a.z, b.z) };
  return [FORWARD, LEFT, UP].map((direction) => ({
    origin,
    direction,
    most: Math.abs(dot(subtract(b, a), direction)),
  }));
}

function upperFreedoms({ corner, request: { upper } }: Search): readonly Freedom[] {
  if (upper.kind === "box") return boxFreedoms(upper.from, upper.to);
  const { from, to } = upperTube(corner, upper);
  return lineFreedom(from, to);
}

function lowerFreedoms({ corner, request }: Search, index: number): readonly Freedom[] {
  const zone = request.lower[index]!;
  if (zone.kind === "box") return boxFreedoms(zone.from, zone.to);
  const { from, to } = tubeLine(corner, zone);
  return lineFreedom(from, to);
}
