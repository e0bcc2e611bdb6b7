import type { Corner } from "../cycle/corner.ts";
import type { Position } from "../cycle/position.ts";
import { ORIGIN, UP, type Vec3, vec } from "../geometry/vec3.ts";
import type { CornerForces } from "./corner-forces.ts";
import { solveBalance } from "./equilibrium.ts";
import { jointsOf, pieceOf } from "./joints.ts";
import { readJoints } from "./read-forces.ts";

/** Joint forces in balance with one moment on the spindle, whose wheel centre is held at its height: of 1, not of N·m. */
export type AttitudeForces = Pick<CornerForces, "joints" | "links" | "hinges"> & {
  readonly onSpindle: CornerForces["action"]["onSpindle"];
};

/**
 * Forces by which small movements of the parts are read as toe and camber at an unchanged travel. A turn θ of the spindle
 * changes toe by t·θ and camber by c·θ (from toe = atan2(s.x, s.y), camber = −asin s.z, ds = θ × s). Under the moment t the
 * work of these forces on the parts' movements is, by virtual work, t·θ. Null where the linkage is in line.
 */
export function attitudeForces(
  corner: Corner,
  position: Position,
): { readonly toe: AttitudeForces; readonly camber: AttitudeForces } | null {
  const { x, y, z } = position.spinAxis;
  const level2 = x * x + y * y;
  const toe = forcesUnder(corner, position, vec((x * z) / level2, (y * z) / level2, -1));
  const camber = forcesUnder(corner, position, vec(-y / Math.sqrt(level2), x / Math.sqrt(level2), 0));
  return toe && camber ? { toe, camber } : null;
}

function forcesUnder(corner: Corner, position: Position, moment: Vec3): AttitudeForces | null {
  const joints = jointsOf(corner, position);
  const spindle = pieceOf(corner, "spindle");
  const support = { inner: "chassis", outer: spindle, onOuter: { force: UP, moment: ORIGIN } } as const;
  const unknowns = solveBalance(
    corner,
    joints,
    position.wheelCentre,
    support,
    new Map([[spindle, { force: ORIGIN, moment }]]),
  );
  if (!unknowns) return null;
  return {
    ...readJoints(corner, joints, unknowns),
    onSpindle: { force: vec(0, 0, unknowns.at(-1)!), moment },
  };
}
