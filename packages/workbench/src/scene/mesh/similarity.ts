import type { Vec3 } from "@armwright/engine";
import { add, cross, dot, length, scale, subtract } from "../kit/space.ts";

/** A rotation, one scale for all directions, and a shift: vehicle point = scale · rotation · file point + translation. */
export interface Similarity {
  /** Metres a unit of the file. */
  readonly scale: number;
  /** Row by row, right-handed. */
  readonly rotation: readonly [number, number, number, number, number, number, number, number, number];
  /** Vehicle axes, m. */
  readonly translation: Vec3;
}

/** One spot that is known on both sides. */
export interface PointPair {
  /** On the mesh, in the file's own axes and unit. */
  readonly file: Vec3;
  /** On the car, vehicle axes, m. */
  readonly car: Vec3;
}

export type Fit =
  | {
      readonly ok: true;
      readonly placement: Similarity;
      /** How far each pair's two points lie apart once placed, m, in the order given. */
      readonly residuals: readonly number[];
    }
  | { readonly ok: false; readonly why: "too few" | "in line" | "not numbers" };

/** Points count as in line where they spread less than this share of their length to the side. */
const IN_LINE = 1e-3;

/**
 * The similarity that brings the file's points nearest to the car's, in the sense of least squares, from three pairs or
 * more. Rotation by Horn's unit quaternion (Horn, "Closed-form solution of absolute orientation using unit quaternions",
 * J. Opt. Soc. Am. A 4, 1987, 629–642, as remembered): the eigenvector of the largest eigenvalue of a symmetric 4×4
 * matrix. Scale that makes the squares least with that rotation: Σ car·R file / Σ |file|², both from their means.
 * Three points fit a mirrored mesh as well as a true one; only a fourth, out of their plane, tells.
 */
export function fitSimilarity(pairs: readonly PointPair[]): Fit {
  if (pairs.length < 3) return { ok: false, why: "too few" };
  const fileMean = mean(pairs.map(({ file }) => file));
  const carMean = mean(pairs.map(({ car }) => car));
  if (![fileMean, carMean].every(({ x, y, z }) => Number.isFinite(x + y + z))) return { ok: false, why: "not numbers" };
  const file = pairs.map((pair) => subtract(pair.file, fileMean));
  const car = pairs.map((pair) => subtract(pair.car, carMean));
  if (isInLine(file) || isInLine(car)) return { ok: false, why: "in line" };
  const rotation = rotationOf(file, car);
  let along = 0;
  let size = 0;
  file.forEach((point, i) => {
    along += dot(car[i]!, turn(rotation, point));
    size += dot(point, point);
  });
  const factor = along / size;
  const placement: Similarity = {
    scale: factor,
    rotation,
    translation: subtract(carMean, scale(turn(rotation, fileMean), factor)),
  };
  const residuals = pairs.map((pair) => length(subtract(toCar(placement, pair.file), pair.car)));
  return { ok: true, placement, residuals };
}

/** A point of the file on the car, vehicle axes, m. */
export const toCar = (p: Similarity, point: Vec3): Vec3 => add(scale(turn(p.rotation, point), p.scale), p.translation);

/** A point of the car in the file's axes and unit. */
export const toFile = (p: Similarity, point: Vec3): Vec3 =>
  scale(turnBack(p.rotation, subtract(point, p.translation)), 1 / p.scale);

/** A direction of the car in the file's axes. */
export const directionToFile = (p: Similarity, direction: Vec3): Vec3 => turnBack(p.rotation, direction);

/** Column by column, as graphics takes it. */
export function matrixOf({ scale: s, rotation: r, translation: t }: Similarity): number[] {
  return [
    r[0] * s,
    r[3] * s,
    r[6] * s,
    0,
    r[1] * s,
    r[4] * s,
    r[7] * s,
    0,
    r[2] * s,
    r[5] * s,
    r[8] * s,
    0,
    t.x,
    t.y,
    t.z,
    1,
  ];
}

type Rotation = Similarity["rotation"];

