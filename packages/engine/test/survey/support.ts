/** Inverse of a symmetric 3 by 3 matrix by cofactors. */
export function inverse3(m: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const [a, b, c] = m[0] as [number, number, number];
  const [, e, f] = m[1] as [number, number, number];
  const i = m[2]![2]!;
  const A = e * i - f * f;
  const B = c * f - b * i;
  const C = b * f - c * e;
  const det = a * A + b * B + c * C;
  return [
    [A / det, B / det, C / det],
    [B / det, (a * i - c * c) / det, (b * c - a * f) / det],
    [C / det, (b * c - a * f) / det, (a * e - b * b) / det],
  ];
}
