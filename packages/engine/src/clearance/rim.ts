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
  return toRim(inward, beyond) - head.headRadius;
}

/** Distance of a point to the rim, m, from how far it is inside the barrel's radius and how far beyond its width. */
const toRim = (inward: number, beyond: number): number =>
  inward > 0 && beyond > 0 ? Math.sqrt(inward * inward + beyond * beyond) : Math.max(inward, beyond);

/** A straight tube from the chassis out into the rim; its outer end may carry a rod end's larger head. */
export interface TubeIntoRim {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
  readonly headRadius: number;
}

const SAMPLES = 10;
const NARROWING = 16;

/**
 * Nearest place of a tube to the inside of the rim: the gap, m, and how far along the tube (0…1) it is. Within the rim's
 * width the distance of a straight tube from the spin axis has its largest value at an end of the part inside, so that only
 * its two ends count; inboard of the rim the nearest place to its edge is sampled and narrowed down by golden section.
 */
export function tubeInsideRim(tube: TubeIntoRim, rim: RimBarrel): { readonly gap: number; readonly fraction: number } {
  const start = subtract(tube.from, rim.wheelCentre);
  const along = subtract(tube.to, tube.from);
  // Along the axis a + b·t; square of the distance from it p + 2q·t + r·t².
  const a = dot(start, rim.spinAxis);
  const b = dot(along, rim.spinAxis);
  const p = dot(start, start) - a * a;
  const q = dot(start, along) - a * b;
  const r = dot(along, along) - b * b;
  const half = rim.rimWidth / 2;
  const gapAt = (t: number): number =>
    toRim(rim.insideRadius - Math.sqrt(Math.max(0, p + t * (2 * q + t * r))), Math.abs(a + b * t) - half) - tube.radius;
  const crossing = (-half - a) / b;
  const edge = b > 0 && crossing > 0 ? Math.min(1, crossing) : a + b < -half ? 1 : 0;
  let best = 0;
  for (let i = 1; i <= SAMPLES; i += 1) {
    if (gapAt((edge * i) / SAMPLES) < gapAt((edge * best) / SAMPLES)) best = i;
  }
  let low = (edge * Math.max(0, best - 1)) / SAMPLES;
  let high = (edge * Math.min(SAMPLES, best + 1)) / SAMPLES;
  for (let i = 0; i < NARROWING && high > low; i += 1) {
    const u = low + (high - low) * 0.381966;
    const v = low + (high - low) * 0.618034;
    if (gapAt(u) < gapAt(v)) high = v;
    else low = u;
  }
  let fraction = 1;
  let gap = Math.min(gapAt(1), gapAt(1) + tube.radius - tube.headRadius);
  for (const t of [0.5 * (low + high), edge]) {
    if (gapAt(t) >= gap) continue;
    gap = gapAt(t);
    fraction = t;
  }
  return { gap, fraction };
}