const turn = (r: Rotation, v: Vec3): Vec3 => ({
  x: r[0] * v.x + r[1] * v.y + r[2] * v.z,
  y: r[3] * v.x + r[4] * v.y + r[5] * v.z,
  z: r[6] * v.x + r[7] * v.y + r[8] * v.z,
});

const turnBack = (r: Rotation, v: Vec3): Vec3 => ({
  x: r[0] * v.x + r[3] * v.y + r[6] * v.z,
  y: r[1] * v.x + r[4] * v.y + r[7] * v.z,
  z: r[2] * v.x + r[5] * v.y + r[8] * v.z,
});

const mean = (points: readonly Vec3[]): Vec3 => scale(points.reduce(add), 1 / points.length);

/** Also where they coincide. Points are given from their mean. */
function isInLine(points: readonly Vec3[]): boolean {
  const farthest = points.reduce((a, b) => (dot(b, b) > dot(a, a) ? b : a));
  const reach = dot(farthest, farthest);
  return reach === 0 || points.every((point) => length(cross(farthest, point)) < IN_LINE * reach);
}

function rotationOf(file: readonly Vec3[], car: readonly Vec3[]): Rotation {
  const s = { xx: 0, xy: 0, xz: 0, yx: 0, yy: 0, yz: 0, zx: 0, zy: 0, zz: 0 };
  file.forEach((a, i) => {
    const b = car[i]!;
    s.xx += a.x * b.x;
    s.xy += a.x * b.y;
    s.xz += a.x * b.z;
    s.yx += a.y * b.x;
    s.yy += a.y * b.y;
    s.yz += a.y * b.z;
    s.zx += a.z * b.x;
    s.zy += a.z * b.y;
    s.zz += a.z * b.z;
  });
  const [w, x, y, z] = greatestEigenvector([
    [s.xx + s.yy + s.zz, s.yz - s.zy, s.zx - s.xz, s.xy - s.yx],
    [s.yz - s.zy, s.xx - s.yy - s.zz, s.xy + s.yx, s.zx + s.xz],
    [s.zx - s.xz, s.xy + s.yx, s.yy - s.xx - s.zz, s.yz + s.zy],
    [s.xy - s.yx, s.zx + s.xz, s.yz + s.zy, s.zz - s.xx - s.yy],
  ]);
  return [
    1 - 2 * (y * y + z * z),
    2 * (x * y - w * z),
    2 * (x * z + w * y),
    2 * (x * y + w * z),
    1 - 2 * (x * x + z * z),
    2 * (y * z - w * x),
    2 * (x * z - w * y),
    2 * (y * z + w * x),
    1 - 2 * (x * x + y * y),
  ];
}

const SWEEPS = 30;

/** Unit eigenvector of the largest eigenvalue of a symmetric 4×4 matrix, by Jacobi's rotations. The matrix is used up. */
function greatestEigenvector(m: number[][]): [number, number, number, number] {
  const v: number[][] = [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let off = 0;
    for (let p = 0; p < 3; p += 1) {
      for (let q = p + 1; q < 4; q += 1) {
        const a = m[p]![q]!;
        off += a * a;
        if (a === 0) continue;
        const theta = (m[q]![q]! - m[p]![p]!) / (2 * a);
        const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        for (let k = 0; k < 4; k += 1) {
          const kp = m[k]![p]!;
          const kq = m[k]![q]!;
          m[k]![p] = c * kp - s * kq;
          m[k]![q] = s * kp + c * kq;
        }
        for (let k = 0; k < 4; k += 1) {
          const pk = m[p]![k]!;
          const qk = m[q]![k]!;
          m[p]![k] = c * pk - s * qk;
          m[q]![k] = s * pk + c * qk;
          const vp = v[k]![p]!;
          const vq = v[k]![q]!;
          v[k]![p] = c * vp - s * vq;
          v[k]![q] = s * vp + c * vq;
        }
      }
    }
    if (off === 0) break;
  }
  let best = 0;
  for (let i = 1; i < 4; i += 1) if (m[i]![i]! > m[best]![best]!) best = i;
  return [v[0]![best]!, v[1]![best]!, v[2]![best]!, v[3]![best]!];
}
