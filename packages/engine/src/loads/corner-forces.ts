import type { BodyId } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { SpindleAction } from "./spindle-action.ts";
import type { StrutName } from "./struts.ts";

/** All forces of a corner in balance at one position. Vehicle axes, N and N·m. */
export interface CornerForces {
  /** m */
  readonly travel: number;
  readonly action: SpindleAction;
  /** One for each pivot, in the order of the corner's pivots. */
  readonly joints: readonly JointForce[];
  readonly links: readonly LinkForce[];
  readonly hinges: readonly HingeForce[];
  /** Those of shock, bump stop and strap that carry. */
  readonly struts: readonly StrutForce[];
  /** What is left over of the balance of any body, N (moments ÷ 1 m): zero but for rounding. See `equilibriumResidual`. */
  readonly residual: number;
}

export interface JointForce {
  /** The pivot's id, e.g. `lowerArm.innerFront`. */
  readonly pivot: string;
  readonly label: string;
  readonly point: Vec3;
  /** The body it acts on: the outboard one of the two. At a link's inner end that is the link. */
  readonly on: BodyId | "link";
  /** Of two rod ends on one hinge line each is given half of the force along the line. */
  readonly force: Vec3;
  /** The same with all of the force along the line on this one: the most that statics lets it be. */
  readonly worst: Vec3;
  /** What statics alone cannot share out: the whole force along the hinge line, N; 0 where there is none. */
  readonly undecided: number;
}

export interface LinkForce {
  readonly member: string;
  readonly label: string;
  /** Tension positive. */
  readonly tension: number;
}

export interface HingeForce {
  readonly arm: BodyId;
  readonly at: "chassis" | "spindle";
  readonly axis: Vec3;
  readonly middle: Vec3;
  /** On the outboard body. */
  readonly force: Vec3;
  /** About the middle, square to the axis. */
  readonly moment: Vec3;
  /** Along the axis, N; which of the two rod ends takes it statics cannot tell. */
  readonly alongAxis: number;
}

export interface StrutForce {
  readonly name: StrutName;
  /** Of shock and bump stop compression is positive, of the strap tension. */
  readonly magnitude: number;
  /** On what its lower end is bolted to; the upper end feels the opposite. */
  readonly onLower: Vec3;
  readonly lower: { readonly on: BodyId; readonly point: Vec3 };
  readonly upper: { readonly on: BodyId; readonly point: Vec3 };
  /** It is what the balance asked for, not given. */
  readonly isCarrier: boolean;
  /** False where the balance would need a bump stop that pulls or a strap that pushes: the case cannot be. */
  readonly canBe: boolean;
}

/** Why there is no balance. */
export type NoBalance =
  | { readonly reason: "out-of-range"; readonly travel: number }
  | { readonly reason: "part-missing"; readonly part: StrutName }
  /** The carrier cannot move against the load here: dead centre, or the linkage is in line. */
  | { readonly reason: "singular"; readonly travel: number };

export type Balance = { readonly ok: true; readonly forces: CornerForces } | ({ readonly ok: false } & NoBalance);
