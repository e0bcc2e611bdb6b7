import { add, addScaled, between, dot, scale, squareTo, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { PointPair } from "./core.ts";
import type { Capsule, WheelSolid } from "./shapes.ts";

/** Newton's steps stop sooner by themselves; halving alone would be done with as many. */
const MOST_STEPS = 60;

/**
 * Nearest points of a capsule's segment (a) and a wheel's core cylinder (b); the two coincide where they overlap.
 * Along the segment, the slope of half the squared distance to a convex solid only rises: its zero is found by Newton's
 * steps kept between two places where the sign differs, and the distance there is right to rounding, because at its
 * least it does not depend on the place to first order.
 */
export function nearestOfSegmentAndWheel(capsule: Capsule, wheel: WheelSolid): PointPair {
  const from = subtract(capsule.from, wheel.centre);
  const along = subtract(capsule.to, capsule.from);
  const axial0 = dot(from, wheel.axis);
  const axial1 = dot(along, wheel.axis);
  // Radius squared along the segment: r0 + 2·r1·t + r2·t².
  const across0 = squareTo(from, wheel.axis);
  const across1 = squareTo(along, wheel.axis);
  const r0 = dot(across0, across0);
  const r1 = dot(across0, across1);
  const r2 = dot(across1, across1);

  // Slope of half the squared distance, and the slope's own.
  const slopeAt = (t: number): Slope => {
    const axial = axial0 + t * axial1;
    const overWidth = Math.abs(axial) - wheel.coreHalfWidth;
    const radius = Math.sqrt(Math.max(0, r0 + t * (2 * r1 + t * r2)));
    let value = 0;
    let change = 0;
    if (overWidth > 0) {
      value += overWidth * Math.sign(axial) * axial1;
      change += axial1 * axial1;
    }
    if (radius > wheel.coreRadius) {
      const half = r1 + t * r2;
      const inside = wheel.coreRadius / radius;
      value += half * (1 - inside);
      change += r2 * (1 - inside) + (inside * half * half) / (radius * radius);
    }
    return { value, change };
  };

  const fraction = zeroOfSlope(slopeAt);
  const a = between(capsule.from, capsule.to, fraction);
  return { a, b: subtract(a, outsideCylinder(subtract(a, wheel.centre), wheel)) };
}

/** From the nearest point of the core cylinder to the point (given from its centre); zero inside. */
function outsideCylinder(point: Vec3, wheel: WheelSolid): Vec3 {
  const axial = dot(point, wheel.axis);
  const across = addScaled(point, wheel.axis, -axial);
  const radius = Math.sqrt(dot(across, across));
  const overWidth = Math.max(0, Math.abs(axial) - wheel.coreHalfWidth) * Math.sign(axial);
  const overRadius = radius > wheel.coreRadius ? (radius - wheel.coreRadius) / radius : 0;
  return add(scale(wheel.axis, overWidth), scale(across, overRadius));
}

interface Slope {
  readonly value: number;
  readonly change: number;
}

/** Where in 0…1 the rising function is zero, or the end nearest to it. */
function zeroOfSlope(slopeAt: (t: number) => Slope): number {
  const start = slopeAt(0);
  if (start.value >= 0) return 0;
  const end = slopeAt(1);
  if (end.value <= 0) return 1;
  let low = 0;
  let high = 1;
  let t = start.value / (start.value - end.value);
  for (let i = 0; i < MOST_STEPS; i++) {
    const { value, change } = slopeAt(t);
    if (value === 0) break;
    if (value < 0) low = t;
    else high = t;
    const newton = t - value / change;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - t) <= Number.EPSILON) break;
    t = next;
  }
  return t;
}
