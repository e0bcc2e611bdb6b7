import { addScaled, between, cross, distance, scale, subtract, UP, unit, type Vec3 } from "../geometry/vec3.ts";
import type { Member } from "../linkage/kind.ts";
import type { ArmMember } from "./arm-frame.ts";
import type { UnderTubeEntry } from "./entry.ts";
import type { Material } from "./material.ts";

/** What a tube's end needs for its bung before another tube is welded on, m: common practice. */
const BUNG_ROOM = 1.5 * 0.0254;

/** A station of a tube, of its length, moved off its ends where the bungs are. */
export function keptOffBungs({ from, to }: Member, at: number): number {
  const share = Math.min(0.15, BUNG_ROOM / distance(from.point, to.point));
  return Math.min(1 - share, Math.max(share, at));
}

/** Square to a tube, as near straight down as can be. */
export function downFrom({ from, to }: Member): Vec3 {
  const along = unit(subtract(to.point, from.point));
  return scale(unit(cross(cross(along, UP), along)), -1);
}

/** The second tube: from the first of the tube's stations down to a post under each between, and up to the last. */
export function underTube(
  leg: Member,
  stations: readonly number[],
  { diameter, wall, drop }: UnderTubeEntry,
  material: Material,
  nodeAt: (point: Vec3, label: string) => string,
): readonly ArmMember[] {
  const on = (share: number): Vec3 => between(leg.from.point, leg.to.point, share);
  const down = downFrom(leg);
  const posts = stations.slice(1, -1);
  const section = { shape: "round-tube", diameter, wall: Math.min(wall, diameter / 2) } as const;
  const feet = posts.map((share) => nodeAt(addScaled(on(share), down, drop), "the foot of the post"));
  const stops = [nodeAt(on(stations[0]!), ""), ...feet, nodeAt(on(stations.at(-1)!), "")];
  const tube = (id: string, label: string, from: string, to: string): ArmMember => ({
    id,
    label,
    from,
    to,
    section,
    material,
    role: "under",
  });
  return [
    ...stops.slice(1).map((to, i) => tube(`${leg.id} second ${i + 1}`, `${leg.label}, second tube`, stops[i]!, to)),
    ...posts.map((share, i) => tube(`${leg.id} post ${i + 1}`, `${leg.label}, post`, nodeAt(on(share), ""), feet[i]!)),
  ];
}
