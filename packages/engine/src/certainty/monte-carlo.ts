import type { Car } from "../car/car.ts";
import { makeCorner } from "../cycle/corner.ts";
import { quantitiesOf } from "../cycle/quantities.ts";
import { pointAt, withPointAt } from "../solve/point-places.ts";
import { readAll } from "./cycle-certainty.ts";
import { halton, normalDeviate } from "./halton.ts";
import { type Inputs, uncertainInputs } from "./inputs.ts";

/** What many cars, each a little off, came to. */
export interface Simulated {
  readonly cars: number;
  /** Cars whose linkage did not go together at some of the travels. */
  readonly apart: number;
  /** Mean and standard deviation of each quantity at each travel, travel by travel; null where no car has it. */
  readonly results: readonly ({ readonly mean: number; readonly sd: number } | null)[];
}

/**
 * The true, nonlinear cycle of `cars` cars whose points are off as the covariance says (quasi-random, normal): what confirms
 * the linear ±. The same numbers on every run.
 */
export function simulateCars(
  car: Car,
  travels: readonly number[],
  cars: number,
  inputs: Inputs = uncertainInputs(car),
): Simulated {
  const quantities = quantitiesOf(makeCorner(car));
  const width = quantities.length * travels.length;
  const root = choleskyOf(inputs.covariance);
  const [count, mean, square] = [new Float64Array(width), new Float64Array(width), new Float64Array(width)];
  let apart = 0;
  for (let n = 1; n <= cars; n += 1) {
    const shifts = shiftsOf(root, n);
    const results = readAll(makeCorner(shifted(car, inputs, shifts)), quantities, travels);
    // The first quantity, where the wheel is, exists wherever the linkage goes together.
    if (travels.some((_, t) => results[t * quantities.length] === null)) apart += 1;
    results.forEach((value, k) => {
      if (value === null) return;
      // Welford: mean and sum of squares as they come.
      count[k]! += 1;
      const off = value - mean[k]!;
      mean[k]! += off / count[k]!;
      square[k]! += off * (value - mean[k]!);
    });
  }
  return {
    cars,
    apart,
    results: Array.from({ length: width }, (_, k) =>
      count[k]! < 2 ? null : { mean: mean[k]!, sd: Math.sqrt(square[k]! / (count[k]! - 1)) },
    ),
  };
}

/** The `n`th set of errors, m: normal, hanging together as the covariance says. */
export function shiftsOf(root: readonly Float64Array[], n: number): Float64Array {
  const deviates = Float64Array.from(root, (_, k) => normalDeviate(Math.min(Math.max(halton(n, k), 1e-12), 1 - 1e-12)));
  return Float64Array.from(root, (row) => row.reduce((sum, value, k) => sum + value * deviates[k]!, 0));
}

/** The car with every input moved by its shift, m. */
export function shifted(car: Car, { list }: Pick<Inputs, "list">, shifts: Float64Array): Car {
  let built = car;
  for (let i = 0; i < list.length; i += 3) {
    const { place } = list[i]!;
    const { x, y, z } = pointAt(built, place);
    built = withPointAt(built, place, { x: x + shifts[i]!, y: y + shifts[i + 1]!, z: z + shifts[i + 2]! });
  }
  return built;
}

/** Lower triangle L with L·Lᵀ the covariance; directions without variance are left at nothing. */
export function choleskyOf(covariance: readonly Float64Array[]): readonly Float64Array[] {
  const n = covariance.length;
  const root = covariance.map(() => new Float64Array(n));
  const largest = Math.max(...covariance.map((row, i) => row[i]!), 0);
  for (let j = 0; j < n; j += 1) {
    let left = covariance[j]![j]!;
    for (let k = 0; k < j; k += 1) left -= root[j]![k]! ** 2;
    if (left <= largest * 1e-14) continue;
    const pivot = Math.sqrt(left);
    root[j]![j] = pivot;
    for (let i = j + 1; i < n; i += 1) {
      let value = covariance[i]![j]!;
      for (let k = 0; k < j; k += 1) value -= root[i]![k]! * root[j]![k]!;
      root[i]![j] = value / pivot;
    }
  }
  return root;
}
