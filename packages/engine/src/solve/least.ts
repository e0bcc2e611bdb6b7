import { clampShare, type Least, lowerByTurning } from "./turning-search.ts";

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Points of the grid along each of one, two or three directions. */
const GRID = [65, 17, 9] as const;
/** The best is followed down to steps of this share of the box. */
const FINEST = 1e-9;
/** Places of the grid between two tellings. */
const TOLD_EACH = 16;
/** How many of the grid's low places are followed to their bottom. */
const FOLLOWED = 4;

/** Told how far a search has come, 0…1. */
export type Tell = (share: number) => void;

/** The grid is told as so much of the work. */
const GRID_SHARE = 0.5;

/**
 * Least value of `f` over a box of one to three directions, Infinity where `f` has none. A grid over the whole box, then a
 * search from its lowest places and from `starts`. The function may have kinks (a largest of several always has);
 * deterministic. Null where `f` is nowhere finite.
 */
export function leastOver(
  f: (x: readonly number[]) => number,
  box: readonly Span[],
  starts: readonly (readonly number[])[] = [],
  tell: Tell = () => {},
): Least | null {
  if (box.length < 1 || box.length > 3) throw new Error("bug in armwright: one to three directions can be searched");
  const toPlace = (u: readonly number[]): number[] =>
    u.map((share, i) => box[i]!.from + share * (box[i]!.to - box[i]!.from));
  const g = (u: readonly number[]): number => {
    const value = f(toPlace(u));
    return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value;
  };
  const count = GRID[box.length - 1]!;
  const grid = gridPlaces(box.length, count);
  const places = grid.map((at, i) => {
    if (i % TOLD_EACH === 0) tell((GRID_SHARE * i) / grid.length);
    return { at, value: g(at) };
  });
  const given = starts.map((x) => {
    const at = x.map((value, i) => clampShare((value - box[i]!.from) / (box[i]!.to - box[i]!.from)));
    return { at, value: g(at) };
  });
  const from = [...given, ...lowPlaces(places, count)].filter(({ value }) => Number.isFinite(value));
  const first = 1 / (count - 1);
  let best: Least | null = null;
  for (const [i, start] of from.entries()) {
    tell(GRID_SHARE + ((1 - GRID_SHARE) * i) / (from.length + 1));
    const found = lowerByTurning(g, start, first, first / 64);
    if (!best || found.value < best.value) best = found;
  }
  if (best) best = lowerByTurning(g, best, first / 16, FINEST);
  return best && { at: toPlace(best.at), value: best.value };
}

function gridPlaces(directions: number, count: number): readonly (readonly number[])[] {
  let places: readonly (readonly number[])[] = [[]];
  for (let d = 0; d < directions; d += 1) {
    places = places.flatMap((place) => Array.from({ length: count }, (_, i) => [...place, i / (count - 1)]));
  }
  return places;
}

/** The lowest places of the grid that are no neighbours of a lower one already taken. */
function lowPlaces(places: readonly Least[], count: number): readonly Least[] {
  const near = 2.5 / (count - 1);
  const taken: Least[] = [];
  for (const place of [...places].sort((a, b) => a.value - b.value)) {
    if (taken.length === FOLLOWED) break;
    if (taken.every(({ at }) => at.some((share, i) => Math.abs(share - place.at[i]!) > near))) taken.push(place);
  }
  return taken;
}
