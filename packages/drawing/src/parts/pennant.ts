import { polyline, shift, spot } from "../path.ts";
import type { Primitive, Spot } from "../primitive.ts";
import { area, text } from "../sketch.ts";

export const PENNANT_WIDTH = 22;
const HEIGHT = 16;

/** The flag of a limit: its tip at `tip`, pointing right, its order in it; solid for the first to bite. */
export function pennant(layer: string, tip: Spot, order: number, pen: number): Primitive[] {
  const solid = order === 1;
  const left = tip.x - PENNANT_WIDTH * pen;
  const half = (HEIGHT / 2) * pen - pen;
  const shoulder = shift(tip, -7 * pen, 0);
  const outline = [
    spot(left, tip.y - half),
    spot(shoulder.x, tip.y - half),
    tip,
    spot(shoulder.x, tip.y + half),
    spot(left, tip.y + half),
  ];
  return [
    area(layer, polyline(outline, true), { ink: "stop", fill: solid ? "stop" : "paper" }),
    text(layer, spot(left + 8 * pen, tip.y + 5 * pen), String(order), {
      anchor: "middle",
      bold: true,
      ink: solid ? "on-accent" : "stop",
    }),
  ];
}
