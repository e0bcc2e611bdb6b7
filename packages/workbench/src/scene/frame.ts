import { type BodyId, type Car, type Corner, type Position, placeOn, type Study, type Vec3 } from "@armwright/engine";
import { type YokeDirections, yokeDirections } from "./hooke.ts";
import { STATE, type State } from "./kit/materials.ts";
import { subtract, unit } from "./kit/space.ts";
import type { ShowOptions } from "./types.ts";

/** One position of one study as the parts of the scene draw it. */
export interface Frame {
  readonly study: Study;
  readonly car: Car;
  readonly corner: Corner;
  readonly position: Position;
  readonly options: ShowOptions;
  /** Present where there is a half shaft. */
  readonly shaft?: ShaftNow;
  /** Direction square to the spin axis that turns with the wheel. */
  readonly wheelMark: Vec3;
}

export interface ShaftNow {
  readonly inner: Vec3;
  readonly outer: Vec3;
  /** Unit vector from inner to outer joint. */
  readonly axis: Vec3;
  readonly length: number;
  readonly yokes: YokeDirections;
}

export function frameOf(study: Study, position: Position, options: ShowOptions): Frame {
  const { car, corner } = study;
  const shaft = shaftNow(car, position, options.turn ?? 0);
  const wheelMark = shaft?.yokes.stub ?? wheelUp(position.spinAxis);
  return { study, car, corner, position, options, wheelMark, ...(shaft && { shaft }) };
}

/** Square to the spin axis, as upright as can be. */
export const wheelUp = (s: Vec3): Vec3 => unit({ x: -s.z * s.x, y: -s.z * s.y, z: 1 - s.z * s.z });

function shaftNow({ driveshaft }: Car, position: Position, turn: number): ShaftNow | undefined {
  if (!driveshaft) return undefined;
  const inner = driveshaft.inner.centre;
  const outer = placeOn(position, driveshaft.outer.centre, "spindle");
  const between = subtract(outer, inner);
  const length = Math.hypot(between.x, between.y, between.z);
  const axis = unit(between);
  const yokes = yokeDirections({
    outputAxis: driveshaft.outputAxis,
    shaft: axis,
    spinAxis: position.spinAxis,
    inner: driveshaft.inner.kind,
    outer: driveshaft.outer.kind,
    yokePhase: driveshaft.yokePhase,
    turn,
  });
  return { inner, outer, axis, length, yokes };
}

export const mountNow = ({ position }: Frame, mount: { readonly point: Vec3; readonly on: BodyId }): Vec3 =>
  placeOn(position, mount.point, mount.on);

/** A direction of a body, given in the design position, as it is now. */
export function directionNow({ position }: Frame, v: Vec3, on: BodyId): Vec3 {
  const r = position.poses[on]?.rotation;
  if (!r) return v;
  return {
    x: r[0] * v.x + r[1] * v.y + r[2] * v.z,
    y: r[3] * v.x + r[4] * v.y + r[5] * v.z,
    z: r[6] * v.x + r[7] * v.y + r[8] * v.z,
  };
}

/** A pivot's place in the document; the links of a five-link are a list there. */
export function pivotPath({ linkage }: Car, pivotId: string): string {
  if (linkage.kind !== "five-link") return `linkage.${pivotId}`;
  const index = linkage.links.findIndex(({ name }) => pivotId.startsWith(`links.${name}.`));
  return `linkage.links[${index}].${pivotId.endsWith(".inner") ? "inner" : "outer"}`;
}

/** Red where the place, or the part that it is of, is in trouble; violet where it or something of it is held. */
export function stateOf({ options }: Frame, place: string): State {
  const { troubles = [], held } = options;
  for (const trouble of troubles) if (trouble.place !== "" && isWithin(place, trouble.place)) return STATE.stop;
  return held !== undefined && held !== "" && isWithin(held, place) ? STATE.held : STATE.plain;
}

const isWithin = (path: string, place: string): boolean =>
  path === place || (path.startsWith(place) && (path[place.length] === "." || path[place.length] === "["));

/** Height of the ground under the tyre, m: the lowest point of a disc of the loaded radius. */
export function groundHeight({ car, position, options }: Frame): number {
  if (options.groundZ !== undefined) return options.groundZ;
  const s = position.spinAxis;
  return position.wheelCentre.z - car.wheel.loadedRadius * Math.sqrt(Math.max(0, 1 - s.z * s.z));
}
