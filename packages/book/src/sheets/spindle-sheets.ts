import { cross, dot, spinAxisOf, subtract, unitVector, type Vec3 } from "@armwright/engine";
import { type JigPoint, jigParts } from "../jig/jig-part.ts";
import type { Block } from "../paper/flow.ts";
import { type Measure, mergedMeasures, type PartLine, partView } from "../paper/part-view.ts";
import { FROM_ABOVE, FROM_BEHIND, onTheRight, type Side } from "../paper/side.ts";
import { flowSheets } from "./flow-sheets.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** The spindle's places from its hub face and stub axis, left and right each. */
export function spindleSheets(makings: Makings): readonly Sheet[] {
  const part = jigParts(makings.study.corner).find(({ id }) => id === "spindle");
  return part ? (["left", "right"] as const).flatMap((hand) => spindleSheet(part.points, hand, makings)) : [];
}

function spindleSheet(points: readonly JigPoint[], hand: "left" | "right", makings: Makings): readonly Sheet[] {
  const { wheel } = makings.study.car;
  const places = onTheBench(points, wheel.hubFace, spinAxisOf(wheel));
  const signed = (value: number): string => (Math.abs(value) < 1e-4 ? "0" : tape(makings, value));
  const views = [FROM_ABOVE, FROM_BEHIND].map(
    (side): Block => ({
      kind: "view",
      share: 1,
      least: 62,
      draw: (box) =>
        partView(
          { tubes: [], points: places, lines: linesIn(side, places), measures: measuresIn(side, places, makings) },
          hand === "left" ? side : onTheRight(side),
          box,
        ).parts,
    }),
  );
  return flowSheets(
    {
      id: `spindle-${hand}`,
      title: `Spindle, ${hand.toUpperCase()}, make 1`,
      note: `${hand === "right" ? "mirror image; " : ""}${lengthsIn(makings)}`,
    },
    [
      {
        kind: "words",
        words:
          "Bolt the hub face flat on the bench or a plate: everything counts from that face and from the middle of the stub. In: from the face toward the car, along the stub's axis. Forward and up: square to it, the spindle standing as at ride height.",
        style: { ink: "ink-2" },
      },
      {
        kind: "table",
        columns: [
          { head: "", share: 5, bold: true },
          { head: "place", share: 40 },
          { head: "in", share: 12, align: "end", bold: true },
          { head: "forward", share: 12, align: "end", bold: true },
          { head: "up", share: 12, align: "end", bold: true },
          { head: "as built", share: 20 },
        ],
        rows: places.map(({ mark, label, point }) => [
          mark,
          label,
          signed(-point.y),
          signed(point.x),
          signed(point.z),
          "",
        ]),
        style: { isForm: true, size: "text", rowHeight: 8.5 },
      },
      ...views,
      {
        kind: "words",
        words:
          "Thick line: the hub face from its edge. Camber and toe at ride height are in these numbers: do not add them again. Distances between places: the jig sheet. Tack in the jig with hub and bolts in; after welding lay a straight edge on the hub face: it warps.",
        style: { ink: "ink-2" },
      },
    ],
    makings,
  );
}

/** Places as they stand on the bench: y out along the stub from the hub face, z up, x forward, both square to the stub. */
function onTheBench(points: readonly JigPoint[], hubFace: Vec3, out: Vec3): readonly JigPoint[] {
  const forward = unitVector(cross(out, { x: 0, y: 0, z: 1 }));
  const up = cross(forward, out);
  return points.map(({ point, ...place }) => {
    const d = subtract(point, hubFace);
    return { ...place, point: { x: dot(d, forward), y: dot(d, out), z: dot(d, up) } };
  });
}

const FACE: Vec3 = { x: 0, y: 0, z: 0 };
/** Half of the hub face as it is drawn, m: a common wheel-bolt circle and a little. */
const HALF_FACE = 0.07;

/** The hub face from its edge, the stub's axis in from it, and what carries each place. */
function linesIn(side: Side, places: readonly JigPoint[]): PartLine[] {
  const edge: Vec3 = side.top === "UP" ? { x: 0, y: 0, z: HALF_FACE } : { x: HALF_FACE, y: 0, z: 0 };
  const deepest = Math.min(0, ...places.map(({ point }) => point.y));
  return [
    { from: { x: 0, y: 0.02, z: 0 }, to: { x: 0, y: deepest - 0.02, z: 0 }, as: "axis" },
    { from: edge, to: { x: -edge.x, y: 0, z: -edge.z }, as: "face" },
  ];
}

/** In and up from the hub face's middle where the sheet shows up; forward where it shows forward. */
function measuresIn(side: Side, places: readonly JigPoint[], makings: Makings): Measure[] {
  const away = places.filter(({ point }) => Math.hypot(point.x, point.y, point.z) > 1e-4);
  const isUpright = side.top === "UP";
  const rises = away.flatMap(({ mark, point }) => {
    const rise = isUpright ? point.z : point.x;
    return Math.abs(rise) < 0.004
      ? []
      : [{ mark, from: FACE, to: point, reads: tape(makings, rise), along: "upright" as const }];
  });
  const ins = away.map(({ mark, point }) => ({
    mark,
    from: FACE,
    to: point,
    reads: tape(makings, -point.y),
    along: "level" as const,
  }));
  return mergedMeasures(isUpright ? [...ins, ...rises] : rises);
}
