import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { speedRipple } from "../../src/driveline/speed-ripple.ts";
import { add, cross, dot, scale, unit, type Vec3, vec } from "../../src/geometry/vec3.ts";

const DEGREE = Math.PI / 180;
/** The figures below are given to six decimals. */
const DECIMALS = 6;

/** Slowest and fastest speed of the driven shaft, of the driving one, as the equivalent single joint makes them. */
function extremes(first: number, second: number, twist = 0): { slowest: number; fastest: number } {
  const slowest = Math.cos(speedRipple(first * DEGREE, second * DEGREE, twist * DEGREE).equivalentAngle);
  return { slowest, fastest: 1 / slowest };
}

/** Angle of a single joint whose speed varies by `total` of the mean, deg, by bisection on the engine's own total. */
function angleOfTotal(total: number): number {
  let low = 0;
  let high = 60;
  for (let i = 0; i < 80; i += 1) {
    const middle = 0.5 * (low + high);
    if (speedRipple(middle * DEGREE, 0, 0).total < total) low = middle;
    else high = middle;
  }
  return low;
}

describe("a single U-joint", () => {
  // ω₂/ω₁ = cos β/(1 − sin²β cos²θ), Mechanical Engineer's Data Handbook §2.4.3 p. 72, evaluated at 30° for these turns of
  // the input yoke; a vector model of the cross gives the same.
  const AT_30_DEGREES = [
    [0, 1.154701],
    [30, 1.065877],
    [45, 0.989743],
    [60, 0.92376],
    [90, 0.866025],
  ] as const;

  it("bent 30° has the first and last of the published speed ratios as its extremes, and the others between", () => {
    const { slowest, fastest } = extremes(30, 0);
    expect(fastest).toBeCloseTo(AT_30_DEGREES[0][1], DECIMALS);
    expect(slowest).toBeCloseTo(AT_30_DEGREES[4][1], DECIMALS);
    for (const [, between] of AT_30_DEGREES.slice(1, 4)) {
      expect(between).toBeGreaterThan(slowest);
      expect(between).toBeLessThan(fastest);
    }
    expect(speedRipple(30 * DEGREE, 0, 0).total).toBeCloseTo(AT_30_DEGREES[0][1] - AT_30_DEGREES[4][1], DECIMALS - 1);
  });

  it("bent 20° at 500 rpm runs from 469.846 to 532.089 rpm (worked question and answer read on the web, printed 469.85 and 532.1)", () => {
    const { slowest, fastest } = extremes(20, 0);
    expect(500 * slowest).toBeCloseTo(469.846, 3);
    expect(500 * fastest).toBeCloseTo(532.089, 3);
    expect(500 * speedRipple(20 * DEGREE, 0, 0).total).toBeCloseTo(532.089 - 469.846, 2);
  });

  it("that varies by 100 rpm in 1200 is bent 16.4229° (root of cos²β + cos β/12 − 1 = 0; a published key's 16.2° is a slip)", () => {
    const bend = angleOfTotal(100 / 1200);
    expect(bend).toBeCloseTo(16.4229, 4);
    const { slowest, fastest } = extremes(bend, 0);
    expect(slowest).toBeCloseTo(0.959201, DECIMALS);
    expect(1200 * slowest).toBeCloseTo(1151.041, 3);
    expect(1200 * fastest).toBeCloseTo(1251.041, 3);
  });

  it("that varies by 12.5 % is bent 20.0404° (a key read on the web gives 20°)", () => {
    expect(angleOfTotal(0.125)).toBeCloseTo(20.0404, 4);
  });

  it("ripples alike whichever of the two joints it is, and is its own equivalent", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (b, t) => {
          const first = speedRipple(b * DEGREE, 0, t * DEGREE);
          const second = speedRipple(0, b * DEGREE, t * DEGREE);
          expect(first.total).toBeCloseTo(second.total, 12);
          expect(first.equivalentAngle).toBeCloseTo(b * DEGREE, 7);
        },
      ),
    );
  });
});

