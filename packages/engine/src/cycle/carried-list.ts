import type { Mount } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { ArmAxis } from "../linkage/kind.ts";
import { type MotionState, AT as STATE_PLACES } from "../linkage/motion-state.ts";
import { CARRIER, type Carried, carriedDirection, carriedPoint } from "./carried.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/**
 * Points and directions that a row is made from, all carried along in one go. Those on the spindle come first (points, then
 * directions), then those on the first arm, then those on the second.
 */
export interface CarriedList {
  /** Where each is now, three numbers at its place. Written anew for every position. */
  readonly now: Float64Array;
  /** Where each one's three numbers go. */
  readonly places: Uint16Array;
  /** Three numbers for each on the spindle, nine for each on an arm, see Carried. */
  readonly parts: Float64Array;
  /** Index after the last of each sort. */
  readonly pointsEnd: number;
  readonly spindleEnd: number;
  readonly firstArmEnd: number;
  readonly secondArmEnd: number;
}

/** Gathers what is to be carried; each gets its place in `now`. */
export interface Gathering {
  point(mount: Mount): number;
  direction(direction: Vec3, on: Mount["on"]): number;
  list(): CarriedList;
}

export function gatherCarried(arms: readonly ArmAxis[], wheelCentre: Vec3): Gathering {
  const all: { readonly carried: Carried; readonly isPoint: boolean; readonly place: number }[] = [];
  const add = (carried: Carried, isPoint: boolean): number => {
    const place = 3 * all.length;
    all.push({ carried, isPoint, place });
    return place;
  };
  return {
    point: (mount) => add(carriedPoint(mount, arms, wheelCentre), true),
    direction: (direction, on) => add(carriedDirection(direction, on, arms), false),
    list: () => {
      const count = all.length;
      const now = new Float64Array(3 * count);
      const places = new Uint16Array(count);
      const parts = new Float64Array(9 * count);
      let filled = 0;
      let used = 0;
      /** Takes all of one sort in; what rides on an arm takes all its nine numbers along. */
      const take = (carrier: number, isPoint: boolean | null, size: 3 | 9): number => {
        for (let i = 0; i < count; i += 1) {
          const each = all[i]!;
          if (each.carried.carrier !== carrier || (isPoint !== null && each.isPoint !== isPoint)) continue;
          places[filled] = each.place;
          filled += 1;
          for (let k = 0; k < size; k += 1) parts[used + k] = each.carried.parts[k]!;
          used += size;
        }
        return filled;
      };
      // What rides on the chassis stays where it is put here.
      for (let i = 0; i < count; i += 1) {
        for (let k = 0; k < 3; k += 1) now[3 * i + k] = all[i]!.carried.parts[k]!;
      }
      const pointsEnd = take(CARRIER.spindle, true, 3);
      const spindleEnd = take(CARRIER.spindle, false, 3);
      const firstArmEnd = take(CARRIER.firstArm, null, 9);
      const secondArmEnd = take(CARRIER.secondArm, null, 9);
      return {
        now,
        places: places.subarray(0, filled),
        parts: parts.subarray(0, used),
        pointsEnd,
        spindleEnd,
        firstArmEnd,
        secondArmEnd,
      };
    },
  };
}

/** Brings the whole list to where a state has it. */
export function carryAll(list: CarriedList, s: MotionState): void {
  const { now, places, parts, pointsEnd, spindleEnd, firstArmEnd, secondArmEnd } = list;
  const r0 = s[AT.rotation]!;
  const r1 = s[AT.rotation + 1]!;
  const r2 = s[AT.rotation + 2]!;
  const r3 = s[AT.rotation + 3]!;
  const r4 = s[AT.rotation + 4]!;
  const r5 = s[AT.rotation + 5]!;
  const r6 = s[AT.rotation + 6]!;
  const r7 = s[AT.rotation + 7]!;
  const r8 = s[AT.rotation + 8]!;
  let ox = s[AT.wheelCentre]!;
  let oy = s[AT.wheelCentre + 1]!;
  let oz = s[AT.wheelCentre + 2]!;
  let k = 0;
  for (let i = 0; i < spindleEnd; i += 1) {
    // From here on directions, which have no origin.
    if (i === pointsEnd) {
      ox = 0;
      oy = 0;
      oz = 0;
    }
    const place = places[i]!;
    const x = parts[k]!;
    const y = parts[k + 1]!;
    const z = parts[k + 2]!;
    now[place] = ox + r0 * x + r1 * y + r2 * z;
    now[place + 1] = oy + r3 * x + r4 * y + r5 * z;
    now[place + 2] = oz + r6 * x + r7 * y + r8 * z;
    k += 3;
  }
  let cosine = s[AT.firstArm]!;
  let sine = s[AT.firstArm + 1]!;
  for (let i = spindleEnd; i < secondArmEnd; i += 1) {
    if (i === firstArmEnd) {
      cosine = s[AT.secondArm]!;
      sine = s[AT.secondArm + 1]!;
    }
    const place = places[i]!;
    now[place] = parts[k]! + cosine * parts[k + 3]! + sine * parts[k + 6]!;
    now[place + 1] = parts[k + 1]! + cosine * parts[k + 4]! + sine * parts[k + 7]!;
    now[place + 2] = parts[k + 2]! + cosine * parts[k + 5]! + sine * parts[k + 8]!;
    k += 9;
  }
}
