import { type Pose, turnAbout } from "../geometry/pose.ts";
import { addScaled, cross, length, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import { reachDirection } from "./arm-axis.ts";
import type { Adjuster } from "./kind.ts";

/** A link whose tube is turned between a right-hand and a left-hand end. */
export const turnbuckle = (id: string, label: string): Adjuster => ({
  id,
  label,
  rodEnds: [`${id}.inner`, `${id}.outer`],
  action: "turnbuckle",
});

/** One rod end of an arm, taken off, screwed, and put back. */
export const screwedEnd = (pivot: string, label: string): Adjuster => ({
  id: pivot,
  label,
  rodEnds: [pivot],
  action: "end",
});

/** A rod end's centre after it is screwed out by `change` (m) along its shank, square to the arm's other hinge line. */
export const screwOut = (end: Vec3, base: { readonly point: Vec3; readonly axis: Vec3 }, change: number): Vec3 =>
  addScaled(end, reachDirection(base.point, base.axis, end), change);

/**
 * How a body turns when its end `screwed` is screwed out by `change` (m) along `shank` (unit vector, square to the hinge
 * line) while the other end on that line, `kept`, stays. The brackets keep their distance B, so that the screwed end goes
 * round the kept one by change ÷ B: every other length is kept exactly, several turns add up, and turning back comes back.
 * The thread's own straight path leaves it by change²/2B, which bolt and bracket have to take up.
 */
export const screwRound = (kept: Vec3, screwed: Vec3, shank: Vec3, change: number): Pose => {
  const hinge = subtract(screwed, kept);
  return turnAbout(kept, unit(cross(hinge, shank)), change / length(hinge));
};
