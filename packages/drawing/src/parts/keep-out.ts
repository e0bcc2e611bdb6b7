import { addScaled, cross, dot, type KeepOut, type KeepOutBox, subtract, type Vec3 } from "@armwright/engine";
import { cutBehind, gapOf, hull, polyline, ring, spot } from "../path.ts";
import type { Box, Primitive, Spot } from "../primitive.ts";
import type { Scene } from "../scene.ts";
import { area, line } from "../sketch.ts";

/** A keep-out as it shows in a view: its outline, and where its name may stand. */
export interface KeepOutShape {
  readonly keepOut: KeepOut;
  readonly outline: readonly Spot[];
}

/**
 * Outlines of all keep-outs that show: boxes and tubes as their silhouettes; a half-space where the plane through the wheel
 * centre, square to the line of sight, cuts it. A half-space whose face is square to the line of sight does not show.
 */
export function keepOutShapes(scene: Scene, within: Box): readonly KeepOutShape[] {
  return scene.car.keepOuts.flatMap((keepOut): KeepOutShape[] => {
    const whole = outlineOf(scene, keepOut, within);
    const outline = clippedTo(whole, within);
    return outline.length < 3 ? [] : [{ keepOut, outline }];
  });
}

export const keepOutParts = (scene: Scene, shapes: readonly KeepOutShape[]): Primitive[] =>
  shapes.flatMap(({ keepOut, outline }) => [
    area("keep-out", polyline(outline, true), {
      fill: "none",
      hatch: "keep-out",
      weight: "ghost",
      dash: "keep-out",
      meaning: keepOut.name,
    }),
    ...(keepOut.shape === "half-space" ? faceLine(scene, keepOut.point, keepOut.normal, outline) : []),
  ]);

function outlineOf(scene: Scene, keepOut: KeepOut, within: Box): Spot[] {
  const { view, scale } = scene;
  switch (keepOut.shape) {
    case "box":
      return hull(cornersOf(keepOut).map(view.at));
    case "tube": {
      const r = (keepOut.diameter / 2) * scale;
      const [a, b] = [view.at(keepOut.from), view.at(keepOut.to)];
      return hull([...ring(a, r), ...ring(b, r)]);
    }
    case "half-space":
      return behindPlane(scene, keepOut.point, keepOut.normal, within);
  }
}

function cornersOf(box: KeepOutBox): Vec3[] {
  const axisZ = cross(box.axisX, box.axisY);
  const sides = [-1, 1];
  return sides.flatMap((i) =>
    sides.flatMap((j) =>
      sides.map((k) =>
        addScaled(
          addScaled(addScaled(box.centre, box.axisX, i * box.half.x), box.axisY, j * box.half.y),
          axisZ,
          k * box.half.z,
        ),
      ),
    ),
  );
}

/** The part of the sheet behind the plane, where the plane of section through the wheel centre meets it. */
function behindPlane(scene: Scene, point: Vec3, normal: Vec3, within: Box): Spot[] {
  const trace = traceOf(scene, point, normal);
  return trace ? cutBehind(cornersOfBox(within), trace.at, trace.normal) : [];
}

/** A spot on the plane's trace in the section, and its normal on the sheet; null where the two planes hardly meet. */
function traceOf(
  { view, position }: Scene,
  point: Vec3,
  normal: Vec3,
): { readonly at: Spot; readonly normal: Spot } | null {
  const inPlane = addScaled(normal, view.away, -dot(normal, view.away));
  const size2 = dot(inPlane, inPlane);
  if (size2 < 0.01) return null;
  const height = dot(normal, subtract(point, position.wheelCentre));
  const on = addScaled(position.wheelCentre, inPlane, height / size2);
  const at = view.at(on);
  const tip = view.at(addScaled(on, inPlane, 1));
  return { at, normal: spot(tip.x - at.x, tip.y - at.y) };
}

/** The face itself, heavier than the edge of the sheet that closes the hatching. */
function faceLine(scene: Scene, point: Vec3, normal: Vec3, outline: readonly Spot[]): Primitive[] {
  const trace = traceOf(scene, point, normal);
  if (!trace) return [];
  const size = Math.hypot(trace.normal.x, trace.normal.y);
  const off = (p: Spot): number => ((p.x - trace.at.x) * trace.normal.x + (p.y - trace.at.y) * trace.normal.y) / size;
  const ends = outline.filter((p) => Math.abs(off(p)) < 1e-6 * Math.max(1, size));
  const [first] = ends;
  if (!first) return [];
  // A corner that lies on the face comes twice: the other end is the farthest.
  const other = ends.reduce((a, b) => (gapOf(first, b) > gapOf(first, a) ? b : a));
  return [line("keep-out", polyline([first, other]), { weight: "visible" })];
}

const cornersOfBox = ({ x, y, width, height }: Box): Spot[] => [
  spot(x, y),
  spot(x + width, y),
  spot(x + width, y + height),
  spot(x, y + height),
];

function clippedTo(outline: readonly Spot[], { x, y, width, height }: Box): Spot[] {
  let cut = [...outline];
  cut = cutBehind(cut, spot(x, y), spot(-1, 0));
  cut = cutBehind(cut, spot(x + width, y), spot(1, 0));
  cut = cutBehind(cut, spot(x, y), spot(0, -1));
  return cutBehind(cut, spot(x, y + height), spot(0, 1));
}
