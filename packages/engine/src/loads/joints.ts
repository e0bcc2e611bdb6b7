import type { BodyId } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { type Position, placeMember, placeOn } from "../cycle/position.ts";
import { anySquareTo, cross, scale, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import type { Pivot } from "../linkage/kind.ts";

/** Two rod ends on one line between two bodies: no moment about the line. */
export interface HingeJoint {
  readonly kind: "hinge";
  readonly inner: BodyId;
  readonly outer: BodyId;
  readonly pivots: readonly [Pivot, Pivot];
  readonly points: readonly [Vec3, Vec3];
  /** From the first to the second, and two directions square to it; unit. */
  readonly axis: Vec3;
  readonly square: readonly [Vec3, Vec3];
}

/** A single rod end between two bodies: forces only. */
export interface BallJoint {
  readonly kind: "ball";
  readonly inner: BodyId;
  readonly outer: BodyId;
  readonly pivot: Pivot;
  readonly point: Vec3;
}

/** A link with a ball at each end: a force along itself. */
export interface LinkJoint {
  readonly kind: "link";
  readonly inner: BodyId;
  readonly outer: BodyId;
  readonly member: string;
  readonly label: string;
  readonly pivots: readonly Pivot[];
  readonly points: readonly [Vec3, Vec3];
  /** From its outer end to its inner one, unit: how tension pulls the outer body. */
  readonly pull: Vec3;
}

export type Joint = HingeJoint | BallJoint | LinkJoint;

/** Spindle and trailing arm are one welded piece. */
export const pieceOf = (corner: Corner, body: BodyId): BodyId =>
  body === "spindle" && corner.arms.some((arm) => arm.body === "trailing-arm") ? "trailing-arm" : body;

/** Bodies whose balance is asked: everything that moves but the links. */
export const piecesOf = (corner: Corner): readonly BodyId[] => [
  ...new Set([...corner.arms.map(({ body }) => body), pieceOf(corner, "spindle")]),
];

/** The corner's joints where they are at a position; an arm lies outboard of the chassis, the spindle outboard of an arm. */
export function jointsOf(corner: Corner, position: Position): readonly Joint[] {
  const joints: Joint[] = [];
  const hinges = new Map<string, Pivot>();
  for (const pivot of corner.pivots) {
    if (pivot.shank.body === "link") continue;
    const arm = pivot.shank.body;
    const sides = pivot.boltSide === "chassis" ? { inner: "chassis", outer: arm } : { inner: arm, outer: "spindle" };
    const { inner, outer } = sides as { inner: BodyId; outer: BodyId };
    const point = placeOn(position, pivot.point, arm);
    if (!pivot.shank.hinge) {
      joints.push({ kind: "ball", inner, outer, pivot, point });
      continue;
    }
    const key = `${arm} ${pivot.boltSide}`;
    const first = hinges.get(key);
    if (!first) hinges.set(key, pivot);
    else {
      const points = [placeOn(position, first.point, arm), point] as const;
      const axis = unit(subtract(points[1], points[0]));
      const across = anySquareTo(axis);
      const square = [across, cross(axis, across)] as const;
      joints.push({ kind: "hinge", inner, outer, pivots: [first, pivot], points, axis, square });
    }
  }
  for (const member of corner.members) {
    if (member.body !== "link") continue;
    const [from, to] = placeMember(position, member);
    joints.push({
      kind: "link",
      inner: member.from.on,
      outer: member.to.on,
      member: member.id,
      label: member.label,
      pivots: corner.pivots.filter(({ shank }) => shank.body === "link" && shank.member === member.id),
      points: [from, to],
      pull: scale(unit(subtract(to, from)), -1),
    });
  }
  return joints;
}
