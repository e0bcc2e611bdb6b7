import type { Car, RodEnd } from "../car/car.ts";
import { cross, dot, squareTo, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import type { ArmAxis, Pivot } from "../linkage/kind.ts";
import type { MotionState } from "../linkage/motion-state.ts";
import {
  type CarriedDirection,
  carriedDirection,
  carryDirection,
  type MountPoint,
  mountMotion,
  mountPoint,
} from "./mount-point.ts";
import { ROW } from "./row.ts";

/**
 * How far each rod end's ball is tilted in its housing. The housing is set true to its bolt in the design position.
 *
 * On an arm the housing is carried along by the arm. A link may turn about its own line, and takes the turn that suits both
 * its ends: each end bears a turn of acos(cos limit / cos e), e being the tilt along the link that no turn can take away,
 * and what both bolts ask for is shared in that proportion. So one end is at its limit only when both are, and then the
 * link truly binds.
 */
export type RodEndSwing =
  | { readonly on: "arm"; readonly place: number; readonly housing: CarriedDirection; readonly bolt: CarriedDirection }
  | {
      readonly on: "link";
      readonly places: readonly [number, number];
      readonly ends: readonly [MountPoint, MountPoint];
      readonly bolts: readonly [CarriedDirection, CarriedDirection];
      /** cos of the limits; 0 where no limit is given, so that ends without limits share evenly. */
      readonly cosLimits: readonly [number, number];
      /** Turn between the two bolts, seen along the link, in the design position, rad. */
      readonly clocking: number;
    };

export function rodEndSwings(
  car: Car,
  pivots: readonly Pivot[],
  arms: readonly ArmAxis[],
  wheelCentre: Vec3,
): readonly RodEndSwing[] {
  const endAt = new Map(car.rodEnds.map((end, index) => [end.pivot, { end, place: ROW.rodEnds + index }]));
  const swings: RodEndSwing[] = [];
  const done = new Set<string>();
  for (const pivot of pivots) {
    const found = endAt.get(pivot.id);
    if (!found) continue;
    const { end, place } = found;
    const bolt = carriedDirection(end.boltAxis, end.boltOn, arms);
    if (pivot.shank.body !== "link") {
      const housing = carriedDirection(end.boltAxis, pivot.shank.body, arms);
      swings.push({ on: "arm", place, housing, bolt });
      continue;
    }
    const { member } = pivot.shank;
    if (done.has(member)) continue;
    done.add(member);
    const other = pivots.find(({ id, shank }) => shank.body === "link" && shank.member === member && id !== pivot.id);
    const second = other && endAt.get(other.id);
    if (!other || !second) throw new Error(`bug in armwright: link ${member} has one rod end`);
    const line = unit(subtract(other.point, pivot.point));
    const place2 = second.place;
    swings.push({
      on: "link",
      places: [place, place2],
      ends: [
        mountPoint({ point: pivot.point, on: pivot.boltSide }, arms, wheelCentre),
        mountPoint({ point: other.point, on: other.boltSide }, arms, wheelCentre),
      ],
      bolts: [bolt, carriedDirection(second.end.boltAxis, second.end.boltOn, arms)],
      cosLimits: [cosLimit(end), cosLimit(second.end)],
      clocking: turnBetween(line, end.boltAxis, second.end.boltAxis),
    });
  }
  return swings;
}

const cosLimit = (end: RodEnd): number => (end.misalignmentLimit === undefined ? 0 : Math.cos(end.misalignmentLimit));

/** Turn about `line` from one bolt to the other, as lines without sense, −π/2…π/2 rad. */
function turnBetween(line: Vec3, first: Vec3, second: Vec3): number {
  const a = squareTo(first, line);
  const b = squareTo(second, line);
  return asLine(Math.atan2(dot(cross(a, b), line), dot(a, b)));
}

const asLine = (angle: number): number => angle - Math.PI * Math.round(angle / Math.PI);

const bolts = new Float64Array(6);
const ends = new Float64Array(18);

/** Writes every rod end's tilt (rad, not negative) into the row. */
export function writeRodEndSwings(swings: readonly RodEndSwing[], s: MotionState, row: Float64Array): void {
  for (let i = 0; i < swings.length; i += 1) {
    const swing = swings[i]!;
    if (swing.on === "arm") writeArmEnd(swing.housing, swing.bolt, swing.place, s, row);
    else writeLinkEnds(swing, s, row);
  }
}

function writeArmEnd(
  housing: CarriedDirection,
  bolt: CarriedDirection,
  place: number,
  s: MotionState,
  row: Float64Array,
): void {
  carryDirection(housing.carrier, housing.along, housing.square, housing.quarter, s, bolts, 0);
  carryDirection(bolt.carrier, bolt.along, bolt.square, bolt.quarter, s, bolts, 3);
  const ax = bolts[0]!;
  const ay = bolts[1]!;
  const az = bolts[2]!;
  const bx = bolts[3]!;
  const by = bolts[4]!;
  const bz = bolts[5]!;
  const cx = ay * bz - az * by;
  const cy = az * bx - ax * bz;
  const cz = ax * by - ay * bx;
  row[place] = Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), Math.abs(ax * bx + ay * by + az * bz));
}

