import { addScaled, dot, scale, subtract, type Vec3 } from "../geometry/vec3.ts";
import { type Core, coreOf, farthestOnRim } from "./core.ts";
import type { Separation } from "./separation.ts";
import type { HalfSpace, RoundedSolid } from "./shapes.ts";

/**
 * From the rounded solid (a) to the half-space (b): the height of its lowest point over the plane, exact above and
 * below it. Below, −distance is how far the solid has to be lifted along the plane's normal.
 */
export function overHalfSpace(solid: RoundedSolid, { point, normal }: HalfSpace): Separation {
  const lowest = addScaled(lowestPoint(coreOf(solid), normal), normal, -solid.radius);
  const distance = dot(subtract(lowest, point), normal);
  return { distance, onA: lowest, onB: addScaled(lowest, normal, -distance), normal: scale(normal, -1) };
}

/** Least point along `normal`: the middle of an edge or face that lies flat. */
function lowestPoint(core: Core, normal: Vec3): Vec3 {
  let lowest = core.centre;
  for (const edge of core.edges) lowest = addScaled(lowest, edge, -Math.sign(dot(edge, normal)));
  return core.disc === undefined ? lowest : subtract(lowest, farthestOnRim(core.disc, normal));
}
