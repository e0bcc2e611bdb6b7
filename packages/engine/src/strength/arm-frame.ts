import type { ArmId } from "../car/car.ts";
import type { Frame, FrameMember } from "../frames/frame.ts";
import { type Section, sectionProperties } from "../frames/section.ts";
import { distance, type Vec3 } from "../geometry/vec3.ts";
import type { Material } from "./material.ts";

/** One arm as a welded frame, in its design position, with the words that a report needs. */
export interface ArmFrame {
  readonly arm: ArmId;
  /** Made from the car's points, not drawn by the builder. */
  readonly isAssumed: boolean;
  readonly nodes: readonly ArmNode[];
  readonly members: readonly ArmMember[];
  /** Where loads come in: rigidly tied to a node. */
  readonly attached: readonly Attachment[];
}

export interface ArmNode {
  readonly id: string;
  /** In the trade's words: `the bump-stop pad`, `inner front`. */
  readonly label: string;
  readonly point: Vec3;
}

export interface ArmMember {
  readonly id: string;
  readonly label: string;
  readonly from: string;
  readonly to: string;
  readonly section: Section;
  readonly material: Material;
  /** `main`, `cross` and `under` tubes can be had in other sizes; a `gusset` and what the builder drew otherwise stays. */
  readonly role: "main" | "cross" | "under" | "gusset" | "own";
  readonly depth?: Vec3;
  readonly offsetFrom?: Vec3;
  readonly offsetTo?: Vec3;
}

export interface Attachment {
  /** A pivot or mount. */
  readonly place: string;
  readonly node: string;
  readonly point: Vec3;
}

/** As the frame analysis takes it. */
export function analysable({ nodes, members }: ArmFrame): Pick<Frame, "nodes" | "members"> {
  return {
    nodes: nodes.map(({ id, point }) => ({ id, point })),
    members: members.map(
      ({ id, from, to, section, material, depth, offsetFrom, offsetTo }): FrameMember => ({
        id,
        from,
        to,
        section,
        stiffness: { young: material.young, shear: material.shear },
        ...(depth && { depth }),
        ...(offsetFrom && { offsetFrom }),
        ...(offsetTo && { offsetTo }),
      }),
    ),
  };
}

/** kg, between the nodes' middles. */
export function massOf({ nodes, members }: Pick<ArmFrame, "nodes" | "members">): number {
  const at = new Map(nodes.map(({ id, point }) => [id, point]));
  return members.reduce(
    (sum, { from, to, section, material }) =>
      sum + material.density * sectionProperties(section).area * distance(at.get(from)!, at.get(to)!),
    0,
  );
}
