import type { ArmId } from "../car/car.ts";
import type { Section } from "../frames/section.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { Thread } from "../units/thread.ts";
import type { BoltGrade } from "./bolt.ts";
import type { Material } from "./material.ts";
import type { RodEndRating } from "./rod-end.ts";

/**
 * What a car document says of strength, in SI. Places: a pivot (`lowerArm.innerFront`) or a mount (`shock.lower`);
 * `all` stands for every place that is not named.
 */
export interface StrengthEntry {
  /** The builder's own first, then those built in. */
  readonly materials: readonly Material[];
  /** By arm or link as the document names it: `lowerArm`, `upperLink`, `links.front lower`. */
  readonly tubes: Readonly<Record<string, TubeEntry>>;
  /** Frames that the builder drew; arms without one get a frame made from the car's points. */
  readonly frames: Partial<Record<ArmId, ArmFrameEntry>>;
  readonly rodEnds: Readonly<Record<string, RodEndStrength>>;
  readonly bolts: Readonly<Record<string, BoltEntry>>;
  readonly tabs: Readonly<Record<string, TabEntry>>;
  readonly welds: Readonly<Record<string, WeldEntry>>;
  readonly shaft?: ShaftEntry;
  readonly stub?: StubEntry;
}

export interface TubeEntry {
  /** m */
  readonly wall: number;
  readonly material: Material;
  /** Of the cross tubes of an arm, m. */
  readonly crossDiameter: number;
  readonly crossWall: number;
  /** How far the pull of a link runs off its middle line, m: tab not in line, tube not straight. */
  readonly eccentricity: number;
  /** A plate welded under an arm's tube at one mount. */
  readonly gusset?: GussetEntry;
  /** A second tube under each of an arm's tubes that shock or stop bear on. */
  readonly under?: UnderTubeEntry;
}

/** With the tube above it and a post under the mount it makes a truss. */
export interface UnderTubeEntry {
  /** m */
  readonly diameter: number;
  readonly wall: number;
  /** From the middle of the arm's tube down to its own, under the mount. */
  readonly drop: number;
}

export interface GussetEntry {
  /** A mount, e.g. `bumpStop.strikes`. */
  readonly at: string;
  /** m */
  readonly thickness: number;
  readonly depth: number;
  /** How far it runs along the tube either way. */
  readonly reach: number;
}

export interface ArmFrameEntry {
  readonly nodes: readonly { readonly name: string; readonly point: Vec3; readonly at?: string }[];
  readonly members: readonly ArmMemberEntry[];
}

export interface ArmMemberEntry {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly section: Section;
  readonly material: Material;
  readonly depth?: Vec3;
}

export interface RodEndStrength {
  readonly rating?: RodEndRating;
  readonly thread?: Thread;
  /** From the head's rim to where the shank is held (jam nut), m. */
  readonly exposed: number;
}

export interface BoltEntry {
  readonly thread: Thread;
  readonly grade: BoltGrade;
  readonly shear: "single" | "double";
}

export interface TabEntry {
  readonly count: 1 | 2;
  readonly thickness: number;
  readonly width: number;
  readonly edge: number;
  /** From the hole's middle to the weld, m. */
  readonly height: number;
  readonly material: Material;
}

export interface WeldEntry {
  readonly leg: number;
  /** All runs together, m. */
  readonly length: number;
  /** Pa */
  readonly filler: number;
}

export interface ShaftEntry {
  readonly diameter: number;
  readonly bore: number;
  readonly material: Material;
  /** That the weakest joint is rated for, N·m. */
  readonly jointTorque?: number;
}

export interface StubEntry {
  readonly diameter: number;
  readonly bore: number;
  readonly material: Material;
  /** From the hub face inboard to the outer bearing's middle, m. */
  readonly toBearing: number;
}
