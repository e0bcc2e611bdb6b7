import type { Vec3 } from "@armwright/engine";
import type { Similarity } from "../scene/mesh/similarity.ts";

/** Metres a unit: a file in metres, inches or millimetres, whichever makes a chassis of it. */
const UNITS = [1, 0.0254, 0.001];
const SHORTEST = 0.3;
const LONGEST = 8;
/** Under the middle of a chassis, m. */
const OFF_GROUND = 0.25;

/**
 * Where a scan stands until it is placed, only so that it can be seen and touched: its middle over the rear axle, upright as
 * its kind of file says (GLB has y up, z forward; the others are taken to have x forward, z up), in a likely unit.
 */
export function standIn(file: string, low: Vec3, high: Vec3, axleX: number): Similarity {
  const reach = Math.max(high.x - low.x, high.y - low.y, high.z - low.z) || 1;
  const scale = UNITS.find((unit) => reach * unit >= SHORTEST && reach * unit <= LONGEST) ?? 2 / reach;
  const isGlb = file.toLowerCase().endsWith(".glb");
  const middle = { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2, z: (low.z + high.z) / 2 };
  const turned = isGlb ? { x: middle.z, y: middle.x, z: middle.y } : middle;
  const height = (isGlb ? high.y - low.y : high.z - low.z) * scale;
  return {
    scale,
    rotation: isGlb ? [0, 0, 1, 1, 0, 0, 0, 1, 0] : [1, 0, 0, 0, 1, 0, 0, 0, 1],
    translation: {
      x: axleX - turned.x * scale,
      y: -turned.y * scale,
      z: OFF_GROUND + height / 2 - turned.z * scale,
    },
  };
}
