import {
  type Box,
  circle,
  grown,
  line,
  makePlacement,
  type Primitive,
  polyline,
  type Spot,
  spot,
  stroke,
  text,
  widthOf,
} from "@armwright/drawing";
import type { Vec3 } from "@armwright/engine";
import type { JigPoint } from "../jig/jig-part.ts";
import { PEN } from "./leaf.ts";
import { norths, type Side } from "./side.ts";

/** Points with their marks in one view, to scale, with lines between those that a tube joins. */
export function markedView(
  points: readonly JigPoint[],
  tubes: readonly (readonly [Vec3, Vec3])[],
  side: Side,
  box: Box,
): Primitive[] {
  const flat = (point: Vec3): Spot => spot(side.across(point), -side.up(point));
  const all = points.map(({ point }) => flat(point));
  const xs = all.map(({ x }) => x);
  const ys = all.map(({ y }) => y);
  const inner = grown(box, -13);
  const scale = Math.min(
    inner.width / Math.max(Math.max(...xs) - Math.min(...xs), 0.05),
    inner.height / Math.max(Math.max(...ys) - Math.min(...ys), 0.05),
  );
  const middle = spot((Math.max(...xs) + Math.min(...xs)) / 2, (Math.max(...ys) + Math.min(...ys)) / 2);
  const at = (p: Spot): Spot =>
    spot(box.x + box.width / 2 + (p.x - middle.x) * scale, box.y + box.height / 2 + (p.y - middle.y) * scale);
  const room = makePlacement(box);
  const parts: Primitive[] = [
    text("title", spot(box.x + 1, box.y + 4), side.title, { ink: "ink-2" }),
    ...norths(side, box.x, box.y + box.height),
  ];
  room.take({ x: box.x, y: box.y, width: 30, height: 6 });
  room.take({ x: box.x, y: box.y + box.height - 18, width: 22, height: 18 });
  for (const [a, b] of tubes) {
    const [from, to] = [at(flat(a)), at(flat(b))];
    parts.push(stroke("linkage", from, to, { weight: "visible", ink: "pencil" }));
    room.takeLine(from, to, 0.6);
  }
  const spots = all.map(at);
  for (const c of spots) {
    room.take({ x: c.x - 1.5, y: c.y - 1.5, width: 3, height: 3 });
    parts.push(
      line("pivot", circle(c, 1.3), { weight: "visible" }),
      line("pivot", polyline([spot(c.x - 2.2, c.y), spot(c.x + 2.2, c.y)]), { weight: "hair" }),
      line("pivot", polyline([spot(c.x, c.y - 2.2), spot(c.x, c.y + 2.2)]), { weight: "hair" }),
    );
  }
  points.forEach(({ mark }, index) => {
    const c = spots[index]!;
    const width = widthOf(mark, "reading", PEN);
    const near = NEAR.map(
      ([dx, dy]): Box => ({ x: c.x + dx * 4.4 - width / 2, y: c.y + dy * 4.4 - 2.2, width, height: 4.4 }),
    );
    const free = near.find(room.isFree) ?? near[0]!;
    room.take(free);
    parts.push(
      text("mark", spot(free.x + width / 2, free.y + 3.8), mark, {
        size: "reading",
        bold: true,
        anchor: "middle",
        ink: "ink",
        halo: "paper",
      }),
    );
  });
  return parts;
}

const NEAR: readonly (readonly [number, number])[] = [
  [1, -0.7],
  [-1, -0.7],
  [1, 0.9],
  [-1, 0.9],
  [0, -1.2],
  [0, 1.3],
  [1.5, 0],
  [-1.5, 0],
];
