import { placeMember, placeOn } from "@armwright/engine";
import type { NoteRoom } from "./note.ts";
import type { Ghost } from "./parts/ghosts.ts";
import type { KeepOutShape } from "./parts/keep-out.ts";
import { strapSpots } from "./parts/strap.ts";
import { tyreSpots } from "./parts/wheel.ts";
import { boxesAlong, makePlacement, type Placement } from "./placement.ts";
import type { Box, Spot } from "./primitive.ts";
import { groundHeight, mountAt, type Scene } from "./scene.ts";

/** Room for words round a view's parts: everything that is drawn is taken. */
export function roomRound(
  scene: Scene,
  bounds: Box,
  keepOuts: readonly KeepOutShape[],
  ghosts: readonly Ghost[] = [],
): NoteRoom {
  const { corner, position, view, pen } = scene;
  const all = makePlacement(bounds);
  const parts = makePlacement(bounds);
  takeParts(scene, bounds, {
    take: (box) => {
      all.take(box);
      parts.take(box);
    },
    takeLine: (from, to, half) => {
      for (const box of boxesAlong(from, to, half)) {
        all.take(box);
        parts.take(box);
      }
    },
  });
  // The wheel's upright centre line runs on up to the half-track's dimension.
  const middle = view.at(position.wheelCentre);
  all.takeLine({ x: middle.x, y: bounds.y + 16 * pen }, middle, 2.5 * pen);
  for (const { outline } of keepOuts) for (const box of stripsOf(outline, 8 * pen)) all.take(box);
  for (const ghost of ghosts) {
    for (const member of corner.members) {
      const [from, to] = placeMember(ghost.position, member).map(view.at) as [Spot, Spot];
      all.takeLine(from, to, 2 * pen);
    }
  }
  return { all, parts, words: makePlacement(bounds) };
}

/** Takes the ground under everything solid. */
function takeParts(scene: Scene, bounds: Box, all: Pick<Placement, "take" | "takeLine">): void {
  const { car, corner, position, view, scale, pen } = scene;
  for (const box of stripsOf(tyreSpots(scene), 8 * pen)) all.take(box);
  for (const member of corner.members) {
    const [from, to] = placeMember(position, member).map(view.at) as [Spot, Spot];
    all.takeLine(from, to, (member.diameter / 2) * scale + 5 * pen);
  }
  for (const { point, boltSide } of corner.pivots) {
    const c = view.at(placeOn(position, point, boltSide));
    all.take(boxRound(c, 15 * pen));
  }
  const { driveshaft, shock, strap, bumpStop } = car;
  if (driveshaft) {
    const [a, b] = [view.at(driveshaft.inner.centre), view.at(placeOn(position, driveshaft.outer.centre, "spindle"))];
    all.takeLine(a, b, driveshaft.diameter * scale + 3 * pen);
    all.take(boxRound(a, Math.max(12 * pen, 0.06 * scale)));
    all.takeLine(b, view.at(position.wheelCentre), 0.08 * scale);
  }
  if (shock) {
    const [a, b] = [mountAt(scene, shock.upper), mountAt(scene, shock.lower)];
    all.takeLine(a, b, (shock.diameter / 2) * scale + 4 * pen);
    for (const c of [a, b]) all.take(boxRound(c, 15 * pen));
  }
  if (strap) {
    const spots = strapSpots(scene);
    for (let i = 1; i < spots.length; i += 1) all.takeLine(spots[i - 1]!, spots[i]!, 7 * pen);
  }
  if (bumpStop) all.takeLine(mountAt(scene, bumpStop.base), mountAt(scene, bumpStop.strikes), 0.033 * scale);
  for (const { point } of car.underbody) {
    const c = view.at(point);
    all.take({ x: c.x - 0.065 * scale, y: c.y - 9 * pen, width: 0.13 * scale, height: 12 * pen });
  }
  const y = view.at({ x: 0, y: 0, z: groundHeight(scene) }).y;
  if (view.name !== "from above") all.take({ x: bounds.x, y: y - 3 * pen, width: bounds.width, height: 15 * pen });
}

const boxRound = (c: Spot, r: number): Box => ({ x: c.x - r, y: c.y - r, width: 2 * r, height: 2 * r });

/** Boxes that cover a convex outline, in level strips. */
export function stripsOf(outline: readonly Spot[], height: number): Box[] {
  const ys = outline.map(({ y }) => y);
  const top = Math.min(...ys);
  const bottom = Math.max(...ys);
  const count = Math.min(200, Math.max(1, Math.ceil((bottom - top) / height)));
  const step = (bottom - top) / count;
  const boxes: Box[] = [];
  for (let i = 0; i < count; i += 1) {
    const a = widthAt(outline, top + i * step);
    const b = widthAt(outline, top + (i + 1) * step);
    const inside = outline.filter(({ y }) => y >= top + i * step && y <= top + (i + 1) * step).map(({ x }) => x);
    const x0 = Math.min(a[0], b[0], ...inside);
    const x1 = Math.max(a[1], b[1], ...inside);
    if (x1 > x0) boxes.push({ x: x0, y: top + i * step, width: x1 - x0, height: step });
  }
  return boxes;
}

/** Leftmost and rightmost place of an outline at a height. */
function widthAt(outline: readonly Spot[], y: number): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  outline.forEach((p, index) => {
    const q = outline[(index + 1) % outline.length]!;
    if (p.y > y === q.y > y) return;
    const x = p.x + ((q.x - p.x) * (y - p.y)) / (q.y - p.y);
    low = Math.min(low, x);
    high = Math.max(high, x);
  });
  return [low, high];
}
