import type { ArmId, BodyId, Link } from "../car/car.ts";
import { subtract, type Vec3 } from "../geometry/vec3.ts";
import type { Member, Pivot } from "./kind.ts";

/** A tube of an arm, both ends riding on it. */
export const armTube = (
  id: string,
  label: string,
  body: ArmId,
  from: Vec3,
  to: Vec3,
  diameter: number,
  toOn: BodyId = body,
): Member => ({ id, label, body, from: { point: from, on: body }, to: { point: to, on: toOn }, diameter });

/** A link from chassis to spindle. */
export const linkTube = (id: string, label: string, link: Link): Member => ({
  id,
  label,
  body: "link",
  from: { point: link.inner, on: "chassis" },
  to: { point: link.outer, on: "spindle" },
  diameter: link.diameter,
});

/** The two pivots of a link. */
export const linkPivots = (id: string, label: string, link: Link): readonly Pivot[] => [
  {
    id: `${id}.inner`,
    label: `${label}, inner`,
    point: link.inner,
    boltSide: "chassis",
    shank: { body: "link", otherEnd: link.outer, member: id },
  },
  {
    id: `${id}.outer`,
    label: `${label}, outer`,
    point: link.outer,
    boltSide: "spindle",
    shank: { body: "link", otherEnd: link.inner, member: id },
  },
];

/** The two pivots of an arm on the line that it turns about. */
export const hingePivots = (
  body: ArmId,
  boltSide: "chassis" | "spindle",
  first: { readonly id: string; readonly label: string; readonly point: Vec3 },
  second: { readonly id: string; readonly label: string; readonly point: Vec3 },
): readonly Pivot[] => {
  const hinge = subtract(second.point, first.point);
  return [first, second].map((end) => ({ ...end, boltSide, shank: { body, hinge } }));
};

/** Length of a member: what is asked for, or else the distance of its given ends. */
export const givenLength = (lengths: Readonly<Record<string, number>>, id: string, from: Vec3, to: Vec3): number => {
  const d = subtract(to, from);
  return lengths[id] ?? Math.sqrt(d.x * d.x + d.y * d.y + d.z * d.z);
};
