import { addScaled, cross, type Position, type Study, UP } from "@armwright/engine";
import type { ViewOptions } from "./options.ts";
import { hingeLines } from "./parts/hinges.ts";
import { keepOutParts, keepOutShapes } from "./parts/keep-out.ts";
import { handlesOf, pivotParts } from "./parts/pivots.ts";
import { jointParts } from "./parts/shaft.ts";
import { tyreOutline } from "./parts/wheel.ts";
import { spot } from "./path.ts";
import type { Box, Drawing, Primitive, Sheet } from "./primitive.ts";
import type { Scene } from "./scene.ts";
import { byDepth, sceneOf } from "./scene-parts.ts";
import { area, group, stroke } from "./sketch.ts";
import { unitOr } from "./space.ts";
import { thinner } from "./thinner.ts";
import { viewFromAbove } from "./view.ts";
import { viewTitle } from "./view-title.ts";

/** The left corner from above: wheel on the left, forward up the sheet. The sheet's origin is x = 0, y = 0. */
export function drawTop(study: Study, position: Position, sheet: Sheet, options: ViewOptions = {}): Drawing {
  const scene = sceneOf(study, position, viewFromAbove(sheet), options, options.detail ?? "small");
  const bounds: Box = { x: 0, y: 0, width: sheet.width, height: sheet.height };
  const { pen } = scene;
  const parts: Primitive[] = [
    ...keepOutParts(scene, keepOutShapes(scene, bounds)),
    ...lines(scene),
    ...tyreFromAbove(scene),
    ...byDepth(scene),
    ...hingeLines(scene),
    ...jointParts(scene),
    ...pivotParts(scene),
    ...(options.title === false ? [] : viewTitle(scene.view, options.isMirrored, "label", pen).parts),
    ...(options.over ?? []),
  ];
  const shown = scene.detail === "small" ? thinner(parts) : parts;
  return { sheet, parts: [group("view", shown, { clip: bounds })], handles: handlesOf(scene) };
}

/** The car's centreline and the line through the wheel centre across it. */
function lines({ view, position }: Scene): Primitive[] {
  const style = { ink: "ink-2", weight: "hair", dash: "centre" } as const;
  const c = view.at(position.wheelCentre);
  const { origin, width, height, pen } = view.sheet;
  const end = Math.min(origin.x + 8 * pen, width);
  return [
    stroke("centreline", spot(0, c.y), spot(end, c.y), style),
    ...(origin.x > 0 && origin.x < width
      ? [
          stroke("centreline", spot(origin.x, 4 * pen), spot(origin.x, height - 4 * pen), {
            ...style,
            meaning: "centreline",
          }),
        ]
      : []),
  ];
}

/** Tyre with a few tread blocks slanting from its shoulders. */
function tyreFromAbove(scene: Scene): Primitive[] {
  const { car, position, view } = scene;
  const { wheel } = car;
  const { wheelCentre, spinAxis } = position;
  const forward = unitOr(cross(spinAxis, UP), { x: 1, y: 0, z: 0 });
  const at = (out: number, ahead: number) => view.at(addScaled(addScaled(wheelCentre, spinAxis, out), forward, ahead));
  const half = wheel.sectionWidth / 2;
  const count = 8;
  const treads = Array.from({ length: count }, (_, i) => ((i + 0.5) / count - 0.5) * 1.7 * wheel.freeRadius);
  return [
    area("wheel", tyreOutline(wheel, position, view), { meaning: "tyre" }),
    ...treads.flatMap((ahead) =>
      [1, -1].map((side) =>
        stroke("wheel", at(side * half * 0.92, ahead - 0.016), at(side * half * 0.42, ahead + 0.016), {
          weight: "hair",
          ink: "ink-2",
        }),
      ),
    ),
  ];
}
