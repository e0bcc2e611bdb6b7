import type { ArmId, KeepOut, Mount } from "../car/car.ts";
import { segmentToBox, segmentToDisc, segmentToPoint, segmentToSegment } from "../clearance/core-distance.ts";
import { tyreSolid } from "../clearance/shapes.ts";
import { carriedPoint, carryMotion } from "../cycle/carried.ts";
import type { Corner } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { placeDirection } from "../geometry/pose.ts";
import { cross, type Vec3 } from "../geometry/vec3.ts";
import { AT } from "../linkage/motion-state.ts";
import type { Movement } from "./movement.ts";
import type { MountRequest } from "./request.ts";

/** Something that the shock has to clear: a convex core and a radius round it, at every station. */
export interface Obstacle {
  readonly id: string;
  readonly label: string;
  /** Arm that it is part of: the shock that this arm carries need not clear it. */
  readonly body: ArmId | null;
  readonly core: "segment" | "box" | "half-space" | "disc";
  /** Numbers of the core, `stride` of them a station; stride 0: it stands still. */
  readonly data: Float64Array;
  readonly stride: number;
  readonly radius: number;
  /** Of a disc, m. */
  readonly discRadius: number;
  readonly discHalfWidth: number;
  /** Of a sphere round the core, from its first point; infinite where that is no use. */
  readonly reach: number;
  /** Clearance wanted, m. */
  readonly wanted: number;
  /** Way that its fastest point has made up to each station, greatest speed and acceleration there. */
  readonly way: Float64Array;
  readonly fastest: number;
  readonly sharpest: number;
}

const STILL = { discRadius: 0, discHalfWidth: 0, fastest: 0, sharpest: 0, stride: 0, body: null } as const;

/** All that a shock could meet on this car, keep-outs first. The tube that carries the upper mount is left out. */
export function obstaclesOf(corner: Corner, request: MountRequest, movement: Movement): readonly Obstacle[] {
  const carrying = request.upper.kind === "tube" ? request.upper.keepOut : null;
  const still = new Float64Array(movement.states.length);
  const keepOuts = corner.car.keepOuts
    .filter(({ name }) => name !== carrying)
    .map((each) => keepOutObstacle(each, still));
  return [...keepOuts, ...movingObstacles(corner, request, movement)];
}

function keepOutObstacle(keepOut: KeepOut, way: Float64Array): Obstacle {
  const common = { ...STILL, id: keepOut.name, label: keepOut.name, wanted: keepOut.clearance, way };
  switch (keepOut.shape) {
    case "box": {
      const { centre, half, axisX, axisY } = keepOut;
      const axes = [axisX, axisY, cross(axisX, axisY)];
      const data = Float64Array.from([centre, ...axes, half].flatMap(numbers));
      return { ...common, core: "box", data, radius: 0, reach: Math.hypot(half.x, half.y, half.z) };
    }
    case "tube": {
      const data = Float64Array.from([keepOut.from, keepOut.to].flatMap(numbers));
      return { ...common, core: "segment", data, radius: keepOut.diameter / 2, reach: Number.POSITIVE_INFINITY };
    }
    case "half-space": {
      const data = Float64Array.from([keepOut.point, keepOut.normal].flatMap(numbers));
      return { ...common, core: "half-space", data, radius: 0, reach: Number.POSITIVE_INFINITY };
    }
  }
}

const numbers = ({ x, y, z }: Vec3): readonly number[] => [x, y, z];

function movingObstacles(corner: Corner, request: MountRequest, movement: Movement): readonly Obstacle[] {
  const { toMetal, toTyre } = request.requirements;
  const { driveshaft } = corner.car;
  const bars = corner.members.map((member) =>
    bar(corner, movement, {
      id: member.id,
      label: member.label,
      body: member.body === "link" ? null : member.body,
      from: member.from,
      to: member.to,
      radius: member.diameter / 2,
      wanted: toMetal,
    }),
  );
  if (driveshaft) {
    bars.push(
      bar(corner, movement, {
        id: "shaft",
        label: "half shaft",
        body: null,
        from: { point: driveshaft.inner.centre, on: "chassis" },
        to: { point: driveshaft.outer.centre, on: "spindle" },
        radius: driveshaft.diameter / 2,
        wanted: toMetal,
      }),
    );
  }
  return [tyre(corner, movement, toTyre), ...bars];
}

interface Bar {
  readonly id: string;
  readonly label: string;
  readonly body: ArmId | null;
  readonly from: Mount;
  readonly to: Mount;
  readonly radius: number;
  readonly wanted: number;
}

