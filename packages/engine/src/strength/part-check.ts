import type { Dimension } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";

/** What is held against what. */
export type CheckCode =
  | "tube-at-weld"
  | "link-pushed"
  | "link-pulled"
  | "rod-end"
  | "rod-end-shank"
  | "bolt-shear"
  | "bolt-bending"
  | "tab-bearing"
  | "tab-tear-out"
  | "tab-net"
  | "tab-side"
  | "tab-weld"
  | "shaft-torsion"
  | "shaft-joint"
  | "stub-bending";

/** One part held against one limit, in the load case that comes nearest to it. */
export interface PartCheck {
  /** As `--part` takes it: `lowerArm.front`, `upperLink`, `shock.lower`. */
  readonly part: string;
  readonly label: string;
  readonly check: CheckCode;
  /** Name of the load case; null where none loads it. */
  readonly loadCase: string | null;
  /** m */
  readonly travel: number;
  /** In words, where it is along the part; empty where the part is one place. */
  readonly where: string;
  readonly at?: Vec3;
  readonly demand: number;
  readonly allowable: number;
  readonly dimension: Dimension;
  /** allowable ÷ demand; null: not loaded by these cases. */
  readonly factor: number | null;
  /** What the allowable rests on, in words. */
  readonly basis: string;
}

/** Factors beyond this say only that the cases do not load the part. */
export const ABSURD_FACTOR = 100;

export interface Load {
  readonly loadCase: string;
  readonly travel: number;
  readonly demand: number;
  readonly where?: string;
  readonly at?: Vec3;
}

/** The check of the case that demands most of one allowable. */
export function worstOf(
  fixed: Pick<PartCheck, "part" | "label" | "check" | "allowable" | "dimension" | "basis">,
  loads: readonly Load[],
): PartCheck {
  const worst = loads.reduce<Load | null>((most, load) => (!most || load.demand > most.demand ? load : most), null);
  const isLoaded = worst !== null && worst.demand * ABSURD_FACTOR > fixed.allowable;
  return {
    ...fixed,
    loadCase: isLoaded ? worst.loadCase : null,
    travel: worst?.travel ?? 0,
    where: worst?.where ?? "",
    ...(worst?.at && { at: worst.at }),
    demand: worst?.demand ?? 0,
    factor: isLoaded ? fixed.allowable / worst.demand : null,
  };
}

/** Weakest first; what is not loaded last. */
export const byWeakness = (a: PartCheck, b: PartCheck): number =>
  (a.factor ?? Number.POSITIVE_INFINITY) - (b.factor ?? Number.POSITIVE_INFINITY) || (a.part < b.part ? -1 : 1);
