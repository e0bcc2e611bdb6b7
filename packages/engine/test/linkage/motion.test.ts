import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Linkage } from "../../src/car/car.ts";
import { type Pose, placeDirection, placePoint, turnAbout } from "../../src/geometry/pose.ts";
import { addScaled, cross, distance, length, subtract, type Vec3, vec } from "../../src/geometry/vec3.ts";
import type { Mechanism, MemberEnd } from "../../src/linkage/kind.ts";
import { kindOf } from "../../src/linkage/kinds.ts";
import { AT, designState, type MotionState } from "../../src/linkage/motion-state.ts";
import { anyCorner, SAMPLES, type SampleCorner } from "./sample-linkages.ts";

/** Lengths hold to this, m: a thousand times finer than a bolt can tell, well above rounding. */
const LENGTH_TOLERANCE = 1e-9;

const vecAt = (s: MotionState, offset: number): Vec3 => vec(s[offset]!, s[offset + 1]!, s[offset + 2]!);

function spindlePose(corner: SampleCorner, s: MotionState): Pose {
  const rotation = Array.from(s.subarray(AT.rotation, AT.rotation + 9)) as unknown as Pose["rotation"];
  const turned = placeDirection({ rotation, translation: vec(0, 0, 0) }, corner.wheelCentre);
  return { rotation, translation: subtract(vecAt(s, AT.wheelCentre), turned) };
}

function poseOf(corner: SampleCorner, s: MotionState, body: string): Pose {
  if (body === "spindle") return spindlePose(corner, s);
  const arms = kindOf(corner.linkage).arms(corner.linkage);
  const index = arms.findIndex((arm) => arm.body === body);
  if (index < 0) return turnAbout(vec(0, 0, 0), vec(0, 0, 1), 0);
  const offset = index === 0 ? AT.firstArm : AT.secondArm;
  return turnAbout(arms[index]!.point, arms[index]!.axis, Math.atan2(s[offset + 1]!, s[offset]!));
}

/** Largest gap between what two bodies that share a pivot say of its place, and largest change of a link's length. */
function residual(corner: SampleCorner, s: MotionState): number {
  const kind = kindOf(corner.linkage);
  let worst = 0;
  for (const pivot of kind.pivots(corner.linkage)) {
    if (pivot.shank.body === "link") continue;
    const onArm = placePoint(poseOf(corner, s, pivot.shank.body), pivot.point);
    const onOther = placePoint(poseOf(corner, s, pivot.boltSide), pivot.point);
    worst = Math.max(worst, distance(onArm, onOther));
  }
  for (const member of kind.members(corner.linkage)) {
    const at = (end: MemberEnd) => placePoint(poseOf(corner, s, end.on), end.point);
    worst = Math.max(
      worst,
      Math.abs(distance(at(member.from), at(member.to)) - distance(member.from.point, member.to.point)),
    );
  }
  return worst;
}

/** How far the wheel centre is from the height that was asked for, m. */
const missOf = (corner: SampleCorner, s: MotionState, travel: number): number =>
  Math.abs(s[AT.wheelCentre + 2]! - corner.wheelCentre.z - travel);

/**
 * Half a picometre; and near the end of a driven linkage, where a hair of the arm's angle moves the wheel far, what the last
 * place of that angle is worth there: 4 units of it over d angle / d travel.
 */
const heightTolerance = ({ linkage }: SampleCorner, s: MotionState): number =>
  5e-13 + (linkage.kind === "five-link" ? 0 : (4 * Number.EPSILON) / Math.abs(s[AT.firstArm + 3]!));

const mechanismOf = (corner: SampleCorner): Mechanism =>
  kindOf<Linkage>(corner.linkage).mechanism(corner.linkage, corner.wheelCentre);

/** Travels spread over the whole range, the very ends a little inside. */
function travels(mechanism: Mechanism, count: number): number[] {
  const { droop, bump } = mechanism.range;
  const inset = 1e-4 * (bump.travel - droop.travel);
  const low = droop.travel + inset;
  const high = bump.travel - inset;
  return Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
}