describe("a pair of U-joints", () => {
  it("with equal angles, in one plane and in phase, does not ripple (identity)", () => {
    for (const bend of [0, 1, 5, 12, 25, 40]) {
      expect(speedRipple(bend * DEGREE, bend * DEGREE, 0).total).toBeLessThan(1e-12);
    }
  });

  it("bent 17° both and a quarter turn out of phase runs from cos²β to 1/cos²β (identity)", () => {
    const { slowest, fastest } = extremes(17, 17, 90);
    expect(slowest).toBeCloseTo(0.914519, DECIMALS);
    expect(fastest).toBeCloseTo(1.093471, DECIMALS);
  });

  // cos β₁/cos β₂ and its inverse; the equivalent angle is the arc cosine of the smaller one. Closed form and sampling agree.
  const UNEQUAL = [
    { first: 10, second: 12, slowest: 0.993237, fastest: 1.006809, equivalent: 6.6673 },
    { first: 10, second: 8, slowest: 0.994486, fastest: 1.005545, equivalent: 6.0196 },
  ];
  for (const { first, second, slowest, fastest, equivalent } of UNEQUAL) {
    it(`in phase, bent ${first}° and ${second}°, ripples as one joint bent ${equivalent}° (closed form)`, () => {
      const found = extremes(first, second);
      expect(found.slowest).toBeCloseTo(slowest, DECIMALS);
      expect(found.fastest).toBeCloseTo(fastest, DECIMALS);
      expect(speedRipple(first * DEGREE, second * DEGREE, 0).equivalentAngle / DEGREE).toBeCloseTo(equivalent, 4);
    });
  }

  it("ripples as a model of its two crosses does, turned step by step", () => {
    const bend = fc.double({ min: 0.5, max: 35, noNaN: true });
    fc.assert(
      fc.property(bend, bend, fc.double({ min: -180, max: 180, noNaN: true }), (first, second, twist) => {
        const modelled = rippleOfCrosses(first * DEGREE, second * DEGREE, twist * DEGREE);
        // Sampled every half degree, an extreme is missed by less than this.
        expect(Math.abs(speedRipple(first * DEGREE, second * DEGREE, twist * DEGREE).total - modelled)).toBeLessThan(
          1e-4,
        );
      }),
      { numRuns: 60 },
    );
  });
});

/**
 * The pair built from vectors: a cross holds its two arms square to each other, each arm square to its own shaft. The
 * middle shaft lies along y; the plane of the second joint is turned by `twist` about it; both shaft yokes lie in one
 * plane. Gives fastest less slowest speed of the output for one turn of the input, by differences of the output's angle.
 */
function rippleOfCrosses(first: number, second: number, twist: number): number {
  const shaft = vec(0, 1, 0);
  const input = vec(0, Math.cos(first), Math.sin(first));
  // Turned about y: the direction square to the shaft in which the second joint bends.
  const output = unit(vec(-Math.sin(second) * Math.sin(twist), Math.cos(second), -Math.sin(second) * Math.cos(twist)));
  const [i1, i2] = squarePair(input);
  const [o1, o2] = squarePair(output);
  const outputAngle = (turn: number): number => {
    const inputArm = add(scale(i1, Math.cos(turn)), scale(i2, Math.sin(turn)));
    const shaftArm = unit(cross(inputArm, shaft));
    const outputArm = unit(cross(shaftArm, output));
    return Math.atan2(dot(outputArm, o2), dot(outputArm, o1));
  };
  const step = 0.5 * DEGREE;
  const small = 1e-5;
  let slowest = Number.POSITIVE_INFINITY;
  let fastest = 0;
  for (let turn = 0; turn < Math.PI; turn += step) {
    const change = outputAngle(turn + small) - outputAngle(turn - small);
    const speed = Math.abs(change - Math.PI * Math.round(change / Math.PI)) / (2 * small);
    slowest = Math.min(slowest, speed);
    fastest = Math.max(fastest, speed);
  }
  return fastest - slowest;
}

/** Two unit vectors square to a direction and to each other. */
function squarePair(direction: Vec3): readonly [Vec3, Vec3] {
  const a = unit(cross(vec(1, 0, 0), direction));
  return [a, cross(direction, a)];
}
