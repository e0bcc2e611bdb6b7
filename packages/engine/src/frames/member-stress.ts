import type { FrameMember, MemberForces } from "./frame.ts";
import { type SectionForce, type SectionStress, stressReader } from "./section-stress.ts";

/** Stress at a member's two ends, where with loads on nodes only the greatest are. */
export interface MemberStress {
  readonly member: string;
  readonly from: SectionStress;
  readonly to: SectionStress;
}

/** Null for a member that is known by bare numbers only. */
export const memberStress = (member: FrameMember, forces: MemberForces): MemberStress | null =>
  memberStressReader(member)?.(forces) ?? null;

/** The same for many load cases. */
export function memberStressReader({ section }: FrameMember): ((forces: MemberForces) => MemberStress) | null {
  if (!("shape" in section)) return null;
  const read = stressReader(section);
  return (forces) => ({
    member: forces.member,
    from: read(sectionForceAtFrom(forces)),
    to: read(sectionForceAtTo(forces)),
  });
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
