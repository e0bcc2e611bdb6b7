import { distance, type Member, midpoint, placeMember, type Vec3 } from "@armwright/engine";
import { bar, gapOf, headingOf, offset } from "../path.ts";
import type { Primitive, Spot } from "../primitive.ts";
import { isPartHeld, type Scene } from "../scene.ts";
import { area, group } from "../sketch.ts";

const INCH = 0.0254;
/** Rod end's shank out of the tube, jam nut's thickness, m; a drawing's sizes, not the car's. */
const SHANK = 1.6 * INCH;
const NUT = 0.5 * INCH;

/** A tube, arm or link with its rod ends' shanks and jam nuts; nearer ones hide farther. */
export function memberParts(scene: Scene, member: Member): { readonly depth: number; readonly parts: Primitive } {
  const [from, to] = placeMember(scene.position, member);
  const a = scene.view.at(from);
  const b = scene.view.at(to);
  const true3 = distance(from, to);
  const shown = true3 > 0 ? gapOf(a, b) / (true3 * scene.scale) : 0;
  const half = Math.max((member.diameter / 2) * scene.scale, 1.6 * scene.pen);
  const ends = [endOf(scene, member.from.point), endOf(scene, member.to.point)] as const;
  const h = headingOf(a, b);
  const length = gapOf(a, b);
  const shank = Math.min(SHANK * scene.scale * shown, length * 0.18);
  const nut = Math.min(NUT * scene.scale, length * 0.05);
  const start = ends[0] ? shank : 0;
  const end = ends[1] ? length - shank : length;
  const ink = isPartHeld(scene, `linkage.${member.id}`) ? "hold" : "ink";
  const parts: Primitive[] = [];
  const between = (x: number, y: number, halfWidth: number): Primitive =>
    area("linkage", bar(offset(a, h, x, 0), offset(a, h, y, 0), halfWidth), { meaning: member.id, ink });
  if (ends[0] || ends[1]) parts.push(between(0, length, half * 0.58));
  parts.push(between(start, end, half));
  if (ends[0]) parts.push(between(start - nut, start, half * 1.28));
  if (ends[1]) parts.push(between(end, end + nut, half * 1.28));
  return {
    depth: scene.view.depth(midpoint(from, to)),
    parts: group("linkage", parts, { meaning: member.id, label: member.label }),
  };
}

/** Whether a rod end sits at that end. */
function endOf(scene: Scene, point: Vec3): boolean {
  if (scene.detail === "small") return false;
  return scene.corner.pivots.some(
    (pivot) => distance(pivot.point, point) < 1e-9 && scene.car.rodEnds.some((rodEnd) => rodEnd.pivot === pivot.id),
  );
}

/** Where a member's two ends fall on the sheet. */
export const memberSpots = (scene: Scene, member: Member): readonly [Spot, Spot] => {
  const [from, to] = placeMember(scene.position, member);
  return [scene.view.at(from), scene.view.at(to)];
};
