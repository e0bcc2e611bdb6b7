import type { Study, Vec3 } from "@armwright/engine";
import { shift, spot } from "./path.ts";
import { grown, overlap } from "./placement.ts";
import type { Box, Drawing, Primitive, Sheet, Spot, TextPrimitive } from "./primitive.ts";
import { group, text } from "./sketch.ts";
import { carBehind, cross, ringed, VIEWS } from "./survey-marks.ts";
import { boxOfText } from "./text-size.ts";
import type { View } from "./view.ts";

/** Named points of a survey, to be chosen from. */
export interface PointsPicture {
  readonly study: Study | null;
  readonly points: readonly { readonly name: string; readonly at: Vec3 }[];
  /** Names of those in hand. */
  readonly held: readonly string[];
  readonly view: View["name"];
}

/** All points of a survey in one view, each named where there is room; those in hand ringed and named first. */
export function drawPoints(
  { study, points, held, view: name }: PointsPicture,
  width: number,
  height: number,
  pen = 1,
): Drawing {
  const sheet = sheetRound(
    name,
    points.map(({ at }) => at),
    width,
    height,
    pen,
  );
  const view = VIEWS[name](sheet);
  const isHeld = (point: string): boolean => held.includes(point);
  const sorted = [...points].sort((a, b) => Number(isHeld(b.name)) - Number(isHeld(a.name)));
  const taken: Box[] = sorted.map(({ at }) => {
    const { x, y } = view.at(at);
    return { x: x - 6 * pen, y: y - 6 * pen, width: 12 * pen, height: 12 * pen };
  });
  const names = sorted.flatMap(({ name: words, at }): TextPrimitive[] => {
    const places = placesFor(words, view.at(at), isHeld(words), pen);
    const free = places.find((each) => {
      const box = boxOfText(each, pen);
      const isOnSheet = box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height;
      return isOnSheet && !taken.some((other) => overlap(other, box));
    });
    // What is in hand is named in any case, above it and within the sheet.
    const placed = free ?? (isHeld(words) ? within(places[2]!, width, pen) : undefined);
    if (!placed) return [];
    taken.push(grown(boxOfText(placed, pen), 2 * pen));
    return [placed];
  });
  const parts: Primitive[] = [
    ...carBehind(study, name, sheet),
    ...sorted.flatMap(({ name: words, at }) =>
      isHeld(words) ? ringed(view.at(at), pen) : cross(view.at(at), 5 * pen),
    ),
    ...names,
  ];
  return {
    sheet,
    parts: [group("points", parts, { clip: { x: 0, y: 0, width, height } })],
    handles: points.map(({ name: label, at }, index) => ({ path: `points[${index}]`, label, at: view.at(at) })),
  };
}

function placesFor(words: string, at: Spot, isHeld: boolean, pen: number): readonly TextPrimitive[] {
  const style = { halo: "paper", ink: isHeld ? "hold" : "ink", bold: isHeld } as const;
  const beside = 10 * pen;
  return [
    text("points", shift(at, beside, 5 * pen), words, { ...style, anchor: "start" }),
    text("points", shift(at, -beside, 5 * pen), words, { ...style, anchor: "end" }),
    text("points", shift(at, 0, -beside), words, { ...style, anchor: "middle" }),
    text("points", shift(at, 0, 20 * pen), words, { ...style, anchor: "middle" }),
  ];
}

function within(words: TextPrimitive, width: number, pen: number): TextPrimitive {
  const half = boxOfText(words, pen).width / 2;
  return { ...words, at: spot(Math.min(Math.max(words.at.x, half), width - half), words.at.y) };
}

function sheetRound(name: View["name"], points: readonly Vec3[], width: number, height: number, pen: number): Sheet {
  const flat = VIEWS[name]({ width: 1, height: 1, scale: 1, origin: spot(0, 0), pen: 1 });
  const spots = points.map(flat.at);
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const margin = 26 * pen;
  const scale = Math.min(
    (width - 2 * margin) / Math.max(right - left, 0.2),
    (height - 2 * margin) / Math.max(bottom - top, 0.2),
  );
  return {
    width,
    height,
    scale,
    pen,
    origin: spot(width / 2 - ((left + right) / 2) * scale, height / 2 - ((top + bottom) / 2) * scale),
  };
}
