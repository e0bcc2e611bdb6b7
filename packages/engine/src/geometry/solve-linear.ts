/**
 * Solves matrix · x = right by Gaussian elimination with partial pivoting. Rows and right side are left as they are.
 * Gives null where the matrix is singular to working precision.
 */
export function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = right.length;
  const rows = matrix.map((row, index) => [...row, right[index]!]);
  const scale = Math.max(...rows.flat().map(Math.abs));
  for (let p = 0; p < n; p += 1) {
    let best = p;
    for (let r = p + 1; r < n; r += 1) if (Math.abs(rows[r]![p]!) > Math.abs(rows[best]![p]!)) best = r;
    [rows[p], rows[best]] = [rows[best]!, rows[p]!];
    const pivot = rows[p]![p]!;
    if (!(Math.abs(pivot) > scale * 1e-15)) return null;
    for (let r = p + 1; r < n; r += 1) {
      const factor = rows[r]![p]! / pivot;
      if (factor === 0) continue;
      for (let c = p; c <= n; c += 1) rows[r]![c] = rows[r]![c]! - factor * rows[p]![c]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r -= 1) {
    let sum = rows[r]![n]!;
    for (let c = r + 1; c < n; c += 1) sum -= rows[r]![c]! * x[c]!;
    x[r] = sum / rows[r]![r]!;
  }
  return x;
}
