/**
 * Distances from a segment u–p to the cores of what it may meet, m, in flat scalars: the innermost loop of the mount
 * search and of the gaps to a scanned mesh. Same definitions as the solids beside it, which the tests hold them against; 0
 * where the cores overlap.
 */

/** Where the last call of segmentToSegment or segmentToDisc found the least: shares of the first and second segment. */
export const nearestShare = new Float64Array(2);

/** To the segment c–d. Ericson, Real-Time Collision Detection (2005), 5.1.9: clamped least squares. */
export function segmentToSegment(
  ux: number,
  uy: number,
  uz: number,
  px: number,
  py: number,
  pz: number,
  cx: number,
  cy: number,
  cz: number,
  dx: number,
  dy: number,
  dz: number,
): number {
  const ax = px - ux;
  const ay = py - uy;
  const az = pz - uz;
  const bx = dx - cx;
  const by = dy - cy;
  const bz = dz - cz;
  const rx = ux - cx;
  const ry = uy - cy;
  const rz = uz - cz;
  const a = ax * ax + ay * ay + az * az;
  const e = bx * bx + by * by + bz * bz;
  const f = bx * rx + by * ry + bz * rz;
  const c = ax * rx + ay * ry + az * rz;
  const b = ax * bx + ay * by + az * bz;
  const square = a * e - b * b;
  let s = square > 1e-14 * a * e ? (b * f - c * e) / square : 0;
  s = inUnit(s);
  let t = e > 0 ? (b * s + f) / e : 0;
  if (t < 0) {
    t = 0;
    s = a > 0 ? -c / a : 0;
    s = inUnit(s);
  } else if (t > 1) {
    t = 1;
    s = a > 0 ? (b - c) / a : 0;
    s = inUnit(s);
  }
  nearestShare[0] = s;
  nearestShare[1] = t;
  const x = rx + s * ax - t * bx;
  const y = ry + s * ay - t * by;
  const z = rz + s * az - t * bz;
  return Math.sqrt(x * x + y * y + z * z);
}

/**
 * To a box with the given halves, the segment given in the box's own axes from its centre, as a start and a way. Along the
 * segment the slope of half the squared distance only rises and is straight between the crossings of the six planes.
 */
export function segmentToBox(
  fx: number,
  fy: number,
  fz: number,
  ax: number,
  ay: number,
  az: number,
  hx: number,
  hy: number,
  hz: number,
): number {
  let low = 0;
  let high = 1;
  let atLow = ax * beyond(fx, hx) + ay * beyond(fy, hy) + az * beyond(fz, hz);
  let atHigh = ax * beyond(fx + ax, hx) + ay * beyond(fy + ay, hy) + az * beyond(fz + az, hz);
  let t = 0;
  if (atLow >= 0) t = 0;
  else if (atHigh <= 0) t = 1;
  else {
    for (let i = 0; i < 6; i += 1) {
      const at =
        i === 0
          ? (hx - fx) / ax
          : i === 1
            ? (-hx - fx) / ax
            : i === 2
              ? (hy - fy) / ay
              : i === 3
                ? (-hy - fy) / ay
                : i === 4
                  ? (hz - fz) / az
                  : (-hz - fz) / az;
      // Also passes over the NaN or infinity of a segment that runs along a face.
      if (!(at > low && at < high)) continue;
      const here = ax * beyond(fx + at * ax, hx) + ay * beyond(fy + at * ay, hy) + az * beyond(fz + at * az, hz);
      if (here < 0) {
        low = at;
        atLow = here;
      } else {
        high = at;
        atHigh = here;
      }
    }
    t = atHigh === 0 ? high : low + ((high - low) * atLow) / (atLow - atHigh);
  }
  const x = beyond(fx + t * ax, hx);
  const y = beyond(fy + t * ay, hy);
  const z = beyond(fz + t * az, hz);
  return Math.sqrt(x * x + y * y + z * z);
}

/** Into 0…1. */
const inUnit = (t: number): number => Math.min(1, Math.max(0, t));

const beyond = (x: number, half: number): number => (x > half ? x - half : x < -half ? x + half : 0);

/** Newton's steps stop sooner by themselves. */
const MOST_STEPS = 60;

/** To a disc of the given radius and half width, the segment given from its centre; s is its unit axis. */
export function segmentToDisc(
  fx: number,
  fy: number,
  fz: number,
  ax: number,
  ay: number,
  az: number,
  sx: number,
  sy: number,
  sz: number,
  radius: number,
  halfWidth: number,
): number {
  const axial0 = fx * sx + fy * sy + fz * sz;
  const axial1 = ax * sx + ay * sy + az * sz;
  const cx = fx - axial0 * sx;
  const cy = fy - axial0 * sy;
  const cz = fz - axial0 * sz;
  const dx = ax - axial1 * sx;
  const dy = ay - axial1 * sy;
  const dz = az - axial1 * sz;
  const r0 = cx * cx + cy * cy + cz * cz;
  const r1 = cx * dx + cy * dy + cz * dz;
  const r2 = dx * dx + dy * dy + dz * dz;
  let low = 0;
  let high = 1;
  let t = 0;
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < MOST_STEPS; i += 1) {
    const axial = axial0 + t * axial1;
    const square = r0 + t * (2 * r1 + t * r2);
    const across = square > 0 ? Math.sqrt(square) : 0;
    let value = 0;
    let change = 0;
    let gap = 0;
    const over = axial > halfWidth ? axial - halfWidth : axial < -halfWidth ? axial + halfWidth : 0;
    if (over !== 0) {
      value = over * axial1;
      change = axial1 * axial1;
      gap = over * over;
    }
    if (across > radius) {
      const half = r1 + t * r2;
      const inside = radius / across;
      value += half * (1 - inside);
      change += r2 * (1 - inside) + (inside * half * half) / square;
      gap += (across - radius) * (across - radius);
    }
    if (gap < best) best = gap;
    if (value === 0 || (t === 0 && value > 0) || (t === 1 && value < 0)) break;
    if (value < 0) low = t;
    else high = t;
    // From the first end straight to the other, to see whether the least is between them.
    let next = i === 0 ? 1 : i === 1 ? 0.5 : t - value / change;
    if (i > 1 && !(next > low && next < high)) next = 0.5 * (low + high);
    if (Math.abs(next - t) <= 1e-15) break;
    t = next;
  }
  nearestShare[0] = t;
  return Math.sqrt(best);
}

/** Of a point from the segment: the bound that is tried before an exact distance. */
export function segmentToPoint(
  ux: number,
  uy: number,
  uz: number,
  px: number,
  py: number,
  pz: number,
  cx: number,
  cy: number,
  cz: number,
): number {
  const ax = px - ux;
  const ay = py - uy;
  const az = pz - uz;
  const rx = cx - ux;
  const ry = cy - uy;
  const rz = cz - uz;
  let t = (rx * ax + ry * ay + rz * az) / (ax * ax + ay * ay + az * az);
  t = inUnit(t);
  const x = rx - t * ax;
  const y = ry - t * ay;
  const z = rz - t * az;
  return Math.sqrt(x * x + y * y + z * z);
}