function bar(corner: Corner, { states }: Movement, { id, label, body, from, to, radius, wanted }: Bar): Obstacle {
  const ends = [from, to].map((end) => carriedPoint(end, corner.arms, corner.wheelCentre));
  const data = new Float64Array(6 * states.length);
  const way = new Float64Array(states.length);
  const motion = new Float64Array(9);
  let fastest = 0;
  let sharpest = 0;
  states.forEach((state, k) => {
    let step = 0;
    ends.forEach((end, e) => {
      carryMotion(end, state, motion);
      const at = 6 * k + 3 * e;
      data.set(motion.subarray(0, 3), at);
      fastest = Math.max(fastest, Math.hypot(motion[3]!, motion[4]!, motion[5]!));
      sharpest = Math.max(sharpest, Math.hypot(motion[6]!, motion[7]!, motion[8]!));
      if (k > 0) step = Math.max(step, Math.hypot(...[0, 1, 2].map((i) => data[at + i]! - data[at - 6 + i]!)));
    });
    if (k > 0) way[k] = way[k - 1]! + step;
  });
  const core = { core: "segment", data, stride: 6, reach: Number.POSITIVE_INFINITY } as const;
  return { ...STILL, ...core, id, label, body, radius, wanted, way, fastest, sharpest };
}

function tyre(corner: Corner, { states }: Movement, wanted: number): Obstacle {
  const { wheel } = corner.car;
  const solid = tyreSolid(
    corner.wheelCentre,
    corner.spinAxis,
    wheel.freeRadius,
    wheel.sectionWidth,
    wheel.shoulderRadius,
  );
  const out = Math.hypot(wheel.freeRadius, wheel.sectionWidth / 2);
  const data = new Float64Array(6 * states.length);
  const way = new Float64Array(states.length);
  let fastest = 0;
  let sharpest = 0;
  states.forEach((state, k) => {
    const position = positionOf(corner, state);
    const axis = placeDirection(position.poses.spindle!, corner.spinAxis);
    data.set([...numbers(position.wheelCentre), ...numbers(axis)], 6 * k);
    const size = (at: number): number => Math.hypot(state[at]!, state[at + 1]!, state[at + 2]!);
    fastest = Math.max(fastest, size(AT.velocity) + size(AT.spin) * out);
    sharpest = Math.max(sharpest, size(AT.acceleration) + (size(AT.spinRate) + size(AT.spin) ** 2) * out);
    if (k === 0) return;
    const moved = (from: number): number =>
      Math.hypot(...[0, 1, 2].map((i) => data[6 * k + from + i]! - data[6 * k - 6 + from + i]!));
    // The disc is the same whatever it has turned about its own axis.
    way[k] = way[k - 1]! + moved(0) + moved(3) * out;
  });
  return {
    id: "tyre",
    label: "tyre",
    body: null,
    core: "disc",
    data,
    stride: 6,
    radius: solid.radius,
    discRadius: solid.coreRadius,
    discHalfWidth: solid.coreHalfWidth,
    reach: Math.hypot(solid.coreRadius, solid.coreHalfWidth),
    wanted,
    way,
    fastest,
    sharpest,
  };
}

/** Never more than coreDistance, m: from a sphere round the core; 0 where that is no use. */
export function atLeast(
  { data, stride, reach }: Obstacle,
  k: number,
  ux: number,
  uy: number,
  uz: number,
  px: number,
  py: number,
  pz: number,
): number {
  if (reach === Number.POSITIVE_INFINITY) return 0;
  const o = k * stride;
  return segmentToPoint(ux, uy, uz, px, py, pz, data[o]!, data[o + 1]!, data[o + 2]!) - reach;
}

/** From the shock's middle line to the obstacle's core at a station, m; below zero only behind a half-space's plane. */
export function coreDistance(
  obstacle: Obstacle,
  k: number,
  ux: number,
  uy: number,
  uz: number,
  px: number,
  py: number,
  pz: number,
): number {
  const d = obstacle.data;
  const o = k * obstacle.stride;
  if (obstacle.core === "segment")
    return segmentToSegment(ux, uy, uz, px, py, pz, d[o]!, d[o + 1]!, d[o + 2]!, d[o + 3]!, d[o + 4]!, d[o + 5]!);
  const fx = ux - d[o]!;
  const fy = uy - d[o + 1]!;
  const fz = uz - d[o + 2]!;
  const ax = px - ux;
  const ay = py - uy;
  const az = pz - uz;
  if (obstacle.core === "box") {
    return segmentToBox(
      fx * d[3]! + fy * d[4]! + fz * d[5]!,
      fx * d[6]! + fy * d[7]! + fz * d[8]!,
      fx * d[9]! + fy * d[10]! + fz * d[11]!,
      ax * d[3]! + ay * d[4]! + az * d[5]!,
      ax * d[6]! + ay * d[7]! + az * d[8]!,
      ax * d[9]! + ay * d[10]! + az * d[11]!,
      d[12]!,
      d[13]!,
      d[14]!,
    );
  }
  const sx = d[o + 3]!;
  const sy = d[o + 4]!;
  const sz = d[o + 5]!;
  if (obstacle.core === "half-space") {
    const height = fx * sx + fy * sy + fz * sz;
    const change = ax * sx + ay * sy + az * sz;
    return change < 0 ? height + change : height;
  }
  return segmentToDisc(fx, fy, fz, ax, ay, az, sx, sy, sz, obstacle.discRadius, obstacle.discHalfWidth);
}
