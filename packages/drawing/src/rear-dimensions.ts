import type { DimensionWish } from "./dimension.ts";
import { memberSpots } from "./parts/member.ts";
import { gapOf, shift, spot } from "./path.ts";
import { groundHeight, numberOf, type Scene } from "./scene.ts";
import { reading } from "./words.ts";

/** The main measures of the view from behind, most needful first. */
export function rearDimensions(scene: Scene): readonly DimensionWish[] {
  return [...halfTrack(scene), ...underbody(scene), ...armLength(scene)];
}

/** From the car's centreline to the middle of the tyre's contact. */
function halfTrack(scene: Scene): DimensionWish[] {
  const { study, corner, row, view, pen, car } = scene;
  const change = numberOf(study, row, "halfTrackChange");
  const { sheet } = view;
  if (change === null || sheet.origin.x <= 0 || sheet.origin.x >= sheet.width) return [];
  const half = corner.attitude.designContact.y + change;
  const x = sheet.origin.x - half * sheet.scale;
  const above = view.at(scene.position.wheelCentre).y - car.wheel.freeRadius * sheet.scale;
  const ground = view.at({ x: 0, y: 0, z: groundHeight(scene) }).y;
  const start = spot(x, above);
  // Near the sheet's top edge, else just over the tyre, else under the ground.
  const heights = [15, 24, 44, 64].map((px) => px * pen - above);
  const under = [34, 54].map((px) => ground + px * pen - above);
  return [
    {
      id: "half-track",
      from: start,
      to: spot(sheet.origin.x, above),
      text: reading(half, "length", car.units),
      offsets: [...heights, -16 * pen, ...under],
      along: "level",
    },
  ];
}

/** From the ground up to the underbody's lowest point. */
function underbody(scene: Scene): DimensionWish[] {
  const { study, row, view, pen, car, scale } = scene;
  const clear = numberOf(study, row, "groundClearance");
  if (clear === null || clear <= 0 || car.underbody.length === 0) return [];
  const lowest = car.underbody.reduce((a, b) => (b.point.z < a.point.z ? b : a));
  const top = view.at(lowest.point);
  const bottom = spot(top.x, view.at({ x: 0, y: 0, z: groundHeight(scene) }).y);
  const reach = 0.05 * scale;
  return [
    {
      id: "ride-height",
      from: shift(top, 0, 3 * pen),
      to: shift(bottom, 0, -3.2 * pen),
      text: reading(clear, "length", car.units),
      offsets: [0, reach, -reach, 2 * reach, -2 * reach, 0.2 * scale, -0.2 * scale],
      along: "upright",
    },
  ];
}

const ARM_NAME = { "h-arm": "H-arm", "double-a-arm": "lower arm", "trailing-arm": "arm", "five-link": "" } as const;

/** Seen length of the lower arm's tube or of the lowest link, pivot to pivot, where the view shows it nearly whole. */
function armLength(scene: Scene): DimensionWish[] {
  const { corner, car, pen } = scene;
  const lowest = corner.members
    .map((member) => ({ member, spots: memberSpots(scene, member) }))
    .filter(({ member, spots: [a, b] }) => gapOf(a, b) > 0.7 * trueLength(member) * scene.scale)
    .sort((p, q) => q.spots[0].y + q.spots[1].y - p.spots[0].y - p.spots[1].y)[0];
  if (!lowest) return [];
  const [a, b] = lowest.spots;
  const name = ARM_NAME[car.linkage.kind] || lowest.member.label;
  const value = reading(gapOf(a, b) / scene.scale, "length", car.units);
  const sizes = [26, 36, 46, 58, 72, 90, 110].map((px) => px * pen);
  // From the chassis out, so that + is below on the sheet's left-going lines.
  return [
    {
      id: "arm-length",
      from: a,
      to: b,
      text: `${name} ${value}`,
      offsets: a.x > b.x ? sizes.map((size) => -size) : sizes,
    },
  ];
}

const trueLength = ({ from, to }: Scene["corner"]["members"][number]): number =>
  Math.hypot(to.point.x - from.point.x, to.point.y - from.point.y, to.point.z - from.point.z);
