import type { Position, Study } from "@armwright/engine";
import { placeDimension } from "./dimension.ts";
import { bareMark, type NoteRoom, type NoteWish, placeNote, takeWords } from "./note.ts";
import type { ViewOptions } from "./options.ts";
import { chassisTabs } from "./parts/chassis-tabs.ts";
import { ghostsOf, ghostsOver, ghostsUnder, wheelPath } from "./parts/ghosts.ts";
import { groundParts, underbodyParts } from "./parts/ground.ts";
import { keepOutParts, keepOutShapes } from "./parts/keep-out.ts";
import { handlesOf, pivotParts } from "./parts/pivots.ts";
import { jointParts } from "./parts/shaft.ts";
import { wheelSection } from "./parts/wheel.ts";
import { shift, spot } from "./path.ts";
import type { Box, Drawing, Primitive, Sheet } from "./primitive.ts";
import { rearDimensions } from "./rear-dimensions.ts";
import { ghostNames, keepOutNames, partNotes, troubleNotes } from "./rear-notes.ts";
import { roomRound } from "./room.ts";
import type { Scene } from "./scene.ts";
import { byDepth, sceneOf } from "./scene-parts.ts";
import { group, stroke } from "./sketch.ts";
import { viewFromBehind } from "./view.ts";
import { viewTitle } from "./view-title.ts";

/**
 * The left corner from behind at one position, cut on the axle plane: wheel on the left of the sheet, centreline to the
 * right. The sheet's origin is y = 0, z = 0. Lengths are written in the document's units.
 */
export function drawRear(study: Study, position: Position, sheet: Sheet, options: ViewOptions = {}): Drawing {
  const scene = sceneOf(study, position, viewFromBehind(sheet), options, "full");
  const bounds: Box = { x: 0, y: 0, width: sheet.width, height: sheet.height };
  const shapes = keepOutShapes(scene, bounds);
  const ghosts = options.ghosts === false ? [] : ghostsOf(study, position);
  const room = roomRound(scene, inset(bounds, 4 * scene.pen), shapes, ghosts);
  const title = options.title === false ? null : viewTitle(scene.view, options.isMirrored, "text", scene.pen);
  if (title) takeWords(room, title.box);
  // Words are placed most needful first; what finds no room is left out, never laid over other words.
  const names = [...keepOutNames(scene, shapes, room), ...ghostNames(scene, ghosts, room)];
  const troubles = troubleNotes(scene).map((wish) => placeNote(wish, room, scene.pen) ?? bareMark(wish, scene.pen));
  const dimensions =
    options.dimensions === false
      ? []
      : rearDimensions(scene).flatMap((wish) => placeDimension(wish, room, scene.pen) ?? []);
  const notes = options.notes === false ? [] : placeAll(partNotes(scene, options.gaps), room, scene.pen);
  const parts: Primitive[] = [
    ...groundParts(scene, 0, sheet.width),
    ...ghostsUnder(scene, ghosts),
    ...wheelPath(scene),
    ...centreLines(scene),
    ...keepOutParts(scene, shapes),
    ...underbodyParts(scene),
    ...wheelSection(scene),
    ...chassisTabs(scene),
    ...byDepth(scene),
    ...jointParts(scene),
    ...ghostsOver(scene, ghosts),
    ...pivotParts(scene),
    ...names,
    ...dimensions,
    ...notes,
    ...troubles,
    ...(title?.parts ?? []),
    ...(options.over ?? []),
  ];
  return { sheet, parts: [group("view", parts, { clip: bounds })], handles: handlesOf(scene) };
}

function centreLines(scene: Scene): Primitive[] {
  const { view, car, position, pen } = scene;
  const { sheet } = view;
  const style = { ink: "ink-2", weight: "hair", dash: "centre" } as const;
  const c = view.at(position.wheelCentre);
  const reach = car.wheel.freeRadius * sheet.scale + 10 * pen;
  const centre = sheet.origin.x;
  return [
    ...(centre > 0 && centre < sheet.width
      ? [
          stroke("centreline", spot(centre, 6 * pen), spot(centre, sheet.origin.y - 4 * pen), {
            ...style,
            meaning: "centreline",
          }),
        ]
      : []),
    stroke("centreline", shift(c, 0, -reach), shift(c, 0, reach), style),
    stroke(
      "centreline",
      shift(c, -(car.wheel.sectionWidth * 0.6 * sheet.scale + 8 * pen), 0),
      shift(c, 0.1 * sheet.scale, 0),
      style,
    ),
  ];
}

const placeAll = (wishes: readonly NoteWish[], room: NoteRoom, pen: number): Primitive[] =>
  wishes.flatMap((wish) => placeNote(wish, room, pen) ?? []);

const inset = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x + by,
  y: y + by,
  width: width - 2 * by,
  height: height - 2 * by,
});
