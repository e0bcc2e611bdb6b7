import type { Position, Study } from "@armwright/engine";
import type { ViewOptions } from "./options.ts";
import { bumpStopParts } from "./parts/bump-stop.ts";
import { coiloverParts } from "./parts/coilover.ts";
import { memberParts } from "./parts/member.ts";
import { shaftParts } from "./parts/shaft.ts";
import { hubParts, spindlePlate } from "./parts/spindle.ts";
import { strapParts } from "./parts/strap.ts";
import type { Primitive } from "./primitive.ts";
import { rowOf, type Scene } from "./scene.ts";
import { group } from "./sketch.ts";
import { troublesAt } from "./trouble.ts";
import type { View } from "./view.ts";

/** What every part of a view needs, gathered once. */
export function sceneOf(
  study: Study,
  position: Position,
  view: View,
  options: ViewOptions,
  detail: Scene["detail"],
): Scene {
  const row = rowOf(study.corner, position);
  return {
    study,
    car: study.car,
    corner: study.corner,
    position,
    row,
    view,
    pen: view.sheet.pen,
    scale: view.sheet.scale,
    held: options.held,
    troubles: troublesAt(study, position, row, options.gaps),
    detail,
    groundZ: options.groundZ,
  };
}

/** Everything between the wheel and the signs, the farthest first. */
export function byDepth(scene: Scene): Primitive[] {
  const layers = [
    ...scene.corner.members.map((member) => memberParts(scene, member)),
    spindlePlate(scene),
    shaftParts(scene),
    coiloverParts(scene),
    strapParts(scene),
    bumpStopParts(scene),
    { depth: scene.view.depth(scene.position.wheelCentre) - 1e-6, parts: group("spindle", hubParts(scene)) },
  ];
  return layers
    .filter((layer) => layer !== null)
    .sort((a, b) => b.depth - a.depth)
    .map(({ parts }) => parts);
}
