import type { Mount } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { addScaled, subtract, UP } from "../geometry/vec3.ts";
import { leverOf } from "./line-motion.ts";

/**
 * A place on one of the arm's tubes that lead from its hinge outward, `share` of the way, `above` its surface (m): on the
 * tube farthest along the car from the shock's lower eye. Null where the linkage has no arm.
 */
export function placeOnArm(corner: Corner, share: number, above: number): Mount | null {
  const shockX = corner.car.shock?.lower.point.x ?? corner.wheelCentre.x;
  const carrier = carrierOf(corner);
  let best: Mount | null = null;
  let farthest = -1;
  for (const { from, to, body, diameter } of corner.members) {
    if (body === "link" || body !== carrier) continue;
    const ends = [from.point, to.point] as const;
    const levers = ends.map((point) => leverOf(corner, { point, on: body }) ?? 0);
    const [inner, outer] = levers[0]! < levers[1]! ? ends : [ends[1], ends[0]];
    if (Math.abs(levers[0]! - levers[1]!) < LEADS_OUT) continue;
    const onLine = addScaled(inner, subtract(outer, inner), share);
    const away = Math.abs(onLine.x - shockX);
    if (away <= farthest) continue;
    farthest = away;
    best = { point: addScaled(onLine, UP, diameter / 2 + above), on: body };
  }
  return best;
}

/** The arm that carries the shock, or the lowest one. */
function carrierOf({ car, arms }: Corner): string | undefined {
  const on = car.shock?.lower.on;
  if (arms.some(({ body }) => body === on)) return on;
  return [...arms].sort((a, b) => a.point.z - b.point.z)[0]?.body;
}

/** A tube whose ends differ less than this in their distance from the hinge leads along it, m. */
const LEADS_OUT = 0.1;
