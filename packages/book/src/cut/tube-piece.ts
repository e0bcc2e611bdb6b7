import type { Vec3 } from "@armwright/engine";
import type { CopedEnd, CopePoint, RoundTube } from "../cope/cope-line.ts";
import type { SetBack } from "./bung-set-back.ts";

/** A straight round tube as it is cut, on the left side; the right side takes its mirror image. */
export interface TubePiece {
  readonly id: string;
  readonly name: string;
  /** The arm or link that it belongs to. */
  readonly part: string;
  /** m */
  readonly diameter: number;
  readonly wall: number;
  readonly material: string;
  /** kg/m³ */
  readonly density: number;
  readonly from: TubeEnd;
  readonly to: TubeEnd;
  /** Between the two ends' points on the axis: ball to ball, axis to axis, m. */
  readonly centres: number;
  /** To saw off, longest tip to longest tip, m. */
  readonly length: number;
  /** Made from the car's points because the builder drew no frame: sizes and crossings are a start. */
  readonly isAssumed: boolean;
}

export type TubeEnd = BungEnd | CopeEnd | SquareEnd;

interface CommonEnd {
  /** Where the axis ends: the ball, or where it meets another tube's axis, m. */
  readonly point: Vec3;
  /** In words: `lower arm, inner front`. */
  readonly at: string;
}

/** A threaded insert welded into the tube's end, which is sawn square. */
export interface BungEnd extends CommonEnd {
  readonly kind: "bung";
  readonly pivot: string;
  readonly setBack: SetBack;
  readonly hand: "right" | "left";
}

/** Sits on other tubes. */
export interface CopeEnd extends CommonEnd {
  readonly kind: "cope";
  readonly onto: readonly (RoundTube & { /** Of its piece. */ readonly id: string; readonly name: string })[];
  /** Out of the tube. */
  readonly outward: Vec3;
  /** Where the wrapped papers of both ends have their seam: one straight line along the tube. */
  readonly seam: Vec3;
  /** What the line was made from. */
  readonly cut: CopedEnd;
  readonly line: readonly CopePoint[];
  /** Where its longest tip is, m along `outward` from the point; mostly negative. */
  readonly tip: number;
  /** Angle between the two axes, rad. */
  readonly angle: number;
  /** Ids of tubes that end before the cope does: there it meets their bung or nothing, and is fitted on the car. */
  readonly pastEndOf: readonly string[];
}

/** Sawn square where its axis ends: to be fitted on the car. */
export interface SquareEnd extends CommonEnd {
  readonly kind: "square";
}

/** kg of one. */
export const massOfPiece = ({ diameter, wall, density, length }: TubePiece): number =>
  Math.PI * (diameter - wall) * wall * density * length;
