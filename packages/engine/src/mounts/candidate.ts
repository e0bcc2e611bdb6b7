import type { Vec3 } from "../geometry/vec3.ts";
import type { LowerPoint } from "./grid.ts";
import { type LoadPath, loadPathOf } from "./load-path.ts";
import { lowerPath } from "./movement.ts";
import { REQUIREMENTS, type RequirementCode, type ShockOption } from "./request.ts";
import type { Search } from "./search.ts";
import { MEASURED as AT, findSpare, makeTrial, type Trial, tryUpper } from "./trial.ts";

/** One pair of mounts with one shock, judged over the whole travel, whether on the grid or not. */
export interface Judged {
  readonly shock: ShockOption;
  readonly upper: Vec3;
  readonly lower: LowerPoint;
  /** What it fails first; null where it fits. Numbers below are only there where it fits. */
  readonly fails: RequirementCode | null;
  /** Eye to eye, m. */
  readonly atDroop: number;
  readonly atRide: number;
  readonly atBump: number;
  /** Share of the stroke. */
  readonly strokeUsed: number;
  readonly motionRatio: number;
  readonly motionRatioAtDroop: number;
  readonly motionRatioAtBump: number;
  /** Greatest lean from upright at droop, ride and bump; greatest tilt of an eye; off square to the arm at full bump; rad. */
  readonly lean: number;
  readonly eyeTilt: number;
  readonly offSquare: number;
  /** Spare room round the wrench at the tighter of the two bolts, m; null where none was asked for. */
  readonly wrenchRoom: number | null;
  /** From the upper mount to the nearest tube of the frame; null where none is known. */
  readonly loadPath: LoadPath | null;
  /** Least gap over what is wanted, all told, m; the obstacle (its label), the travel there, and the gap itself. */
  readonly spare: number;
  readonly nearest: {
    readonly id: string;
    readonly label: string;
    readonly travel: number;
    readonly gap: number;
  } | null;
}

export function judgeMounts(search: Search, shock: ShockOption, upper: Vec3, lower: LowerPoint): Judged {
  const trial = makeTrial(search, shock, lowerPath(search.corner, search.movement, lower, search.request.bolts));
  const killer = tryUpper(trial, upper.x, upper.y, upper.z);
  return judged(search, trial, upper, lower, killer);
}

/** The trial as well, for what is worked out from the same numbers. */
export function trialOf(search: Search, shock: ShockOption, lower: LowerPoint): Trial {
  return makeTrial(search, shock, lowerPath(search.corner, search.movement, lower, search.request.bolts));
}

const NO_SPARE = { least: Number.NEGATIVE_INFINITY, obstacle: -1, station: -1 } as const;

function judged(search: Search, trial: Trial, upper: Vec3, lower: LowerPoint, killer: number): Judged {
  const m = trial.measured;
  const spare = killer < 0 ? findSpare(trial, upper.x, upper.y, upper.z) : NO_SPARE;
  const met = trial.obstacles[spare.obstacle];
  return {
    shock: trial.shock,
    upper,
    lower,
    fails: killer < 0 ? null : REQUIREMENTS[killer]!,
    atDroop: m[AT.atDroop]!,
    atRide: m[AT.atRide]!,
    atBump: m[AT.atBump]!,
    strokeUsed: m[AT.strokeUsed]!,
    motionRatio: m[AT.ratioRide]!,
    motionRatioAtDroop: m[AT.ratioDroop]!,
    motionRatioAtBump: m[AT.ratioBump]!,
    lean: Math.acos(Math.min(1, m[AT.cosLean]!)),
    eyeTilt: Math.asin(Math.min(1, m[AT.sinEye]!)),
    offSquare: Math.asin(Math.min(1, m[AT.sinOff]!)),
    wrenchRoom: trial.wrench ? Math.min(trial.wrench.lower, trial.wrench.upperRoom(upper.x, upper.y, upper.z)) : null,
    loadPath: loadPathOf(search.frame, upper),
    spare: spare.least,
    nearest: met
      ? {
          id: met.id,
          label: met.label,
          travel: search.movement.travels[spare.station]!,
          gap: spare.least + trial.needs[spare.obstacle]! - trial.radius - met.radius,
        }
      : null,
  };
}
