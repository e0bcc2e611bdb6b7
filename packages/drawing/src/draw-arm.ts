import type { Vec3 } from "@armwright/engine";
import { type BentArm, type UseClass, useClassOf } from "./bent-arm.ts";
import { circle, polyline, shift, spot } from "./path.ts";
import { makePlacement } from "./placement.ts";
import type { Ink, Primitive, Spot, Weight } from "./primitive.ts";
import { area, line, stroke, text } from "./sketch.ts";
import { boxOfText } from "./text-size.ts";

/** How each class is drawn: by weight as well as by ink. */
export const USE_LOOKS: Readonly<Record<UseClass, { readonly ink: Ink; readonly weight: Weight }>> = {
  little: { ink: "pencil", weight: "visible" },
  half: { ink: "ink", weight: "visible" },
  most: { ink: "ink", weight: "rim" },
  over: { ink: "stop", weight: "rim" },
};

/** Seen from behind and outside, from above: rad. */
const TURN = (32 * Math.PI) / 180;
const TILT = (28 * Math.PI) / 180;
const MARGIN = { side: 46, top: 26, foot: 26 };

/** Across and down, m, of a point seen at a slant. */
function slanted({ x, y, z }: Vec3): Spot {
  const across = -y * Math.cos(TURN) + x * Math.sin(TURN);
  const away = x * Math.cos(TURN) + y * Math.sin(TURN);
  return spot(across, -(z * Math.cos(TILT) + away * Math.sin(TILT)));
}

/** An arm under load: as it stands in pencil, bent in lines by how much each piece is asked, and the share beside each node. */
export function drawArm(arm: BentArm, width: number, height: number): readonly Primitive[] {
  const all = arm.pieces.flatMap(({ from, to, bent }) => [from, to, ...bent]).map(slanted);
  if (all.length === 0) return [];
  const [left, right] = [Math.min(...all.map(({ x }) => x)), Math.max(...all.map(({ x }) => x))];
  const [top, bottom] = [Math.min(...all.map(({ y }) => y)), Math.max(...all.map(({ y }) => y))];
  const scale = Math.min(
    (width - 2 * MARGIN.side) / Math.max(right - left, 1e-6),
    (height - MARGIN.top - MARGIN.foot) / Math.max(bottom - top, 1e-6),
  );
  const origin = spot(
    width / 2 - ((left + right) / 2) * scale,
    MARGIN.top + (height - MARGIN.top - MARGIN.foot) / 2 - ((top + bottom) / 2) * scale,
  );
  const at = (point: Vec3): Spot => {
    const { x, y } = slanted(point);
    return shift(origin, x * scale, y * scale);
  };
  const room = makePlacement({ x: 0, y: 0, width, height });
  const parts: Primitive[] = [];
  for (const { from, to, id } of arm.pieces)
    parts.push(stroke("arm", at(from), at(to), { ink: "pencil", weight: "thin", dash: "ghost", meaning: id }));
  for (const { bent, use, id } of [...arm.pieces].sort((a, b) => a.use - b.use)) {
    const spots = bent.map(at);
    parts.push(line("arm", polyline(spots), { ...USE_LOOKS[useClassOf(use)], meaning: id }));
    for (let i = 1; i < spots.length; i += 1) room.takeLine(spots[i - 1]!, spots[i]!, 4);
  }
  const worst = arm.nodes.reduce((most, { use }) => Math.max(most, use), 0);
  const byUse = [...arm.nodes].sort((a, b) => b.use - a.use);
  for (const node of byUse) parts.push(area("arm", circle(at(node.at), 3.2), { weight: "visible", fill: "paper" }));
  for (const { at: point, use, label } of byUse) {
    const isWorst = use === worst && use > 0;
    const share = `${percent(use)} %`;
    const words = placed(at(point), isWorst ? `${label} ${share}` : share, isWorst, use > 1, room);
    if (words) parts.push(words);
  }
  return parts;
}

/** A share in whole percent, three figures at most. */
export const percent = (use: number): string => String(Number((use * 100).toPrecision(3).replace(/\.\d+$/, "")));

function placed(
  near: Spot,
  words: string,
  isBold: boolean,
  isOver: boolean,
  room: ReturnType<typeof makePlacement>,
): Primitive | null {
  for (const reach of [9, 18, 30, 44]) {
    for (const [dx, dy, anchor] of [
      [0.7, -0.7, "start"],
      [-0.7, -0.7, "end"],
      [0.7, 1, "start"],
      [-0.7, 1, "end"],
      [1, 0.1, "start"],
      [-1, 0.1, "end"],
    ] as const) {
      const primitive = text("arm", shift(near, dx * reach, dy * reach + 5), words, {
        anchor,
        bold: isBold || isOver,
        ink: "ink",
        halo: "paper",
      });
      const box = boxOfText(primitive, 1);
      if (!room.isFree(box)) continue;
      room.take(box);
      return primitive;
    }
  }
  return null;
}
