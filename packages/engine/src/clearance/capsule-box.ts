import { add, addScaled, between, cross, dot, scale, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import type { PointPair } from "./core.ts";
import type { Box, Capsule } from "./shapes.ts";

/**
 * Nearest points of a capsule's segment (a) and a box's core (b); the two coincide where they overlap.
 * Along the segment, the slope of half the squared distance to the box rises from end to end and is straight between
 * the up to six places where the segment crosses a plane of a face: the one where it is zero follows exactly.
 */
export function nearestOfSegmentAndBox(capsule: Capsule, box: Box): PointPair {
  const axisZ = cross(box.axisX, box.axisY);
  const inBox = (v: Vec3): Vec3 => vec(dot(v, box.axisX), dot(v, box.axisY), dot(v, axisZ));
  const from = inBox(subtract(capsule.from, box.centre));
  const along = inBox(subtract(capsule.to, capsule.from));
  const { half } = box;

  const slope = (t: number): number =>
    along.x * beyond(from.x + t * along.x, half.x) +
    along.y * beyond(from.y + t * along.y, half.y) +
    along.z * beyond(from.z + t * along.z, half.z);

  const fraction = zeroOfSlope(slope, [
    (half.x - from.x) / along.x,
    (-half.x - from.x) / along.x,
    (half.y - from.y) / along.y,
    (-half.y - from.y) / along.y,
    (half.z - from.z) / along.z,
    (-half.z - from.z) / along.z,
  ]);
  const here = addScaled(from, along, fraction);
  const outside = vec(beyond(here.x, half.x), beyond(here.y, half.y), beyond(here.z, half.z));
  const a = between(capsule.from, capsule.to, fraction);
  const step = add(add(scale(box.axisX, outside.x), scale(box.axisY, outside.y)), scale(axisZ, outside.z));
  return { a, b: subtract(a, step) };
}

/** How far a coordinate is outside −half…half, with its sign; 0 inside. */
const beyond = (x: number, half: number): number => (x > half ? x - half : x < -half ? x + half : 0);

/** Where in 0…1 the rising function is zero, or the end nearest to it; straight between the `corners`. */
function zeroOfSlope(slope: (t: number) => number, corners: readonly number[]): number {
  let low = 0;
  let high = 1;
  let slopeLow = slope(0);
  if (slopeLow >= 0) return 0;
  let slopeHigh = slope(1);
  if (slopeHigh <= 0) return 1;
  for (const t of corners) {
    // Also passes over the NaN or infinity of a segment that runs along a face.
    if (!(t > low && t < high)) continue;
    const here = slope(t);
    if (here < 0) {
      low = t;
      slopeLow = here;
    } else {
      high = t;
      slopeHigh = here;
    }
  }
  if (slopeHigh === 0) return high;
  return low + ((high - low) * slopeLow) / (slopeLow - slopeHigh);
}
