import { choleskyOf } from "../certainty/monte-carlo.ts";

/** What solves A x = b for a symmetric positive definite A, factored once (Cholesky). */
export function symmetricSolver(a: readonly (readonly number[])[]): (b: readonly number[]) => readonly number[] {
  const root = choleskyOf(a.map((row) => Float64Array.from(row)));
  const n = a.length;
  return (b) => {
    const y = new Float64Array(n);
    for (let i = 0; i < n; i += 1) {
      let value = b[i]!;
      for (let k = 0; k < i; k += 1) value -= root[i]![k]! * y[k]!;
      y[i] = root[i]![i]! > 0 ? value / root[i]![i]! : 0;
    }
    const x = new Array<number>(n).fill(0);
    for (let i = n - 1; i >= 0; i -= 1) {
      let value = y[i]!;
      for (let k = i + 1; k < n; k += 1) value -= root[k]![i]! * x[k]!;
      x[i] = root[i]![i]! > 0 ? value / root[i]![i]! : 0;
    }
    return x;
  };
}
