import type { Mount } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { ArmAxis } from "../linkage/kind.ts";
import { type MotionState, AT as STATE_PLACES } from "../linkage/motion-state.ts";
import { CARRIER as CARRIERS, type Carried, carriedDirection, carriedPoint } from "./carried.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;
const CARRIER = CARRIERS;

/** Points and directions that a row is made from, by the body that carries them: all are carried along in one go. */
export interface CarriedList {
  /** Where each is now, three numbers at its place. Written anew for every position. */
  readonly now: Float64Array;
  readonly spindlePoints: Group;
  readonly spindleDirections: Group;
  readonly firstArm: Group;
  readonly secondArm: Group;
}

interface Group {
  /** Where each one's three numbers go. */
  readonly places: Uint16Array;
  /** Nine numbers each, see Carried. */
  readonly parts: Float64Array;
}

/** Gathers what is to be carried; each gets its place in `now`. */
export interface Gathering {
  point(mount: Mount): number;
  direction(direction: Vec3, on: Mount["on"]): number;
  list(): CarriedList;
}

export function gatherCarried(arms: readonly ArmAxis[], wheelCentre: Vec3): Gathering {
  const all: { readonly carried: Carried; readonly isPoint: boolean }[] = [];
  const add = (carried: Carried, isPoint: boolean): number => 3 * (all.push({ carried, isPoint }) - 1);
  const group = (belongs: (carried: Carried, isPoint: boolean) => boolean): Group => {
    const chosen = all.flatMap(({ carried, isPoint }, index) =>
      belongs(carried, isPoint) ? [{ carried, index }] : [],
    );
    return {
      places: Uint16Array.from(chosen, ({ index }) => 3 * index),
      parts: Float64Array.from(chosen.flatMap(({ carried }) => [...carried.parts])),
    };
  };
  return {
    point: (mount) => add(carriedPoint(mount, arms, wheelCentre), true),
    direction: (direction, on) => add(carriedDirection(direction, on, arms), false),
    list: () => ({
      // What rides on the chassis stays where it is put here.
      now: Float64Array.from(all.flatMap(({ carried }) => [...carried.parts.subarray(0, 3)])),
      spindlePoints: group(({ carrier }, isPoint) => carrier === CARRIER.spindle && isPoint),
      spindleDirections: group(({ carrier }, isPoint) => carrier === CARRIER.spindle && !isPoint),
      firstArm: group(({ carrier }) => carrier === CARRIER.firstArm),
      secondArm: group(({ carrier }) => carrier === CARRIER.secondArm),
    }),
  };
}

/** Brings the whole list to where a state has it. */
export function carryAll(list: CarriedList, s: MotionState): void {
  carryOnSpindle(list.spindlePoints, s, list.now, true);
  carryOnSpindle(list.spindleDirections, s, list.now, false);
  carryOnArm(list.firstArm, s, AT.firstArm, list.now);
  carryOnArm(list.secondArm, s, AT.secondArm, list.now);
}

function carryOnSpindle({ places, parts }: Group, s: MotionState, now: Float64Array, arePoints: boolean): void {
  const x = arePoints ? s[AT.wheelCentre]! : 0;
  const y = arePoints ? s[AT.wheelCentre + 1]! : 0;
  const z = arePoints ? s[AT.wheelCentre + 2]! : 0;
  const r0 = s[AT.rotation]!;
  const r1 = s[AT.rotation + 1]!;
  const r2 = s[AT.rotation + 2]!;
  const r3 = s[AT.rotation + 3]!;
  const r4 = s[AT.rotation + 4]!;
  const r5 = s[AT.rotation + 5]!;
  const r6 = s[AT.rotation + 6]!;
  const r7 = s[AT.rotation + 7]!;
  const r8 = s[AT.rotation + 8]!;
  for (let i = 0, k = 0; i < places.length; i += 1, k += 9) {
    const place = places[i]!;
    const bx = parts[k]!;
    const by = parts[k + 1]!;
    const bz = parts[k + 2]!;
    now[place] = x + r0 * bx + r1 * by + r2 * bz;
    now[place + 1] = y + r3 * bx + r4 * by + r5 * bz;
    now[place + 2] = z + r6 * bx + r7 * by + r8 * bz;
  }
}

function carryOnArm({ places, parts }: Group, s: MotionState, arm: number, now: Float64Array): void {
  const cosine = s[arm]!;
  const sine = s[arm + 1]!;
  for (let i = 0, k = 0; i < places.length; i += 1, k += 9) {
    const place = places[i]!;
    now[place] = parts[k]! + cosine * parts[k + 3]! + sine * parts[k + 6]!;
    now[place + 1] = parts[k + 1]! + cosine * parts[k + 4]! + sine * parts[k + 7]!;
    now[place + 2] = parts[k + 2]! + cosine * parts[k + 5]! + sine * parts[k + 8]!;
  }
}
