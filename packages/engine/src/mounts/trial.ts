import { dipBetween } from "./between-stations.ts";
import { eyeLimit } from "./eye-limit.ts";
import type { LowerPath } from "./movement.ts";
import { atLeast, coreDistance, type Obstacle } from "./obstacles.ts";
import { KILL as KILLS, type MountRequest, type ShockOption, shockRadius } from "./request.ts";
import type { Search } from "./search.ts";
import { type WrenchAccess, wrenchAccess } from "./wrench.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const KILL = KILLS;

/** What a lower mount and a shock ask of an upper mount, made ready for the hot loop. The lists at the end are scratch. */
export interface Trial {
  readonly path: LowerPath;
  readonly shock: ShockOption;
  readonly request: MountRequest;
  readonly ride: number;
  readonly last: number;
  /** Lengths that the shock may have at full droop (at most) and at full bump (at least), m. */
  readonly most: number;
  readonly least: number;
  readonly stroke: number;
  readonly cosLean: number;
  /** Sine of the most that an eye may tilt; above 1 where there is no limit. */
  readonly sinEye: number;
  readonly sinOff: number;
  readonly obstacles: readonly Obstacle[];
  /** Distance of cores that each obstacle asks for at a station, m. */
  readonly needs: Float64Array;
  /** Null where no room for a wrench is asked for. */
  readonly wrench: WrenchAccess | null;
  readonly radius: number;
  /** Obstacles in the order in which they are tried, and the station at which each is looked at first. */
  readonly order: Int32Array;
  readonly start: Int32Array;
  /** By obstacle, the upper mount that was last found clear of it, and by how much over the whole travel at least, m. */
  readonly clear: Float64Array;
  /** Of the candidate tried last: see MEASURED. */
  readonly measured: Float64Array;
}

/** Places in Trial.measured. Lengths m; angles rad. */
export const MEASURED = {
  atDroop: 0,
  atRide: 1,
  atBump: 2,
  strokeUsed: 3,
  ratioDroop: 4,
  ratioRide: 5,
  ratioBump: 6,
  /** Cosine of the greatest lean of the three. */
  cosLean: 7,
  /** Sine of the greatest tilt of an eye. */
  sinEye: 8,
  /** Sine of how far off square at full bump. */
  sinOff: 9,
  /** Obstacle that was in the way, or −1. */
  inTheWay: 10,
} as const;
const AT = MEASURED;

export function makeTrial(search: Search, shock: ShockOption, path: LowerPath): Trial {
  const { movement, request } = search;
  const { requirements, reserve } = request;
  const radius = shockRadius(shock);
  const obstacles = search.obstacles.filter(({ body }) => body === null || body !== path.on);
  const bend = path.isExact ? 0 : dipBetween(movement.widest, path.fastest, path.sharpest, shock.shortest);
  const off = requirements.offSquareAtBump;
  const tilt = eyeLimit(shock);
  return {
    path,
    shock,
    request,
    ride: movement.ride,
    last: movement.travels.length - 1,
    most: shock.longest - reserve.droop - bend,
    least: shock.shortest + reserve.bump + bend,
    stroke: shock.longest - shock.shortest,
    cosLean: Math.cos(requirements.lean),
    sinEye: tilt === null ? 2 : Math.sin(Math.min(tilt, Math.PI / 2)),
    wrench: requirements.wrench ? wrenchAccess(search, shock, path, requirements.wrench) : null,
    sinOff: off === undefined ? 2 : Math.sin(Math.min(off, Math.PI / 2)),
    obstacles,
    needs: Float64Array.from(obstacles, (obstacle) => {
      const room = radius + obstacle.radius + obstacle.wanted;
      const speed = path.fastest + obstacle.fastest;
      return room + dipBetween(movement.widest, speed, path.sharpest + obstacle.sharpest, room);
    }),
    radius,
    order: Int32Array.from(obstacles, (_, i) => i),
    start: new Int32Array(obstacles.length).fill(movement.ride),
    clear: new Float64Array(4 * obstacles.length).fill(-1),
    measured: new Float64Array(11),
  };
}

/**
 * Tries one upper mount on everything, cheap tests first: −1 where all hold, else the place in REQUIREMENTS of the first
 * that does not. On an arm, lengths, motion ratio and eyes on bolts along its hinge are exact (extremes at the ends of the travel), eyes on
 * other bolts are judged at the stations; on the
 * spindle, lengths and their fall are judged at the stations, lengths with the bound between them. Clearances: at the
 * stations, with the bound between them.
 */
