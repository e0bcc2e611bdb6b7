import type { Car } from "../car/car.ts";
import { midpoint, squareTo, subtract, unit, type Vec3 } from "../geometry/vec3.ts";

/**
 * How far the upper link's (or upper arm's) chassis end has to be moved so that it is equal and parallel to the lower arm, m.
 * Seen along the lower arm's chassis hinge, upper and lower then make a parallelogram: with both hinges of the arm parallel
 * (and, for two A-arms, both arms' hinges) the spindle moves without turning, so that camber stays. Along the hinge nothing
 * is moved. Null for kinds that have no such pair.
 */
export function equalAndParallel({ linkage }: Car): Vec3 | null {
  if (linkage.kind === "h-arm") {
    const { lowerArm, upperLink } = linkage;
    const hinge = unit(subtract(lowerArm.innerRear, lowerArm.innerFront));
    const arm = subtract(
      midpoint(lowerArm.outerFront, lowerArm.outerRear),
      midpoint(lowerArm.innerFront, lowerArm.innerRear),
    );
    return squareTo(subtract(subtract(upperLink.outer, upperLink.inner), arm), hinge);
  }
  if (linkage.kind === "double-a-arm") {
    const { lowerArm, upperArm } = linkage;
    const hinge = unit(subtract(lowerArm.innerRear, lowerArm.innerFront));
    const lower = subtract(lowerArm.outer, midpoint(lowerArm.innerFront, lowerArm.innerRear));
    const upper = subtract(upperArm.outer, midpoint(upperArm.innerFront, upperArm.innerRear));
    return squareTo(subtract(upper, lower), hinge);
  }
  return null;
}