function writeLinkEnds(swing: Extract<RodEndSwing, { on: "link" }>, s: MotionState, row: Float64Array): void {
  mountMotion(swing.ends[0], s, ends, 0);
  mountMotion(swing.ends[1], s, ends, 9);
  let lx = ends[9]! - ends[0]!;
  let ly = ends[10]! - ends[1]!;
  let lz = ends[11]! - ends[2]!;
  const per = 1 / Math.sqrt(lx * lx + ly * ly + lz * lz);
  lx *= per;
  ly *= per;
  lz *= per;
  const first = swing.bolts[0];
  const second = swing.bolts[1];
  carryDirection(first.carrier, first.along, first.square, first.quarter, s, bolts, 0);
  carryDirection(second.carrier, second.along, second.square, second.quarter, s, bolts, 3);
  // Sine of the tilt along the link; the rest of each bolt is square to it.
  const along1 = bolts[0]! * lx + bolts[1]! * ly + bolts[2]! * lz;
  const along2 = bolts[3]! * lx + bolts[4]! * ly + bolts[5]! * lz;
  const ax = bolts[0]! - along1 * lx;
  const ay = bolts[1]! - along1 * ly;
  const az = bolts[2]! - along1 * lz;
  const bx = bolts[3]! - along2 * lx;
  const by = bolts[4]! - along2 * ly;
  const bz = bolts[5]! - along2 * lz;
  const across = (ay * bz - az * by) * lx + (az * bx - ax * bz) * ly + (ax * by - ay * bx) * lz;
  const turn = asLine(Math.atan2(across, ax * bx + ay * by + az * bz) - swing.clocking);
  const cos1 = Math.sqrt(Math.max(0, 1 - along1 * along1));
  const cos2 = Math.sqrt(Math.max(0, 1 - along2 * along2));
  const room1 = roomToTurn(swing.cosLimits[0], cos1);
  const room2 = roomToTurn(swing.cosLimits[1], cos2);
  const room = room1 + room2;
  const share = room > 0 ? room1 / room : 0.5;
  row[swing.places[0]] = tiltOf(along1, cos1, turn * share);
  row[swing.places[1]] = tiltOf(along2, cos2, turn * (1 - share));
}

const roomToTurn = (cosLimit: number, cosTilt: number): number =>
  cosTilt > cosLimit ? Math.acos(cosLimit / cosTilt) : 0;

/** Angle between bolt and housing when the link is tilted (sine, cosine) along itself and turned by `turn` about itself. */
function tiltOf(sine: number, cosine: number, turn: number): number {
  const level = cosine * Math.cos(turn);
  const side = cosine * Math.sin(turn);
  return Math.atan2(Math.sqrt(sine * sine + side * side), level);
}
