import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type AxlePosition, axleAt } from "../../src/axle/axle.ts";
import { axleTable } from "../../src/axle/axle-table.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { ROW } from "../../src/cycle/row.ts";
import { dot, length, mirrored, squareTo, subtract, unit, vec } from "../../src/geometry/vec3.ts";
import { anyCar, carOf, SAMPLE_CARS } from "../sample-cars.ts";

const DEGREE = Math.PI / 180;
const MM = 0.001;
/** Rounding of a solved position, m and rad. */
const ROUNDING = 1e-11;

const at = (car: (typeof SAMPLE_CARS)[number], left: number, right: number): AxlePosition => {
  const corner = makeCorner(car);
  const position = axleAt(corner, corner, left, right);
  if (!position) throw new Error("the sample does not reach this travel");
  return position;
};

/** Height over the ground of the lowest of many points on the disc's rim, m. */
function lowestOf(position: AxlePosition, side: "left" | "right", radius: number): number {
  const { wheelCentre, spinAxis } = position[side];
  const down = unit(squareTo(position.ground.normal, spinAxis));
  const across = vec(
    spinAxis.y * down.z - spinAxis.z * down.y,
    spinAxis.z * down.x - spinAxis.x * down.z,
    spinAxis.x * down.y - spinAxis.y * down.x,
  );
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 720; i += 1) {
    const angle = i * 0.5 * DEGREE;
    const c = radius * Math.cos(angle);
    const s = radius * Math.sin(angle);
    const rim = vec(c * down.x + s * across.x, c * down.y + s * across.y, c * down.z + s * across.z);
    const point = vec(wheelCentre.x + rim.x, wheelCentre.y + rim.y, wheelCentre.z + rim.z);
    lowest = Math.min(lowest, dot(subtract(point, position.ground.point), position.ground.normal));
  }
  return lowest;
}

