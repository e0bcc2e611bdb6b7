import { describe, expect, test } from "vitest";
import { adjustersOf } from "../../src/adjust/adjusted.ts";
import { effectPerLength } from "../../src/adjust/effect.ts";
import type { Car } from "../../src/car/car.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { positionOf } from "../../src/cycle/position.ts";
import { sectionProperties } from "../../src/frames/section.ts";
import { dot, length, midpoint, scale, squareTo, subtract, unit, type Vec3 } from "../../src/geometry/vec3.ts";
import type { Pivot } from "../../src/linkage/kind.ts";
import { attitudeForces } from "../../src/loads/attitude-forces.ts";
import { exampleCar } from "../example-documents.ts";
import { SAMPLE_CARS } from "../sample-cars.ts";
import { carWith, strengthOf } from "./cars.ts";

describe("what a movement of a part does to the wheel, by virtual work", () => {
  // The second route: the adjusters, which take the linkage apart, make a part longer and solve it anew.
  test.each(SAMPLE_CARS.map((car) => [car.linkage.kind, car] as const))("%s: as its adjusters do", (_, car) => {
    const corner = makeCorner(car);
    const position = positionOf(corner, solveAt(corner, 0)!.state);
    const unitForces = attitudeForces(corner, position)!;
    let compared = 0;
    for (const { id, action, rodEnds } of adjustersOf(car)) {
      const effect = effectPerLength(car, id)!;
      for (const angle of ["toe", "camber"] as const) {
        const { links, joints } = unitForces[angle];
        const link = links.find(({ member }) => member === id);
        const pivot = corner.pivots.find((each) => each.id === rodEnds[0])!;
        if (link) {
          expect(link.tension, `${id} ${angle}`).toBeCloseTo(effect[angle], 5);
          compared += 1;
        } else if (action === "end" && pivot.shank.body !== "link" && pivot.shank.hinge) {
          // A rod end screwed out moves along its shank: away from what it faces, square to the hinge line.
          const shank = unit(squareTo(subtract(pivot.point, facing(car, pivot)), unit(pivot.shank.hinge)));
          const joint = joints.find((each) => each.pivot === id)!;
          const onArm = joint.on === pivot.shank.body ? joint.force : scale(joint.force, -1);
          expect(dot(onArm, shank), `${id} ${angle}`).toBeCloseTo(effect[angle], 5);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(3);
  });
});

/** Of an H-arm the middle of its other hinge, of other arms the end of the tube that the rod end is on. */
function facing(car: Car, pivot: Pivot): Vec3 {
  if (car.linkage.kind === "h-arm") {
    const { innerFront, innerRear, outerFront, outerRear } = car.linkage.lowerArm;
    return pivot.boltSide === "chassis" ? midpoint(outerFront, outerRear) : midpoint(innerFront, innerRear);
  }
  const tube = makeCorner(car).members.find(({ from, to }) => from.point === pivot.point || to.point === pivot.point)!;
  return tube.from.point === pivot.point ? tube.to.point : tube.from.point;
}

describe("the demo car's wheel under load", () => {
  test("every case is told, and common practice's cases turn the wheel by less than its toe is set to", () => {
    const { give, forces } = strengthOf(exampleCar("saltbush"));
    expect(give.map(({ loadCase }) => loadCase)).toEqual(forces.map(({ name }) => name));
    const most = Math.max(...give.map(({ toe }) => Math.abs(toe)));
    expect((most * 180) / Math.PI).toBeGreaterThan(0.1);
    expect((most * 180) / Math.PI).toBeLessThan(0.25);
  });

  test("half the load turns it half as far", () => {
    const [whole, half] = [{}, { "weights.corner": 360, "weights.unsprung": 67.5 }].map(
      (changes) => strengthOf(carWith(changes)).give.find(({ loadCase }) => loadCase === "kerb or rock from the side")!,
    );
    expect(half!.toe / whole!.toe).toBeCloseTo(0.5, 6);
    expect(half!.camber / whole!.camber).toBeCloseTo(0.5, 6);
  });

  // By hand: N L / (E A) of the upper link, beside an arm whose sections are all but stiff, is all that gives.
  test("the upper link's stretch is camber as its turnbuckle makes it", () => {
    const car = carWith({
      "linkage.lowerArm.diameter": 40,
      "strength.tubes.lowerArm": { wall: 19, crossDiameter: 40, crossWall: 19, material: "DOM 1020" },
    });
    const found = strengthOf(car);
    const { upperLink } = car.linkage as Extract<Car["linkage"], { kind: "h-arm" }>;
    const { area } = sectionProperties({ shape: "round-tube", diameter: 1.25 * 0.0254, wall: 0.095 * 0.0254 });
    const index = found.forces.findIndex(({ name }) => name === "kerb or rock from the side");
    const force = found.forces[index]!.links["upperLink"]!;
    const young = 29e6 * 6894.757;
    const stretch = (force * length(subtract(upperLink.outer, upperLink.inner))) / (young * area);
    expect(force).toBeGreaterThan(3000);
    expect(found.give[index]!.camber / (stretch * effectPerLength(car, "upperLink")!.camber)).toBeCloseTo(1, 2);
  });
});
