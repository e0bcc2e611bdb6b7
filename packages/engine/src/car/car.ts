import type { LoggedReading } from "../as-built/logged-reading.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { DamperEntry } from "../landing/damper-curve.ts";
import type { LoadsEntry } from "../loads/load-case.ts";
import type { BumpStopLaw } from "../stops/bump-stop-law.ts";
import type { StrapStretch } from "../stops/strap-stretch.ts";
import type { StrengthEntry } from "../strength/entry.ts";
import type { CarSurvey } from "../survey/car-survey.ts";

/**
 * The car as the engine computes with it: the left rear corner in the design position, in SI
 * (metres, radians, kilograms, newtons) and vehicle axes (ISO 8855). Read from a car document, never written back to it.
 */
export interface Car {
  readonly name: string;
  /** The builder's own mark for this state of the design. */
  readonly version?: string;
  readonly units: UnitSystem;
  /** What x = 0 is on the real car, in the builder's words. */
  readonly datum: string;
  readonly wheel: Wheel;
  readonly linkage: Linkage;
  readonly rodEnds: readonly RodEnd[];
  readonly driveshaft?: Driveshaft;
  readonly shock?: Shock;
  readonly strap?: Strap;
  readonly bumpStop?: BumpStop;
  readonly underbody: readonly NamedPoint[];
  readonly keepOuts: readonly KeepOut[];
  /** A scan of the chassis that the left corner has to stay clear of. */
  readonly chassisMesh?: ChassisMesh;
  readonly chassis: Chassis;
  readonly targets: Targets;
  /** Where the builder means the travel to end. */
  readonly stops: ChosenStops;
  /** What the parts are made of; given on the left side for the whole car. */
  readonly strength?: StrengthEntry;
  /** How the shock damps; left out where the document says nothing of it. */
  readonly damper?: DamperEntry;
  /** Drive, grip and load cases; left out where the document says nothing of them. */
  readonly loads?: LoadsEntry;
  /** Readings that points of the car were placed from. */
  readonly survey?: CarSurvey;
  /** What was read on the finished car, in the order of the document. */
  readonly asBuilt?: readonly LoggedReading[];
  /** How true the builder works, ±, m and turns; what is left out is common practice (`certainty/inputs.ts`). */
  readonly tolerances?: { readonly tacked?: number; readonly joint?: number; readonly turned?: number };
  /** Points with a ± of their own, m, by their place in the document. */
  readonly ownTolerances?: readonly { readonly path: string; readonly plusMinus: number }[];
  /** Values that the document left out and that were put in for it. */
  readonly assumed: readonly Assumption[];
  /** The right side where the document gives its own, already mirrored so that it computes as a left corner. */
  readonly right?: Car;
}

export type UnitSystem = "inch-pound" | "metric";

export interface NamedPoint {
  readonly name: string;
  readonly point: Vec3;
}

export interface Wheel {
  /** Where the wheel bolts on: on the spin axis, m. */
  readonly hubFace: Vec3;
  /** Camber in the design position, rad, positive when the top leans out. */
  readonly camber: number;
  /** Toe in the design position, rad, positive toe-in. */
  readonly toe: number;
  /** From the wheel's centre plane out to the hub face, m (positive: the hub face is outboard of the centre plane). */
  readonly offset: number;
  readonly freeRadius: number;
  readonly loadedRadius: number;
  /** Upright rate of the tyre, N/m; left out where the builder has not said. */
  readonly tyreRate?: number;
  /** Tyre's greatest width, m. */
  readonly sectionWidth: number;
  /** Radius of the tyre's shoulder as a rounded solid, m; less than half the section width. */
  readonly shoulderRadius: number;
  /** Bead-seat diameter, m. */
  readonly rimDiameter: number;
  /** Between the bead seats, m. */
  readonly rimWidth: number;
  /** Inside radius of the rim's barrel, m. */
  readonly rimInsideRadius: number;
}

/** A body that points can ride on. Arms turn about a fixed chassis line; a link is known by its two ends. */
export type BodyId = "chassis" | "spindle" | ArmId;
export type ArmId = "lower-arm" | "upper-arm" | "trailing-arm";

export type Linkage = HArmLinkage | DoubleAArmLinkage | TrailingArmLinkage | FiveLinkLinkage;
export type LinkageKindName = Linkage["kind"];

/** A lower arm hinged to the chassis and hinged to the spindle, each on two rod ends; one upper link. */
export interface HArmLinkage {
  readonly kind: "h-arm";
  readonly lowerArm: {
    readonly innerFront: Vec3;
    readonly innerRear: Vec3;
    readonly outerFront: Vec3;
    readonly outerRear: Vec3;
    readonly diameter: number;
  };
  readonly upperLink: Link;
}