export function tryUpper(trial: Trial, ux: number, uy: number, uz: number): number {
  const { path, measured: m, ride, last, request } = trial;
  const { at, velocity: v } = path;
  const b = 3 * last;
  const dx = ux - at[0]!;
  const dy = uy - at[1]!;
  const dz = uz - at[2]!;
  const ld2 = dx * dx + dy * dy + dz * dz;
  if (ld2 > trial.most * trial.most) return KILL.tooLong;
  const bx = ux - at[b]!;
  const by = uy - at[b + 1]!;
  const bz = uz - at[b + 2]!;
  const lb2 = bx * bx + by * by + bz * bz;
  if (lb2 < trial.least * trial.least) return KILL.tooShort;
  const ld = Math.sqrt(ld2);
  const lb = Math.sqrt(lb2);
  const used = (ld - lb) / trial.stroke;
  m[AT.atDroop] = ld;
  m[AT.atBump] = lb;
  m[AT.strokeUsed] = used;
  const { requirements } = request;
  if (used < requirements.strokeUsed.least || used > requirements.strokeUsed.most) return KILL.strokeUsed;
  const ratioDroop = (dx * v[0]! + dy * v[1]! + dz * v[2]!) / ld;
  const ratioBump = (bx * v[6]! + by * v[7]! + bz * v[8]!) / lb;
  m[AT.ratioDroop] = ratioDroop;
  m[AT.ratioBump] = ratioBump;
  if (!(ratioDroop > 0 && ratioBump > 0) || !(path.isExact || fallsAtStations(trial, ux, uy, uz)))
    return KILL.turnsBack;
  const r = 3 * ride;
  const rx = ux - at[r]!;
  const ry = uy - at[r + 1]!;
  const rz = uz - at[r + 2]!;
  const lr = Math.sqrt(rx * rx + ry * ry + rz * rz);
  const ratio = (rx * v[3]! + ry * v[4]! + rz * v[5]!) / lr;
  m[AT.atRide] = lr;
  m[AT.ratioRide] = ratio;
  if (ratio < requirements.motionRatio.least || ratio > requirements.motionRatio.most) return KILL.motionRatio;
  if (ratioBump < ratio - requirements.mayFall) return KILL.falls;
  const cosLean = Math.min(dz / ld, rz / lr, bz / lb);
  m[AT.cosLean] = cosLean;
  if (cosLean < trial.cosLean) return KILL.lean;
  const bolt = path.bolt;
  const { x: tx, y: ty, z: tz } = path.upperBolt;
  let sinEye = Math.max(
    Math.abs(dx * tx + dy * ty + dz * tz) / ld,
    Math.abs(rx * tx + ry * ty + rz * tz) / lr,
    Math.abs(bx * tx + by * ty + bz * tz) / lb,
    Math.abs(dx * bolt[0]! + dy * bolt[1]! + dz * bolt[2]!) / ld,
    Math.abs(rx * bolt[3]! + ry * bolt[4]! + rz * bolt[5]!) / lr,
    Math.abs(bx * bolt[6]! + by * bolt[7]! + bz * bolt[8]!) / lb,
  );
  if (path.bolts) sinEye = Math.max(sinEye, tiltAtStations(trial, path.bolts, ux, uy, uz));
  m[AT.sinEye] = sinEye;
  if (sinEye > trial.sinEye) return KILL.eye;
  const { square } = path;
  const sinOff = square
    ? Math.abs(bx * square.x + by * square.y + bz * square.z) / lb
    : Math.sqrt(Math.max(0, 1 - (ratioBump * ratioBump) / (v[6]! * v[6]! + v[7]! * v[7]! + v[8]! * v[8]!)));
  m[AT.sinOff] = sinOff;
  if (sinOff > trial.sinOff) return KILL.offSquare;
  const inTheWay = findInTheWay(trial, ux, uy, uz);
  m[AT.inTheWay] = inTheWay;
  if (inTheWay >= 0) return KILL.clearance;
  const { wrench } = trial;
  return wrench && (wrench.lower < 0 || wrench.upperAt(ux, uy, uz) < 0) ? KILL.wrench : -1;
}

/** Sine of the most that either eye tilts on its bolt at any station. */
function tiltAtStations({ path, last }: Trial, bolts: Float64Array, ux: number, uy: number, uz: number): number {
  const { at } = path;
  const { x: tx, y: ty, z: tz } = path.upperBolt;
  let most = 0;
  for (let k = 0; k <= 3 * last; k += 3) {
    const x = ux - at[k]!;
    const y = uy - at[k + 1]!;
    const z = uz - at[k + 2]!;
    const upper = Math.abs(x * tx + y * ty + z * tz);
    const lower = Math.abs(x * bolts[k]! + y * bolts[k + 1]! + z * bolts[k + 2]!);
    most = Math.max(most, Math.max(upper, lower) / Math.sqrt(x * x + y * y + z * z));
  }
  return most;
}

