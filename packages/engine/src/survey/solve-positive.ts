/**
 * Solves A x = b by Cholesky's method for a symmetric positive definite matrix, row after row, n² long; A and b are
 * written over, x is b. A flat kernel: placing a survey solves hundreds of such systems, and a matrix of objects takes ten
 * times as long. Checked against ml-matrix.
 */
export function solvePositive(matrix: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i * n + j]!;
      for (let k = 0; k < j; k += 1) sum -= matrix[i * n + k]! * matrix[j * n + k]!;
      // Rounding can bring the square of a pivot just below nothing.
      matrix[i * n + j] = i === j ? Math.sqrt(Math.max(sum, Number.MIN_VALUE)) : sum / matrix[j * n + j]!;
    }
  }
  for (let i = 0; i < n; i += 1) {
    let sum = right[i]!;
    for (let k = 0; k < i; k += 1) sum -= matrix[i * n + k]! * right[k]!;
    right[i] = sum / matrix[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = right[i]!;
    for (let k = i + 1; k < n; k += 1) sum -= matrix[k * n + i]! * right[k]!;
    right[i] = sum / matrix[i * n + i]!;
  }
  return right;
}
