import type { Solid } from "./solid.ts";

const HEAD = 80;
const TRIANGLE = 50;

/** Solids as one binary STL, millimetres, z up (the form has no units of its own: millimetres are what readers expect). */
export function stlBytes(solids: readonly Solid[], title: string): Uint8Array {
  const count = solids.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
  const bytes = new Uint8Array(HEAD + 4 + TRIANGLE * count);
  const view = new DataView(bytes.buffer);
  // The head may not begin with the word `solid`, or readers take the file for text.
  bytes.set(new TextEncoder().encode(`${title}, mm`).slice(0, HEAD));
  view.setUint32(HEAD, count, true);
  let at = HEAD + 4;
  for (const { corners, triangles } of solids) {
    for (let i = 0; i < triangles.length; i += 3) {
      const points = [0, 1, 2].map((k) => [0, 1, 2].map((axis) => 1000 * corners[3 * triangles[i + k]! + axis]!));
      const [a, b, c] = points as [number[], number[], number[]];
      const u = b.map((value, axis) => value - a[axis]!);
      const v = c.map((value, axis) => value - a[axis]!);
      const normal = [0, 1, 2].map(
        (axis) => u[(axis + 1) % 3]! * v[(axis + 2) % 3]! - u[(axis + 2) % 3]! * v[(axis + 1) % 3]!,
      );
      const length = Math.hypot(...normal) || 1;
      for (const value of [...normal.map((each) => each / length), ...a, ...b, ...c]) {
        view.setFloat32(at, value, true);
        at += 4;
      }
      at += 2;
    }
  }
  return bytes;
}
