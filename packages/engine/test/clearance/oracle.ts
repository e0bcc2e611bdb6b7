import { readFileSync } from "node:fs";
import type { RoundedSolid, Solid } from "../../src/clearance/shapes.ts";
import { addScaled, scale, type Vec3, vec } from "../../src/geometry/vec3.ts";

/** One pair as reference/clearance/README.md describes it; the distance is null where the cores overlap. */
type Row = readonly [readonly number[], readonly number[], number | null];
const PAIRS = new URL("../../../../reference/clearance/pairs.json", import.meta.url);
const file = JSON.parse(readFileSync(PAIRS, "utf8")) as {
  readonly unit: number;
  readonly pairs: Readonly<Record<string, readonly Row[]>>;
};

export interface OraclePair {
  readonly a: RoundedSolid;
  readonly b: Solid;
  readonly distance: number | null;
}

/** The library's pairs of one type, e.g. "cw": a capsule (c) and a wheel (w); also box (b), half-space (h). */
export function oraclePairs(type: string): readonly OraclePair[] {
  const rows = file.pairs[type];
  if (rows === undefined) throw new Error(`no pairs of type ${type} in ${PAIRS.pathname}`);
  return rows.map(([a, b, distance]) => {
    const solid = solidOf(type.charAt(0), a);
    if (solid.shape === "half-space") throw new Error("the half-space comes second");
    return { a: solid, b: solidOf(type.charAt(1), b), distance };
  });
}

function solidOf(kind: string, row: readonly number[]): Solid {
  const at = (i: number): number => {
    const value = row[i];
    if (value === undefined) throw new Error(`a solid of kind ${kind} with ${row.length} numbers`);
    return value;
  };
  const size = (i: number): number => at(7 + i) * file.unit;
  const centre = vec(at(0) * file.unit, at(1) * file.unit, at(2) * file.unit);
  const [axisX, axisY, axisZ] = axesOf(at(3), at(4), at(5), at(6));
  switch (kind) {
    case "c":
      return {
        shape: "capsule",
        from: addScaled(centre, axisZ, -size(0)),
        to: addScaled(centre, axisZ, size(0)),
        radius: size(1),
      };
    case "b":
      return { shape: "box", centre, axisX, axisY, half: vec(size(0), size(1), size(2)), radius: size(3) };
    case "w":
      return { shape: "wheel", centre, axis: axisZ, coreRadius: size(0), coreHalfWidth: size(1), radius: size(2) };
    case "h":
      return { shape: "half-space", point: centre, normal: axisZ };
    default:
      throw new Error(`no solid of kind ${kind}`);
  }
}

/** The three axes that a quaternion (w, x, y, z, of any length) turns the vehicle's axes to. */
function axesOf(w: number, x: number, y: number, z: number): readonly [Vec3, Vec3, Vec3] {
  const n = 1 / (w * w + x * x + y * y + z * z);
  return [
    scale(vec(w * w + x * x - y * y - z * z, 2 * (x * y + w * z), 2 * (x * z - w * y)), n),
    scale(vec(2 * (x * y - w * z), w * w - x * x + y * y - z * z, 2 * (y * z + w * x)), n),
    scale(vec(2 * (x * z + w * y), 2 * (y * z - w * x), w * w - x * x - y * y + z * z), n),
  ];
}
