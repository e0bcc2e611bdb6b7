import type { FrameMember, MemberForces } from "./frame.ts";
import { type SectionForce, type SectionStress, sectionStress } from "./section-stress.ts";

/** Stress at a member's two ends, where with loads on nodes only the greatest are. */
export interface MemberStress {
  readonly member: string;
  readonly from: SectionStress;
  readonly to: SectionStress;
}

/** Null for a member that is known by bare numbers only. */
export function memberStress({ section }: FrameMember, forces: MemberForces): MemberStress | null {
  if (!("shape" in section)) return null;
  return {
    member: forces.member,
    from: sectionStress(section, sectionForceAtFrom(forces)),
    to: sectionStress(section, sectionForceAtTo(forces)),
  };
}

/** What the section next to the first node carries: on the cut that looks back along the member. */
export const sectionForceAtFrom = ({ from: { force, moment } }: MemberForces): SectionForce => ({
  tension: -force.x,
  shearY: -force.y,
  shearZ: -force.z,
  torque: -moment.x,
  bendingY: -moment.y,
  bendingZ: -moment.z,
});

export const sectionForceAtTo = ({ to: { force, moment } }: MemberForces): SectionForce => ({
  tension: force.x,
  shearY: force.y,
  shearZ: force.z,
  torque: moment.x,
  bendingY: moment.y,
  bendingZ: moment.z,
});
