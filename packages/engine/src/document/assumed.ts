import type { Dimension } from "../car/car.ts";
import { DEGREE, INCH } from "../units/convert.ts";

/**
 * What is put in for a field that was left out. `from` makes the value (SI, or a word) out of what it rests on;
 * `words` says the same for the reference; `because` says where it comes from.
 */
export interface Assumed<Rest = void> {
  readonly dimension: Dimension;
  readonly from: (rest: Rest) => number | string;
  readonly words: string;
  readonly because: string;
}

export const inches = (value: number): number => value * INCH;
export const degrees = (value: number): number => value * DEGREE;

/** A range met in practice, SI. */
export interface Typical {
  readonly from: number;
  readonly to: number;
}

export const inchRange = (from: number, to: number): Typical => ({ from: inches(from), to: inches(to) });
export const degreeRange = (from: number, to: number): Typical => ({ from: degrees(from), to: degrees(to) });
