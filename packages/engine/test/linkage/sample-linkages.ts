import fc from "fast-check";
import type { Linkage } from "../../src/car/car.ts";
import { type Vec3, vec } from "../../src/geometry/vec3.ts";

/** Invented corners, one a kind, m: plain layouts that random ones are made from. */
export interface SampleCorner {
  readonly linkage: Linkage;
  readonly wheelCentre: Vec3;
}

export const SAMPLES: readonly SampleCorner[] = [
  {
    wheelCentre: vec(0.02, 0.8, 0.4),
    linkage: {
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
  },
  {
    wheelCentre: vec(0.02, 0.8, 0.4),
    linkage: {
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
  },
  {
    wheelCentre: vec(-0.1, 0.8, 0.4),
    linkage: {
      kind: "trailing-arm",
      trailingArm: {
        inboardPivot: vec(0.5, 0.25, 0.42),
        outboardPivot: vec(0.62, 0.6, 0.44),
        hub: vec(-0.1, 0.72, 0.4),
        diameter: 0.05,
      },
    },
  },
  {
    wheelCentre: vec(0.02, 0.8, 0.4),
    linkage: {
      kind: "five-link",
      links: [
        { name: "lower front", inner: vec(0.2, 0.22, 0.3), outer: vec(0.08, 0.7, 0.28), diameter: 0.03 },
        { name: "lower rear", inner: vec(-0.2, 0.22, 0.3), outer: vec(-0.06, 0.7, 0.28), diameter: 0.03 },
        { name: "upper front", inner: vec(0.15, 0.27, 0.5), outer: vec(0.06, 0.69, 0.52), diameter: 0.03 },
        { name: "upper rear", inner: vec(-0.14, 0.28, 0.5), outer: vec(-0.05, 0.69, 0.52), diameter: 0.03 },
        { name: "toe", inner: vec(-0.22, 0.24, 0.38), outer: vec(-0.2, 0.7, 0.37), diameter: 0.025 },
      ],
    },
  },
];

/** Every point of a corner shifted by its own amount within ±`most` (m). */
export function shiftPoints(corner: SampleCorner, shifts: readonly number[]): SampleCorner {
  let next = 0;
  const shift = (): number => shifts[next++ % shifts.length]!;
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (value === null || typeof value !== "object") return value;
    const record = value as Record<string, unknown>;
    if (typeof record["x"] === "number") {
      const point = record as unknown as Vec3;
      return vec(point.x + shift(), point.y + shift(), point.z + shift());
    }
    return Object.fromEntries(Object.entries(record).map(([key, part]) => [key, walk(part)]));
  };
  return walk(corner) as SampleCorner;
}

/** Random corners of all kinds, each point up to 40 mm off its plain place. */
export const anyCorner: fc.Arbitrary<SampleCorner> = fc
  .tuple(
    fc.constantFrom(...SAMPLES),
    fc.array(fc.double({ min: -0.04, max: 0.04, noNaN: true }), { minLength: 37, maxLength: 37 }),
  )
  .map(([corner, shifts]) => shiftPoints(corner, shifts));
