/** dy/dt of a system: writes into `rates`. */
export type Rates = (time: number, y: Float64Array, rates: Float64Array) => void;

const C = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
const A: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const E = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];

export interface StepTry {
  readonly y: Float64Array;
  /** Root mean square of each error over what is let through; a step is good up to 1. */
  readonly error: number;
}

/**
 * One step of Dormand and Prince's pair of order 5(4) (J. Comp. Appl. Math. 6, 1980) for any system: plain, where
 * `run-corner.ts` has the same in scalars for two bodies. `errors`: what each y may be off in a step.
 */
export function tryStep(rates: Rates, time: number, y: Float64Array, h: number, errors: Float64Array): StepTry {
  const size = y.length;
  const k = A.map(() => new Float64Array(size));
  const at = new Float64Array(size);
  for (let stage = 0; stage < 7; stage += 1) {
    at.set(y);
    A[stage]!.forEach((weight, j) => {
      for (let i = 0; i < size; i += 1) at[i] = at[i]! + h * weight * k[j]![i]!;
    });
    rates(time + C[stage]! * h, at, k[stage]!);
  }
  let sum = 0;
  for (let i = 0; i < size; i += 1) {
    let off = 0;
    for (let stage = 0; stage < 7; stage += 1) off += E[stage]! * k[stage]![i]!;
    sum += ((h * off) / errors[i]!) ** 2;
  }
  return { y: at, error: Math.sqrt(sum / size) };
}
