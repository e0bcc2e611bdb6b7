import { speedRipple } from "@armwright/engine";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ShaftTurn, yokeDirections } from "../../src/scene/hooke.ts";
import { cross, dot, LEFT, squareTo, turned, UP, unit } from "../../src/scene/kit/space.ts";

const straight: ShaftTurn = {
  outputAxis: LEFT,
  shaft: LEFT,
  spinAxis: LEFT,
  inner: "u-joint",
  outer: "u-joint",
  yokePhase: 0,
  turn: 0,
};

const angle = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const bend = angle(0.01, 0.7);
const around = angle(-Math.PI, Math.PI);

/** An axis bent by `bend` from `axis`, its plane turned by `plane` about it. */
const bent = (axis: typeof LEFT, by: number, plane: number) => {
  const side = turned(unit(cross(axis, { x: 0.3, y: 0.2, z: 0.9 })), axis, plane);
  return turned(axis, side, by);
};

/** Angle (rad) of direction b from direction a, right-handed about the axis. */
const angleAbout = (a: typeof LEFT, b: typeof LEFT, axis: typeof LEFT) => Math.atan2(dot(cross(a, b), axis), dot(a, b));

describe("yokes of a half shaft", () => {
  test("one U-joint turns its driven shaft by tan θ₂ = tan θ₁ / cos β", () => {
    fc.assert(
      fc.property(bend, around, (beta, turn) => {
        // Bent about the forward axis: θ₁ counts from the yoke's ears in the plane of the two shafts, where the driven
        // yoke's ears are square to that plane.
        const shaft = turned(LEFT, { x: 1, y: 0, z: 0 }, beta);
        const { output, shaftInner } = yokeDirections({ ...straight, shaft, spinAxis: shaft, turn });
        const driving = angleAbout(UP, output, LEFT);
        const driven = angleAbout(unit(squareTo(cross(LEFT, UP), shaft)), shaftInner, shaft);
        // tan θ₂ cos β = tan θ₁ without the poles of the tangent, both in the same quadrant.
        const expected = Math.atan2(Math.sin(driving), Math.cos(driving) * Math.cos(beta));
        expect(Math.abs(Math.sin(driven - expected))).toBeLessThan(1e-12);
        expect(Math.cos(driven - expected)).toBeGreaterThan(0);
      }),
    );
  });

  test("the cross stays rigid: neighbouring yokes are square to each other and to their axes", () => {
    fc.assert(
      fc.property(bend, bend, around, around, around, around, (first, second, plane1, plane2, phase, turn) => {
        const shaft = bent(LEFT, first, plane1);
        const spinAxis = bent(shaft, second, plane2);
        const yokes = yokeDirections({ ...straight, shaft, spinAxis, yokePhase: phase, turn });
        for (const zero of [
          dot(yokes.output, yokes.shaftInner),
          dot(yokes.shaftOuter, yokes.stub),
          dot(yokes.output, LEFT),
          dot(yokes.shaftInner, shaft),
          dot(yokes.shaftOuter, shaft),
          dot(yokes.stub, spinAxis),
        ]) {
          expect(Math.abs(zero)).toBeLessThan(1e-12);
        }
      }),
    );
  });

  test("constant-velocity joints carry a turn through unchanged", () => {
    fc.assert(
      fc.property(bend, bend, around, around, around, (first, second, plane1, plane2, turn) => {
        const shaft = bent(LEFT, first, plane1);
        const spinAxis = bent(shaft, second, plane2);
        const pair = { ...straight, shaft, spinAxis, inner: "constant-velocity", outer: "constant-velocity" } as const;
        const before = yokeDirections(pair).stub;
        const after = yokeDirections({ ...pair, turn }).stub;
        const turnedBy = angleAbout(before, after, spinAxis);
        expect(Math.abs(Math.sin(turnedBy - turn))).toBeLessThan(1e-12);
        expect(Math.cos(turnedBy - turn)).toBeGreaterThan(0);
      }),
    );
  });

  test("speed over one turn ripples as the engine says", () => {
    const cases = fc.tuple(bend, bend, around, around, around);
    fc.assert(
      fc.property(cases, ([first, second, plane1, plane2, yokePhase]) => {
        const shaft = bent(LEFT, first, plane1);
        const spinAxis = bent(shaft, second, plane2);
        const pair = { ...straight, shaft, spinAxis, yokePhase };
        const stubAt = (turn: number) => yokeDirections({ ...pair, turn }).stub;
        const step = 1e-4;
        let least = Number.POSITIVE_INFINITY;
        let most = 0;
        for (let i = 0; i < 720; i += 1) {
          // The speed ratio repeats every half turn.
          const turn = (Math.PI * i) / 720;
          const speed = angleAbout(stubAt(turn - step), stubAt(turn + step), spinAxis) / (2 * step);
          least = Math.min(least, speed);
          most = Math.max(most, speed);
        }
        // Angle between the planes of the two joints, about the shaft.
        const twist = angleAbout(unit(cross(LEFT, shaft)), unit(cross(shaft, spinAxis)), shaft) - yokePhase;
        const { total } = speedRipple(first, second, twist);
        // 720 samples a half turn miss a smooth extreme by under (π/1440)²/2 of its curvature, some 1e-5 of the ripple.
        expect(Math.abs(most - least - total)).toBeLessThan(1e-4 * (1 + total));
      }),
      { numRuns: 60 },
    );
  });
});
