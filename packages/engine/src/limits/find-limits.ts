import type { ClearancePair } from "../clearance/pairs.ts";
import { type Corner, writeRow } from "../cycle/corner.ts";
import { designState } from "../linkage/motion-state.ts";
import { type Limit, type Look, lookAt } from "./limit.ts";

export type Direction = "bump" | "droop";

/** A limit and the travel at which the wheel, going outward from ride height, first meets it. */
export interface MetLimit {
  readonly limit: Limit;
  /** m; 0 where it is already past in the design position. */
  readonly travel: number;
  readonly pastAtRide: boolean;
}

/** Stations that the search walks over, m apart: closer than any limit can be met and left again unnoticed (see below). */
const STATION = 0.008;
/** Travels are found to this, m: a tenth of a micrometre. */
const TRAVEL_TOLERANCE = 1e-7;
/** Speeds between two stations are taken to be no more than this times those at their ends. */
const SPEED_MARGIN = 1.25;

/** Everything solved once along one direction: the walk that all limits share. */
export interface Walk {
  readonly direction: Direction;
  readonly looks: readonly Look[];
  at(travel: number): Look;
}

/** Walks from the design position to the linkage's own end (or to `farthest`, m). */
export function walkOutward(corner: Corner, direction: Direction, farthest: number): Walk {
  const sign = direction === "bump" ? 1 : -1;
  const end = Math.abs(corner.mechanism.range[direction].travel);
  // A hair inside, where derivatives are still finite.
  const reach = Math.min(farthest, end * (1 - 1e-6));
  const count = Math.max(1, Math.ceil(reach / STATION));
  const looks: Look[] = [];
  const state = designState();
  for (let i = 0; i <= count; i += 1) {
    const look = solve(corner, sign * (i === count ? reach : i * STATION), state);
    if (look === null) break;
    looks.push(look);
    state.set(look.state);
  }
  const at = (travel: number): Look => {
    const index = Math.min(looks.length - 1, Math.max(0, Math.round(Math.abs(travel) / STATION)));
    return solve(corner, travel, looks[index]!.state) ?? looks[index]!;
  };
  return { direction, looks, at };
}

function solve(corner: Corner, travel: number, from: Float64Array): Look | null {
  const state = Float64Array.from(from);
  if (corner.mechanism.solve(travel, state) < 0) return null;
  const row = new Float64Array(corner.width);
  writeRow(corner, state, row);
  return lookAt(corner, state, row, travel);
}

/**
 * Where each limit is first met on this walk; limits that are not met are left out. Things that could meet are looked for
 * no farther than `upTo`, m either way.
 */
export function findLimits(walk: Walk, limits: readonly Limit[], upTo = Number.POSITIVE_INFINITY): readonly MetLimit[] {
  const near = walk.looks.findLastIndex(({ travel }) => Math.abs(travel) <= upTo);
  const met = limits.flatMap((limit): MetLimit[] => {
    const first = walk.looks[0]!;
    if (limit.spare(first) <= 0) return [{ limit, travel: 0, pastAtRide: true }];
    const travel = limit.pair ? firstTouch(walk, limit, limit.pair, near) : firstZero(walk, limit);
    return travel === null ? [] : [{ limit, travel, pastAtRide: false }];
  });
  return met.sort((a, b) => Math.abs(a.travel) - Math.abs(b.travel));
}

/**
 * For a smooth spare: a change of sign between stations, or a dip below zero between three of them. The spare of joints,
 * shock and stops bends over centimetres, so that a dip narrower than two stations would need a turn that no linkage makes.
 */
function firstZero(walk: Walk, limit: Limit): number | null {
  const { looks } = walk;
  let before = Number.POSITIVE_INFINITY;
  let here = limit.spare(looks[0]!);
  for (let i = 1; i < looks.length; i += 1) {
    const next = limit.spare(looks[i]!);
    if (next <= 0) return closeIn(walk, limit, looks[i - 1]!.travel, looks[i]!.travel, here, next);
    if (i > 1 && here < before && here <= next && here < 0.5 * (before - here + next - here)) {
      const dip = lowest(walk, limit, looks[i - 2]!.travel, looks[i]!.travel);
      if (dip.spare <= 0) {
        return closeIn(walk, limit, looks[i - 2]!.travel, dip.travel, before, dip.spare);
      }
    }
    before = here;
    here = next;
  }
  return null;
}

