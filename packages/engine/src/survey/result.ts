import type { Vec3 } from "../geometry/vec3.ts";
import type { Component } from "./equations.ts";
import type { Axis, PointIndex, ReadingKind, SurveyReading } from "./survey.ts";

/** What a survey came to. All lengths in m, angles in rad, vehicle axes; all spreads are standard deviations. */
export interface SurveyResult {
  readonly status: "solved" | "not-converged" | "no-points";
  /** In the order of `Survey.points`. */
  readonly points: readonly SolvedPoint[];
  /**
   * Of all coordinates, m²: point i has rows and columns 3i (x), 3i + 1 (y), 3i + 2 (z). From the readings' stated
   * standard deviations. Zero for fixed coordinates; a direction that no reading tells has no part in it.
   */
  readonly covariance: readonly Float64Array[];
  /** In the order of `Survey.readings`. */
  readonly readings: readonly SolvedReading[];
  /** Readings' numbers in use, less what they determine. */
  readonly degreesOfFreedom: number;
  /** Sum of squared misfits over standard deviations. */
  readonly sumOfSquares: number;
  /** Spread found ÷ spread stated: square root of sum over degrees of freedom; null without any. */
  readonly scatter: number | null;
  /** The sum against chi-square: whether the readings agree as well as they claim to. Null without degrees of freedom. */
  readonly agreement: { readonly probability: number; readonly isMisfit: boolean } | null;
  /** Readings that the others contradict, worst first. They are not used. */
  readonly suspicions: readonly Suspicion[];
  /** The share of sound numbers that the test calls wrong. */
  readonly falseAlarmRate: number;
  readonly undetermined: readonly Undetermined[];
  readonly mirrored: readonly Mirrored[];
}

export interface SolvedPoint {
  readonly name: string;
  readonly at: Vec3;
  readonly sd: Vec3;
  /** Whether some direction of it is told by no reading: it then stands where the search left it. */
  readonly isUndetermined: boolean;
}

export interface SolvedReading {
  readonly isUsed: boolean;
  readonly numbers: readonly SolvedNumber[];
}

export interface SolvedNumber {
  readonly part: Component["part"];
  readonly observed: number;
  /** What the adjusted points make it. */
  readonly adjusted: number;
  /** adjusted - observed. */
  readonly residual: number;
  readonly sd: number;
  /** Standard deviation of `adjusted`. */
  readonly adjustedSd: number;
  /** Share of an error in it that shows in its own residual, 0 (nothing else controls it) to 1; null where not used. */
  readonly redundancy: number | null;
  /** Residual over its own standard deviation (Baarda's w); null where nothing else controls it, or it is not used. */
  readonly test: number | null;
}

export interface Suspicion {
  /** Place in `Survey.readings`. */
  readonly reading: number;
  readonly part: Component["part"];
  /** As read, less what was to be added. */
  readonly reads: number;
  /** What the other readings say that it should read, and how sure they are. */
  readonly others: number;
  readonly othersSd: number;
  /** w when it was set aside, and the limit that it passed. */
  readonly test: number;
  readonly limit: number;
  readonly causes: readonly Cause[];
  /** Other readings that would explain it as well: the test cannot tell them apart. */
  readonly alternatives: readonly number[];
}

export type Cause =
  | { readonly kind: "slip"; readonly by: number }
  | { readonly kind: "wrong-end"; readonly by: number }
  | { readonly kind: "digits-swapped"; readonly meant: number }
  | { readonly kind: "sign" }
  | { readonly kind: "addition"; readonly add: number };

export interface Undetermined {
  readonly point: PointIndex;
  /** The direction that cannot be told, unit vector. */
  readonly way: Vec3;
  /** The vehicle axis that it is nearest to, and whether it is nearly that. */
  readonly axis: Axis;
  readonly isAlongAxis: boolean;
  /** One reading that tells it. */
  readonly remedy: SurveyReading | null;
}

export interface Mirrored {
  /** Points that lie elsewhere in the other solution. */
  readonly points: readonly { readonly point: PointIndex; readonly other: Vec3 }[];
  /** Sum of squares of the other solution. */
  readonly sumOfSquares: number;
  /** What tells the two apart: a side to be stated, or a reading with what it would read in each. */
  readonly settledBy:
    | { readonly kind: "side"; readonly point: PointIndex }
    | { readonly kind: "reading"; readonly reading: SurveyReading; readonly here: number; readonly there: number };
}

/** A reading worth taking next. */
export interface NextReading {
  readonly reading: SurveyReading;
  /** Place in `Survey.readings` where it was wanted already. */
  readonly deferred?: number;
  /** What it would read, and how sure that is now. */
  readonly expected: number;
  readonly expectedSd: number;
  /** Root-sum-square spread (or spread of the result) before and after, m or the result's unit. */
  readonly before: number;
  readonly after: number;
  /** Whether it tells something that no reading has told. */
  readonly isNeeded: boolean;
  readonly kind: ReadingKind;
}