describe("motion of every kind", () => {
  it("holds every length and pivot over the whole range, on random corners", () => {
    fc.assert(
      fc.property(anyCorner, (corner) => {
        const mechanism = mechanismOf(corner);
        const state = designState();
        for (const travel of travels(mechanism, 25)) {
          expect(mechanism.solve(travel, state)).toBeGreaterThan(0);
          expect(missOf(corner, state, travel)).toBeLessThan(heightTolerance(corner, state));
          expect(residual(corner, state)).toBeLessThan(LENGTH_TOLERANCE);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("ends where the toe link no longer closes, also where the upper arm closes half a degree later", () => {
    // Found by the random corners above: the last open step lay within a degree of both closures' ends.
    const corner: SampleCorner = {
      wheelCentre: vec(0.02, 0.8, 0.4),
      linkage: {
        kind: "double-a-arm",
        lowerArm: {
          innerFront: vec(0.2, 0.2, 0.33989425294794),
          innerRear: vec(-0.2, 0.22, 0.3),
          outer: vec(0.03, 0.71, 0.27),
          diameter: 0.038,
        },
        upperArm: {
          innerFront: vec(0.15, 0.26024333786439524, 0.5),
          innerRear: vec(-0.15, 0.29, 0.49),
          outer: vec(0.01, 0.6401816082477978, 0.52),
          diameter: 0.032,
        },
        toeLink: { inner: vec(-0.16, 0.24, 0.33), outer: vec(-0.14, 0.69, 0.31), diameter: 0.025 },
      },
    };
    const mechanism = mechanismOf(corner);
    const state = designState();
    for (const travel of travels(mechanism, 25)) {
      expect(mechanism.solve(travel, state)).toBeGreaterThan(0);
      expect(missOf(corner, state, travel)).toBeLessThan(heightTolerance(corner, state));
      expect(residual(corner, state)).toBeLessThan(LENGTH_TOLERANCE);
    }
  });

  it("gives the same position from any start", () => {
    fc.assert(
      fc.property(anyCorner, fc.double({ min: 0, max: 1, noNaN: true }), (corner, fraction) => {
        const mechanism = mechanismOf(corner);
        const all = travels(mechanism, 12);
        const walked = designState();
        for (const travel of all) mechanism.solve(travel, walked);
        const target = all[0]! + fraction * (all[11]! - all[0]!);
        mechanism.solve(target, walked);
        const fresh = designState();
        mechanism.solve(target, fresh);
        for (let i = AT.rotation; i < AT.rotation + 12; i += 1) expect(walked[i]!).toBeCloseTo(fresh[i]!, 9);
      }),
      { numRuns: 60 },
    );
  });

  it("starts in the design position", () => {
    for (const corner of SAMPLES) {
      const state = designState();
      mechanismOf(corner).solve(0, state);
      const pose = spindlePose(corner, state);
      for (let i = 0; i < 9; i += 1) expect(pose.rotation[i]!).toBeCloseTo(i % 4 === 0 ? 1 : 0, 12);
      expect(length(subtract(vecAt(state, AT.wheelCentre), corner.wheelCentre))).toBeLessThan(1e-12);
    }
  });

  it("gives velocity and acceleration that agree with differences of the positions", () => {
    fc.assert(
      fc.property(anyCorner, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (corner, fraction) => {
        const mechanism = mechanismOf(corner);
        const { droop, bump } = mechanism.range;
        const travel = droop.travel + fraction * (bump.travel - droop.travel);
        const h = 1e-5;
        const at = (t: number): MotionState => {
          const state = designState();
          mechanism.solve(t, state);
          return state;
        };
        const here = at(travel);
        const before = at(travel - h);
        const after = at(travel + h);
        const slope = Math.max(1, length(vecAt(here, AT.spinRate)));
        for (const [value, rate] of [
          [AT.wheelCentre, AT.velocity],
          [AT.velocity, AT.acceleration],
          [AT.spin, AT.spinRate],
        ] as const) {
          for (let i = 0; i < 3; i += 1) {
            const difference = (after[value + i]! - before[value + i]!) / (2 * h);
            expect(Math.abs(difference - here[rate + i]!) / slope).toBeLessThan(2e-5);
          }
        }
        // A point fixed to the spindle moves with v + ω × r.
        const point = addScaled(corner.wheelCentre, vec(0.1, 0.2, -0.3), 1);
        const moved = subtract(
          placePoint(spindlePose(corner, after), point),
          placePoint(spindlePose(corner, before), point),
        );
        const arm = subtract(placePoint(spindlePose(corner, here), point), vecAt(here, AT.wheelCentre));
        const exact = addScaled(vecAt(here, AT.velocity), cross(vecAt(here, AT.spin), arm), 1);
        expect(distance(vec(moved.x / (2 * h), moved.y / (2 * h), moved.z / (2 * h)), exact) / slope).toBeLessThan(
          2e-5,
        );
      }),
      { numRuns: 150 },
    );
  });

  it("refuses a travel past its end, and leaves the state as it was", () => {
    for (const corner of SAMPLES) {
      const { droop, bump } = mechanismOf(corner).range;
      expect(droop.travel).toBeLessThan(-0.2);
      expect(bump.travel).toBeGreaterThan(0.15);
      const outside = designState();
      expect(mechanismOf(corner).solve(bump.travel + 1e-9, outside)).toBe(-1);
      expect(outside).toEqual(designState());
    }
  });
});

describe("an exact parallelogram", () => {
  // Its two closures meet where all four pivots lie in one line; older tests missed it because their cars never reach there.
  const parallel: SampleCorner = {
    wheelCentre: vec(0, 0.8, 0.4),
    linkage: {
      kind: "h-arm",
      lowerArm: {
        innerFront: vec(0.2, 0.2, 0.3),
        innerRear: vec(-0.2, 0.2, 0.3),
        outerFront: vec(0.1, 0.7, 0.26),
        outerRear: vec(-0.1, 0.7, 0.26),
        diameter: 0.038,
      },
      upperLink: { inner: vec(0, 0.17, 0.5), outer: vec(0, 0.67, 0.46), diameter: 0.032 },
    },
  };

  it("keeps the wheel from turning over its whole range, through the place where all pivots lie in line", () => {
    const mechanism = mechanismOf(parallel);
    const { droop } = mechanism.range;
    expect(droop.toggles.length).toBe(1);
    // All in line: the arm along the line from inner to inner pivot, 8.53° off upright.
    const angle = Math.atan2(0.03, 0.2);
    expect(droop.toggles[0]).toBeCloseTo(-(Math.hypot(0.5, 0.04) * Math.cos(angle) - 0.04), 5);
    const state = designState();
    for (const travel of travels(mechanism, 60)) {
      if (Math.abs(travel - droop.toggles[0]!) < 1e-3) continue;
      expect(mechanism.solve(travel, state)).toBeGreaterThan(0);
      for (let i = 0; i < 9; i += 1) expect(state[AT.rotation + i]!).toBeCloseTo(i % 4 === 0 ? 1 : 0, 8);
    }
  });
});