export interface DoubleAArmLinkage {
  readonly kind: "double-a-arm";
  readonly lowerArm: AArm;
  readonly upperArm: AArm;
  readonly toeLink: Link;
}

export interface AArm {
  readonly innerFront: Vec3;
  readonly innerRear: Vec3;
  readonly outer: Vec3;
  readonly diameter: number;
}

/** Spindle and arm are one welded piece that turns about the line through its two pivots. */
export interface TrailingArmLinkage {
  readonly kind: "trailing-arm";
  readonly trailingArm: {
    readonly inboardPivot: Vec3;
    readonly outboardPivot: Vec3;
    /** Where its tubes end at the hub, m. */
    readonly hub: Vec3;
    readonly diameter: number;
  };
}

/** Five links with a ball at each end. */
export interface FiveLinkLinkage {
  readonly kind: "five-link";
  readonly links: readonly NamedLink[];
}

export interface Link {
  /** At the chassis. */
  readonly inner: Vec3;
  /** At the spindle. */
  readonly outer: Vec3;
  readonly diameter: number;
}

export interface NamedLink extends Link {
  readonly name: string;
}

export interface RodEnd {
  /** Which pivot it is at, e.g. `lowerArm.innerFront`, `upperLink.outer`, `links.front lower.inner`. */
  readonly pivot: string;
  /** Direction of its bolt in the design position, unit vector. */
  readonly boltAxis: Vec3;
  /** Body that holds the bolt; the shank is on the arm or link. */
  readonly boltOn: BodyId;
  /** Most that the ball may tilt either way, rad; left out where the builder has not said. */
  readonly misalignmentLimit?: number;
  /** Advance a turn, m. */
  readonly pitch?: number;
  /** Outside diameter of its thread, m. */
  readonly threadDiameter?: number;
  /** From the ball's middle to the end of the thread, m; left out where the builder has not said. */
  readonly length?: number;
  readonly hand: "right" | "left";
  /** Radius of the rod end's head, m: what has to clear the rim. */
  readonly headRadius: number;
}

export type JointKind = "u-joint" | "constant-velocity";

export interface Driveshaft {
  readonly inner: ShaftJoint;
  readonly outer: ShaftJoint;
  /** Direction of the gearbox output, unit vector, pointing outboard. */
  readonly outputAxis: Vec3;
  /** Phase of the outer yoke against the inner one along the shaft, rad; 0 = in phase. */
  readonly yokePhase: number;
  readonly slip?: Slip;
  readonly diameter: number;
}

export interface ShaftJoint {
  /** Joint centre in the design position; the inner one is fixed to the chassis, the outer one to the spindle. */
  readonly centre: Vec3;
  readonly kind: JointKind;
  /** Most bend, rad; left out where not known. */
  readonly angleLimit?: number;
}

export interface Slip {
  /** Length of spline still engaged in the design position, m. */
  readonly engagement: number;
  /** Least engagement that is wanted, m. */
  readonly leastEngagement: number;
  /** How far it can still be pushed in from the design position before it bottoms, m. */
  readonly pushInLeft?: number;
}

export interface Mount {
  readonly point: Vec3;
  readonly on: BodyId;
}

export interface Shock {
  readonly upper: Mount;
  readonly lower: Mount;
  /** Eye to eye, m. */
  readonly shortest: number;
  readonly longest: number;
  /** Largest diameter that has to clear other things (body or spring), m. */
  readonly diameter: number;
  readonly eyes?: ShockEyes;
  readonly springs?: SpringSet;
  readonly gas?: ShockGas;
}

/** Both eyes of a shock: what limits their tilt on the bolts. Left out where the builder has not said. */
export interface ShockEyes {
  /** Most that either eye may tilt on its bolt, rad. */
  readonly misalignmentLimit?: number;
  /** Across an eye, along its bolt, without spacers, m. */
  readonly eyeWidth?: number;
  /** Outside of an eye, and the room between the tabs that hold it, m: where both are given, tabs limit the tilt too. */
  readonly eyeDiameter?: number;
  readonly tabGap?: number;
}

/** What stands on the shock: one spring, or two in series with a slider between them. */
export interface SpringSet {
  readonly main: Spring;
  /** The softer one above the slider. */
  readonly tender?: Spring;
  /** Shock length at which the slider meets its stop and the main spring goes on alone, m; left out where there is no stop. */
  readonly crossoverAt?: number;
  /** How far the springs together are squeezed with the shock fully open, m; negative where they are loose then. */
  readonly preload: number;
  /** What one turn of the collar moves it, m. */
  readonly collarPitch: number;
}

export interface Spring {
  /** N/m */
  readonly rate: number;
  /** Off the car, m. */
  readonly freeLength: number;
  /** Coil on coil, m. */
  readonly solidLength: number;
}

