import type { Vec3 } from "../geometry/vec3.ts";

/** What acts on one wheel from outside, vehicle axes, N: by the ground on the tyre, and at the wheel centre. */
export interface WheelLoad {
  /** At the contact point. */
  readonly contact: Vec3;
  /** At the wheel centre: a strike that does not turn the wheel, or the wheel's own inertia. */
  readonly centre: Vec3;
  readonly turning: Turning;
}

/**
 * What holds the wheel against turning about its spin axis. `rolling`: nothing, the moment about the axis spins it up or
 * down. `brake`: the brake on the spindle. `shaft`: the half shaft, whose torque is reacted at the gearbox. A torque
 * (N·m about the spin axis, outboard positive: forward drive) that is given is what brake or shaft does; else it is what
 * holds the wheel still.
 */
export type Turning =
  | { readonly by: "rolling" }
  | { readonly by: "brake"; readonly torque?: number }
  | { readonly by: "shaft"; readonly torque?: number };
