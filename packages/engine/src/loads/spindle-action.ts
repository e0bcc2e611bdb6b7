import type { Corner } from "../cycle/corner.ts";
import { type Position, placeOn } from "../cycle/position.ts";
import { lowestPoint } from "../cycle/wheel-attitude.ts";
import { addScaled, cross, dot, subtract, type Vec3 } from "../geometry/vec3.ts";
import { type ForceMoment, forceAt, sum } from "./force-moment.ts";
import { type ShaftPlace, type ShaftTorque, shaftTorque } from "./shaft-torque.ts";
import type { WheelLoad } from "./wheel-load.ts";

/** What a loaded wheel hands to its spindle through the hub's bearings and the brake. */
export interface SpindleAction {
  /** About the wheel centre as it is now. */
  readonly onSpindle: ForceMoment;
  readonly contactPoint: Vec3;
  /** Of the brake on the spindle about the spin axis, N·m; 0 where it does not act. */
  readonly brakeTorque: number;
  /** Null where the shaft does not drive, or the car has none. */
  readonly shaft: ShaftTorque | null;
  /** About the spin axis, N·m: not held by anything, it spins the wheel up. */
  readonly spinsUp: number;
}

/**
 * Centre of tyre contact: where the wheel plane meets the projection of the spin axis onto the road (SAE J670, center of tire
 * contact; ISO 8855 names the same point contact centre): on a level road the lowest point of the loaded radius.
 */
export const contactPointOf = (corner: Corner, position: Position): Vec3 =>
  lowestPoint(position.wheelCentre, position.spinAxis, corner.car.wheel.loadedRadius);

/** Where the car's half shaft is at a position; null where it has none. */
export function shaftPlaceOf(corner: Corner, position: Position): ShaftPlace | null {
  const { driveshaft } = corner.car;
  if (!driveshaft) return null;
  return {
    inner: driveshaft.inner.centre,
    outer: placeOn(position, driveshaft.outer.centre, "spindle"),
    spinAxis: position.spinAxis,
  };
}

/**
 * Equilibrium of wheel, hub and stub axle as one body: the bearings pass on every force, and every moment but that about
 * the spin axis, which only brake or shaft can hold. The weight and the inertia of wheel, hub and spindle are left out.
 */
export function spindleAction(corner: Corner, position: Position, load: WheelLoad): SpindleAction {
  const { wheelCentre: centre, spinAxis: s } = position;
  const contactPoint = contactPointOf(corner, position);
  const ground = sum(forceAt(load.contact, contactPoint, centre), forceAt(load.centre, centre, centre));
  const spins = dot(ground.moment, s);
  const { turning } = load;
  const none = { contactPoint, brakeTorque: 0, shaft: null, spinsUp: 0 };
  switch (turning.by) {
    case "rolling":
      return { ...none, onSpindle: withoutSpin(ground, s), spinsUp: spins };
    case "brake": {
      const brakeTorque = turning.torque ?? spins;
      const held = withoutSpin(ground, s);
      const onSpindle = { force: held.force, moment: addScaled(held.moment, s, brakeTorque) };
      return { ...none, onSpindle, brakeTorque, spinsUp: spins - brakeTorque };
    }
    case "shaft": {
      const shaft = shaftFor(corner, position, spins, turning.torque);
      if (!shaft) return { ...none, onSpindle: withoutSpin(ground, s), spinsUp: spins };
      const byShaft = forceAt(shaft.force, shaft.point, centre, shaft.couple);
      const onWheel = sum(ground, byShaft);
      return { ...none, onSpindle: withoutSpin(onWheel, s), shaft, spinsUp: dot(onWheel.moment, s) };
    }
  }
}

/** With no torque given, that which holds the wheel: the shaft's force at the outer joint has a small part in it too. */
function shaftFor(corner: Corner, position: Position, spins: number, torque: number | undefined): ShaftTorque | null {
  const { driveshaft } = corner.car;
  const place = shaftPlaceOf(corner, position);
  if (!driveshaft || !place) return null;
  if (torque !== undefined) return shaftTorque(driveshaft, place, torque);
  const one = shaftTorque(driveshaft, place, 1);
  const lever = cross(subtract(one.point, position.wheelCentre), one.force);
  return shaftTorque(driveshaft, place, -spins / (1 + dot(lever, position.spinAxis)));
}

const withoutSpin = ({ force, moment }: ForceMoment, axis: Vec3): ForceMoment => ({
  force,
  moment: addScaled(moment, axis, -dot(moment, axis)),
});
