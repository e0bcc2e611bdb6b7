import { describe, expect, it } from "vitest";
import { separation } from "../../src/clearance/separation.ts";
import { type RoundedSolid, type Solid, tyreSolid } from "../../src/clearance/shapes.ts";
import { FORWARD, isFiniteVec, LEFT, ORIGIN, UP, type Vec3, vec } from "../../src/geometry/vec3.ts";

const capsule = (from: Vec3, to: Vec3, radius: number): RoundedSolid => ({ shape: "capsule", from, to, radius });
const ball = (at: Vec3, radius: number): RoundedSolid => capsule(at, at, radius);
const box = (centre: Vec3, half: Vec3, radius = 0): RoundedSolid => ({
  shape: "box",
  centre,
  axisX: FORWARD,
  axisY: LEFT,
  half,
  radius,
});
const wheel = (centre: Vec3, axis: Vec3, coreRadius: number, coreHalfWidth: number, radius: number): RoundedSolid => ({
  shape: "wheel",
  centre,
  axis,
  coreRadius,
  coreHalfWidth,
  radius,
});
const ground: Solid = { shape: "half-space", point: ORIGIN, normal: UP };
const bar = capsule(vec(-1, 0, 0), vec(1, 0, 0), 0.02);
const tilt = 1e-8;
const half = Math.SQRT1_2;

/** Depth is found to 1e-10 m, distance to 1e-11 m. */
const EXACT = 1e-10;

