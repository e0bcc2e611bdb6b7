import { describe, expect, it } from "vitest";
import { spinAxisOf } from "../../src/car/wheel-centre.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { ROW } from "../../src/cycle/row.ts";
import { lowestPoint } from "../../src/cycle/wheel-attitude.ts";
import { multiply, rotate, rotationAbout } from "../../src/geometry/pose.ts";
import { distance, dot, FORWARD, LEFT, subtract, UP, unit, type Vec3, vec } from "../../src/geometry/vec3.ts";
import { SAMPLE_CARS } from "../sample-cars.ts";

const DEGREE = Math.PI / 180;
const inclination = (s: Vec3): number => -Math.asin(s.z) / DEGREE;
const projectedCamber = (s: Vec3): number => Math.atan2(-s.z, s.y) / DEGREE;
const toe = (s: Vec3): number => Math.atan2(s.x, s.y) / DEGREE;

describe("camber and toe", () => {
  // Identities of the definitions of ISO 8855:2011 (7.1.6 toe, camber about x); derived, no publication.
  it("come from the spin axis of toe 3°, projected camber 5° as inclination 4.99318° and toe 3°", () => {
    const s = unit(vec(Math.tan(3 * DEGREE), 1, -Math.tan(5 * DEGREE)));
    expect(s.x).toBeCloseTo(0.052137, 6);
    expect(s.y).toBeCloseTo(0.99484, 6);
    expect(s.z).toBeCloseTo(-0.087037, 6);
    expect(inclination(s)).toBeCloseTo(4.99318, 5);
    expect(toe(s)).toBeCloseTo(3, 10);
  });

  it("tell apart the two orders of turning by 3° and 5°", () => {
    // Toe-in turns the axis forward, right-handed about down; camber tips it down, right-handed about rearward.
    const aboutZ = rotationAbout(UP, -3 * DEGREE);
    const aboutX = rotationAbout(FORWARD, -5 * DEGREE);
    const toeLast = rotate(multiply(aboutZ, aboutX), LEFT);
    expect(projectedCamber(toeLast)).toBeCloseTo(5.00683, 5);
    expect(inclination(toeLast)).toBeCloseTo(5, 10);
    const camberLast = rotate(multiply(aboutX, aboutZ), LEFT);
    expect(toe(camberLast)).toBeCloseTo(3.01144, 5);
    expect(inclination(camberLast)).toBeCloseTo(4.99313, 5);
  });

  it("are what the document gives, in the design position", () => {
    for (const car of SAMPLE_CARS) {
      const wheel = { ...car.wheel, camber: -1.5 * DEGREE, toe: 0.25 * DEGREE };
      const { row } = solveAt(makeCorner({ ...car, wheel }), 0)!;
      expect(row[ROW.camber]).toBeCloseTo(wheel.camber, 12);
      expect(row[ROW.toe]).toBeCloseTo(wheel.toe, 12);
      expect(spinAxisOf(wheel).z).toBeGreaterThan(0);
    }
  });
});

describe("the contact point", () => {
  it("is the lowest point of the disc, in its plane", () => {
    const centre = vec(0.1, 0.8, 0.4);
    const axis = unit(vec(0.05, 1, -0.09));
    const lowest = lowestPoint(centre, axis, 0.4);
    expect(distance(lowest, centre)).toBeCloseTo(0.4, 12);
    expect(dot(subtract(lowest, centre), axis)).toBeCloseTo(0, 12);
    for (let i = 0; i < 360; i += 5) {
      const around = rotate(rotationAbout(axis, i * DEGREE), subtract(lowest, centre));
      expect(centre.z + around.z).toBeGreaterThanOrEqual(lowest.z - 1e-12);
    }
  });
});
