import { carriedCar, contactOf, type Poses } from "../adjust/carried-car.ts";
import { carriedLinkage } from "../adjust/carried-linkage.ts";
import type { Car, Linkage } from "../car/car.ts";
import { makeCorner, solveAt } from "../cycle/corner.ts";
import { placeOn, positionOf } from "../cycle/position.ts";
import { bodyPlaces, cornerPlaces } from "./car-places.ts";
import { pointAt, withPointAt } from "./point-places.ts";

/**
 * The same car with the same parts, drawn with the wheel at `travel` (m) as its ride height: arms, spindle and all they
 * carry taken there, then everything lifted so that the tyre stands on the ground again. Null where the linkage does not
 * reach there. Springs and stops stay as they are.
 */
export function redrawnAt(car: Car, travel: number): Car | null {
  const corner = makeCorner(car);
  const solved = solveAt(corner, travel);
  if (!solved) return null;
  const position = positionOf(corner, solved.state);
  const linkage = carriedLinkage<Linkage>(car.linkage, (point, on) => placeOn(position, point, on));
  const poses: Poses = position.poses;
  const carried = carriedCar(car, linkage, poses);
  const lift = contactOf(car.wheel).z - contactOf(carried.wheel).z;
  // Every point, those that the document leaves out too.
  const places = [...cornerPlaces({ ...carried, assumed: [] }), ...bodyPlaces(carried)];
  const lifted = places.reduce((made, place) => {
    const point = pointAt(made, place);
    return withPointAt(made, place, { ...point, z: point.z + lift });
  }, carried);
  const { chassis } = lifted;
  return { ...lifted, chassis: { ...chassis, centreOfGravityHeight: chassis.centreOfGravityHeight + lift } };
}
