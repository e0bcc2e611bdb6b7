import { INCH } from "../units/convert.ts";

/** What is asked of the stops; all common practice or from memory, no source: the builder says his own. */
export interface StopsWish {
  /** The car falls flat this far, wheels hanging, m. */
  readonly dropHeight: number;
  /** Share of critical that the dampers give (0: they are left out). */
  readonly dampingBump: number;
  readonly dampingRebound: number;
  /** Wheel speed when the strap comes taut, m/s; left out, it follows from springs and weight. */
  readonly snatchSpeed?: number;
  /** Wheel travel kept between taut strap (stretched) or solid stop and the first hard limit, m. */
  readonly marginDroop: number;
  readonly marginBump: number;
  /** Shaft left with the strap just taut, and with the stop solid, m. */
  readonly shaftAtDroop: number;
  readonly shaftAtBump: number;
  /** Wheel travel over which a bump stop works, m. */
  readonly stopWorks: number;
  /** Most that it may land off square, rad. */
  readonly offSquare: number;
  /** Most that a strap may pull across its mount's path, rad. */
  readonly strapAcross: number;
  /** Length of a strap where there is none yet, m. */
  readonly strapLength: number;
}

export const USUAL_STOPS: StopsWish = {
  dropHeight: 12 * INCH,
  dampingBump: 0.3,
  dampingRebound: 0.55,
  marginDroop: INCH / 4,
  marginBump: INCH / 4,
  shaftAtDroop: INCH / 2,
  shaftAtBump: INCH / 4,
  stopWorks: 3 * INCH,
  offSquare: (10 * Math.PI) / 180,
  strapAcross: (50 * Math.PI) / 180,
  strapLength: 18 * INCH,
};
