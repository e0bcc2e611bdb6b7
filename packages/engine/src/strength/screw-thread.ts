import type { Thread } from "../units/thread.ts";

/** Areas and diameters of a screw thread from its major diameter and pitch, in the thread's own unit of length. */

/** Unified threads come in inches, metric ones in millimetres: their published stress areas differ a little. */
export type ThreadSystem = "unified" | "metric";

/** Stress area: π/4 (D − 0.9743 p)² (ASME B1.1), π/4 (d − 0.9382 p)² (ISO 898-1). */
export const stressArea = ({ diameter, pitch }: Thread, system: ThreadSystem): number =>
  (Math.PI / 4) * (diameter - (system === "unified" ? 0.9743 : 0.9382) * pitch) ** 2;

/** Pitch diameter D − 0.649519 p, basic minor diameter of the nut D − 1.082532 p, root of the bolt (UNR) D − 1.19058 p. */
export const pitchDiameter = ({ diameter, pitch }: Thread): number => diameter - 0.649519 * pitch;
export const minorDiameter = ({ diameter, pitch }: Thread): number => diameter - 1.082532 * pitch;
export const rootDiameter = ({ diameter, pitch }: Thread): number => diameter - 1.19058 * pitch;

/** Engagement at which thread and bolt are equally strong, of one material: FED-STD-H28, 2 At / {π Kn [½ + 0.57735 n (Es − Kn)]}. */
export function engagementForBolt(
  thread: Thread,
  system: ThreadSystem,
  leastPitchDiameter: number,
  greatestMinorOfNut: number,
): number {
  const area = stressArea(thread, system);
  const overlap = 0.5 + (0.57735 / thread.pitch) * (leastPitchDiameter - greatestMinorOfNut);
  return (2 * area) / (Math.PI * greatestMinorOfNut * overlap);
}

/** Sold in inches or millimetres? A pitch that is a whole count a inch is unified. */
export function systemOf({ pitch }: Thread): ThreadSystem {
  const perInch = 0.0254 / pitch;
  return Math.abs(perInch - Math.round(perInch)) < 1e-6 ? "unified" : "metric";
}

/**
 * Area of a rod end's shank at the thread: a circle on the root of the thread, π/4 rounded to 0.78 as rod-end makers'
 * engineering pages print it (read second-hand); 94.6 to 96.3 % of the stress area of ASME B1.1.
 */
export const shankArea = (thread: Thread): number => 0.78 * rootDiameter(thread) ** 2;
