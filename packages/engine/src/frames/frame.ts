import type { Rotation } from "../geometry/pose.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { Section, SectionProperties } from "./section.ts";

/** A welded frame of straight members, in vehicle axes, SI. Nodes and members are known by their ids. */
export interface Frame {
  readonly nodes: readonly FrameNode[];
  readonly members: readonly FrameMember[];
  readonly supports: readonly FrameSupport[];
}

export interface FrameNode {
  readonly id: string;
  readonly point: Vec3;
}

export interface FrameMember {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** A shape, or bare numbers where only those are known: then no stress is told. */
  readonly section: Section | SectionProperties;
  readonly stiffness: Stiffness;
  /** Which way the depth of the section points; made square to the member. Left out: as near upright as can be. */
  readonly depth?: Vec3;
  /** From the node to where the member begins and ends, stiff, vehicle axes, m. */
  readonly offsetFrom?: Vec3;
  readonly offsetTo?: Vec3;
  /** Movements between member and node that carry nothing there, in the member's axes. */
  readonly releaseFrom?: readonly Movement[];
  readonly releaseTo?: readonly Movement[];
}

/** Young's and shear modulus, Pa. */
export interface Stiffness {
  readonly young: number;
  readonly shear: number;
}

/** Along or about one of three axes. */
export type Movement = "x" | "y" | "z" | "turn-x" | "turn-y" | "turn-z";
export const MOVEMENTS = ["x", "y", "z", "turn-x", "turn-y", "turn-z"] as const satisfies readonly Movement[];

export interface FrameSupport {
  readonly node: string;
  /** Movements that are held. */
  readonly holds: readonly Movement[];
  /** Rows are the axes that `holds` speaks of; vehicle axes where left out. */
  readonly axes?: Rotation;
  /** What a held movement is moved by: m, rad; nothing where left out. */
  readonly settles?: Partial<Record<Movement, number>>;
}

/** A force (N) and a moment (N·m) on a node, vehicle axes. */
export interface NodeLoad {
  readonly node: string;
  readonly force?: Vec3;
  readonly moment?: Vec3;
}

/** Loads that act together. */
export interface FrameLoadCase {
  readonly id: string;
  readonly loads: readonly NodeLoad[];
}

/** Force and moment that a node puts on a member's end, in the member's axes, N, N·m. Tension: `force.x` negative at `from`. */
export interface EndForce {
  readonly force: Vec3;
  readonly moment: Vec3;
}

export interface MemberForces {
  readonly member: string;
  readonly from: EndForce;
  readonly to: EndForce;
}

export interface NodeMovement {
  readonly node: string;
  /** m, vehicle axes. */
  readonly shift: Vec3;
  /** rad, vehicle axes; small. */
  readonly turn: Vec3;
}

export interface Reaction {
  readonly node: string;
  /** Vehicle axes, N and N·m; what the support puts on the node. */
  readonly force: Vec3;
  readonly moment: Vec3;
}

export interface FrameResult {
  readonly loadCase: string;
  readonly movements: readonly NodeMovement[];
  readonly members: readonly MemberForces[];
  readonly reactions: readonly Reaction[];
  /** Loads and reactions together, which should be nothing: as a share of the largest of them (moments: over the frame's size). */
  readonly residual: number;
}

export type FrameAnalysis =
  | { readonly ok: true; readonly results: readonly FrameResult[] }
  /** `mechanism`: something in it moves freely; `movement` tells at which node. */
  | { readonly ok: false; readonly fault: "mechanism"; readonly node: string; readonly movement: Movement }
  | { readonly ok: false; readonly fault: "member-without-length"; readonly member: string }
  | { readonly ok: false; readonly fault: "unknown-node"; readonly node: string };
