import type { Corner } from "../../src/cycle/corner.ts";
import { type Position, placeMember, placeOn } from "../../src/cycle/position.ts";
import { solveLinear } from "../../src/geometry/solve-linear.ts";
import { cross, dot, scale, subtract, UP, unit, type Vec3, vec } from "../../src/geometry/vec3.ts";

/** A force of unknown size that acts on the spindle: along a line at a point. */
interface Unknown {
  readonly at: Vec3;
  readonly along: Vec3;
  /** Arm that takes the opposite force; none for a link, whose other end is on the chassis. */
  readonly arm?: string;
}

/**
 * Upward force at the wheel centre that a unit push of the shock holds, by equilibrium of spindle and arms: six equations of
 * the spindle, and the moment of each arm about its own hinge line. Knows nothing of velocities.
 */
export function wheelForcePerShockForce(corner: Corner, position: Position): number | null {
  const { shock, linkage } = corner.car;
  if (!shock) return null;
  const upper = placeOn(position, shock.upper.point, shock.upper.on);
  const lower = placeOn(position, shock.lower.point, shock.lower.on);
  const push = unit(subtract(lower, upper));
  if (linkage.kind === "trailing-arm") {
    const { point, axis } = corner.arms[0]!;
    const moment = (at: Vec3, force: Vec3): number => dot(axis, cross(subtract(at, point), force));
    return -moment(lower, push) / moment(position.wheelCentre, UP);
  }
  const unknowns = reactions(corner, position);
  const onSpindle = shock.lower.on === "spindle";
  const spindle = [...unknowns.map((u) => wrench(u.at, u.along)), wrench(position.wheelCentre, UP)];
  const rows = Array.from({ length: 6 }, (_, i) => spindle.map((w) => w[i]!));
  const right = onSpindle ? wrench(lower, scale(push, -1)) : [0, 0, 0, 0, 0, 0];
  for (const { body, point, axis } of corner.arms) {
    const moment = (at: Vec3, force: Vec3): number => dot(axis, cross(subtract(at, point), force));
    rows.push([...unknowns.map((u) => (u.arm === body ? -moment(u.at, u.along) : 0)), 0]);
    right.push(shock.lower.on === body ? -moment(lower, push) : 0);
  }
  const solved = solveLinear(rows, right);
  return solved ? solved[solved.length - 1]! : null;
}

const wrench = (at: Vec3, force: Vec3): number[] => {
  const moment = cross(at, force);
  return [force.x, force.y, force.z, moment.x, moment.y, moment.z];
};

function reactions(corner: Corner, position: Position): Unknown[] {
  const links = corner.members
    .filter(({ body }) => body === "link")
    .map((member): Unknown => {
      const [inner, outer] = placeMember(position, member);
      return { at: outer, along: unit(subtract(outer, inner)) };
    });
  const { linkage } = corner.car;
  const axes = [vec(1, 0, 0), vec(0, 1, 0), vec(0, 0, 1)];
  if (linkage.kind === "double-a-arm") {
    const ball = (point: Vec3, arm: string): Unknown[] => {
      const at = placeOn(position, point, "spindle");
      return axes.map((along) => ({ at, along, arm }));
    };
    return [...ball(linkage.lowerArm.outer, "lower-arm"), ...ball(linkage.upperArm.outer, "upper-arm"), ...links];
  }
  if (linkage.kind === "h-arm") {
    // A hinge: three forces at its front end, two square to its line at the rear end.
    const front = placeOn(position, linkage.lowerArm.outerFront, "spindle");
    const rear = placeOn(position, linkage.lowerArm.outerRear, "spindle");
    const line = unit(subtract(rear, front));
    const across = unit(cross(line, UP));
    const arm = "lower-arm";
    return [
      ...axes.map((along) => ({ at: front, along, arm })),
      { at: rear, along: across, arm },
      { at: rear, along: cross(line, across), arm },
      ...links,
    ];
  }
  return links;
}
