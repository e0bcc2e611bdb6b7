import type { Vec3 } from "../geometry/vec3.ts";
import { trialOf } from "./candidate.ts";
import type { Feasible } from "./feasible.ts";
import { upperAt } from "./grid.ts";
import { demerit, meritsAt } from "./rank.ts";
import type { Search } from "./search.ts";
import { slackOf } from "./slack.ts";

/** The places of one mount that have at least one partner, each with the best behind it; lists of one length. */
export interface RegionSide {
  readonly points: readonly Vec3[];
  /** Places in `Search.upper` or `Search.lower`. */
  readonly places: Uint32Array;
  /** How many candidates fit there. */
  readonly counts: Uint32Array;
  /** Of the best of them: how far from ideal (0 best), its entry in Feasible, and its slack, m (0 where it was not asked for). */
  readonly demerits: Float64Array;
  readonly entries: Uint32Array;
  readonly slacks: Float64Array;
}

/** The feasible region, seen from either mount. */
export interface Region {
  readonly upper: RegionSide;
  readonly lower: RegionSide;
}

/** `slacks`: also work out the slack of the best behind each place, some 20 µs each. */
export function regionOf(search: Search, feasible: Feasible, slacks = false): Region {
  const demerits = Float64Array.from(feasible.shock, (_, i) =>
    demerit(search.request.requirements, meritsAt(feasible, i)),
  );
  const slackAt = (i: number): number =>
    slackOf(
      trialOf(search, search.request.shocks[feasible.shock[i]!]!, search.lower[feasible.lower[i]!]!),
      upperAt(search.upper, feasible.upper[i]!),
    );
  const side = (places: Uint32Array, pointAt: (place: number) => Vec3): RegionSide => {
    const best = new Map<number, { count: number; entry: number }>();
    places.forEach((place, i) => {
      const known = best.get(place);
      if (!known) best.set(place, { count: 1, entry: i });
      else {
        known.count += 1;
        if (demerits[i]! < demerits[known.entry]!) known.entry = i;
      }
    });
    const order = [...best].sort(([a], [b]) => a - b);
    const entries = Uint32Array.from(order, ([, { entry }]) => entry);
    return {
      points: order.map(([place]) => pointAt(place)),
      places: Uint32Array.from(order, ([place]) => place),
      counts: Uint32Array.from(order, ([, { count }]) => count),
      demerits: Float64Array.from(entries, (i) => demerits[i]!),
      entries,
      slacks: Float64Array.from(entries, (i) => (slacks ? slackAt(i) : 0)),
    };
  };
  return {
    upper: side(feasible.upper, (place) => upperAt(search.upper, place)),
    lower: side(feasible.lower, (place) => search.lower[place]!.point),
  };
}

/** From the side: x along, z up. From the rear: y (out) along, z up. From the top: x along, y up. */
export type MapView = "side" | "rear" | "top";

/** One side of the region as a picture of square cells; row 0 is lowest, numbers row by row. */
export interface RegionMap {
  readonly view: MapView;
  /** Outer corner of the first cell, and the cells' size, m. */
  readonly across: number;
  readonly up: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** Candidates whose mount lies in the cell. */
  readonly counts: Uint32Array;
  /** Least demerit, and the entry in Feasible that has it; infinite and −1 in an empty cell. */
  readonly demerits: Float64Array;
  readonly entries: Int32Array;
  /** Greatest of the slacks that the region knows, m. */
  readonly slacks: Float64Array;
}

const ACROSS = { side: "x", rear: "y", top: "x" } as const;
const UPWARD = { side: "z", rear: "z", top: "y" } as const;

/** `cell`: m. Every place lies in the middle of its cell where `cell` is the grid's step. */
export function regionMap(side: RegionSide, view: MapView, cell: number): RegionMap {
  if (!(cell > 0)) throw new RangeError(`the cells of a map are larger than zero; found ${cell} m`);
  const acrossOf = ({ [ACROSS[view]]: value }: Vec3): number => value;
  const upOf = ({ [UPWARD[view]]: value }: Vec3): number => value;
  let [least, lowest, most, highest] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const point of side.points) {
    least = Math.min(least, acrossOf(point));
    most = Math.max(most, acrossOf(point));
    lowest = Math.min(lowest, upOf(point));
    highest = Math.max(highest, upOf(point));
  }
  const isEmpty = side.points.length === 0;
  const columns = isEmpty ? 0 : Math.floor((most - least) / cell + 0.5) + 1;
  const rows = isEmpty ? 0 : Math.floor((highest - lowest) / cell + 0.5) + 1;
  const counts = new Uint32Array(columns * rows);
  const demerits = new Float64Array(columns * rows).fill(Number.POSITIVE_INFINITY);
  const entries = new Int32Array(columns * rows).fill(-1);
  const slacks = new Float64Array(columns * rows);
  side.points.forEach((point, i) => {
    const column = Math.floor((acrossOf(point) - least) / cell + 0.5);
    const at = columns * Math.floor((upOf(point) - lowest) / cell + 0.5) + column;
    counts[at]! += side.counts[i]!;
    slacks[at] = Math.max(slacks[at]!, side.slacks[i]!);
    if (side.demerits[i]! >= demerits[at]!) return;
    demerits[at] = side.demerits[i]!;
    entries[at] = side.entries[i]!;
  });
  return {
    view,
    across: isEmpty ? 0 : least - cell / 2,
    up: isEmpty ? 0 : lowest - cell / 2,
    cell,
    columns,
    rows,
    counts,
    demerits,
    entries,
    slacks,
  };
}
