/** A repeatable stream of numbers in 0…1 (mulberry32, public domain, as remembered). */
export function stream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Small triangles strewn over a box of two units a side about the origin. */
export function strewnTriangles(
  count: number,
  size: number,
  seed: number,
): { position: Float32Array; index: Uint32Array } {
  const next = stream(seed);
  const position = new Float32Array(count * 9);
  for (let i = 0; i < count; i += 1) {
    const at = [2 * next() - 1, 2 * next() - 1, 2 * next() - 1];
    for (let k = 0; k < 9; k += 1) position[i * 9 + k] = at[k % 3]! + size * (next() - 0.5);
  }
  return { position, index: Uint32Array.from({ length: count * 3 }, (_, i) => i) };
}

/** A bumpy sheet of about `count` triangles, as a scan is. */
export function bumpySheet(count: number, span: number, seed: number): { position: Float32Array; index: Uint32Array } {
  const next = stream(seed);
  const side = Math.round(Math.sqrt(count / 2));
  const position = new Float32Array((side + 1) * (side + 1) * 3);
  for (let i = 0; i <= side; i += 1) {
    for (let j = 0; j <= side; j += 1) {
      const k = (i * (side + 1) + j) * 3;
      const x = span * (i / side - 0.5);
      const y = span * (j / side - 0.5);
      position[k] = x;
      position[k + 1] = y;
      position[k + 2] = 0.08 * span * Math.sin((9 * x) / span) * Math.cos((7 * y) / span) + 0.002 * span * next();
    }
  }
  const index = new Uint32Array(side * side * 6);
  let n = 0;
  for (let i = 0; i < side; i += 1) {
    for (let j = 0; j < side; j += 1) {
      const a = i * (side + 1) + j;
      for (const v of [a, a + side + 1, a + 1, a + 1, a + side + 1, a + side + 2]) {
        index[n] = v;
        n += 1;
      }
    }
  }
  return { position, index };
}
