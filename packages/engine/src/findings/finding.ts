import type { Dimension } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";

/** `must`: the car would be hurt or would not work; `mind`: look again; `note`: good to know. */
export type Gravity = "must" | "mind" | "note";

/**
 * One judgement, as data: what (code), how grave, the numbers, where it bites and where it comes from. Terminal, page and
 * paper say it with the same words (`findings/say-finding.ts`).
 */
export interface Finding {
  readonly code: FindingCode;
  readonly gravity: Gravity;
  /** Place in the document to look at. */
  readonly place: string;
  /** m, where it is about one position of the wheel. */
  readonly travel?: number;
  /** The spot on the car, vehicle axes, m. */
  readonly at?: Vec3;
  /** What the judgement rests on. */
  readonly source: string;
  readonly values: Readonly<Record<string, FindingValue>>;
}

export type FindingValue =
  | string
  | {
      readonly value: number;
      readonly dimension: Dimension;
      readonly denominator?: 16 | 32;
      /** A wall as it is sold: inches to a thousandth. */
      readonly isWall?: true;
    };

export type FindingCode =
  | "past-at-ride"
  | "stop-past-at-ride"
  | "another-part-stops-first"
  | "wheel-off-the-ground"
  | "joint-off-the-stub-axle"
  | "shock-lengthens-in-bump"
  | "limit-before-stop"
  | "limit-close"
  | "limit-uncertain"
  | "stop-does-not-work"
  | "no-part-stops-the-wheel"
  | "shock-is-the-stop"
  | "bump-stop-touched-at-ride"
  | "clearance-short"
  | "travel-short"
  | "shock-short-for-travel"
  | "ground-clearance-short"
  | "track-differs"
  | "wheelbase-differs"
  | "joint-angle-at-ride"
  | "joint-limit-unknown"
  | "speed-ripple"
  | "toe-change"
  | "toe-at-ride"
  | "camber-range"
  | "motion-ratio-low"
  | "motion-ratio-falls"
  | "springs-missing"
  | "springs-need-weights"
  | "springs-do-not-fit"
  | "coil-bind-before-stop"
  | "spring-loose-at-droop"
  | "car-sits-on-its-stop"
  | "ride-height-off"
  | "ride-frequency"
  | "main-softer-than-tender"
  | "crossover-at-ride"
  | "strap-stretches-past"
  | "strap-across"
  | "bump-stop-off-square"
  | "bump-stop-overrun"
  | "part-weak"
  | "rod-end-limits-unknown"
  | "survey-suspicious-reading"
  | "survey-misfit"
  | "survey-undetermined"
  | "survey-mirrored"
  | "assumed-values"
  | "cycle-before-welding";

export const length = (value: number, denominator?: 16 | 32): FindingValue => ({
  value,
  dimension: "length",
  ...(denominator && { denominator }),
});
export const wall = (value: number): FindingValue => ({ value, dimension: "length", isWall: true });
export const angle = (value: number): FindingValue => ({ value, dimension: "angle" });
export const ratio = (value: number): FindingValue => ({ value, dimension: "ratio" });
export const percent = (value: number): FindingValue => ({ value, dimension: "percent" });
export const count = (value: number): FindingValue => ({ value, dimension: "count" });
