import type { Car } from "../car/car.ts";
import { makeCorner, writeRow } from "../cycle/corner.ts";
import { stations } from "../cycle/cycle.ts";
import { designState } from "../linkage/motion-state.ts";

/** Travels at which a search looks. */
const STATIONS = 17;

/** Each solve sets out from a state no farther than this away, m: five links then need no search of their whole motion. */
const STEP = 0.024;

/** Evenly from `from` to `to`, m. */
export const searchTravels = (from: number, to: number): readonly number[] => [
  ...stations(Math.min(from, to), Math.max(from, to), STATIONS),
];

/** What the motion of wheel and shaft needs of a car, without all that a search does not ask for. */
export const bareCar = ({ shock: _s, strap: _t, bumpStop: _b, right: _r, ...car }: Car): Car => ({
  ...car,
  rodEnds: [],
  underbody: [],
  keepOuts: [],
});

/** Rows at the travels (m, rising), or null where the linkage does not go together at one of them. */
export function rowsOver(car: Car, travels: readonly number[]): readonly Float64Array[] | null {
  const corner = makeCorner(car);
  const rows: Float64Array[] = [];
  const state = designState();
  let here = 0;
  const write = (travel: number): boolean => {
    const steps = Math.max(1, Math.ceil(Math.abs(travel - here) / STEP));
    const from = here;
    for (let i = 1; i <= steps; i += 1) {
      here = i === steps ? travel : from + ((travel - from) * i) / steps;
      if (corner.mechanism.solve(here, state) < 0) return false;
    }
    const row = new Float64Array(corner.width);
    writeRow(corner, state, row);
    rows.push(row);
    return true;
  };
  // Outward from ride height, so that each start is near; the mechanism's range, dear to find, is not asked for.
  for (const travel of travels.filter((each) => each < 0).reverse()) if (!write(travel)) return null;
  rows.reverse();
  state.set(designState());
  here = 0;
  for (const travel of travels.filter((each) => each >= 0)) if (!write(travel)) return null;
  return rows;
}

/** Greatest less least of one number of the rows. */
export function rangeOf(rows: readonly Float64Array[], place: number): number {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    least = Math.min(least, row[place]!);
    most = Math.max(most, row[place]!);
  }
  return most - least;
}
