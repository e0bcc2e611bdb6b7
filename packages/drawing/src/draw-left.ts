import type { Position, Study } from "@armwright/engine";
import type { ViewOptions } from "./options.ts";
import { groundParts, underbodyParts } from "./parts/ground.ts";
import { hingeLines } from "./parts/hinges.ts";
import { keepOutParts, keepOutShapes } from "./parts/keep-out.ts";
import { handlesOf, pivotParts } from "./parts/pivots.ts";
import { jointParts } from "./parts/shaft.ts";
import { wheelFace } from "./parts/wheel.ts";
import { shift } from "./path.ts";
import type { Box, Drawing, Primitive, Sheet } from "./primitive.ts";
import type { Scene } from "./scene.ts";
import { byDepth, sceneOf } from "./scene-parts.ts";
import { group, stroke } from "./sketch.ts";
import { thinner } from "./thinner.ts";
import { viewFromLeft } from "./view.ts";
import { viewTitle } from "./view-title.ts";

/**
 * The left corner from the car's left side, the front to the left of the sheet. The wheel is drawn as rings with what lies
 * behind it showing through. The sheet's origin is x = 0, z = 0.
 */
export function drawLeft(study: Study, position: Position, sheet: Sheet, options: ViewOptions = {}): Drawing {
  const scene = sceneOf(study, position, viewFromLeft(sheet), options, options.detail ?? "small");
  const bounds: Box = { x: 0, y: 0, width: sheet.width, height: sheet.height };
  const { pen } = scene;
  const parts: Primitive[] = [
    ...groundParts(scene, 0, sheet.width),
    ...keepOutParts(scene, keepOutShapes(scene, bounds)),
    ...wheelFace(scene),
    ...lines(scene),
    ...underbodyParts(scene),
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

function lines({ view, position, car, scale, pen }: Scene): Primitive[] {
  const style = { ink: "ink-2", weight: "hair", dash: "centre" } as const;
  const c = view.at(position.wheelCentre);
  const reach = car.wheel.freeRadius * scale + 6 * pen;
  return [
    stroke("centreline", shift(c, -reach, 0), shift(c, reach, 0), style),
    stroke("centreline", shift(c, 0, -reach), shift(c, 0, reach), style),
  ];
}