const CASES: readonly (readonly [string, Solid, Solid, number])[] = [
  ["balls in one place", ball(ORIGIN, 0.1), ball(ORIGIN, 0.2), -0.3],
  ["balls touching", ball(ORIGIN, 0.1), ball(vec(0.3, 0, 0), 0.2), 0],
  ["ball on a bar's axis", ball(vec(0.5, 0, 0), 0.01), bar, -0.03],
  ["ball beyond a bar's end", ball(vec(1.5, 0, 0), 0.01), bar, 0.47],
  ["bars side by side", bar, capsule(vec(-0.5, 0.1, 0), vec(0.5, 0.1, 0), 0.03), 0.05],
  ["bars end to end", bar, capsule(vec(1.2, 0, 0), vec(2, 0, 0), 0.03), 0.15],
  ["bars in one line, overlapping", bar, capsule(vec(0.5, 0, 0), vec(2, 0, 0), 0.03), -0.05],
  ["bars crossing", bar, capsule(vec(0, -1, 0), vec(0, 1, 0), 0.03), -0.05],
  ["bars all but parallel, crossing 0.1 apart", bar, capsule(vec(-1, -tilt, 0.1), vec(1, tilt, 0.1), 0.03), 0.05],
  ["bars all but parallel, crossing", bar, capsule(vec(-1, -tilt, 0), vec(1, tilt, 0), 0.03), -0.05],
  ["ball in a box's middle", ball(ORIGIN, 0.01), box(ORIGIN, vec(0.3, 0.2, 0.1)), -0.11],
  ["ball's centre on a face", ball(vec(0, 0, 0.1), 0.01), box(ORIGIN, vec(0.3, 0.2, 0.1)), -0.01],
  ["ball's centre on a corner", ball(vec(0.3, 0.2, 0.1), 0.01), box(ORIGIN, vec(0.3, 0.2, 0.1)), -0.01],
  ["bar along a face", bar, box(vec(0, 0, -0.3), vec(0.1, 0.1, 0.2)), 0.08],
  ["bar in a face", bar, box(vec(0, 0, -0.2), vec(0.1, 0.1, 0.2)), -0.02],
  ["bar through a box", bar, box(ORIGIN, vec(0.1, 0.2, 0.3)), -0.22],
  ["boxes face to face", box(ORIGIN, vec(0.1, 0.1, 0.1)), box(vec(0, 0, 0.25), vec(0.1, 0.1, 0.1)), 0.05],
  ["boxes touching along an edge", box(ORIGIN, vec(0.1, 0.1, 0.1)), box(vec(0.2, 0, 0.2), vec(0.1, 0.1, 0.1)), 0],
  ["sharp boxes overlapping", box(ORIGIN, vec(0.1, 0.1, 0.1)), box(vec(0.17, 0.02, 0), vec(0.1, 0.1, 0.1)), -0.03],
  ["the same box twice", box(ORIGIN, vec(0.1, 0.2, 0.3)), box(ORIGIN, vec(0.1, 0.2, 0.3)), -0.2],
  ["sheets in one plane", box(ORIGIN, vec(0.1, 0.1, 0)), box(vec(0.1, 0, 0), vec(0.1, 0.1, 0)), 0],
  ["sheets in one plane, apart", box(ORIGIN, vec(0.1, 0.1, 0)), box(vec(0.3, 0, 0), vec(0.1, 0.1, 0)), 0.1],
  ["boxes without size", box(ORIGIN, ORIGIN), box(ORIGIN, ORIGIN), 0],
  ["the same wheel twice", wheel(ORIGIN, LEFT, 0.35, 0.1, 0.05), wheel(ORIGIN, LEFT, 0.35, 0.1, 0.05), -0.3],
  ["a narrow wheel in a wide one", wheel(ORIGIN, UP, 0.1, 0.3, 0.01), wheel(ORIGIN, UP, 0.2, 0.3, 0.01), -0.32],
  ["wheels touching tread to tread", wheel(ORIGIN, LEFT, 0.3, 0.1, 0), wheel(vec(0.6, 0, 0), LEFT, 0.3, 0.1, 0), 0],
  [
    "wheels side by side on one axis",
    wheel(ORIGIN, LEFT, 0.3, 0.1, 0.02),
    wheel(vec(0, 0.3, 0), LEFT, 0.2, 0.1, 0.02),
    0.06,
  ],
  [
    "discs without width, square to each other",
    wheel(ORIGIN, UP, 0.3, 0, 0.01),
    wheel(vec(0.7, 0, 0), LEFT, 0.3, 0, 0.01),
    0.08,
  ],
  [
    "a wheel's flat side along a box's face",
    wheel(ORIGIN, UP, 0.3, 0.1, 0.02),
    box(vec(0, 0, 0.4), vec(1, 1, 0.2)),
    0.08,
  ],
  [
    "a wheel's tread along a box's face",
    wheel(ORIGIN, LEFT, 0.3, 0.1, 0.02),
    box(vec(0, 0, 0.6), vec(1, 1, 0.2)),
    0.08,
  ],
  ["a ball on a wheel's axis", ball(vec(0, 0.5, 0), 0.05), wheel(ORIGIN, LEFT, 0.3, 0.1, 0.02), 0.33],
  ["a bar along a wheel's axis", bar, wheel(ORIGIN, FORWARD, 0.3, 0.1, 0.02), -0.34],
  [
    "a bar along a wheel's tread",
    capsule(vec(0, -1, 0.5), vec(0, 1, 0.5), 0.05),
    wheel(ORIGIN, LEFT, 0.3, 0.1, 0.02),
    0.13,
  ],
  [
    "a bar over a wheel's flat side",
    capsule(vec(-1, 0.5, 0), vec(1, 0.5, 0), 0.05),
    wheel(ORIGIN, LEFT, 0.3, 0.1, 0.02),
    0.33,
  ],
  [
    "a bar touching a wheel's edge",
    capsule(vec(-1, 0.1, 0.3), vec(1, 0.1, 0.3), 0),
    wheel(ORIGIN, LEFT, 0.3, 0.1, 0),
    0,
  ],
  ["a bar flat on the ground", capsule(vec(-1, 0, 0.02), vec(1, 0, 0.02), 0.02), ground, 0],
  ["a bar under the ground", capsule(vec(-1, 0, -3), vec(1, 0, -2), 0.02), ground, -3.02],
  [
    "a box on its edge",
    { ...box(vec(0, 0, 1), vec(0.1, 0.1, 0.1)), axisX: vec(half, 0, half) } as Solid,
    ground,
    1 - 0.1 * Math.SQRT2,
  ],
  ["a wheel lying flat", wheel(vec(0, 0, 0.3), UP, 0.3, 0.1, 0.02), ground, 0.18],
  ["a wheel standing", wheel(vec(0, 0, 0.3), LEFT, 0.3, 0.1, 0.02), ground, -0.02],
];

