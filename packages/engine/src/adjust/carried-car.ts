import type { BodyId, Car, Driveshaft, Linkage, Mount, Wheel } from "../car/car.ts";
import { spinAxisOf, wheelCentreOf } from "../car/wheel-centre.ts";
import { lowestPoint } from "../cycle/wheel-attitude.ts";
import { DESIGN_POSE, type Pose, placeDirection, placePoint } from "../geometry/pose.ts";
import { distance, type Vec3 } from "../geometry/vec3.ts";

export type Poses = Partial<Record<BodyId, Pose>>;

/**
 * The car in a new design position: all that its moved bodies carry taken along by their poses, `linkage` put in. What is
 * not named in `poses` stays. Slip engagement and wheelbase, which are those of the design position, follow.
 */
export function carriedCar(car: Car, linkage: Linkage, poses: Poses): Car {
  const wheel = carriedWheel(car.wheel, poses);
  const at = (mount: Mount): Mount => ({ ...mount, point: placePoint(poseIn(poses, mount.on), mount.point) });
  const { shock, strap, bumpStop, driveshaft, chassis } = car;
  const rearward = contactOf(car.wheel).x - contactOf(wheel).x;
  return {
    ...car,
    wheel,
    linkage,
    rodEnds: car.rodEnds.map((end) => ({ ...end, boltAxis: placeDirection(poseIn(poses, end.boltOn), end.boltAxis) })),
    ...(driveshaft && { driveshaft: carriedShaft(driveshaft, poses) }),
    ...(shock && { shock: { ...shock, upper: at(shock.upper), lower: at(shock.lower) } }),
    ...(strap && { strap: { ...strap, upper: at(strap.upper), lower: at(strap.lower) } }),
    ...(bumpStop && { bumpStop: { ...bumpStop, base: at(bumpStop.base), strikes: at(bumpStop.strikes) } }),
    chassis: { ...chassis, wheelbase: chassis.wheelbase + rearward },
  };
}

export const poseIn = (poses: Poses, body: BodyId): Pose => poses[body] ?? DESIGN_POSE;

/** Contact point of a wheel in the design position, m. */
export const contactOf = (wheel: Wheel): Vec3 =>
  lowestPoint(wheelCentreOf(wheel), spinAxisOf(wheel), wheel.loadedRadius);

function carriedWheel(wheel: Wheel, poses: Poses): Wheel {
  const spindle = poseIn(poses, "spindle");
  const axis = placeDirection(spindle, spinAxisOf(wheel));
  return {
    ...wheel,
    hubFace: placePoint(spindle, wheel.hubFace),
    camber: -Math.atan2(axis.z, Math.hypot(axis.x, axis.y)),
    toe: Math.atan2(axis.x, axis.y),
  };
}

function carriedShaft(shaft: Driveshaft, poses: Poses): Driveshaft {
  const centre = placePoint(poseIn(poses, "spindle"), shaft.outer.centre);
  const outer = { ...shaft.outer, centre };
  const { slip } = shaft;
  if (!slip) return { ...shaft, outer };
  const longer = distance(shaft.inner.centre, centre) - distance(shaft.inner.centre, shaft.outer.centre);
  return {
    ...shaft,
    outer,
    slip: {
      ...slip,
      engagement: slip.engagement - longer,
      ...(slip.pushInLeft !== undefined && { pushInLeft: slip.pushInLeft + longer }),
    },
  };
}
