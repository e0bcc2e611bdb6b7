import { keepOutSolid, movingSolids } from "../../src/clearance/moving-solids.ts";
import { separation } from "../../src/clearance/separation.ts";
import type { Capsule, Solid } from "../../src/clearance/shapes.ts";
import { type Corner, makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { type Position, placeOn, positionOf } from "../../src/cycle/position.ts";
import { ROW } from "../../src/cycle/row.ts";
import { placeDirection } from "../../src/geometry/pose.ts";
import {
  addScaled,
  angleBetween,
  dot,
  FORWARD,
  squareTo,
  subtract,
  UP,
  unit,
  type Vec3,
} from "../../src/geometry/vec3.ts";
import { eyeLimit } from "../../src/mounts/eye-limit.ts";
import type { LowerPoint } from "../../src/mounts/grid.ts";
import type { MountRequest, ShockOption } from "../../src/mounts/request.ts";

/** Margin by which the nearest requirement holds (above 0) or is broken (below), in its own measure; a plain second route. */
export interface PlainVerdict {
  /** Least of all requirements but clearances; lengths m, shares, rad. */
  readonly margin: number;
  /** Least gap less what is wanted, m, by obstacle's name. */
  readonly gaps: ReadonlyMap<string, number>;
}

/** Everything looked at in each of the travels by the engine's own rows, poses and solids, nothing skipped. */
export function judgePlainly(
  corner: Corner,
  request: MountRequest,
  shock: ShockOption,
  upper: Vec3,
  lower: LowerPoint,
  travels: readonly number[],
): PlainVerdict {
  const diameter = Math.max(shock.bodyDiameter, shock.springDiameter);
  const car = {
    ...corner.car,
    shock: {
      upper: { point: upper, on: "chassis" as const },
      lower,
      shortest: shock.shortest,
      longest: shock.longest,
      diameter,
    },
  };
  const mounted = makeCorner(car);
  const { requirements: wanted, reserve } = request;
  const looks = travels.map((travel) => {
    const { state, row } = solveAt(mounted, travel)!;
    return { row, position: positionOf(mounted, state) };
  });
  const last = looks[looks.length - 1]!.row;
  const ride = looks[travels.indexOf(0)]!.row;
  const lengths = looks.map(({ row }) => row[ROW.shockLength]!);
  const used = (Math.max(...lengths) - Math.min(...lengths)) / (shock.longest - shock.shortest);
  const hinge = corner.arms.find(({ body }) => body === lower.on)?.axis ?? FORWARD;
  const bolts = { upper: request.bolts?.upper ?? hinge, lower: request.bolts?.lower ?? hinge };
  const ends = [looks[0]!, looks[travels.indexOf(0)]!, looks[looks.length - 1]!];
  const margin = Math.min(
    shock.longest - reserve.droop - Math.max(...lengths),
    Math.min(...lengths) - shock.shortest - reserve.bump,
    used - wanted.strokeUsed.least,
    wanted.strokeUsed.most - used,
    ...looks.map(({ row }) => row[ROW.motionRatio]!),
    ride[ROW.motionRatio]! - wanted.motionRatio.least,
    wanted.motionRatio.most - ride[ROW.motionRatio]!,
    last[ROW.motionRatio]! - ride[ROW.motionRatio]! + wanted.mayFall,
    ...ends.map(({ position }) => wanted.lean - angleBetween(subtract(upper, footOf(position, lower)), UP)),
    ...looks.map(({ position }) => (eyeLimit(shock) ?? 9) - eyeTilt(position, upper, lower, bolts)),
    wanted.offSquareAtBump === undefined ? 9 : wanted.offSquareAtBump - offSquare(mounted, ends[2]!, upper, lower),
    wrenchRoom(mounted, request, shock, upper, lower, bolts, [ends[0]!.position, ends[1]!.position]),
  );
  const gaps = new Map<string, number>();
  for (const { position } of looks) {
    const solids = movingSolids(mounted, position);
    const own: Capsule = { shape: "capsule", from: upper, to: footOf(position, lower), radius: diameter / 2 };
    const put = (name: string, solid: Solid, clearance: number): void => {
      const gap = separation(own, solid).distance - clearance;
      gaps.set(name, Math.min(gaps.get(name) ?? Number.POSITIVE_INFINITY, gap));
    };
    for (const each of corner.car.keepOuts) put(each.name, keepOutSolid(each), each.clearance);
    put("tyre", solids.tyre, wanted.toTyre);
    if (solids.shaft) put("shaft", solids.shaft, wanted.toMetal);
    corner.members.forEach((member, i) => {
      if (member.body !== lower.on) put(member.id, solids.members[i]!, wanted.toMetal);
    });
  }
  return { margin, gaps };
}

const footOf = (position: Position, { point, on }: LowerPoint): Vec3 => placeOn(position, point, on);

interface Bolts {
  readonly upper: Vec3;
  readonly lower: Vec3;
}

function eyeTilt(position: Position, upper: Vec3, lower: LowerPoint, bolts: Bolts): number {
  const line = unit(subtract(upper, footOf(position, lower)));
  const lowerBolt = placeDirection(position.poses[lower.on]!, bolts.lower);
  return Math.asin(Math.max(Math.abs(dot(line, bolts.upper)), Math.abs(dot(line, lowerBolt))));
}

/** Between shock and the way the lower mount goes, less a right angle's complement: by a finite difference of its path. */
function offSquare(
  corner: Corner,
  { position }: { readonly position: Position },
  upper: Vec3,
  lower: LowerPoint,
): number {
  const step = 1e-6;
  const before = positionOf(corner, solveAt(corner, position.travel - step)!.state);
  const way = unit(subtract(footOf(position, lower), footOf(before, lower)));
  const arm = corner.arms.find(({ body }) => body === lower.on);
  const line = unit(subtract(upper, footOf(position, lower)));
  if (!arm) return angleBetween(line, way);
  // On an arm: off the right angle to the line square out from the hinge to the mount, whatever the lean along the hinge.
  const out = unit(squareTo(subtract(footOf(position, lower), arm.point), arm.axis));
  return Math.asin(Math.abs(dot(line, out)));
}

/** Best of both sides and of the heights asked for at either bolt; the worse bolt, m. */
function wrenchRoom(
  corner: Corner,
  { requirements: { wrench } }: MountRequest,
  shock: ShockOption,
  upper: Vec3,
  lower: LowerPoint,
  bolts: Bolts,
  [droop, ride]: readonly [Position, Position],
): number {
  if (!wrench) return 9;
  const half = 0.5 * (shock.eyeWidth ?? 0.0381) + wrench.tab;
  const looks = wrench.at === "droop" ? [droop] : wrench.at === "ride" ? [ride] : [droop, ride];
  const roomOf = (eyeAt: (p: Position) => Vec3, boltAt: (p: Position) => Vec3, without: string | null): number =>
    Math.max(
      ...looks.flatMap((position) =>
        [1, -1].map((side) => {
          const from = addScaled(eyeAt(position), boltAt(position), side * half);
          const to = addScaled(from, boltAt(position), side * wrench.length);
          const socket: Capsule = { shape: "capsule", from, to, radius: wrench.radius };
          const solids = movingSolids(corner, position);
          const all: Solid[] = [
            ...corner.car.keepOuts.map(keepOutSolid),
            solids.tyre,
            ...(solids.shaft ? [solids.shaft] : []),
            ...solids.members.filter((_, i) => without === null || corner.members[i]!.body !== without),
          ];
          return Math.min(...all.map((solid) => separation(socket, solid).distance));
        }),
      ),
    );
  return Math.min(
    roomOf(
      () => upper,
      () => bolts.upper,
      null,
    ),
    roomOf(
      (position) => footOf(position, lower),
      (position) => placeDirection(position.poses[lower.on]!, bolts.lower),
      lower.on === "spindle" ? null : lower.on,
    ),
  );
}
