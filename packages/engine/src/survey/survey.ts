import type { Vec3 } from "../geometry/vec3.ts";

/** What was taped of a car: named points, and readings between them. SI, vehicle axes (ISO 8855). */
export interface Survey {
  readonly points: readonly SurveyPoint[];
  readonly readings: readonly SurveyReading[];
  /** Standard deviation of a reading that has none of its own, by kind; m, and rad for `level`. */
  readonly uncertainty: Readonly<Record<ReadingKind, number>>;
  /** `free`: fixed coordinates only start the adjustment, and the net is laid on them with the least movement. */
  readonly adjustment: "constrained" | "free";
}

export type Axis = "x" | "y" | "z";
export const AXES = ["x", "y", "z"] as const satisfies readonly Axis[];

export interface SurveyPoint {
  readonly name: string;
  /** Which side of the centreline it is on, where the builder says so. */
  readonly side?: "left" | "right" | "centre";
  /** Coordinates that hold exactly, m. */
  readonly fixed: Partial<Vec3>;
  /** Roughly known coordinates, m: they start the search and choose between mirrored solutions, and weigh nothing. */
  readonly rough: Partial<Vec3>;
}

export type ReadingKind = "tape" | "height" | "out" | "along" | "level" | "in-line" | "offset" | "mirror";

/** A place in `Survey.points`. */
export type PointIndex = number;

interface ReadingCommon {
  /** Standard deviation, m or rad, where the reading has its own. */
  readonly sd?: number;
  /** Wanted, not taken yet: it counts for nothing, and is suggested first. */
  readonly isDeferred: boolean;
}

interface ReadLength extends ReadingCommon {
  /** As the tape read, m; 0 where deferred. */
  readonly reads: number;
  /** Added to what was read, m: half a tube's diameter where the tape touched its surface. */
  readonly add: number;
}

export type SurveyReading =
  | (ReadLength & { readonly kind: "tape"; readonly from: PointIndex; readonly to: PointIndex })
  /** Up from the floor, or from the level through another point. */
  | (ReadLength & { readonly kind: "height"; readonly point: PointIndex; readonly above?: PointIndex })
  /** Out from the centreline, or from a string along the car through another point; toward the point's own side. */
  | (ReadLength & { readonly kind: "out"; readonly point: PointIndex; readonly from?: PointIndex })
  /** Forward of the mark, or of another point. */
  | (ReadLength & { readonly kind: "along"; readonly point: PointIndex; readonly from?: PointIndex })
  /** Angle of a bar across two points above the level, rad: positive when `to` is the higher. */
  | (ReadingCommon & {
      readonly kind: "level";
      readonly from: PointIndex;
      readonly to: PointIndex;
      readonly reads: number;
    })
  /** The point lies on the line through two others. */
  | (ReadingCommon & {
      readonly kind: "in-line";
      readonly point: PointIndex;
      readonly from: PointIndex;
      readonly to: PointIndex;
    })
  /** How `to` lies from `from`, m along vehicle axes; axes left out are not known. */
  | (ReadingCommon & {
      readonly kind: "offset";
      readonly from: PointIndex;
      readonly to: PointIndex;
      readonly by: Partial<Vec3>;
    })
  /** The two are each other's image in the centreline. */
  | (ReadingCommon & { readonly kind: "mirror"; readonly left: PointIndex; readonly right: PointIndex });

/** Points that a reading is about, each once. */
export function pointsOf(reading: SurveyReading): readonly PointIndex[] {
  switch (reading.kind) {
    case "tape":
    case "level":
    case "offset":
      return [reading.from, reading.to];
    case "height":
      return reading.above === undefined ? [reading.point] : [reading.point, reading.above];
    case "out":
    case "along":
      return reading.from === undefined ? [reading.point] : [reading.point, reading.from];
    case "in-line":
      return [reading.point, reading.from, reading.to];
    case "mirror":
      return [reading.left, reading.right];
  }
}

export const sdOf = (survey: Pick<Survey, "uncertainty">, reading: SurveyReading): number =>
  reading.sd ?? survey.uncertainty[reading.kind];

/** +1 where out means left, -1 where it means right. */
export const outward = (point: SurveyPoint): 1 | -1 => (point.side === "right" ? -1 : 1);