function fallsAtStations({ path: { at }, last }: Trial, ux: number, uy: number, uz: number): boolean {
  let before = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= last; k += 1) {
    const x = ux - at[3 * k]!;
    const y = uy - at[3 * k + 1]!;
    const z = uz - at[3 * k + 2]!;
    const here = x * x + y * y + z * z;
    if (!(here < before)) return false;
    before = here;
  }
  return true;
}

/** The first obstacle that is nearer than it may be, or −1; it is tried first the next time, from where it was met. */
function findInTheWay(trial: Trial, ux: number, uy: number, uz: number): number {
  const { order, start, obstacles, needs, clear } = trial;
  for (let i = 0; i < order.length; i += 1) {
    const index = order[i]!;
    // No gap changes by more than the upper mount is moved.
    const c = 4 * index;
    const by = clear[c + 3]!;
    if (by > 0) {
      const x = ux - clear[c]!;
      const y = uy - clear[c + 1]!;
      const z = uz - clear[c + 2]!;
      if (x * x + y * y + z * z < by * by) continue;
    }
    const met = meets(trial, obstacles[index]!, needs[index]!, start[index]!, ux, uy, uz);
    if (met < 0) {
      clear[c] = ux;
      clear[c + 1] = uy;
      clear[c + 2] = uz;
      clear[c + 3] = leastRoom;
      continue;
    }
    start[index] = met;
    for (let n = i; n > 0; n -= 1) order[n] = order[n - 1]!;
    order[0] = index;
    return index;
  }
  return -1;
}

/** Station at which the obstacle is too near, or −1. Stations at which it cannot be too near are passed over. */
function meets(
  trial: Trial,
  obstacle: Obstacle,
  need: number,
  start: number,
  ux: number,
  uy: number,
  uz: number,
): number {
  const { last } = trial;
  const { way } = trial.path;
  const other = obstacle.way;
  const first = roomAt(trial, obstacle, need, start, ux, uy, uz);
  if (first < 0) return start;
  let least = first;
  for (let side = 1; side >= -1; side -= 2) {
    let room = first;
    let here = way[start]! + other[start]!;
    for (let k = start + side; k >= 0 && k <= last; k += side) {
      const there = way[k]! + other[k]!;
      const moved = Math.abs(there - here);
      if (moved <= PASSED * room) {
        if (room - moved < least) least = room - moved;
        continue;
      }
      room = roomAt(trial, obstacle, need, k, ux, uy, uz);
      if (room < 0) return k;
      if (room < least) least = room;
      here = there;
    }
  }
  leastRoom = least;
  return -1;
}

/** Stations are passed over while no more than this share of the room can be used up: what is left serves the neighbours. */
const PASSED = 0.6;
/** Room that the last call of meets found to be left over the whole travel, m; not more than true. */
let leastRoom = 0;

/** Distance of cores less what is needed, m: a bound of it where that is enough for the whole travel, else exact. */
function roomAt(
  { path: { at, way }, last }: Trial,
  obstacle: Obstacle,
  need: number,
  k: number,
  ux: number,
  uy: number,
  uz: number,
): number {
  const o = 3 * k;
  const bound = atLeast(obstacle, k, ux, uy, uz, at[o]!, at[o + 1]!, at[o + 2]!) - need;
  if (bound >= way[last]! + obstacle.way[last]!) return bound;
  return coreDistance(obstacle, k, ux, uy, uz, at[o]!, at[o + 1]!, at[o + 2]!) - need;
}

export interface Spare {
  /** Least over all obstacles and stations of gap less what is wanted, the bound between stations taken off, m. */
  readonly least: number;
  readonly obstacle: number;
  readonly station: number;
}

/** How much clearance is to spare, m; infinite where there is nothing to clear. */
export function findSpare({ path, obstacles, needs, last }: Trial, ux: number, uy: number, uz: number): Spare {
  let least = Number.POSITIVE_INFINITY;
  let nearest = -1;
  let station = -1;
  const { at, way } = path;
  obstacles.forEach((obstacle, index) => {
    const { way: other } = obstacle;
    let k = 0;
    while (k <= last) {
      const o = 3 * k;
      const spare = coreDistance(obstacle, k, ux, uy, uz, at[o]!, at[o + 1]!, at[o + 2]!) - needs[index]!;
      if (spare < least) {
        least = spare;
        nearest = index;
        station = k;
      }
      const here = way[k]! + other[k]!;
      k += 1;
      while (k <= last && way[k]! + other[k]! - here <= spare - least) k += 1;
    }
  });
  return { least, obstacle: nearest, station };
}
