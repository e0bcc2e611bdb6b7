/** A binary STL of a box frame, mm, x forward, z up: two rails on either side, uprights and cross members, 50 mm square. */
export function boxFrame(): Buffer<ArrayBuffer> {
  const triangles: (readonly number[])[][] = [];
  const box = (x0: number, x1: number, y0: number, y1: number, z0: number, z1: number): void => {
    const corners = [x0, x1].flatMap((x) => [y0, y1].flatMap((y) => [z0, z1].map((z) => [x, y, z])));
    for (const [a, b, c, d] of FACES) {
      const [p, q, r, s] = [corners[a]!, corners[b]!, corners[c]!, corners[d]!];
      triangles.push([p, q, r], [p, r, s]);
    }
  };
  for (const [y0, y1] of [
    [280, 330],
    [-330, -280],
  ] as const) {
    for (const z of [100, 500]) box(0, 1200, y0, y1, z, z + 50);
    for (const x of [0, 550, 1150]) box(x, x + 50, y0, y1, 150, 500);
  }
  for (const x of [0, 550, 1150]) for (const z of [100, 500]) box(x, x + 50, -280, 280, z, z + 50);
  const bytes = Buffer.alloc(84 + 50 * triangles.length);
  bytes.writeUInt32LE(triangles.length, 80);
  triangles.forEach((triangle, t) => {
    triangle.forEach((corner, c) => {
      corner.forEach((value, k) => {
        bytes.writeFloatLE(value, 84 + 50 * t + 12 + 12 * c + 4 * k);
      });
    });
  });
  return bytes;
}

const FACES = [
  [0, 1, 3, 2],
  [4, 6, 7, 5],
  [0, 4, 5, 1],
  [2, 3, 7, 6],
  [0, 2, 6, 4],
  [1, 5, 7, 3],
] as const;
