import { dot, length, squareTo, subtract, type Vec3 } from "../geometry/vec3.ts";

/** A rod end's head: a ball about its pivot, m. */
export interface PivotHead {
  readonly pivot: Vec3;
  readonly headRadius: number;
}

/** The inside of a rim, m; the spin axis a unit vector. */
export interface RimBarrel {
  readonly wheelCentre: Vec3;
  readonly spinAxis: Vec3;
  /** Inside radius of the barrel. */
  readonly insideRadius: number;
  /** Of the barrel along the spin axis, half to either side of the wheel's centre plane. */
  readonly rimWidth: number;
}

/**
 * From a rod end's head to the inside of the rim, m; negative when they overlap.
 * The rim takes up everything from its inside radius outward over its width; it is open at both ends (the wheel's disc
 * is not part of it). So, with the pivot's distance from the spin axis `radial` and from the centre plane `axial`:
 * - in the barrel: insideRadius − radial − headRadius;
 * - beyond its width, no farther out than the barrel: to its nearer circular edge, less headRadius;
 * - beyond its width, farther out: to the plane of that edge, less headRadius;
 * - within its width, farther out (a head in the rim or tyre): minus the shorter way back, inward or sideways, less
 *   headRadius.
 * It changes by no more than the pivot moves, so a limit can be root-found through it.
 */
export function clearanceInsideRim(head: PivotHead, rim: RimBarrel): number {
  const fromCentre = subtract(head.pivot, rim.wheelCentre);
  const inward = rim.insideRadius - length(squareTo(fromCentre, rim.spinAxis));
  const beyond = Math.abs(dot(fromCentre, rim.spinAxis)) - rim.rimWidth / 2;
  const toRim = inward > 0 && beyond > 0 ? Math.hypot(inward, beyond) : Math.max(inward, beyond);
  return toRim - head.headRadius;
}
