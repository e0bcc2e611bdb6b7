import fc from "fast-check";
import type { BodyId, Car, Linkage, RodEnd } from "../src/car/car.ts";
import { addScaled, cross, midpoint, subtract, UP, unit, vec } from "../src/geometry/vec3.ts";
import type { Pivot } from "../src/linkage/kind.ts";
import { kindOf } from "../src/linkage/kinds.ts";
import { anyCorner, SAMPLES, type SampleCorner } from "./linkage/sample-linkages.ts";

const OFFSET = -0.03;
/** A thread as it is common on rod ends of this size: 3/4-16, m a turn. */
export const PITCH = 0.0254 / 16;

/** A whole invented car round a linkage: every part that a body carries is there, so that a test sees it move. */
export function carOf({ linkage, wheelCentre }: SampleCorner, camber = 0, toe = 0): Car {
  const kind = kindOf<Linkage>(linkage);
  const axis = vec(Math.cos(camber) * Math.sin(toe), Math.cos(camber) * Math.cos(toe), -Math.sin(camber));
  const pivots = kind.pivots(linkage);
  const arm = kind.arms(linkage)[0];
  const carrier: BodyId = arm?.body ?? "spindle";
  const member = kind.members(linkage)[0]!;
  const onArm = midpoint(member.from.point, member.to.point);
  return {
    name: "sample",
    units: "metric",
    datum: "a chalk line",
    wheel: {
      hubFace: addScaled(wheelCentre, axis, OFFSET),
      camber,
      toe,
      offset: OFFSET,
      freeRadius: 0.42,
      loadedRadius: 0.4,
      sectionWidth: 0.3,
      shoulderRadius: 0.05,
      rimDiameter: 0.38,
      rimWidth: 0.2,
      rimInsideRadius: 0.17,
    },
    linkage,
    rodEnds: pivots.map(rodEndAt),
    driveshaft: {
      inner: { centre: vec(0, 0.15, 0.42), kind: "u-joint" },
      outer: { centre: addScaled(wheelCentre, axis, -0.12), kind: "u-joint" },
      outputAxis: vec(0, 1, 0),
      yokePhase: 0,
      slip: { engagement: 0.08, leastEngagement: 0.05, pushInLeft: 0.03 },
      diameter: 0.05,
    },
    shock: {
      upper: { point: addScaled(onArm, UP, 0.6), on: "chassis" },
      lower: { point: onArm, on: carrier },
      shortest: 0.4,
      longest: 0.8,
      diameter: 0.08,
    },
    strap: {
      upper: { point: addScaled(onArm, vec(0.05, 0, 0), 1), on: "chassis" },
      lower: { point: wheelCentre, on: "spindle" },
      length: 0.7,
    },
    bumpStop: {
      base: { point: addScaled(onArm, UP, 0.3), on: "chassis" },
      strikes: { point: onArm, on: carrier },
      reach: 0.1,
      solid: 0.05,
    },
    underbody: [{ name: "belly", point: vec(0, 0.2, 0.28) }],
    keepOuts: [],
    chassis: { wheelbase: 2.6, centreOfGravityHeight: 0.7, rearBrakeShare: 0.4 },
    targets: {},
    stops: { bump: { by: "travel", travel: 0.15 }, droop: { by: "travel", travel: 0.15 } },
    assumed: [],
  };
}

/** Bolts along the hinge on an arm, level and square to a link; inner ends right-hand, outer ends left-hand. */
function rodEndAt({ id, shank, boltSide, point }: Pivot): RodEnd {
  const along = shank.body === "link" ? cross(subtract(shank.otherEnd, point), UP) : (shank.hinge ?? vec(1, 0, 0));
  return {
    pivot: id,
    boltAxis: unit(along),
    boltOn: boltSide,
    pitch: PITCH,
    hand: boltSide === "chassis" ? "right" : "left",
    headRadius: 0.025,
  };
}

export const SAMPLE_CARS: readonly Car[] = SAMPLES.map((sample) => carOf(sample));

/** Random cars of all kinds, some degrees of camber and toe in the design position. */
export const anyCar: fc.Arbitrary<Car> = fc
  .tuple(
    anyCorner,
    fc.double({ min: -0.05, max: 0.05, noNaN: true }),
    fc.double({ min: -0.05, max: 0.05, noNaN: true }),
  )
  .map(([corner, camber, toe]) => carOf(corner, camber, toe));
