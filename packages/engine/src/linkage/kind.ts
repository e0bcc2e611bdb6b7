import type { ArmId, BodyId, Linkage } from "../car/car.ts";
import type { Pose } from "../geometry/pose.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { DrivenStretch } from "./driven-range.ts";
import type { MotionState } from "./motion-state.ts";

/** All that the rest of the engine knows of a kind of linkage. A further kind is one file that exports one of these. */
export interface LinkageKind<L extends Linkage> {
  readonly kind: L["kind"];
  /** The kind in the trade's words. */
  readonly title: string;
  /** Arms that turn about a line fixed to the chassis, at most two. */
  arms(linkage: L): readonly ArmAxis[];
  /** Tubes to draw and to keep clear of things. */
  members(linkage: L): readonly Member[];
  /** Places where two bodies meet at a rod end or bush. */
  pivots(linkage: L): readonly Pivot[];
  /** Ends that screw in and out. */
  adjusters(linkage: L): readonly Adjuster[];
  /** The linkage with one adjuster made longer by `change` (m). */
  adjust(linkage: L, adjusterId: string, change: number): AdjustedLinkage<L>;
  /**
   * The moving mechanism. `wheelCentre` is where the wheel centre is with the linkage's points as given (m); travel
   * counts from its height. `like`: that of a linkage from which this one differs by no more than building does; its
   * range then serves for both, but near its ends.
   */
  mechanism(linkage: L, wheelCentre: Vec3, lengths?: Lengths, like?: Mechanism): Mechanism;
}

export interface ArmAxis {
  readonly body: ArmId;
  /** A point on the line and its unit direction, so turned that a positive angle lifts the arm's outer end. */
  readonly point: Vec3;
  readonly axis: Vec3;
}

export interface Member {
  readonly id: string;
  readonly label: string;
  /** Body it belongs to; a link is a body of its own, known by its two ends. */
  readonly body: ArmId | "link";
  readonly from: MemberEnd;
  readonly to: MemberEnd;
  readonly diameter: number;
}

export interface MemberEnd {
  readonly point: Vec3;
  /** Body that carries this end. */
  readonly on: BodyId;
}

export interface Pivot {
  /** Its place in the document below `linkage`, e.g. `lowerArm.innerFront`. */
  readonly id: string;
  readonly label: string;
  readonly point: Vec3;
  /** Body that would usually hold the bolt (chassis or spindle). */
  readonly boltSide: "chassis" | "spindle";
  /** The arm or link that carries the shank. */
  readonly shank:
    | { readonly body: ArmId /** Hinge line, where the arm turns about one here. */; readonly hinge?: Vec3 }
    | { readonly body: "link"; readonly otherEnd: Vec3; readonly member: string };
}

export interface Adjuster {
  readonly id: string;
  readonly label: string;
  /** Rod-end pivots that are screwed when this adjuster is turned; two on a turnbuckle. */
  readonly rodEnds: readonly string[];
  /** `turnbuckle`: the tube is turned and both ends move; `end`: one end is taken off and screwed. */
  readonly action: "turnbuckle" | "end";
}

/** A linkage taken apart at one adjuster, before it is brought back to ride height. */
export interface AdjustedLinkage<L extends Linkage> {
  readonly linkage: L;
  /** Bodies that had to be shifted to fit the changed one; what is not named stays. */
  readonly moved: Partial<Record<BodyId, Pose>>;
  readonly lengths: Lengths;
}

/** Lengths (m) that shall hold where they differ from the distance between the given points, by member id. */
export type Lengths = Readonly<Record<string, number>>;

/** Where the linkage itself can go no farther: the wheel's height turns back, the linkage is at full stretch. */
export interface RangeEnd {
  /** m */
  readonly travel: number;
  /**
   * Travels on the way there at which two members fall into line, m, in order outward: an arm stands still while the
   * wheel goes on, and with a little slop it may flip either way.
   */
  readonly toggles: readonly number[];
}

export interface TravelRange {
  readonly droop: RangeEnd;
  readonly bump: RangeEnd;
}

export interface Mechanism {
  readonly range: TravelRange;
  /** Where one arm's angle drives it: the stretches of its motion. */
  readonly stretches?: readonly DrivenStretch[];
  /**
   * Brings `state` to `travel` (m, wheel-centre height less that of the design position), starting from what it holds.
   * Gives the number of iterations, or −1 outside the range, with the state left as it was.
   */
  solve(travel: number, state: MotionState): number;
}
