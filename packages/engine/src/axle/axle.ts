import type { Car } from "../car/car.ts";
import { type Corner, makeCorner, solveAt } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { ROW } from "../cycle/row.ts";
import { add, cross, dot, mirrored, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import { AT, type MotionState } from "../linkage/motion-state.ts";
import { type Ground, groundUnder } from "./ground.ts";
import { type ContactPath, type RollCentre, rollCentreOf } from "./roll-centre.ts";

/** Both wheels of the axle at one pair of travels. Vehicle axes fixed to the body (ISO 8855), m, rad; the left is +y. */
export interface AxlePosition {
  readonly left: AxleWheel;
  readonly right: AxleWheel;
  /** Of the body against the ground about the forward axis, right-handed: positive when the body leans to the right. */
  readonly bodyRoll: number;
  /** The ground that both tyres stand on; it holds the forward axis's direction, as no pitch is looked at. */
  readonly ground: Ground;
  /** Between the contact points, along the ground, across the car. */
  readonly trackWidth: number;
  /** Null where the two lines that it lies on are parallel. */
  readonly rollCentre: RollCentre | null;
}

export interface AxleWheel {
  /** Height of the wheel centre less that of the design position, bump positive. */
  readonly travel: number;
  /** To the body; positive when the top leans out. */
  readonly camber: number;
  /** To the body; positive toe-in. */
  readonly toe: number;
  /** Camber as the road sees it: the wheel plane against the ground's normal; positive when the top leans out. */
  readonly camberToGround: number;
  readonly wheelCentre: Vec3;
  /** Unit vector, outboard. */
  readonly spinAxis: Vec3;
  /** Lowest point, toward the tilted ground, of the disc of loaded radius in the wheel plane. */
  readonly contact: Vec3;
}

/** Both corners of a car; the right one is the left one again unless the document gives its own. */
export function cornersOf(car: Car): { readonly left: Corner; readonly right: Corner } {
  const left = makeCorner(car);
  return { left, right: car.right ? makeCorner(car.right) : left };
}

/**
 * The axle with its left and right wheel at the given travels (m, bump positive). Both corners compute as left ones; the
 * right one's result is mirrored. Null where either travel lies outside its linkage's range.
 */
export function axleAt(left: Corner, right: Corner, leftTravel: number, rightTravel: number): AxlePosition | null {
  const l = sideAt(left, leftTravel);
  const r = sideAt(right, rightTravel);
  if (!l || !r) return null;
  const rightDisc = { centre: mirrored(r.centre), axis: mirrored(r.axis), radius: r.radius };
  const ground = groundUnder(l, rightDisc);
  const { left: leftContact, right: rightContact } = ground.contacts;
  const leftPath: ContactPath = { point: leftContact, velocity: l.velocityAt(leftContact) };
  const rightPath: ContactPath = { point: rightContact, velocity: mirrored(r.velocityAt(mirrored(rightContact))) };
  return {
    left: wheel(l, leftTravel, l.axis, l.centre, leftContact, ground.normal),
    right: wheel(r, rightTravel, rightDisc.axis, rightDisc.centre, rightContact, ground.normal),
    bodyRoll: ground.bodyRoll,
    ground: { normal: ground.normal, point: ground.point },
    trackWidth: ground.trackWidth,
    rollCentre: rollCentreOf(leftPath, rightPath, ground),
  };
}

/** One corner, solved as a left one. */
interface Side {
  readonly camber: number;
  readonly toe: number;
  readonly centre: Vec3;
  readonly axis: Vec3;
  readonly radius: number;
  /** Velocity of a point carried by the spindle, wheel locked to it, m per m of travel. */
  readonly velocityAt: (point: Vec3) => Vec3;
}

function sideAt(corner: Corner, travel: number): Side | null {
  const solved = solveAt(corner, travel);
  if (!solved) return null;
  const { state, row } = solved;
  const { wheelCentre, spinAxis } = positionOf(corner, state);
  return {
    camber: row[ROW.camber]!,
    toe: row[ROW.toe]!,
    centre: wheelCentre,
    axis: spinAxis,
    radius: corner.attitude.loadedRadius,
    velocityAt: carriedBy(state, wheelCentre),
  };
}

function carriedBy(state: MotionState, wheelCentre: Vec3): Side["velocityAt"] {
  const at = (place: number): Vec3 => vec(state[place]!, state[place + 1]!, state[place + 2]!);
  const velocity = at(AT.velocity);
  const spin = at(AT.spin);
  return (point) => add(velocity, cross(spin, subtract(point, wheelCentre)));
}

const wheel = (side: Side, travel: number, axis: Vec3, centre: Vec3, contact: Vec3, normal: Vec3): AxleWheel => ({
  travel,
  camber: side.camber,
  toe: side.toe,
  camberToGround: -Math.asin(Math.max(-1, Math.min(1, dot(axis, normal)))),
  wheelCentre: centre,
  spinAxis: axis,
  contact,
});
