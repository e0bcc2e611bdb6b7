import type { Car, Linkage, RodEnd, Wheel } from "../../packages/engine/dist/car/car.js";
import { unit, vec } from "../../packages/engine/dist/geometry/vec3.js";
import { kindOf } from "../../packages/engine/dist/linkage/kinds.js";

/** Three invented corners with everything on them that a cycle computes: the layouts of the engine's own tests. */
export type BenchmarkKind = "h-arm" | "double-a-arm" | "five-link";

/** The travel that the cycle covers, m, and its positions. */
export const DROOP = -0.2;
export const BUMP = 0.15;
export const POSITIONS = 41;

const degrees = (angle: number): number => (angle * Math.PI) / 180;

const WHEEL: Wheel = {
  hubFace: vec(0.02, 0.85, 0.4),
  camber: degrees(-0.5),
  toe: degrees(0.2),
  offset: 0.05,
  freeRadius: 0.42,
  loadedRadius: 0.4,
  sectionWidth: 0.3,
  shoulderRadius: 0.06,
  rimDiameter: 0.387,
  rimWidth: 0.2,
  rimInsideRadius: 0.175,
};

const LINKAGES: { readonly [K in BenchmarkKind]: Extract<Linkage, { kind: K }> } = {
  "h-arm": {
    kind: "h-arm",
    lowerArm: {
      innerFront: vec(0.2, 0.22, 0.3),
      innerRear: vec(-0.15, 0.21, 0.29),
      outerFront: vec(0.13, 0.7, 0.27),
      outerRear: vec(-0.12, 0.7, 0.27),
      diameter: 0.038,
    },
    upperLink: { inner: vec(-0.02, 0.26, 0.5), outer: vec(0, 0.7, 0.52), diameter: 0.032 },
  },
  "double-a-arm": {
    kind: "double-a-arm",
    lowerArm: {
      innerFront: vec(0.2, 0.2, 0.3),
      innerRear: vec(-0.2, 0.22, 0.3),
      outer: vec(0.03, 0.71, 0.27),
      diameter: 0.038,
    },
    upperArm: {
      innerFront: vec(0.15, 0.3, 0.5),
      innerRear: vec(-0.15, 0.29, 0.49),
      outer: vec(0.01, 0.68, 0.52),
      diameter: 0.032,
    },
    toeLink: { inner: vec(-0.16, 0.24, 0.33), outer: vec(-0.14, 0.69, 0.31), diameter: 0.025 },
  },
  "five-link": {
    kind: "five-link",
    links: [
      { name: "lower front", inner: vec(0.2, 0.22, 0.3), outer: vec(0.08, 0.7, 0.28), diameter: 0.03 },
      { name: "lower rear", inner: vec(-0.2, 0.22, 0.3), outer: vec(-0.06, 0.7, 0.28), diameter: 0.03 },
      { name: "upper front", inner: vec(0.15, 0.27, 0.5), outer: vec(0.06, 0.69, 0.52), diameter: 0.03 },
      { name: "upper rear", inner: vec(-0.14, 0.28, 0.5), outer: vec(-0.05, 0.69, 0.52), diameter: 0.03 },
      { name: "toe", inner: vec(-0.22, 0.24, 0.38), outer: vec(-0.2, 0.7, 0.37), diameter: 0.025 },
    ],
  },
};

/** A rod end at every pivot, its bolt along the car and a little off it, so that no tilt is zero for a special reason. */
const rodEndsOf = (linkage: Linkage): readonly RodEnd[] =>
  kindOf(linkage)
    .pivots(linkage)
    .map((pivot, index) => ({
      pivot: pivot.id,
      boltAxis: unit(vec(1, 0.03 * (index % 3), 0.02 * (index % 4))),
      boltOn: pivot.boltSide,
      misalignmentLimit: degrees(28),
      pitch: 0.00159,
      hand: index % 2 === 0 ? "right" : "left",
      headRadius: 0.025,
    }));

/** The car of a kind, complete. The shock stands on the lower arm, or on the spindle where there is no arm. */
export function benchmarkCar(kind: BenchmarkKind): Car {
  const linkage = LINKAGES[kind];
  const carrier = kind === "five-link" ? "spindle" : "lower-arm";
  return {
    name: `benchmark, ${kind}`,
    units: "metric",
    datum: "middle of the lower pivots",
    wheel: WHEEL,
    linkage,
    rodEnds: rodEndsOf(linkage),
    driveshaft: {
      inner: { centre: vec(0.01, 0.17, 0.4), kind: "u-joint", angleLimit: degrees(28) },
      outer: { centre: vec(0.019, 0.72, 0.401), kind: "u-joint", angleLimit: degrees(28) },
      outputAxis: unit(vec(0.01, 1, -0.02)),
      yokePhase: degrees(3),
      slip: { engagement: 0.06, leastEngagement: 0.03, pushInLeft: 0.05 },
      diameter: 0.05,
    },
    shock: {
      upper: { point: vec(-0.08, 0.35, 0.85), on: "chassis" },
      lower: { point: vec(-0.05, 0.6, 0.29), on: carrier },
      shortest: 0.45,
      longest: 0.75,
      diameter: 0.09,
    },
    strap: {
      upper: { point: vec(0.05, 0.33, 0.7), on: "chassis" },
      lower: { point: vec(0.02, 0.62, 0.3), on: carrier },
      length: 0.7,
    },
    bumpStop: {
      base: { point: vec(0.03, 0.4, 0.6), on: "chassis" },
      strikes: { point: vec(0.03, 0.5, 0.3), on: carrier },
      reach: 0.12,
      solid: 0.05,
    },
    underbody: [
      { name: "skid plate, front", point: vec(0.9, 0.1, 0.27) },
      { name: "skid plate, rear", point: vec(-0.3, 0.15, 0.29) },
    ],
    keepOuts: [],
    chassis: {
      wheelbase: 2.6,
      centreOfGravityHeight: 0.62,
      rearBrakeShare: 0.45,
      cornerMass: 320,
      unsprungMass: 45,
    },
    targets: { bump: BUMP, droop: -DROOP },
    stops: { bump: { by: "bump-stop" }, droop: { by: "strap" } },
    assumed: [],
  };
}
