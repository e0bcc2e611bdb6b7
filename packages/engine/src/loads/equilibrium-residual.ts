import type { Corner } from "../cycle/corner.ts";
import type { Position } from "../cycle/position.ts";
import { length, scale } from "../geometry/vec3.ts";
import type { CornerForces } from "./corner-forces.ts";
import { type ForceMoment, forceAt, NOTHING, sum } from "./force-moment.ts";
import { jointsOf, pieceOf, piecesOf } from "./joints.ts";

/**
 * What is left over when every body's forces, as reported, are summed anew: the largest force (N), or moment about the
 * wheel centre (N·m, counted as N at 1 m). Zero but for rounding.
 */
export function equilibriumResidual(
  corner: Corner,
  position: Position,
  forces: Omit<CornerForces, "residual">,
): number {
  const about = position.wheelCentre;
  const joints = jointsOf(corner, position);
  let worst = 0;
  for (const piece of piecesOf(corner)) {
    let total: ForceMoment = piece === pieceOf(corner, "spindle") ? forces.action.onSpindle : NOTHING;
    for (const joint of joints) {
      const sign = (pieceOf(corner, joint.outer) === piece ? 1 : 0) - (pieceOf(corner, joint.inner) === piece ? 1 : 0);
      if (sign === 0) continue;
      const ids = joint.kind === "ball" ? [joint.pivot.id] : joint.pivots.map(({ id }) => id);
      const ends = forces.joints.filter(({ pivot }) => ids.includes(pivot));
      // Both ends of a link tell of the same pull; the outer one is the one that acts on the body.
      const acting = joint.kind === "link" ? ends.filter(({ on }) => on !== "link") : ends;
      for (const { force, point } of acting) total = sum(total, forceAt(scale(force, sign), point, about));
    }
    for (const { onLower, lower, upper } of forces.struts) {
      if (pieceOf(corner, lower.on) === piece) total = sum(total, forceAt(onLower, lower.point, about));
      if (pieceOf(corner, upper.on) === piece) total = sum(total, forceAt(scale(onLower, -1), upper.point, about));
    }
    worst = Math.max(worst, length(total.force), length(total.moment));
  }
  return worst;
}
