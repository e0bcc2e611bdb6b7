import { keepOutSolid, movingSolids } from "../../src/clearance/moving-solids.ts";
import { separation } from "../../src/clearance/separation.ts";
import type { Capsule, Solid } from "../../src/clearance/shapes.ts";
import { type Corner, makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { type Position, placeOn, positionOf } from "../../src/cycle/position.ts";
import { ROW } from "../../src/cycle/row.ts";
import { placeDirection } from "../../src/geometry/pose.ts";
import { angleBetween, dot, FORWARD, subtract, UP, unit, type Vec3 } from "../../src/geometry/vec3.ts";
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
  const bolt = corner.arms.find(({ body }) => body === lower.on)?.axis ?? FORWARD;
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
    ...ends.map(({ position }) => (shock.misalignmentLimit ?? 9) - eyeTilt(position, upper, lower, bolt)),
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

function eyeTilt(position: Position, upper: Vec3, lower: LowerPoint, bolt: Vec3): number {
  const line = unit(subtract(upper, footOf(position, lower)));
  const lowerBolt = placeDirection(position.poses[lower.on]!, bolt);
  return Math.asin(Math.max(Math.abs(dot(line, bolt)), Math.abs(dot(line, lowerBolt))));
}
