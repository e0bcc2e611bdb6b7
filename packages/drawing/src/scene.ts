import {
  type Car,
  type Corner,
  type Mount,
  type Position,
  placeOn,
  type Study,
  solveAt,
  type Vec3,
} from "@armwright/engine";
import type { Spot } from "./primitive.ts";
import type { Trouble } from "./trouble.ts";
import type { View } from "./view.ts";

/** What every part of a view needs to draw itself. */
export interface Scene {
  readonly study: Study;
  readonly car: Car;
  readonly corner: Corner;
  readonly position: Position;
  /** Numbers of this position; null where the linkage does not reach it. */
  readonly row: Float64Array | null;
  readonly view: View;
  /** Sheet units a px of the look. */
  readonly pen: number;
  /** Sheet units a metre. */
  readonly scale: number;
  /** Place in the document that is held, drawn violet. */
  readonly held: string | undefined;
  readonly troubles: readonly Trouble[];
  /** `small`: a secondary view, with smaller signs and fewer of them. */
  readonly detail: "full" | "small";
  /** Height of the ground where it is not under the loaded tyre, m. */
  readonly groundZ: number | undefined;
}

/** Where a mount is now, on the sheet. */
export const mountAt = (scene: Scene, mount: Mount): Spot => scene.view.at(mountPoint(scene, mount));

/** Where a mount is now, m. */
export const mountPoint = (scene: Scene, mount: Mount): Vec3 => placeOn(scene.position, mount.point, mount.on);

/** Whether that very place is in the hand. */
export const isHeld = (scene: Scene, place: string): boolean => scene.held === place;

/** Whether a part or one of its sizes is in the hand; a held end of it tints only that end. */
export function isPartHeld({ held }: Scene, part: string): boolean {
  if (held === undefined || held === part) return held === part;
  return held.startsWith(`${part}.`) && !/\.(upper|lower|inner|outer)$/.test(held);
}

export const inTrouble = (scene: Scene, place: string): boolean =>
  scene.troubles.some((trouble) => trouble.place === place);

/** A quantity of a position by its id; null where the car has no such quantity or it does not exist there. */
export function numberOf(study: Study, row: Float64Array | null, id: string): number | null {
  if (!row) return null;
  const value = study.quantities.find((quantity) => quantity.id === id)?.read(row, study.corner) ?? null;
  return value !== null && Number.isFinite(value) ? value : null;
}

/** The numbers of a position. */
export const rowOf = (corner: Corner, position: Position): Float64Array | null =>
  solveAt(corner, position.travel)?.row ?? null;

/** Height of the ground under the tyre now, m, the body standing still. */
export const groundHeight = (scene: Scene): number => {
  if (scene.groundZ !== undefined) return scene.groundZ;
  const { axis, wheelCentre } = { axis: scene.position.spinAxis, wheelCentre: scene.position.wheelCentre };
  return wheelCentre.z - scene.car.wheel.loadedRadius * Math.hypot(axis.x, axis.y);
};