export interface ShockGas {
  readonly kind: "emulsion" | "reservoir";
  /** As the gauge reads with the shock fully open, Pa above the air outside. */
  readonly pressure: number;
  readonly rodDiameter: number;
  /** Of the gas with the shock fully open, m³. */
  readonly volume: number;
}

export interface Strap {
  readonly upper: Mount;
  readonly lower: Mount;
  /** Hole to hole when taut, m. */
  readonly length: number;
  /** How it pulls as it stretches; the usual where left out. */
  readonly stretch?: StrapStretch;
  /** Between two holes of an adjustable tail, m; left out where it has none. */
  readonly holeSpacing?: number;
}

export interface BumpStop {
  /** Where the stop is bolted. */
  readonly base: Mount;
  /** Where it lands. */
  readonly strikes: Mount;
  /** From base to free face, m. */
  readonly reach: number;
  /** From base to face when squeezed solid, m. */
  readonly solid: number;
  /** How it pushes back; the usual pad's where left out. */
  readonly law?: BumpStopLaw;
  /** Between two holes of the collar that its foot slides in, m; left out where it has none. */
  readonly holeSpacing?: number;
}

export type KeepOut = KeepOutBox | KeepOutTube | KeepOutHalfSpace;

interface KeepOutCommon {
  readonly name: string;
  /** Clearance wanted round it, m. */
  readonly clearance: number;
}

export interface KeepOutBox extends KeepOutCommon {
  readonly shape: "box";
  readonly centre: Vec3;
  /** Half of its size along its own three axes, m. */
  readonly half: Vec3;
  /** Its own first and second axis, unit vectors square to each other; the third is their cross product. */
  readonly axisX: Vec3;
  readonly axisY: Vec3;
}

export interface KeepOutTube extends KeepOutCommon {
  readonly shape: "tube";
  readonly from: Vec3;
  readonly to: Vec3;
  readonly diameter: number;
  /** A tube of the frame, which may carry a mount. */
  readonly isFrame?: boolean;
}

/** Everything behind a plane, e.g. a firewall. */
export interface KeepOutHalfSpace extends KeepOutCommon {
  readonly shape: "half-space";
  readonly point: Vec3;
  /** Unit vector out of the kept-out side, toward the free side. */
  readonly normal: Vec3;
}

export interface ChassisMesh {
  /** Name of its file, which lies beside the car. */
  readonly file: string;
  /** Clearance wanted round it, m. */
  readonly clearance: number;
  /** Spots known on both: in the file's own axes and unit, and on the car, m. */
  readonly points: readonly { readonly mesh: Vec3; readonly car: Vec3 }[];
}

export interface Chassis {
  /** Distance between front and rear contact points in the design position, m. */
  readonly wheelbase: number;
  /** Centre of gravity of the whole car above the ground, m. */
  readonly centreOfGravityHeight: number;
  /** Share of the braking that the rear wheels do, 0…1. */
  readonly rearBrakeShare: number;
  /** Mass that one rear wheel carries on the scale, kg. */
  readonly cornerMass?: number;
  /** Mass of one rear corner that is not sprung, kg. */
  readonly unsprungMass?: number;
}

export interface Targets {
  /** Wheel travel wanted, m, both positive. */
  readonly bump?: number;
  readonly droop?: number;
  /** Under the body at full bump, m. */
  readonly clearanceAtFullBump?: number;
  readonly trackWidth?: number;
  readonly wheelbase?: number;
  readonly use?: Use;
}

/** What the car is for: decides which ride frequency is common practice. */
export type Use = "dune" | "desert" | "trail";

export interface ChosenStops {
  readonly bump: ChosenStop;
  readonly droop: ChosenStop;
}

/** What ends the travel by the builder's choice: a part made for it, or a travel aimed at while no such part is there. */
export type ChosenStop =
  | { readonly by: "bump-stop" }
  | { readonly by: "strap" }
  | { readonly by: "shock" }
  | { readonly by: "travel" /** m, positive in either direction. */; readonly travel: number };

export interface Assumption {
  /** Place in the document, e.g. `wheel.loadedRadius`. */
  readonly path: string;
  readonly dimension: Dimension;
  /** In SI; a word where the value is not a number. */
  readonly value: number | string;
  /** Where the value comes from. */
  readonly because: string;
}

/** What kind of number a value is; decides how it is converted and shown. */
export type Dimension =
  | "length"
  | "angle"
  | "mass"
  | "force"
  | "rate"
  | "ratio"
  | "ratio-per-length"
  | "angle-per-length"
  | "angle-per-turn"
  | "turns"
  | "percent"
  | "pressure"
  | "stress"
  | "torque"
  | "volume"
  | "energy"
  | "frequency"
  | "damping"
  | "speed"
  | "count"
  | "word";
