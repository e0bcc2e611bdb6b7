import type { StrutName } from "./struts.ts";

/** Where the wheel is when a case loads it; a number is a travel, m. */
export type CasePlace = "ride" | "half-bump" | "full-bump" | "half-droop" | "full-droop" | number;

/**
 * One load on one rear wheel, in g: times what the wheel carries on the scale, or times the weight that is not sprung.
 * Never a fact about the car: factors are common practice, and the builder's to change.
 */
export interface LoadCase {
  readonly name: string;
  readonly at: CasePlace;
  /** What holds the wheel up. Of the others springs and gas act as they do at that travel, stop and strap not at all. */
  readonly carrier: StrutName;
  /** Up on the tyre, at the contact point; with `of: "unsprung"` at the wheel centre. */
  readonly vertical: number;
  /** On the tyre toward the car's centreline. */
  readonly inward: number;
  readonly forward: number;
  /** Where `inward` and `forward` act. */
  readonly acts: "contact" | "centre";
  /** What a g is a g of. */
  readonly of: "corner" | "unsprung";
  readonly turning: "rolling" | "brake" | "shaft";
  /** `forward` is no more than grip lets through, and under the shaft no more than the engine can. */
  readonly isLimited: boolean;
  /** Where its factors come from. */
  readonly from: string;
}

const COMMON = "common practice";

const common = (name: string, rest: Pick<LoadCase, "at" | "carrier" | "vertical"> & Partial<LoadCase>): LoadCase => ({
  name,
  inward: 0,
  forward: 0,
  acts: "contact",
  of: "corner",
  turning: "rolling",
  isLimited: false,
  from: COMMON,
  ...rest,
});

/**
 * The stated table. Factors are common practice for off-road buggies (3 g up, 1 to 1.5 g sideways, 1 to 2 g fore and aft on
 * one wheel, jumps 4 to 5 g); no standard stands behind them, and they are contested.
 */
export const COMMON_CASES: readonly LoadCase[] = [
  common("vertical bump", { at: "half-bump", carrier: "shock", vertical: 3 }),
  common("landing on two wheels", { at: "full-bump", carrier: "bump-stop", vertical: 4 }),
  common("landing on one wheel", { at: "full-bump", carrier: "bump-stop", vertical: 5, inward: 0.5 }),
  common("bottoming on the stop", { at: "full-bump", carrier: "bump-stop", vertical: 4 }),
  common("snatch on the strap", { at: "full-droop", carrier: "strap", vertical: -3, acts: "centre", of: "unsprung" }),
  common("cornering with bump", { at: "half-bump", carrier: "shock", vertical: 2, inward: 1.5 }),
  common("acceleration", {
    at: "ride",
    carrier: "shock",
    vertical: 1.5,
    forward: 2,
    turning: "shaft",
    isLimited: true,
  }),
  common("braking", { at: "ride", carrier: "shock", vertical: 1, forward: -1, turning: "brake", isLimited: true }),
  common("kerb or rock from the side", { at: "ride", carrier: "shock", vertical: 1, inward: 2 }),
  common("rock from the front", { at: "ride", carrier: "shock", vertical: 2, forward: -2, acts: "centre" }),
];

/** What a car document says of loads, in SI. */
export interface LoadsEntry {
  /** Friction between tyre and ground. */
  readonly grip: number;
  /** Most torque of the engine, N·m, and turns of the engine for one of the wheel in the lowest gear. */
  readonly engineTorque?: number;
  readonly gearing?: number;
  /** Of the torque, what one wheel gets, 0…1. */
  readonly wheelShare: number;
  /** The table with the builder's changes and additions. */
  readonly cases: readonly LoadCase[];
}

export const COMMON_LOADS: LoadsEntry = { grip: 1, wheelShare: 0.5, cases: COMMON_CASES };
