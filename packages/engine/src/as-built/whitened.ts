import { choleskyOf } from "../certainty/monte-carlo.ts";

/**
 * Misfits of a covariance V = L·Lᵀ made independent, each of standard deviation 1: w = L⁻¹·d (Cholesky). Sums of squares
 * and least squares of w are the generalised ones of d: wᵀw = dᵀV⁻¹d.
 */
export function whitener(covariance: readonly Float64Array[]): (d: ArrayLike<number>) => Float64Array {
  const root = choleskyOf(covariance);
  return (d) => {
    const w = new Float64Array(root.length);
    for (let i = 0; i < root.length; i += 1) {
      const row = root[i]!;
      let value = d[i]!;
      for (let k = 0; k < i; k += 1) value -= row[k]! * w[k]!;
      w[i] = row[i]! > 0 ? value / row[i]! : 0;
    }
    return w;
  };
}

export function inner(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}