describe("degenerate and touching pairs", () => {
  it.each(CASES)("%s", (_, a, b, expected) => {
    for (const found of [separation(a, b), separation(b, a)]) {
      expect(Math.abs(found.distance - expected)).toBeLessThan(EXACT);
      expect(isFiniteVec(found.onA) && isFiniteVec(found.onB) && isFiniteVec(found.normal)).toBe(true);
    }
  });

  it.each([0, 1e-12, 1e-9, 1e-6, 1e-4, 1e-2])("a bar along a wheel's axis, %s m off it", (off) => {
    // All but as deep in every direction square to the axis: once found only to 3e-5 m, facets ran out before the tolerance.
    const along = capsule(vec(-0.6 + off * 0.8, -0.8 - off * 0.6, 0), vec(0.6 + off * 0.8, 0.8 - off * 0.6, 0), 0.02);
    const tyre = wheel(ORIGIN, vec(0.6, 0.8, 0), 0.3, 0.1, 0.03);
    expect(Math.abs(separation(along, tyre).distance - (off - 0.35))).toBeLessThan(EXACT);
  });

  it("refuses two half-spaces", () => {
    expect(() => separation(ground, ground)).toThrow(/two half-spaces/);
  });

  it("finds a wheel's lowest point where its axis is square to the ground but for rounding", () => {
    // The disc was once laid along its own axis here: an axis a few bits too long is not square to what is left over.
    const s = 1 + 2 * Number.EPSILON;
    const lying = wheel(vec(0, 0, 0.5), vec(0, 0, s), 0.3, 0.1, 0.02);
    expect(Math.abs(separation(lying, ground).distance - 0.38)).toBeLessThan(EXACT);
    expect(Math.abs(separation(lying, ball(vec(0, 0, 1), 0.1)).distance - 0.28)).toBeLessThan(EXACT);
    expect(Math.abs(separation(lying, box(vec(0, 0, 1), vec(0.1, 0.1, 0.1))).distance - 0.28)).toBeLessThan(EXACT);
  });
});

describe("a tyre's solid", () => {
  const tyre = tyreSolid(vec(0, 0.7, 0.4), LEFT, 0.4, 0.3, 0.06);

  it("has the tyre's free radius and section width", () => {
    expect(separation(tyre, ground).distance).toBeCloseTo(0, 12);
    const inboard: Solid = { shape: "half-space", point: ORIGIN, normal: LEFT };
    expect(separation(tyre, inboard).distance).toBeCloseTo(0.55, 12);
  });

  it("has a round shoulder", () => {
    // Centre of the shoulder's arc, 0.34 up and 0.09 in; seen from 45 degrees its surface is 0.06 beyond.
    const probe = ball(vec(0, 0.7 - 0.09 - 0.2, 0.4 + 0.34 + 0.2), 0.01);
    expect(separation(tyre, probe).distance).toBeCloseTo(0.2 * Math.SQRT2 - 0.07, 12);
  });

  it("refuses a shoulder that does not fit into the tyre", () => {
    expect(() => tyreSolid(ORIGIN, LEFT, 0.4, 0.3, 0.16)).toThrow(/shoulder radius/);
    expect(() => tyreSolid(ORIGIN, LEFT, 0.4, 0.3, Number.NaN)).toThrow(/shoulder radius/);
  });
});
