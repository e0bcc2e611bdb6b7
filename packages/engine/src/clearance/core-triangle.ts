import { nearestShare, segmentToDisc, segmentToSegment } from "./core-distance.ts";

/**
 * Exact nearest distance of a triangle to a segment and to a solid cylinder, in flat numbers: these are called some
 * hundred times for each part and position of the wheel. The answer of the last call stands in `nearest`.
 */

/** Nearest points of the last call: of the triangle (0…2) and of the segment or cylinder (3…5). */
export const nearest = new Float64Array(6);

/** Nine numbers: three corners. */
export type Triangle = Float64Array;

/**
 * Distance of a triangle to the segment p–q, 0 where the segment goes through it. Either the segment goes through, or the
 * least is met at an end of the segment against the triangle, or between the segment and an edge.
 */
export function segmentToTriangle(
  px: number,
  py: number,
  pz: number,
  qx: number,
  qy: number,
  qz: number,
  t: Triangle,
): number {
  if (passesThrough(px, py, pz, qx, qy, qz, t)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let end = 0; end < 2; end += 1) {
    const x = end === 0 ? px : qx;
    const y = end === 0 ? py : qy;
    const z = end === 0 ? pz : qz;
    nearestOnTriangle(x, y, z, t);
    const d = square(spot[0]! - x, spot[1]! - y, spot[2]! - z);
    if (d < least) {
      least = d;
      keep(spot[0]!, spot[1]!, spot[2]!, x, y, z);
    }
  }
  for (let i = 0; i < 9; i += 3) {
    const j = i === 6 ? 0 : i + 3;
    const d = segmentsApart(px, py, pz, qx, qy, qz, t[i]!, t[i + 1]!, t[i + 2]!, t[j]!, t[j + 1]!, t[j + 2]!);
    if (d < least) {
      least = d;
      keep(other[0]!, other[1]!, other[2]!, spot[0]!, spot[1]!, spot[2]!);
    }
  }
  return Math.sqrt(least);
}

/**
 * Distance of a triangle to the solid cylinder about the z axis through the origin (given in its frame), 0 where they meet.
 * Both are convex. If the least is met inside the triangle, it is met by the cylinder's spot that lies farthest toward the
 * triangle's plane; else on an edge, along which the distance is convex. Where the plane cuts the cylinder and no edge
 * enters it, either the whole cut lies in the triangle or none of it, so that one spot of the cut tells.
 */
export function cylinderToTriangle(radius: number, half: number, t: Triangle): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 9 && least > 0; i += 3) {
    const j = i === 6 ? 0 : i + 3;
    const d = cylinderToSegment(radius, half, t[i]!, t[i + 1]!, t[i + 2]!, t[j]!, t[j + 1]!, t[j + 2]!);
    if (d < least) {
      least = d;
      keep(spot[0]!, spot[1]!, spot[2]!, other[0]!, other[1]!, other[2]!);
    }
  }
  if (least === 0) return 0;
  const ux = t[3]! - t[0]!;
  const uy = t[4]! - t[1]!;
  const uz = t[5]! - t[2]!;
  const vx = t[6]! - t[0]!;
  const vy = t[7]! - t[1]!;
  const vz = t[8]! - t[2]!;
  let nx = uy * vz - uz * vy;
  let ny = uz * vx - ux * vz;
  let nz = ux * vy - uy * vx;
  const size = Math.sqrt(square(nx, ny, nz));
  if (size === 0) return Math.sqrt(least);
  nx /= size;
  ny /= size;
  nz /= size;
  const height = nx * t[0]! + ny * t[1]! + nz * t[2]!;
  // The plane lies this far out along n; turn n so that it points to the plane.
  const side = height < 0 ? -1 : 1;
  const flat = Math.sqrt(nx * nx + ny * ny);
  const out = flat > 0 ? (radius / flat) * side : 0;
  const ex = nx * out;
  const ey = ny * out;
  const ez = half * Math.sign(nz) * side;
  const reach = nx * ex + ny * ey + nz * ez;
  const gap = Math.abs(height) - Math.abs(reach);
  if (gap > 0) {
    const bx = ex + nx * gap * side;
    const by = ey + ny * gap * side;
    const bz = ez + nz * gap * side;
    if (gap * gap < least && isInside(bx, by, bz, nx, ny, nz, t)) {
      keep(bx, by, bz, ex, ey, ez);
      return gap;
    }
    return Math.sqrt(least);
  }
  // The plane cuts the cylinder: a spot of the cut on the way from the middle to the farthest spot.
  const share = reach === 0 ? 0 : height / reach;
  if (isInside(ex * share, ey * share, ez * share, nx, ny, nz, t)) {
    keep(ex * share, ey * share, ez * share, ex * share, ey * share, ez * share);
    return 0;
  }
  return Math.sqrt(least);
}

const spot = new Float64Array(3);
const other = new Float64Array(3);

const square = (x: number, y: number, z: number): number => x * x + y * y + z * z;

function keep(ax: number, ay: number, az: number, bx: number, by: number, bz: number): void {
  nearest[0] = ax;
  nearest[1] = ay;
  nearest[2] = az;
  nearest[3] = bx;
  nearest[4] = by;
  nearest[5] = bz;
}

/** Squared distance of the cylinder to a segment; `spot` on the segment, `other` on the cylinder. */
function cylinderToSegment(
  radius: number,
  half: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
): number {
  segmentToDisc(ax, ay, az, bx - ax, by - ay, bz - az, 0, 0, 1, radius, half);
  const t = nearestShare[0]!;
  const x = ax + t * (bx - ax);
  const y = ay + t * (by - ay);
  const z = az + t * (bz - az);
  const across = Math.sqrt(x * x + y * y);
  const share = across > radius ? radius / across : 1;
  put(x, y, z);
  other[0] = x * share;
  other[1] = y * share;
  other[2] = Math.max(-half, Math.min(half, z));
  return square(x - other[0], y - other[1], z - other[2]);
}

