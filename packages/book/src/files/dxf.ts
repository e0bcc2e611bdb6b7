import type { PathStep, Primitive, Spot } from "@armwright/drawing";
import { DEGREE } from "@armwright/engine";
import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, TextHorizontalAlignment, Units } from "@tarikjabiri/dxf";

/** Curves are broken into straight lines that are nowhere farther off than this, mm. */
const FLATNESS = 0.02;

/**
 * Flat parts as a DXF (AC1021) that other programs for cutting and drawing read: real units set, true size, a layer for each
 * purpose (CUT, MARK, FLAP, HOLE …), y up. Primitives in mm, y down, as on paper.
 */
export function dxfText(parts: readonly Primitive[], units: "inch-pound" | "metric"): string {
  const inches = units === "inch-pound";
  const factor = inches ? 1 / 25.4 : 1;
  const dxf = new DxfWriter();
  dxf.setUnits(inches ? Units.Inches : Units.Millimeters);
  const layers = new Set<string>();
  const layerOf = (name: string): string => {
    const layer = name.toUpperCase().replace(/[^A-Z0-9]+/g, "_");
    if (!layers.has(layer)) {
      layers.add(layer);
      dxf.addLayer(layer, COLOURS[layer] ?? Colors.White, "Continuous");
    }
    return layer;
  };
  const add = (primitive: Primitive): void => {
    if (primitive.shape === "group") {
      for (const part of primitive.parts) add(part);
      return;
    }
    const layerName = layerOf(primitive.layer);
    if (primitive.shape === "text") {
      const align = ALIGN[primitive.anchor];
      const at = point3d(primitive.at.x * factor, -primitive.at.y * factor, 0);
      dxf.addText(at, (primitive.size === "label" ? 2.6 : 3.2) * factor, plainText(primitive.text), {
        layerName,
        rotation: -primitive.turn / DEGREE,
        ...(align !== TextHorizontalAlignment.Left && { horizontalAlignment: align, secondAlignmentPoint: at }),
      });
      return;
    }
    if (primitive.shape === "line" && primitive.ink === "none") return;
    for (const { spots, isClosed } of polylinesOf(primitive.path)) {
      dxf.addLWPolyline(
        spots.map(({ x, y }) => ({ point: point2d(x * factor, -y * factor) })),
        { layerName, flags: isClosed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
      );
    }
  };
  for (const part of parts) add(part);
  return dxf.stringify();
}

const COLOURS: Readonly<Record<string, number>> = { CUT: Colors.Red, HOLE: Colors.Red, MARK: Colors.Blue };

const ALIGN = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
} as const;

/** Older readers know plain Latin letters best. */
const plainText = (words: string): string =>
  words.replaceAll("⌀", "dia ").replaceAll("−", "-").replaceAll("×", "x").replaceAll("°", " deg");

interface Polyline {
  readonly spots: readonly Spot[];
  readonly isClosed: boolean;
}

function polylinesOf(path: readonly PathStep[]): Polyline[] {
  const lines: Polyline[] = [];
  let spots: Spot[] = [];
  const end = (isClosed: boolean): void => {
    if (spots.length > 1) lines.push({ spots, isClosed });
    spots = [];
  };
  for (const step of path) {
    if (step.to === "move") {
      end(false);
      spots = [step.at];
    } else if (step.to === "line") spots.push(step.at);
    else if (step.to === "curve") spots.push(...flattened(spots.at(-1) ?? step.at, step.c1, step.c2, step.at));
    else end(true);
  }
  end(false);
  return lines;
}

/** A cubic Bézier as the ends of straight pieces; their number from the second differences of its control points. */
function flattened(from: Spot, c1: Spot, c2: Spot, to: Spot): Spot[] {
  const bend = Math.max(
    Math.hypot(from.x - 2 * c1.x + c2.x, from.y - 2 * c1.y + c2.y),
    Math.hypot(c1.x - 2 * c2.x + to.x, c1.y - 2 * c2.y + to.y),
  );
  // A cubic strays from its chord by at most (3/4)·bend/n² with n pieces.
  const pieces = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / FLATNESS)));
  return Array.from({ length: pieces }, (_, index) => {
    const t = (index + 1) / pieces;
    const u = 1 - t;
    const mix = (a: number, b: number, c: number, d: number): number =>
      u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
    return { x: mix(from.x, c1.x, c2.x, to.x), y: mix(from.y, c1.y, c2.y, to.y) };
  });
}
