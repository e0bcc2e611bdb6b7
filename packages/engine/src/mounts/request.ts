import type { ArmId, ShockEyes } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";

/** A shock that could be mounted: one line of the builder's shelf. All lengths m, angles rad. */
export interface ShockOption extends ShockEyes {
  readonly name: string;
  /** Eye to eye. */
  readonly shortest: number;
  readonly longest: number;
  readonly bodyDiameter: number;
  /** Outside of the spring; 0 where it carries none. */
  readonly springDiameter: number;
}

/** Where the upper mount may be; fixed to the chassis. */
export type UpperZone =
  | { readonly kind: "box"; readonly from: Vec3; readonly to: Vec3 }
  /** Along a tube among the keep-outs, `standoff` (m) out from its middle; the shock need not clear that tube. */
  | { readonly kind: "tube"; readonly keepOut: string; readonly standoff: Vec3 };

/** Where the lower mount may be, in the design position. */
export type LowerZone =
  /** Along a tube of an arm, the eye `standoff` (m) over its middle, between two fractions of its length. */
  | {
      readonly kind: "tube";
      readonly member: string;
      readonly standoff: number;
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: "box"; readonly on: ArmId | "spindle"; readonly from: Vec3; readonly to: Vec3 };

export interface Band {
  readonly least: number;
  readonly most: number;
}

export interface MountRequirements {
  /** Share of the stroke that the travel uses, 0…1. */
  readonly strokeUsed: Band;
  /** Motion ratio in the design position. */
  readonly motionRatio: Band;
  /** How much lower the motion ratio may be at full bump than at ride height. */
  readonly mayFall: number;
  /** Most lean from upright at full droop, ride height and full bump, rad. */
  readonly lean: number;
  /** Most that the shock may be off square to the arm at full bump, rad; left out: anything. */
  readonly offSquareAtBump?: number;
  /** Wanted to other moving parts, m. */
  readonly toMetal: number;
  readonly toTyre: number;
  /** Room for a wrench at both bolts; left out: not asked for. */
  readonly wrench?: WrenchRoom;
}

/** A straight socket that has to go on one end of each bolt, m. */
export interface WrenchRoom {
  readonly radius: number;
  /** Free length along the bolt, counted from the tab's outer face. */
  readonly length: number;
  /** Thickness of a tab: the socket begins half an eye's width and this away from the eye's middle. */
  readonly tab: number;
  /** With the wheel where. */
  readonly at: "ride" | "droop" | "either";
}

export interface MountRequest {
  readonly shocks: readonly ShockOption[];
  readonly upper: UpperZone;
  readonly lower: readonly LowerZone[];
  /** Between neighbours of the grid, m. */
  readonly step: number;
  /** Wheel travel between the stops, m; droop negative. */
  readonly travel: { readonly droop: number; readonly bump: number };
  /** Shaft that shall be left at each end, m. */
  readonly reserve: { readonly droop: number; readonly bump: number };
  readonly requirements: MountRequirements;
  /** Directions of the eyes' bolts in the design position, unit vectors; left out: along the arm's hinge line (a spindle: forward). */
  readonly bolts?: { readonly upper?: Vec3; readonly lower?: Vec3 };
  /** Names of tubes among the keep-outs that may carry the upper mount; left out: those that the car marks. */
  readonly frame?: readonly string[];
  /** Positions at which clearances are judged; between them a bound holds them. */
  readonly stations?: number;
  /** Slack that a tacked mount is easily set to, m: less of it costs in the short list; 0: slack is not looked at. */
  readonly easySlack?: number;
  /** Entries of the short list. */
  readonly shortList?: number;
  /** Two entries differ by at least this, m: both mounts' distances added. */
  readonly spread?: number;
}

const INCH = 0.0254;
const DEGREE = Math.PI / 180;

export const DEFAULT_GRID_STATIONS = 25;
/** Common practice, no source. */
export const DEFAULT_EASY_SLACK = 0.25 * INCH;
export const DEFAULT_SHORT_LIST = 5;
export const DEFAULT_SPREAD = 3 * INCH;

/** Common practice, no source: a 3/4 in socket with a finger's room, and a short ratchet behind it. */
export const COMMON_WRENCH: WrenchRoom = { radius: 0.75 * INCH, length: 3 * INCH, tab: 0.25 * INCH, at: "either" };

/** Common practice, no source. */
export const COMMON_REQUIREMENTS: MountRequirements = {
  strokeUsed: { least: 0.8, most: 0.92 },
  motionRatio: { least: 0.45, most: 0.95 },
  mayFall: 0.02,
  lean: 50 * DEGREE,
  toMetal: 0.25 * INCH,
  toTyre: 0.5 * INCH,
  wrench: COMMON_WRENCH,
};

/** Common practice, no source: so that strap and bump stop, never the shock, end the travel. */
export const COMMON_RESERVE = { droop: 0.25 * INCH, bump: 0.375 * INCH } as const;

/** What a candidate is tried on, in this order; the first that it fails counts as what killed it. */
export const REQUIREMENTS = [
  "too-long-at-droop",
  "too-short-at-bump",
  "stroke-used",
  "turns-back",
  "motion-ratio",
  "motion-ratio-falls",
  "lean",
  "eye-misalignment",
  "off-square",
  "clearance",
  "wrench",
] as const;
export type RequirementCode = (typeof REQUIREMENTS)[number];
/** Places in REQUIREMENTS. */
export const KILL = {
  tooLong: 0,
  tooShort: 1,
  strokeUsed: 2,
  turnsBack: 3,
  motionRatio: 4,
  falls: 5,
  lean: 6,
  eye: 7,
  offSquare: 8,
  clearance: 9,
  wrench: 10,
} as const;

export const shockRadius = (shock: ShockOption): number => 0.5 * Math.max(shock.bodyDiameter, shock.springDiameter);
