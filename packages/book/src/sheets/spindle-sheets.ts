import type { Primitive } from "@armwright/drawing";
import { cross, dot, spinAxisOf, subtract, unitVector, type Vec3 } from "@armwright/engine";
import { type JigPoint, jigParts } from "../jig/jig-part.ts";
import { markedView } from "../paper/marked-view.ts";
import { FROM_ABOVE, FROM_BEHIND, onTheRight } from "../paper/side.ts";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** The spindle's places from its hub face and stub axis, left and right each. */
export function spindleSheets(makings: Makings): readonly Sheet[] {
  const part = jigParts(makings.study.corner).find(({ id }) => id === "spindle");
  return part ? (["left", "right"] as const).map((hand) => spindleSheet(part.points, hand, makings)) : [];
}

function spindleSheet(points: readonly JigPoint[], hand: "left" | "right", makings: Makings): Sheet {
  const { room, study } = makings;
  const { wheel } = study.car;
  const frame = stubFrame(spinAxisOf(wheel));
  const intro = paragraph(
    "Bolt the hub face flat on the bench or a plate: everything counts from that face and from the middle of the stub. In: from the face toward the car, along the stub's axis. Forward and up: square to it, the spindle standing as at ride height.",
    room.x,
    room.y,
    room.width,
    { ink: "ink-2" },
  );
  const mark = (value: number): string => `${value < -0.0004 ? "−" : ""}${tape(makings, Math.abs(value))}`;
  const list = table(
    [
      { head: "", share: 5, bold: true },
      { head: "place", share: 40 },
      { head: "in", share: 12, align: "end", bold: true },
      { head: "forward", share: 12, align: "end", bold: true },
      { head: "up", share: 12, align: "end", bold: true },
      { head: "as built", share: 20 },
    ],
    points.map(({ mark: letter, label, point }) => {
      const d = subtract(point, wheel.hubFace);
      return [letter, label, mark(-dot(d, frame.out)), mark(dot(d, frame.forward)), mark(dot(d, frame.up)), ""];
    }),
    { left: room.x, top: intro.bottom + 2, width: room.width, floor: room.y + room.height },
    { isForm: true, size: "text", rowHeight: 9 },
  );
  const height = Math.min(95, room.y + room.height - list.bottom - 24);
  const width = (room.width - 4) / 2;
  const views: Primitive[] = [FROM_ABOVE, FROM_BEHIND].flatMap((side, index) =>
    markedView(
      points,
      points.slice(0, -1).map(({ point }) => [point, points.at(-1)!.point] as const),
      hand === "left" ? side : onTheRight(side),
      { x: room.x + index * (width + 4), y: list.bottom + 4, width, height },
    ),
  );
  const note = paragraph(
    "Camber and toe at ride height are in these numbers: do not add them again. Distances between places: the jig sheet.",
    room.x,
    list.bottom + height + 8,
    room.width,
    { ink: "ink-2" },
  );
  return {
    id: `spindle-${hand}`,
    title: `Spindle, ${hand.toUpperCase()}, make 1`,
    note: `${hand === "right" ? "mirror image of the left; " : ""}${lengthsIn(makings)}`,
    parts: [...intro.parts, ...list.parts, ...views, ...note.parts],
  };
}

/** Out along the stub; up as nearly upright as square to it can be; forward square to both. */
function stubFrame(out: Vec3): { readonly out: Vec3; readonly forward: Vec3; readonly up: Vec3 } {
  const forward = unitVector(cross(out, { x: 0, y: 0, z: 1 }));
  return { out, forward, up: cross(forward, out) };
}
