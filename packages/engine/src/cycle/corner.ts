import type { Car, Linkage } from "../car/car.ts";
import { spinAxisOf, wheelCentreOf } from "../car/wheel-centre.ts";
import { type ShaftMotion, shaftMotion, writeShaftMotion } from "../driveline/shaft-motion.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { ArmAxis, Lengths, LinkageKind, Mechanism, Member, Pivot } from "../linkage/kind.ts";
import { kindOf } from "../linkage/kinds.ts";
import { designState, type MotionState } from "../linkage/motion-state.ts";
import { type CarriedList, carryAll, gatherCarried } from "./carried-list.ts";
import { type RodEndSwings, rodEndSwings, writeRodEndSwings } from "./rod-end-swing.ts";
import { ROW } from "./row.ts";
import { type ShockMotion, shockMotion, writeShockMotion } from "./shock-motion.ts";
import { type TravelStops, travelStops, writeTravelStops } from "./travel-stops.ts";
import { type WheelAttitude, wheelAttitude, writeWheelAttitude } from "./wheel-attitude.ts";

/** A car's corner, made ready to be moved: everything that does not change with travel. Never changed after it is made. */
export interface Corner {
  readonly car: Car;
  readonly kind: LinkageKind<Linkage>;
  readonly wheelCentre: Vec3;
  readonly spinAxis: Vec3;
  readonly arms: readonly ArmAxis[];
  readonly members: readonly Member[];
  readonly pivots: readonly Pivot[];
  readonly mechanism: Mechanism;
  readonly attitude: WheelAttitude;
  readonly shaft?: ShaftMotion;
  readonly shock?: ShockMotion;
  readonly stops: TravelStops;
  readonly rodEnds: RodEndSwings;
  /** What these need carried along; its `now` is scratch. */
  readonly carried: CarriedList;
  /** Numbers in a row. */
  readonly width: number;
}

/** Makes a car's corner ready. `lengths`, `like`: see LinkageKind.mechanism. */
export function makeCorner(car: Car, lengths: Lengths = {}, like?: Corner): Corner {
  const kind = kindOf<Linkage>(car.linkage);
  const wheelCentre = wheelCentreOf(car.wheel);
  const spinAxis = spinAxisOf(car.wheel);
  const arms = kind.arms(car.linkage);
  const pivots = kind.pivots(car.linkage);
  const gathering = gatherCarried(arms, wheelCentre);
  const stops = travelStops(car, gathering);
  const rodEnds = rodEndSwings(car, pivots, arms, lengths, gathering);
  return {
    car,
    kind,
    wheelCentre,
    spinAxis,
    arms,
    members: kind.members(car.linkage),
    pivots,
    mechanism: kind.mechanism(car.linkage, wheelCentre, lengths, like?.mechanism),
    attitude: wheelAttitude(car),
    ...(car.driveshaft && { shaft: shaftMotion(car.driveshaft, wheelCentre, spinAxis) }),
    ...(car.shock && { shock: shockMotion(car.shock, arms, wheelCentre) }),
    stops,
    rodEnds,
    carried: gathering.list(),
    width: ROW.rodEnds + car.rodEnds.length,
  };
}

/** Writes all numbers of one position, given its state, into a row of `corner.width`. */
export function writeRow(corner: Corner, state: MotionState, row: Float64Array): void {
  carryAll(corner.carried, state);
  writeWheelAttitude(corner.attitude, state, row);
  if (corner.shock) writeShockMotion(corner.shock, state, row);
  if (corner.shaft) writeShaftMotion(corner.shaft, state, row);
  writeTravelStops(corner.stops, corner.carried.now, row);
  writeRodEndSwings(corner.rodEnds, state, corner.carried.now, row);
}

/** State and row of one travel; null outside the linkage's range. `from` is a state to set out from. */
export function solveAt(
  corner: Corner,
  travel: number,
  from?: MotionState,
): { readonly state: MotionState; readonly row: Float64Array } | null {
  const state = from ? Float64Array.from(from) : designState();
  if (corner.mechanism.solve(travel, state) < 0) return null;
  const row = new Float64Array(corner.width);
  writeRow(corner, state, row);
  return { state, row };
}
