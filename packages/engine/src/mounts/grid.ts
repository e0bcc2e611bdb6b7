import type { ArmId } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import {
  add,
  addScaled,
  between,
  distance,
  scale,
  squareTo,
  subtract,
  UP,
  unit,
  type Vec3,
  vec,
} from "../geometry/vec3.ts";
import type { LowerZone, MountRequest, UpperZone } from "./request.ts";

/** Places for the upper mount: rows of evenly spaced points, all rows alike. Point of row r, place k: index r·perRow + k. */
export interface UpperGrid {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly rows: number;
  readonly perRow: number;
  /** From one point of a row to the next, m. */
  readonly along: Vec3;
}

export interface LowerPoint {
  readonly point: Vec3;
  readonly on: ArmId | "spindle";
  /** Which of the request's lower zones it lies in. */
  readonly zone: number;
}

/** Throws RangeError where the zone names what the car has not, or is empty. */
export function upperGrid(corner: Corner, zone: UpperZone, step: number): UpperGrid {
  if (!(step > 0)) throw new RangeError(`the step of the grid is above zero; found ${step} m`);
  if (zone.kind === "tube") return alongKeepOut(corner, zone, step);
  const { low, count } = boxSteps(zone.from, zone.to, step);
  const size = count.x * count.y * count.z;
  const [x, y, z] = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  let n = 0;
  for (let i = 0; i < count.x; i += 1)
    for (let j = 0; j < count.y; j += 1)
      for (let k = 0; k < count.z; k += 1) {
        x[n] = low.x + i * step;
        y[n] = low.y + j * step;
        z[n] = low.z + k * step;
        n += 1;
      }
  return { x, y, z, rows: count.x * count.y, perRow: count.z, along: vec(0, 0, step) };
}

/** How many points the zones hold, without making them. Throws RangeError as upperGrid does. */
export function countPoints(
  corner: Corner,
  { upper, lower, step }: Pick<MountRequest, "upper" | "lower" | "step">,
): { readonly upper: number; readonly lower: number } {
  const inBox = (from: Vec3, to: Vec3): number => {
    const { count } = boxSteps(from, to, step);
    return count.x * count.y * count.z;
  };
  const onLine = ({ from, to }: { readonly from: Vec3; readonly to: Vec3 }): number =>
    stepsIn(distance(from, to), step);
  return {
    upper: upper.kind === "box" ? inBox(upper.from, upper.to) : onLine(upperTube(corner, upper)),
    lower: lower.reduce(
      (sum, zone) => sum + (zone.kind === "box" ? inBox(zone.from, zone.to) : onLine(tubeLine(corner, zone))),
      0,
    ),
  };
}

function alongKeepOut(corner: Corner, zone: Extract<UpperZone, { kind: "tube" }>, step: number): UpperGrid {
  const { from, to } = upperTube(corner, zone);
  const count = stepsIn(distance(from, to), step);
  const along = scale(unit(subtract(to, from)), step);
  return gridOf(
    Array.from({ length: count }, (_, k) => addScaled(from, along, k)),
    count,
    along,
  );
}

/** The line on which an upper eye at a tube of the chassis may lie. */
export function upperTube(
  corner: Corner,
  zone: Extract<UpperZone, { kind: "tube" }>,
): { readonly from: Vec3; readonly to: Vec3 } {
  const tube = corner.car.keepOuts.find(({ name, shape }) => name === zone.keepOut && shape === "tube");
  if (tube?.shape !== "tube") throw new RangeError(`no tube called ${zone.keepOut} among the keep-outs`);
  return { from: add(tube.from, zone.standoff), to: add(tube.to, zone.standoff) };
}

const gridOf = (points: readonly Vec3[], perRow: number, along: Vec3): UpperGrid => ({
  x: Float64Array.from(points, (p) => p.x),
  y: Float64Array.from(points, (p) => p.y),
  z: Float64Array.from(points, (p) => p.z),
  rows: points.length / perRow,
  perRow,
  along,
});

export const upperAt = (grid: UpperGrid, index: number): Vec3 => vec(grid.x[index]!, grid.y[index]!, grid.z[index]!);

/** Throws RangeError as upperGrid does. */
export const lowerPoints = (corner: Corner, request: Pick<MountRequest, "lower" | "step">): readonly LowerPoint[] =>
  request.lower.flatMap((zone, index) => lowerOf(corner, zone, index, request.step));

function lowerOf(corner: Corner, zone: LowerZone, index: number, step: number): readonly LowerPoint[] {
  if (zone.kind === "box") {
    if (zone.on !== "spindle" && !corner.arms.some(({ body }) => body === zone.on))
      throw new RangeError(`this linkage has no ${zone.on}`);
    const { low, count } = boxSteps(zone.from, zone.to, step);
    const points: LowerPoint[] = [];
    for (let i = 0; i < count.x; i += 1)
      for (let j = 0; j < count.y; j += 1)
        for (let k = 0; k < count.z; k += 1)
          points.push({ point: vec(low.x + i * step, low.y + j * step, low.z + k * step), on: zone.on, zone: index });
    return points;
  }
  const line = tubeLine(corner, zone);
  const length = distance(line.from, line.to);
  const count = stepsIn(length, step);
  return Array.from({ length: count }, (_, k) => ({
    point: between(line.from, line.to, count > 1 ? (k * step) / length : 0),
    on: line.on,
    zone: index,
  }));
}

/** The line on which a lower eye over an arm's tube may lie. */
export function tubeLine(
  corner: Corner,
  zone: Extract<LowerZone, { kind: "tube" }>,
): { readonly from: Vec3; readonly to: Vec3; readonly on: ArmId } {
  const member = corner.members.find(({ id }) => id === zone.member);
  if (!member || member.body === "link") throw new RangeError(`no arm's tube called ${zone.member}`);
  const over = unit(squareTo(UP, unit(subtract(member.to.point, member.from.point))));
  const at = (fraction: number): Vec3 =>
    addScaled(between(member.from.point, member.to.point, fraction), over, zone.standoff);
  return { from: at(zone.from), to: at(zone.to), on: member.body };
}

function boxSteps(a: Vec3, b: Vec3, step: number): { readonly low: Vec3; readonly count: Vec3 } {
  const low = vec(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.min(a.z, b.z));
  const count = vec(
    stepsIn(Math.abs(a.x - b.x), step),
    stepsIn(Math.abs(a.y - b.y), step),
    stepsIn(Math.abs(a.z - b.z), step),
  );
  return { low, count };
}

/** Points that fit, both ends counted where they fall on the grid. */
const stepsIn = (size: number, step: number): number => Math.floor(size / step + 1e-9) + 1;
