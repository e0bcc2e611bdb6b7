import { PSI } from "../units/convert.ts";
import type { Thread } from "../units/thread.ts";
import { BREAKING_TO_LIMIT, SHEAR_OF_ULTIMATE } from "./material.ts";
import { stressArea, systemOf } from "./screw-thread.ts";

/** Grades as marked on the head. */
export type BoltGrade = "2" | "5" | "8" | "8.8" | "10.9" | "12.9";
export const BOLT_GRADES = ["2", "5", "8", "8.8", "10.9", "12.9"] as const satisfies readonly BoltGrade[];

export interface BoltStrength {
  /** Pa */
  readonly proof: number;
  readonly tensile: number;
  readonly source: string;
}

const ksi = (value: number): number => value * 1000 * PSI;
const mpa = (value: number): number => value * 1e6;
const INCH = 0.0254;
const J429 = "SAE J429";
const ISO898 = "ISO 898-1";

/** Least proof and tensile stress; those of inch bolts fall over a size. */
export function boltStrength(grade: BoltGrade, diameter: number): BoltStrength {
  switch (grade) {
    case "2":
      return diameter <= 0.75 * INCH + 1e-9
        ? { proof: ksi(55), tensile: ksi(74), source: J429 }
        : { proof: ksi(33), tensile: ksi(60), source: J429 };
    case "5":
      return diameter <= INCH + 1e-9
        ? { proof: ksi(85), tensile: ksi(120), source: J429 }
        : { proof: ksi(74), tensile: ksi(105), source: `${J429}, proof from memory` };
    case "8":
      return { proof: ksi(120), tensile: ksi(150), source: J429 };
    case "8.8":
      return diameter <= 0.016
        ? { proof: mpa(580), tensile: mpa(800), source: ISO898 }
        : { proof: mpa(600), tensile: mpa(830), source: `${ISO898}, from memory` };
    case "10.9":
      return { proof: mpa(830), tensile: mpa(1040), source: ISO898 };
    case "12.9":
      return { proof: mpa(970), tensile: mpa(1220), source: `${ISO898}, from memory` };
  }
}

/** Force that a bolt breaks at in shear: planes · π/4 d² · shear strength; thread in a shear plane leaves the root's area. */
export const boltShear = (diameter: number, planes: 1 | 2, shearStrength: number): number =>
  planes * (Math.PI / 4) * diameter ** 2 * shearStrength;

/** The same out of its grade: 0.6 of the tensile strength (common practice), ÷ 1.5 as its limit. N. */
export function boltShearLimit(grade: BoltGrade, diameter: number, planes: 1 | 2): number {
  const { tensile } = boltStrength(grade, diameter);
  return boltShear(diameter, planes, SHEAR_OF_ULTIMATE * tensile) / BREAKING_TO_LIMIT;
}

/** Force up to which it comes back to its length: proof stress on the stress area, N. */
export const boltProofForce = (grade: BoltGrade, thread: Thread): number =>
  boltStrength(grade, thread.diameter).proof * stressArea(thread, systemOf(thread));

/** Torque for a preload: T = K D F. */
export const tighteningTorque = (factor: number, diameter: number, preload: number): number =>
  factor * diameter * preload;

/** Bending stress of a bolt that sticks out of one tab and is loaded at `lever` from it: 32 F l / (π d³). */
export const boltBending = (diameter: number, force: number, lever: number): number =>
  (32 * force * lever) / (Math.PI * diameter ** 3);
