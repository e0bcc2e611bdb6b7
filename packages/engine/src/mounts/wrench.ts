import type { ArmId } from "../car/car.ts";
import { USUAL_EYE_WIDTH } from "./eye-limit.ts";
import type { LowerPath } from "./movement.ts";
import { coreDistance, type Obstacle } from "./obstacles.ts";
import type { ShockOption, WrenchRoom } from "./request.ts";
import type { Search } from "./search.ts";

/** Room for a wrench at both bolts of a shock on one lower mount. */
export interface WrenchAccess {
  /** Spare room round the socket at the lower bolt, m; below zero where it does not go on. */
  readonly lower: number;
  /** The same at the upper bolt, m: not more than true, but below zero only where it does not go on. */
  readonly upperAt: (ux: number, uy: number, uz: number) => number;
  /** Exactly. */
  readonly upperRoom: (ux: number, uy: number, uz: number) => number;
}

/** A straight socket before a bolt: it reaches from `start` to `end` m along the bolt, either way. */
interface Socket {
  readonly radius: number;
  readonly start: number;
  readonly end: number;
}

/**
 * A socket is taken as a cylinder with round ends. It goes on where, from one side along the bolt, at ride height or at full
 * droop (as asked), nothing is in its way: at the lower bolt the arm's own tubes left out, to which the mount's tabs are fitted.
 */
export function wrenchAccess(
  { obstacles, movement }: Search,
  shock: ShockOption,
  path: LowerPath,
  room: WrenchRoom,
): WrenchAccess {
  const half = 0.5 * (shock.eyeWidth ?? USUAL_EYE_WIDTH) + room.tab;
  const socket: Socket = { radius: room.radius, start: half, end: half + room.length };
  const looks = LOOKS[room.at].map((look) => (look === "droop" ? 0 : movement.ride));
  const own: ArmId | null = path.on === "spindle" ? null : path.on;
  const others = obstacles.filter(({ body }) => body === null || body !== own);
  const { x, y, z } = path.upperBolt;
  const upperRoom = (ux: number, uy: number, uz: number): number =>
    Math.max(...looks.map((k) => roomBeside(obstacles, k, socket, ux, uy, uz, x, y, z)));
  return {
    lower: Math.max(
      ...looks.map((k) => {
        const b = k === 0 ? 0 : 3;
        const { at, bolt } = path;
        const [bx, by, bz] = [bolt[b]!, bolt[b + 1]!, bolt[b + 2]!];
        return roomBeside(others, k, socket, at[3 * k]!, at[3 * k + 1]!, at[3 * k + 2]!, bx, by, bz);
      }),
    ),
    upperAt: remembering((ux, uy, uz) => {
      for (const k of looks)
        for (const side of SIDES) {
          const free = roomOnSide(obstacles, k, socket, side, ux, uy, uz, x, y, z, 0);
          if (free >= 0) return free;
        }
      return -1;
    }),
    upperRoom,
  };
}

const LOOKS = { ride: ["ride"], droop: ["droop"], either: ["ride", "droop"] } as const;

const SIDES = [1, -1] as const;

/** The better of the two sides. */
function roomBeside(
  obstacles: readonly Obstacle[],
  k: number,
  socket: Socket,
  x: number,
  y: number,
  z: number,
  bx: number,
  by: number,
  bz: number,
): number {
  let best = Number.NEGATIVE_INFINITY;
  for (const side of SIDES) best = Math.max(best, roomOnSide(obstacles, k, socket, side, x, y, z, bx, by, bz, best));
  return best;
}

/** Spare room round a socket on one side of a bolt, m; what turns out less than `enough` is not looked at further. */
function roomOnSide(
  obstacles: readonly Obstacle[],
  k: number,
  { radius, start, end }: Socket,
  side: number,
  x: number,
  y: number,
  z: number,
  bx: number,
  by: number,
  bz: number,
  enough: number,
): number {
  const s = side * start;
  const e = side * end;
  let least = Number.POSITIVE_INFINITY;
  for (const each of obstacles) {
    const apart = coreDistance(each, k, x + s * bx, y + s * by, z + s * bz, x + e * bx, y + e * by, z + e * bz);
    least = Math.min(least, apart - radius - each.radius);
    if (least < enough) break;
  }
  return least;
}

/** No room changes by more than the bolt is moved: what was found free lately answers for its neighbours. */
function remembering(roomAt: WrenchAccess["upperRoom"]): WrenchAccess["upperAt"] {
  let [cx, cy, cz, free] = [0, 0, 0, -1];
  return (x, y, z) => {
    if (free > 0) {
      const [dx, dy, dz] = [x - cx, y - cy, z - cz];
      const left = free - Math.sqrt(dx * dx + dy * dy + dz * dz);
      if (left >= 0) return left;
    }
    [cx, cy, cz] = [x, y, z];
    free = roomAt(x, y, z);
    return free;
  };
}
