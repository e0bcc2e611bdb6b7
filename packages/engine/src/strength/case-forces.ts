import type { ArmId } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";

/** A force (N) and moment (N·m) on an arm, in the axes of its design position. */
export interface PlaceForce {
  /** A pivot or mount; `hub` for what comes in from the wheel on a trailing arm. */
  readonly place: string;
  /** Where it acts in the design position, where that is not the place itself. */
  readonly point?: Vec3;
  readonly force: Vec3;
  readonly moment?: Vec3;
}

export type ArmForces = readonly PlaceForce[];

/** What the parts carry in one load case: all that strength has to know of it. */
export interface CaseForces {
  readonly id: string;
  /** In words, as tables name it. */
  readonly label: string;
  /** m */
  readonly travel: number;
  /** All forces on each arm, balanced. */
  readonly arms: Partial<Record<ArmId, ArmForces>>;
  /** Tension of each link, N, by member id. */
  readonly links: Readonly<Record<string, number>>;
  /** Of each pivot: the joint's force on the shank's part, in that part's design axes, N. */
  readonly pivots: Readonly<Record<string, Vec3>>;
  /** Size of the force at each mount, N. */
  readonly mounts: Readonly<Record<string, number>>;
  /** In the half shaft, N·m. */
  readonly shaftTorque: number;
  /** Bending of the stub: force on the wheel in the spindle's design axes and where it acts there. */
  readonly wheel: { readonly force: Vec3; readonly point: Vec3 };
}
