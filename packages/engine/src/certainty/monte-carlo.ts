import type { Car } from "../car/car.ts";
import { makeCorner, solveAt, writeRow } from "../cycle/corner.ts";
import { type Quantity, quantitiesOf } from "../cycle/quantities.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { designState } from "../linkage/motion-state.ts";
import { pointAt, withPointAt } from "../solve/point-places.ts";
import { halton, normalDeviate } from "./halton.ts";
import { type Inputs, type Setting, uncertainInputs } from "./inputs.ts";

/** What many cars, each a little off, came to. */
export interface Simulated {
  readonly cars: number;
  /** Cars whose linkage did not go together at some of the travels. */
  readonly apart: number;
  readonly quantities: readonly Quantity[];
  /** Of each quantity at each travel, travel by travel; null where fewer than two cars have it. */
  readonly results: readonly (SimulatedResult | null)[];
}

export interface SimulatedResult {
  readonly mean: number;
  readonly sd: number;
  /** Between these lie the middle 95.45 of 100 cars: as many as within two standard deviations of a normal law. */
  readonly low: number;
  readonly high: number;
  /** 0…1: cars that have the quantity there; an instant centre may lie too far away to be told. */
  readonly share: number;
}

/** Below and above two standard deviations of a normal law lies this share each. */
const TAIL = 0.02275;

/**
 * The true, nonlinear cycle of `cars` cars whose inputs are off as the covariance says (quasi-random, normal; JCGM 101:2008,
 * 7): what confirms the linear ±. The same numbers on every run.
 */
export function simulateCars(
  car: Car,
  travels: readonly number[],
  cars: number,
  inputs: Inputs = uncertainInputs(car),
): Simulated {
  const plan = makeCorner(car);
  const quantities = quantitiesOf(plan);
  const width = quantities.length * travels.length;
  const values = Array.from({ length: width }, () => new Float64Array(cars));
  const count = new Int32Array(width);
  const draw = drawer(inputs);
  const build = builder(car, inputs);
  // Every car is a hair off the plan: from the plan's solved positions its own are a step or two away.
  const starts = travels.map((travel) => solveAt(plan, travel)?.state ?? null);
  const state = designState();
  const row = new Float64Array(plan.width);
  let apart = 0;
  for (let n = 1; n <= cars; n += 1) {
    const corner = makeCorner(build(draw(n)), {}, plan);
    let isApart = false;
    for (let t = 0; t < travels.length; t += 1) {
      const start = starts[t]!;
      if (start) state.set(start);
      if (!(start && corner.mechanism.solve(travels[t]!, state) >= 0)) {
        state.set(DESIGN);
        if (corner.mechanism.solve(travels[t]!, state) < 0) {
          isApart = true;
          continue;
        }
      }
      writeRow(corner, state, row);
      for (let q = 0; q < quantities.length; q += 1) {
        const value = quantities[q]!.read(row, corner);
        if (value === null) continue;
        const k = t * quantities.length + q;
        values[k]![count[k]!] = value;
        count[k]! += 1;
      }
    }
    if (isApart) apart += 1;
  }
  const results = values.map((all, k) => (count[k]! < 2 ? null : resultOf(all.subarray(0, count[k]!), cars)));
  return { cars, apart, quantities, results };
}

const DESIGN = designState();

function resultOf(values: Float64Array, cars: number): SimulatedResult {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  values.sort();
  const at = (share: number): number => values[Math.min(n - 1, Math.max(0, Math.round(share * n - 0.5)))]!;
  return { mean, sd: Math.sqrt(square / (n - 1)), low: at(TAIL), high: at(1 - TAIL), share: n / cars };
}

/** Draws the `n`th set of errors, m and rad, into an array of its own that the next draw overwrites. */
export function drawer({ covariance }: Pick<Inputs, "covariance">): (n: number) => Float64Array {
  const root = choleskyOf(covariance);
  const size = root.length;
  // Most inputs stand by themselves: only what is not zero is kept.
  const filled = root.map((row) => [...row.keys()].filter((k) => row[k] !== 0));
  const deviates = new Float64Array(size);
  const shifts = new Float64Array(size);
  return (n) => {
    for (let k = 0; k < size; k += 1) deviates[k] = deviateOf(n, k);
    for (let i = 0; i < size; i += 1) {
      const row = root[i]!;
      let sum = 0;
      for (const k of filled[i]!) sum += row[k]! * deviates[k]!;
      shifts[i] = sum;
    }
    return shifts;
  };
}

const deviateOf = (n: number, dimension: number): number =>
  normalDeviate(Math.min(Math.max(halton(n, dimension), 1e-12), 1 - 1e-12));

/** The `n`th set of errors, m: normal, hanging together as the covariance says. */
export function shiftsOf(root: readonly Float64Array[], n: number): Float64Array {
  const deviates = Float64Array.from(root, (_, k) => deviateOf(n, k));
  return Float64Array.from(root, (row) => row.reduce((sum, value, k) => sum + value * deviates[k]!, 0));
}

/** The car with every input moved by its shift, m and rad. */
export const shifted = (car: Car, inputs: Pick<Inputs, "list">, shifts: Float64Array): Car =>
  builder(car, inputs)(shifts);

type Own<T> = { -readonly [K in keyof T]: T[K] };

/** Builds the car with every input moved by its shift: one car, whose points the next call moves on. */
function builder(car: Car, { list }: Pick<Inputs, "list">): (shifts: Float64Array) => Car {
  const wheel: Own<Car["wheel"]> = { ...car.wheel };
  const places = list.flatMap((input, i) => (input.kind === "point" && input.axis === "x" ? [{ i, ...input }] : []));
  const built = places.reduce<Car>((made, { place }) => withPointAt(made, place, { ...pointAt(made, place) }), {
    ...car,
    wheel,
  });
  const moved = places.map(({ i, place }) => ({
    i,
    from: pointAt(car, place),
    to: pointAt(built, place) as Own<Vec3>,
  }));
  const settings = list.flatMap((input, i) => (input.kind === "setting" ? [{ i, setting: input.setting }] : []));
  const turned = built.wheel as Own<Car["wheel"]>;
  return (shifts) => {
    for (const { i, from, to } of moved) {
      to.x = from.x + shifts[i]!;
      to.y = from.y + shifts[i + 1]!;
      to.z = from.z + shifts[i + 2]!;
    }
    for (const { i, setting } of settings) turned[setting] = car.wheel[setting satisfies Setting] + shifts[i]!;
    return built;
  };
}

/** Lower triangle L with L·Lᵀ the covariance; directions without variance are left at nothing. */
export function choleskyOf(covariance: readonly Float64Array[]): readonly Float64Array[] {
  const n = covariance.length;
  const root = covariance.map(() => new Float64Array(n));
  const scale = covariance.map((row, i) => row[i]!);
  for (let j = 0; j < n; j += 1) {
    let left = covariance[j]![j]!;
    for (let k = 0; k < j; k += 1) left -= root[j]![k]! ** 2;
    if (left <= scale[j]! * 1e-12) continue;
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
