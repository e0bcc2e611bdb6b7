import { type Corner, type Position, placeMember, placeOn } from "@armwright/engine";
import type { MeshSolid } from "./mesh-gap.ts";

/** A moving part of the corner and what it is called. */
export interface MeshPart {
  readonly id: string;
  readonly label: string;
  readonly solid: MeshSolid;
}

/** The corner's moving parts at one position, as the same rounded solids that all other clearances are measured with. */
export function meshParts({ car, members }: Corner, position: Position): readonly MeshPart[] {
  const { wheel, driveshaft, shock } = car;
  const parts: MeshPart[] = [
    {
      id: "tyre",
      label: "tyre",
      solid: {
        shape: "wheel",
        centre: position.wheelCentre,
        axis: position.spinAxis,
        coreRadius: wheel.freeRadius - wheel.shoulderRadius,
        coreHalfWidth: wheel.sectionWidth / 2 - wheel.shoulderRadius,
        radius: wheel.shoulderRadius,
      },
    },
  ];
  for (const member of members) {
    const [from, to] = placeMember(position, member);
    parts.push({
      id: member.id,
      label: member.label,
      solid: { shape: "capsule", from, to, radius: member.diameter / 2 },
    });
  }
  if (driveshaft) {
    const from = driveshaft.inner.centre;
    const to = placeOn(position, driveshaft.outer.centre, "spindle");
    parts.push({
      id: "shaft",
      label: "half shaft",
      solid: { shape: "capsule", from, to, radius: driveshaft.diameter / 2 },
    });
  }
  if (shock) {
    const from = placeOn(position, shock.upper.point, shock.upper.on);
    const to = placeOn(position, shock.lower.point, shock.lower.on);
    parts.push({ id: "shock", label: "shock", solid: { shape: "capsule", from, to, radius: shock.diameter / 2 } });
  }
  return parts;
}
