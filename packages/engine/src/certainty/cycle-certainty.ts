import type { Car } from "../car/car.ts";
import { type Corner, makeCorner, solveAt } from "../cycle/corner.ts";
import { type Quantity, quantitiesOf } from "../cycle/quantities.ts";
import type { MotionState } from "../linkage/motion-state.ts";
import { type Inputs, type UncertainInput, uncertainInputs } from "./inputs.ts";
import { simulateCars } from "./monte-carlo.ts";
import { isBent, type Response, responseOf, spreadOf } from "./slopes.ts";

/** One quantity at one travel, with how sure it is. */
export interface CertainReading {
  readonly quantity: Quantity;
  readonly travel: number;
  readonly value: number | null;
  /**
   * Half of the ± that holds about 95 in 100 cars: the standard deviation where the result follows its inputs straight.
   * Null where no ± can be told: some cars do not have the quantity there at all.
   */
  readonly sd: number | null;
  /** About 95 in 100 cars lie between; not even about the value where the result bends. */
  readonly low: number | null;
  readonly high: number | null;
  /** Whether the straight law was not enough, and cars were simulated for it. */
  readonly isSimulated: boolean;
  /** Inputs that bring most of it, the greatest first, each with its share of the variance. */
  readonly causes: readonly Share[];
  /** Share of every input, and slope by it, in their order. */
  readonly shares: Float64Array;
  readonly gradient: Float64Array;
}

export interface Share {
  readonly input: UncertainInput;
  /** 0…1 */
  readonly share: number;
}

export interface CycleCertainty {
  readonly travels: readonly number[];
  readonly readings: readonly CertainReading[];
  readonly isGiven: boolean;
}

/** Inputs that are told of a reading. */
const MOST_CAUSES = 3;
/** Cars that are simulated where a result bends: they tell a ± to some 3 %. */
const SIMULATED = 1000;
/** Fewer cars than this that have a quantity leave no ± of it. */
const LEAST_SHARE = 0.977;

/**
 * The ± of every quantity at the travels (m), by linear propagation (JCGM 100:2008, 5.2: u² = Σ Σ ∂f/∂xi ∂f/∂xj u(xi, xj))
 * through the solved motion; where a result bends too much for it, by simulated cars (JCGM 101:2008, 8). Camber and toe at
 * ride height are set on the finished car and so are as sure there as they can be set.
 */
export function cycleCertainty(
  car: Car,
  travels: readonly number[],
  inputs: Inputs = uncertainInputs(car),
): CycleCertainty {
  const corner = makeCorner(car);
  const quantities = quantitiesOf(corner);
  const starts = travels.map((travel) => solveAt(corner, travel)?.state);
  const results = (of: Car): readonly (number | null)[] =>
    readAll(makeCorner(of, {}, corner), quantities, travels, starts);
  const response = responseOf(car, inputs.list, results);
  const spreads = spreadOf(response.slopes, inputs.covariance);
  const values = readAll(corner, quantities, travels);
  const bent = values.map((value, k) => value !== null && isBent(response, inputs, k, spreads[k]?.sd ?? 0));
  const simulated = bent.includes(true) ? simulateCars(car, travels, SIMULATED, inputs).results : [];
  const readings = travels.flatMap((travel, t) =>
    quantities.map((quantity, q): CertainReading => {
      const k = t * quantities.length + q;
      const value = values[k]!;
      const spread = spreads[k] ?? NO_SPREAD;
      const shares = bent[k] ? bentShares(response, inputs, k) : spread.shares;
      const about =
        value === null ? NOTHING : bent[k] ? simulatedAbout(value, simulated[k]) : straight(value, spread.sd);
      return {
        quantity,
        travel,
        value,
        ...about,
        isSimulated: bent[k]!,
        causes: mostOf(inputs, shares, 0.01, MOST_CAUSES),
        shares,
        gradient: Float64Array.from(response.slopes, (row) => row[k]!),
      };
    }),
  );
  return { travels, readings, isGiven: inputs.isGiven };
}

const NO_SPREAD = { sd: 0, shares: new Float64Array(0) };
const NOTHING = { sd: null, low: null, high: null };
const straight = (value: number, sd: number) => ({ sd, low: value - 2 * sd, high: value + 2 * sd });

function simulatedAbout(value: number, result: ReturnType<typeof simulateCars>["results"][number] | undefined) {
  if (!result || result.share < LEAST_SHARE) return NOTHING;
  const { low, high } = result;
  return { sd: Math.max(high - value, value - low) / 2, low, high };
}

/** Shares by what each input brings alone: its slope and its bend, both over its spread. */
function bentShares({ slopes, bends }: Response, { list }: Inputs, result: number): Float64Array {
  const squares = Float64Array.from(list, ({ sd }, i) => {
    const bend = bends[i]![result]!;
    return (slopes[i]![result]! * sd) ** 2 + (Number.isFinite(bend) ? 0.5 * (bend * sd ** 2) ** 2 : 0);
  });
  const sum = squares.reduce((total, square) => total + square, 0);
  return sum > 0 ? squares.map((square) => square / sum) : squares;
}

/** Inputs that bring more than `least` of the variance, the greatest first. */
export function mostOf({ list }: Pick<Inputs, "list">, shares: Float64Array, least: number, most: number): Share[] {
  return list
    .map((input, i) => ({ input, share: shares[i] ?? 0 }))
    .filter(({ share }) => share > least)
    .sort((a, b) => b.share - a.share)
    .slice(0, most);
}

/**
 * All quantities at all travels, travel by travel; null where the linkage does not get there. `starts`: states near by, of
 * a car that is alike.
 */
export function readAll(
  corner: Corner,
  quantities: readonly Quantity[],
  travels: readonly number[],
  starts: readonly (MotionState | undefined)[] = [],
): readonly (number | null)[] {
  return travels.flatMap((travel, t) => {
    const solved = solveNear(corner, travel, starts[t]);
    return quantities.map((quantity) => (solved ? quantity.read(solved.row, corner) : null));
  });
}

/** State and row of one travel, set out for from a state near by where there is one. */
export const solveNear = (corner: Corner, travel: number, start: MotionState | undefined): ReturnType<typeof solveAt> =>
  (start && solveAt(corner, travel, start)) ?? solveAt(corner, travel);
