import { Matrix, pseudoInverse } from "ml-matrix";
import { add, length, ORIGIN, subtract, type Vec3 } from "../geometry/vec3.ts";
import { beamStiffness } from "./beam-stiffness.ts";
import { type FrameMember, MOVEMENTS } from "./frame.ts";
import { memberAxes } from "./member-axes.ts";
import { type SectionProperties, sectionProperties } from "./section.ts";

/** A member ready for assembly. */
export interface MemberElement {
  readonly member: FrameMember;
  readonly length: number;
  /** Stiffness in the member's own axes, released movements condensed out, 12 × 12. */
  readonly own: Matrix;
  /** own · carry: from movements of the nodes to forces on the ends. */
  readonly toForces: Matrix;
  /** From movements of both nodes in vehicle axes to those of the member's ends in its own axes, 12 × 12. */
  readonly carry: Matrix;
}

/** Null where the member has no length. */
export function memberElement(member: FrameMember, fromNode: Vec3, toNode: Vec3): MemberElement | null {
  const { offsetFrom = ORIGIN, offsetTo = ORIGIN } = member;
  const along = subtract(add(toNode, offsetTo), add(fromNode, offsetFrom));
  const l = length(along);
  if (!(l > 1e-9)) return null;
  const axes = memberAxes(along, member.depth);
  const carry = Matrix.zeros(12, 12);
  const ends = [offsetFrom, offsetTo];
  ends.forEach((o, end) => {
    const at = 6 * end;
    for (let r = 0; r < 3; r += 1) {
      const row = [axes[3 * r]!, axes[3 * r + 1]!, axes[3 * r + 2]!] as const;
      for (let c = 0; c < 3; c += 1) {
        carry.set(at + r, at + c, row[c]!);
        carry.set(at + 3 + r, at + 3 + c, row[c]!);
      }
      // The end's shift is the node's plus its turn × offset.
      carry.set(at + r, at + 3, row[2] * o.y - row[1] * o.z);
      carry.set(at + r, at + 4, row[0] * o.z - row[2] * o.x);
      carry.set(at + r, at + 5, row[1] * o.x - row[0] * o.y);
    }
  });
  const k = beamStiffness(propertiesOf(member), member.stiffness, l);
  const full = Matrix.from1DArray(12, 12, Array.from(k));
  const own = released(full, member);
  return { member, length: l, own, toForces: own.mmul(carry), carry };
}

export function propertiesOf({ section, stiffness: { young, shear } }: FrameMember): SectionProperties {
  return "shape" in section ? sectionProperties(section, young / (2 * shear) - 1) : section;
}

/** Static condensation of the movements that carry nothing. */
function released(full: Matrix, { releaseFrom = [], releaseTo = [] }: FrameMember): Matrix {
  const free = [
    ...releaseFrom.map((movement) => MOVEMENTS.indexOf(movement)),
    ...releaseTo.map((movement) => 6 + MOVEMENTS.indexOf(movement)),
  ];
  if (free.length === 0) return full;
  const all = Array.from({ length: 12 }, (_, index) => index);
  const kept = all.filter((index) => !free.includes(index));
  const kff = full.selection(free, free);
  const kfk = full.selection(free, kept);
  const kkk = full.selection(kept, kept);
  // Both ends released alike leave a member that turns freely: its own stiffness is then singular, and nothing is lost.
  const condensed = Matrix.sub(kkk, kfk.transpose().mmul(pseudoInverse(kff)).mmul(kfk));
  const out = Matrix.zeros(12, 12);
  kept.forEach((row, r) => {
    kept.forEach((column, c) => {
      out.set(row, column, condensed.get(r, c));
    });
  });
  return out;
}
