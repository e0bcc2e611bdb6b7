import type { Corner } from "../cycle/corner.ts";
import type { Position } from "../cycle/position.ts";
import { add, addScaled, cross, midpoint, scale, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import type { CornerForces, HingeForce, JointForce, LinkForce, StrutForce } from "./corner-forces.ts";
import type { BallJoint, HingeJoint, Joint, LinkJoint } from "./joints.ts";
import type { SpindleAction } from "./spindle-action.ts";
import type { StrutPlace } from "./struts.ts";

export interface Solved {
  readonly corner: Corner;
  readonly position: Position;
  readonly action: SpindleAction;
  readonly joints: readonly Joint[];
  readonly carrierPlace: StrutPlace;
  readonly given: readonly { readonly place: StrutPlace; readonly magnitude: number }[];
  /** The unknowns in the order of `joints`, the carrier last. */
  readonly x: readonly number[];
}

/** The solution of the balance as forces by name. */
export function readForces(solved: Solved): Omit<CornerForces, "residual"> {
  const { corner, position, action, joints, x } = solved;
  const carried = strutForce(solved.carrierPlace, x.at(-1)!, true);
  return {
    travel: position.travel,
    action,
    ...readJoints(corner, joints, x),
    struts: [carried, ...solved.given.map(({ place, magnitude }) => strutForce(place, magnitude, false))],
  };
}

/** Joint, link and hinge forces out of the unknowns in the order of `joints`. */
export function readJoints(
  corner: Corner,
  joints: readonly Joint[],
  x: readonly number[],
): Pick<CornerForces, "joints" | "links" | "hinges"> {
  const found: JointForce[] = [];
  const links: LinkForce[] = [];
  const hinges: HingeForce[] = [];
  let at = 0;
  const next = (): number => {
    at += 1;
    return x[at - 1]!;
  };
  for (const joint of joints) {
    if (joint.kind === "hinge") {
      const read = readHinge(joint, [next(), next()], [next(), next()], next());
      found.push(...read.joints);
      hinges.push(read.hinge);
    } else if (joint.kind === "ball") found.push(readBall(joint, vec(next(), next(), next())));
    else {
      const tension = next();
      links.push({ member: joint.member, label: joint.label, tension });
      found.push(...readLink(joint, tension));
    }
  }
  const order = new Map(corner.pivots.map(({ id }, index) => [id, index]));
  return { joints: found.sort((a, b) => order.get(a.pivot)! - order.get(b.pivot)!), links, hinges };
}

type Pair = readonly [number, number];

function readHinge(joint: HingeJoint, first: Pair, second: Pair, along: number) {
  const { axis, square, points, pivots } = joint;
  const across = ([a, b]: Pair): Vec3 => add(scale(square[0], a), scale(square[1], b));
  const ends = [across(first), across(second)] as const;
  const middle = midpoint(points[0], points[1]);
  const joints = pivots.map(
    (pivot, i): JointForce => ({
      pivot: pivot.id,
      label: pivot.label,
      point: points[i]!,
      on: joint.outer,
      force: addScaled(ends[i]!, axis, along / 2),
      worst: addScaled(ends[i]!, axis, along),
      undecided: along,
    }),
  );
  const hinge: HingeForce = {
    arm: joint.inner === "chassis" ? joint.outer : joint.inner,
    at: joint.inner === "chassis" ? "chassis" : "spindle",
    axis,
    middle,
    force: addScaled(add(ends[0], ends[1]), axis, along),
    moment: add(cross(subtract(points[0], middle), ends[0]), cross(subtract(points[1], middle), ends[1])),
    alongAxis: along,
  };
  return { joints, hinge };
}

const readBall = ({ pivot, point, outer }: BallJoint, force: Vec3): JointForce => ({
  pivot: pivot.id,
  label: pivot.label,
  point,
  on: outer,
  force,
  worst: force,
  undecided: 0,
});

/** Tension pulls the link's inner end toward the chassis and, through it, the spindle too: one vector at both ends. */
const readLink = (joint: LinkJoint, tension: number): readonly JointForce[] =>
  joint.pivots.map((pivot) => {
    const isOuter = pivot.boltSide === "spindle";
    const force = scale(joint.pull, tension);
    return {
      pivot: pivot.id,
      label: pivot.label,
      point: joint.points[isOuter ? 1 : 0],
      on: isOuter ? joint.outer : "link",
      force,
      worst: force,
      undecided: 0,
    };
  });

/** A shock can be pulled open as well as pushed; a stop cannot pull, a strap cannot push. */
function strutForce(place: StrutPlace, magnitude: number, isCarrier: boolean): StrutForce {
  const { name, push, lower, upper } = place;
  return {
    name,
    magnitude,
    onLower: scale(push, name === "strap" ? -magnitude : magnitude),
    lower,
    upper,
    isCarrier,
    canBe: name === "shock" || magnitude >= 0,
  };
}