/** Nearest point of the triangle to a point, into `spot`, by the triangle's seven regions (Ericson, "Real-Time Collision Detection", 2005, §5.1.5, as remembered). */
function nearestOnTriangle(x: number, y: number, z: number, t: Triangle): void {
  const abx = t[3]! - t[0]!;
  const aby = t[4]! - t[1]!;
  const abz = t[5]! - t[2]!;
  const acx = t[6]! - t[0]!;
  const acy = t[7]! - t[1]!;
  const acz = t[8]! - t[2]!;
  const apx = x - t[0]!;
  const apy = y - t[1]!;
  const apz = z - t[2]!;
  const d1 = abx * apx + aby * apy + abz * apz;
  const d2 = acx * apx + acy * apy + acz * apz;
  if (d1 <= 0 && d2 <= 0) {
    put(t[0]!, t[1]!, t[2]!);
    return;
  }
  const bpx = x - t[3]!;
  const bpy = y - t[4]!;
  const bpz = z - t[5]!;
  const d3 = abx * bpx + aby * bpy + abz * bpz;
  const d4 = acx * bpx + acy * bpy + acz * bpz;
  if (d3 >= 0 && d4 <= d3) {
    put(t[3]!, t[4]!, t[5]!);
    return;
  }
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) {
    const v = d1 === d3 ? 0 : d1 / (d1 - d3);
    put(t[0]! + abx * v, t[1]! + aby * v, t[2]! + abz * v);
    return;
  }
  const cpx = x - t[6]!;
  const cpy = y - t[7]!;
  const cpz = z - t[8]!;
  const d5 = abx * cpx + aby * cpy + abz * cpz;
  const d6 = acx * cpx + acy * cpy + acz * cpz;
  if (d6 >= 0 && d5 <= d6) {
    put(t[6]!, t[7]!, t[8]!);
    return;
  }
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) {
    const w = d2 === d6 ? 0 : d2 / (d2 - d6);
    put(t[0]! + acx * w, t[1]! + acy * w, t[2]! + acz * w);
    return;
  }
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    const size = d4 - d3 + (d5 - d6);
    const w = size === 0 ? 0 : (d4 - d3) / size;
    put(t[3]! + (t[6]! - t[3]!) * w, t[4]! + (t[7]! - t[4]!) * w, t[5]! + (t[8]! - t[5]!) * w);
    return;
  }
  const all = 1 / (va + vb + vc);
  const v = vb * all;
  const w = vc * all;
  put(t[0]! + abx * v + acx * w, t[1]! + aby * v + acy * w, t[2]! + abz * v + acz * w);
}

function put(x: number, y: number, z: number): void {
  spot[0] = x;
  spot[1] = y;
  spot[2] = z;
}

/** Squared distance of segments p–q and a–b; `spot` on the first, `other` on the second. */
function segmentsApart(
  px: number,
  py: number,
  pz: number,
  qx: number,
  qy: number,
  qz: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
): number {
  segmentToSegment(px, py, pz, qx, qy, qz, ax, ay, az, bx, by, bz);
  const s = nearestShare[0]!;
  const r = nearestShare[1]!;
  put(px + (qx - px) * s, py + (qy - py) * s, pz + (qz - pz) * s);
  other[0] = ax + (bx - ax) * r;
  other[1] = ay + (by - ay) * r;
  other[2] = az + (bz - az) * r;
  return square(spot[0]! - other[0], spot[1]! - other[1], spot[2]! - other[2]);
}

/** Whether the segment goes through the triangle; then both nearest points are where it does. */
function passesThrough(px: number, py: number, pz: number, qx: number, qy: number, qz: number, t: Triangle): boolean {
  const ux = t[3]! - t[0]!;
  const uy = t[4]! - t[1]!;
  const uz = t[5]! - t[2]!;
  const vx = t[6]! - t[0]!;
  const vy = t[7]! - t[1]!;
  const vz = t[8]! - t[2]!;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const hp = nx * (px - t[0]!) + ny * (py - t[1]!) + nz * (pz - t[2]!);
  const hq = nx * (qx - t[0]!) + ny * (qy - t[1]!) + nz * (qz - t[2]!);
  if (hp === hq || hp * hq > 0) return false;
  const share = hp / (hp - hq);
  const x = px + (qx - px) * share;
  const y = py + (qy - py) * share;
  const z = pz + (qz - pz) * share;
  if (!isInside(x, y, z, nx, ny, nz, t)) return false;
  keep(x, y, z, x, y, z);
  return true;
}

/** Whether a point of the triangle's plane (normal n, any length) lies in the triangle. */
function isInside(x: number, y: number, z: number, nx: number, ny: number, nz: number, t: Triangle): boolean {
  for (let i = 0; i < 9; i += 3) {
    const j = i === 6 ? 0 : i + 3;
    const ex = t[j]! - t[i]!;
    const ey = t[j + 1]! - t[i + 1]!;
    const ez = t[j + 2]! - t[i + 2]!;
    const dx = x - t[i]!;
    const dy = y - t[i + 1]!;
    const dz = z - t[i + 2]!;
    const turn = (ey * dz - ez * dy) * nx + (ez * dx - ex * dz) * ny + (ex * dy - ey * dx) * nz;
    if (turn < 0) return false;
  }
  return true;
}