describe("axle", () => {
  it("in heave of a car alike on both sides agrees with its corner", () => {
    for (const car of SAMPLE_CARS) {
      for (const travel of [-0.12, 0, 0.1]) {
        const { row } = solveAt(makeCorner(car), travel)!;
        const position = at(car, travel, travel);
        expect(position.bodyRoll).toBeCloseTo(0, 14);
        expect(position.trackWidth).toBeCloseTo(2 * row[ROW.contactY]!, 12);
        for (const wheel of [position.left, position.right]) {
          expect(wheel.camber).toBe(row[ROW.camber]);
          expect(wheel.toe).toBe(row[ROW.toe]);
          expect(wheel.camberToGround).toBeCloseTo(wheel.camber, 14);
        }
        expect(position.rollCentre!.outOfCentre).toBeCloseTo(0, 10);
        expect(position.rollCentre!.height).toBeCloseTo(row[ROW.rollCentreHeight]!, 10);
      }
    }
  });

  it("stands both tyres on the ground, at the discs' lowest points", () => {
    fc.assert(
      fc.property(
        anyCar,
        fc.double({ min: -0.12, max: 0.12, noNaN: true }),
        fc.double({ min: -0.12, max: 0.12, noNaN: true }),
        (car, left, right) => {
          const corner = makeCorner(car);
          const position = axleAt(corner, corner, left, right);
          fc.pre(position !== null);
          const { ground } = position!;
          for (const side of ["left", "right"] as const) {
            const { contact, wheelCentre, spinAxis } = position![side];
            expect(Math.abs(dot(subtract(contact, ground.point), ground.normal))).toBeLessThan(1e-12);
            expect(Math.abs(dot(subtract(contact, wheelCentre), spinAxis))).toBeLessThan(ROUNDING);
            expect(length(subtract(contact, wheelCentre))).toBeCloseTo(car.wheel.loadedRadius, 12);
            expect(lowestOf(position!, side, car.wheel.loadedRadius)).toBeGreaterThan(-ROUNDING);
          }
          expect(Math.tan(position!.bodyRoll)).toBeCloseTo(
            -(position!.left.contact.z - position!.right.contact.z) /
              (position!.left.contact.y - position!.right.contact.y),
            12,
          );
        },
      ),
      { numRuns: 100 },
    );
  });

  it("gives the mirror image when the travels change sides", () => {
    fc.assert(
      fc.property(anyCar, fc.double({ min: 0.01, max: 0.12, noNaN: true }), (car, travel) => {
        const corner = makeCorner(car);
        const one = axleAt(corner, corner, travel, -travel / 2);
        const other = axleAt(corner, corner, -travel / 2, travel);
        fc.pre(one !== null && other !== null);
        expect(one!.bodyRoll).toBeCloseTo(-other!.bodyRoll, 12);
        expect(one!.trackWidth).toBeCloseTo(other!.trackWidth, 12);
        expect(one!.left.camberToGround).toBeCloseTo(other!.right.camberToGround, 12);
        expect(one!.right.toe).toBe(other!.left.toe);
        expect(length(subtract(mirrored(one!.left.contact), other!.right.contact))).toBeLessThan(ROUNDING);
        const a = one!.rollCentre;
        const b = other!.rollCentre;
        expect(a === null).toBe(b === null);
        if (!a || !b) return;
        const scale = Math.max(1, Math.abs(a.outOfCentre) ** 2);
        expect(Math.abs(a.outOfCentre + b.outOfCentre) / scale).toBeLessThan(1e-9);
        expect(Math.abs(a.height - b.height) / scale).toBeLessThan(1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it("leans to the right, positive, when the right wheel is up and the left one down", () => {
    for (const car of SAMPLE_CARS) {
      const position = at(car, -0.1, 0.1);
      expect(position.bodyRoll).toBeGreaterThan(0.1);
      expect(position.left.contact.z).toBeLessThan(position.right.contact.z);
    }
  });

  // Closed case: a trailing arm square to the car keeps its wheel upright in the body, which takes it along as it leans.
  it("leans the wheels of square trailing arms with the body", () => {
    const car = carOf({
      wheelCentre: vec(0, 0.8, 0.4),
      linkage: {
        kind: "trailing-arm",
        trailingArm: {
          inboardPivot: vec(0.6, 0.3, 0.4),
          outboardPivot: vec(0.6, 0.6, 0.4),
          hub: vec(0, 0.7, 0.4),
          diameter: 0.05,
        },
      },
    });
    const position = at(car, -0.1, 0.1);
    // Wheel centres 1.6 m apart and 0.2 m different in height: the ground runs parallel to the line through them.
    expect(position.bodyRoll).toBeCloseTo(Math.atan2(0.2, 1.6), 12);
    expect(position.left.camberToGround).toBeCloseTo(-position.bodyRoll, 12);
    expect(position.right.camberToGround).toBeCloseTo(position.bodyRoll, 12);
    expect(position.trackWidth).toBeCloseTo(Math.hypot(0.2, 1.6), 12);
    // Both lines are level in the body, at different heights: they never meet.
    expect(position.rollCentre).toBeNull();
    // In heave they are one line, in the ground.
    expect(at(car, 0.05, 0.05).rollCentre).toEqual({ outOfCentre: 0, height: 0 });
    expect(at(car, 0.05, -0.02).rollCentre).toBeNull();
  });

  // Trade fact, common practice, no source: an upper link parallel and equal to the lower arm holds camber to the body.
  it("leans the wheels of a parallel equal H-arm with the body, whatever the travel", () => {
    const car = carOf({
      wheelCentre: vec(0, 0.8, 0.4),
      linkage: {
        kind: "h-arm",
        lowerArm: {
          innerFront: vec(0.2, 0.25, 0.3),
          innerRear: vec(-0.2, 0.25, 0.3),
          outerFront: vec(0.15, 0.7, 0.27),
          outerRear: vec(-0.15, 0.7, 0.27),
          diameter: 0.04,
        },
        upperLink: { inner: vec(0, 0.25, 0.5), outer: vec(0, 0.7, 0.47), diameter: 0.03 },
      },
    });
    for (const travel of [0.04, 0.1, 0.15]) {
      const position = at(car, travel, -travel);
      expect(position.bodyRoll).toBeLessThan(0);
      expect(position.left.camberToGround).toBeCloseTo(-position.bodyRoll, 12);
      expect(position.right.camberToGround).toBeCloseTo(position.bodyRoll, 12);
    }
  });

  it("has a right side of its own where it is given one", () => {
    const left = makeCorner(SAMPLE_CARS[0]!);
    const right = makeCorner(SAMPLE_CARS[1]!);
    const position = axleAt(left, right, 0.03, -0.02)!;
    expect(position.left.camber).toBe(solveAt(left, 0.03)!.row[ROW.camber]);
    expect(position.right.camber).toBe(solveAt(right, -0.02)!.row[ROW.camber]);
    expect(position.right.wheelCentre.y).toBeLessThan(0);
    expect(axleAt(left, right, 5, 0)).toBeNull();
    expect(axleAt(left, right, 0, 5)).toBeNull();
  });
});

/**
 * Planar double wishbone, front view, mm: upper (300,420)-(560,450), lower (220,220)-(600,200), contact (650,0).
 * Source: own evaluation of the closed form, exact against a small-move four-bar: instant centre (−915.4217, 279.7590),
 * roll centre 116.1625 above the ground, contact moves out by .1787116 a unit up, camber change −.0366009 deg/mm.
 */
describe("planar double wishbone", () => {
  const x = (forward: number, y: number, z: number) => vec(forward * MM, y * MM, z * MM);
  const car = carOf({
    wheelCentre: x(0, 650, 400),
    linkage: {
      kind: "double-a-arm",
      lowerArm: { innerFront: x(200, 220, 220), innerRear: x(-200, 220, 220), outer: x(0, 600, 200), diameter: 0.04 },
      upperArm: { innerFront: x(150, 300, 420), innerRear: x(-150, 300, 420), outer: x(0, 560, 450), diameter: 0.03 },
      // The lower arm once more, farther back: keeps the motion in the plane.
      toeLink: { inner: x(-180, 220, 220), outer: x(-180, 600, 200), diameter: 0.02 },
    },
  });
  const corner = makeCorner(car);
  const { row } = solveAt(corner, 0)!;
  /** Of the published digits. */
  const RELATIVE = 1e-5;
  const close = (found: number, expected: number) => expect(Math.abs(found / expected - 1)).toBeLessThan(RELATIVE);

  it("has its instant centre, roll centre and camber change in the corner's own numbers", () => {
    close(row[ROW.rollCentreHeight]! / MM, 116.1625);
    close(row[ROW.contactVelocityY]! / row[ROW.contactVelocityZ]!, 0.1787116);
    close((row[ROW.camberGain]! / DEGREE) * MM, -0.0366009);
    close((row[ROW.contactY]! - row[ROW.contactVelocityZ]! / row[ROW.frontViewTurn]!) / MM, -915.4217);
    close((row[ROW.contactZ]! + row[ROW.contactVelocityY]! / row[ROW.frontViewTurn]!) / MM, 279.759);
  });

  it("has the same roll centre on the axle", () => {
    const { rollCentre } = axleAt(corner, corner, 0, 0)!;
    close(rollCentre!.height / MM, 116.1625);
    expect(rollCentre!.outOfCentre).toBeCloseTo(0, 12);
  });

  it("has a roll centre in roll where small moves of both wheels meet square", () => {
    const position = axleAt(corner, corner, 0.06, -0.06)!;
    const centre = position.rollCentre!;
    // Independent of the construction: carry the contact points along by finite moves and meet their normals.
    const moved = (travel: number, point: { y: number; z: number }) => {
      const h = 1e-6;
      const carry = (t: number) => {
        const now = solveAt(corner, t)!.row;
        const here = solveAt(corner, travel)!.row;
        // Planar: the turn is the change of camber, top out turning left side over.
        const turn = now[ROW.camber]! - here[ROW.camber]!;
        const dy = point.y - here[ROW.wheelY]!;
        const dz = point.z - here[ROW.wheelZ]!;
        return {
          y: now[ROW.wheelY]! + Math.cos(turn) * dy + Math.sin(turn) * dz,
          z: now[ROW.wheelZ]! - Math.sin(turn) * dy + Math.cos(turn) * dz,
        };
      };
      const up = carry(travel + h);
      const down = carry(travel - h);
      return { y: up.y - down.y, z: up.z - down.z };
    };
    const left = position.left.contact;
    const right = mirrored(position.right.contact);
    const l = moved(0.06, left);
    const r = moved(-0.06, right);
    // Lines p·v = q·v through the contact points, the right one mirrored back.
    const determinant = l.y * r.z + l.z * r.y;
    const lq = l.y * left.y + l.z * left.z;
    const rq = r.y * right.y + r.z * right.z;
    const y = (lq * r.z - rq * l.z) / determinant;
    const z = (l.y * rq + r.y * lq) / determinant;
    expect(centre.outOfCentre).toBeCloseTo(y, 6);
    const height = dot(subtract(vec(0, y, z), position.ground.point), position.ground.normal);
    expect(centre.height).toBeCloseTo(height, 6);
  });
});

describe("axle table", () => {
  it("moves both wheels together, against each other, and one alone", () => {
    const corner = makeCorner(SAMPLE_CARS[0]!);
    const table = axleTable(corner, corner, 0.15, -0.2);
    expect(table.map(({ motion, leftTravel, rightTravel }) => [motion, leftTravel, rightTravel])).toEqual([
      ["heave", -0.2, -0.2],
      ["heave", 0, 0],
      ["heave", 0.15, 0.15],
      ...[-1, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1].map((part) => ["roll", part * 0.15, -part * 0.15]),
      ["one-wheel", -0.2, 0],
      ["one-wheel", 0.15, 0],
    ]);
    for (const { position } of table) expect(position).not.toBeNull();
  });

  it("keeps rows that a linkage does not reach, empty", () => {
    const corner = makeCorner(SAMPLE_CARS[0]!);
    const table = axleTable(corner, corner, 3, -0.1);
    expect(table.filter(({ position }) => position === null).map(({ motion }) => motion)).toEqual([
      "heave",
      "one-wheel",
    ]);
  });

  it("gives every row for all kinds with finite numbers", () => {
    for (const car of SAMPLE_CARS) {
      const corner = makeCorner(car);
      for (const { position } of axleTable(corner, corner, 0.12, -0.12)) {
        const { left, right, bodyRoll, trackWidth, rollCentre } = position!;
        const numbers = [bodyRoll, trackWidth, left.camberToGround, right.camberToGround, left.toe, right.toe];
        if (rollCentre) numbers.push(rollCentre.height, rollCentre.outOfCentre);
        expect(numbers.every(Number.isFinite)).toBe(true);
      }
    }
  });
});