/**
 * For a gap between solids: it cannot close faster than they move, so stations that are too near to matter are passed over.
 * Between two stations that are both free, it is looked closer only where the gap is small against its own change.
 */
function firstTouch(walk: Walk, limit: Limit, pair: ClearancePair, last: number): number | null {
  const { looks } = walk;
  /** Bound of how far the two come nearer from one station to the next, m. */
  const move = (i: number): number => {
    const here = looks[i]!;
    const next = looks[i + 1]!;
    const fastest = Math.max(pair.fastest(here.state), pair.fastest(next.state));
    return Math.abs(next.travel - here.travel) * SPEED_MARGIN * fastest;
  };
  let from = 0;
  let gap = limit.spare(looks[0]!);
  while (from < last) {
    let to = from;
    let moved = 0;
    for (let step = move(to); to < last && moved + step < gap; step = to < last ? move(to) : 0) {
      moved += step;
      to += 1;
    }
    const isNext = to <= from + 1;
    const next = isNext ? from + 1 : to;
    const then = limit.spare(looks[next]!);
    if (then <= 0) return closeIn(walk, limit, looks[next - 1]!.travel, looks[next]!.travel, gap, then);
    if (to === from && Math.min(gap, then) < CLOSE_LOOK * Math.abs(then - gap)) {
      const touch = touchBetween(walk, limit, looks[from]!.travel, looks[next]!.travel, gap);
      if (touch !== null) return touch;
    }
    from = next;
    gap = then;
  }
  return null;
}

/** A gap smaller than this times its change from station to station is followed in finer steps. */
const CLOSE_LOOK = 1.5;
const FINER = 8;

function touchBetween(walk: Walk, limit: Limit, a: number, b: number, gapAtA: number): number | null {
  let at = a;
  let gap = gapAtA;
  for (let i = 1; i < FINER; i += 1) {
    const next = a + ((b - a) * i) / FINER;
    const then = limit.spare(walk.at(next));
    if (then <= 0) return closeIn(walk, limit, at, next, gap, then);
    at = next;
    gap = then;
  }
  return null;
}

/** Root between a place with spare and one without, by regula falsi with halving (Illinois), to the tolerance. */
function closeIn(walk: Walk, limit: Limit, free: number, past: number, spareFree: number, sparePast: number): number {
  let a = free;
  let b = past;
  let fa = spareFree;
  let fb = sparePast;
  for (let i = 0; i < 80 && Math.abs(b - a) > TRAVEL_TOLERANCE; i += 1) {
    // Every third step halves, so that the bracket is sure to shrink.
    const t = i % 3 === 2 ? 0.5 * (a + b) : (a * fb - b * fa) / (fb - fa);
    const inside = t > Math.min(a, b) && t < Math.max(a, b) ? t : 0.5 * (a + b);
    const f = limit.spare(walk.at(inside));
    // By the slope between the two ends, what is left of the way.
    if (Math.abs(f * (b - a)) < 0.1 * TRAVEL_TOLERANCE * Math.abs(fb - fa)) return inside;
    if (f > 0) {
      a = inside;
      fa = f;
      if (i % 3 !== 2) fb *= 0.5;
    } else {
      b = inside;
      fb = f;
      if (i % 3 !== 2) fa *= 0.5;
    }
  }
  return 0.5 * (a + b);
}

function lowest(walk: Walk, limit: Limit, from: number, to: number): { travel: number; spare: number } {
  let a = from;
  let b = to;
  for (let i = 0; i < 40; i += 1) {
    const p = a + (b - a) * 0.381966;
    const q = a + (b - a) * 0.618034;
    if (limit.spare(walk.at(p)) < limit.spare(walk.at(q))) b = q;
    else a = p;
  }
  const travel = 0.5 * (a + b);
  return { travel, spare: limit.spare(walk.at(travel)) };
}
