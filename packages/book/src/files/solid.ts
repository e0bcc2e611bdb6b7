import { addScaled, cross, dot, lengthOf, unitVector, type Vec3 } from "@armwright/engine";

/** A closed surface of triangles with a name, vehicle axes, m; triangles turn left seen from outside. */
export interface Solid {
  readonly name: string;
  /** x, y, z of each corner. */
  readonly corners: readonly number[];
  /** Three corners each. */
  readonly triangles: readonly number[];
}

const ROUND = 32;

/** A round bar with flat ends. */
export function bar(name: string, from: Vec3, to: Vec3, diameter: number): Solid {
  const length = lengthOf(addScaled(to, from, -1));
  return turned(name, from, unitVector(addScaled(to, from, -1)), [
    [0, 0],
    [diameter / 2, 0],
    [diameter / 2, length],
    [0, length],
  ]);
}

/** A ball. */
export function ball(name: string, centre: Vec3, radius: number): Solid {
  const steps = 12;
  return turned(
    name,
    centre,
    { x: 0, y: 0, z: 1 },
    Array.from({ length: steps + 1 }, (_, i) => {
      const angle = (Math.PI * i) / steps;
      // The poles lie on the axis itself, so that they stay one corner.
      return [i === 0 || i === steps ? 0 : radius * Math.sin(angle), -radius * Math.cos(angle)] as const;
    }),
  );
}

/**
 * A profile turned about an axis: pairs of radius and place along the axis (m). The profile runs up the axis on its outside;
 * ends with radius 0 close it, otherwise it has to come back to its beginning.
 */
export function turned(
  name: string,
  origin: Vec3,
  axis: Vec3,
  profile: readonly (readonly [radius: number, place: number])[],
): Solid {
  const square = squareTo(axis);
  const other = cross(axis, square);
  const corners: number[] = [];
  const push = (point: Vec3): number => corners.push(point.x, point.y, point.z) / 3 - 1;
  const rings = profile.map(([radius, place]) => {
    const centre = addScaled(origin, axis, place);
    if (radius === 0) return [push(centre)];
    return Array.from({ length: ROUND }, (_, i) => {
      const angle = (2 * Math.PI * i) / ROUND;
      return push(addScaled(addScaled(centre, square, radius * Math.cos(angle)), other, radius * Math.sin(angle)));
    });
  });
  const first = profile[0]!;
  const last = profile.at(-1)!;
  const isLoop = first[0] > 0 || last[0] > 0;
  const triangles: number[] = [];
  const pairs = rings.length - (isLoop ? 0 : 1);
  for (let i = 0; i < pairs; i += 1) {
    const low = rings[i]!;
    const high = rings[(i + 1) % rings.length]!;
    for (let k = 0; k < ROUND; k += 1) {
      const next = (k + 1) % ROUND;
      if (low.length > 1) triangles.push(low[k]!, low[next]!, high.length > 1 ? high[next]! : high[0]!);
      if (high.length > 1) triangles.push(low.length > 1 ? low[k]! : low[0]!, high[next]!, high[k]!);
    }
  }
  return { name, corners, triangles };
}

/** A block by its middle, its own first and second axis, and half its size along all three. */
export function block(name: string, centre: Vec3, axisX: Vec3, axisY: Vec3, half: Vec3): Solid {
  const axisZ = cross(axisX, axisY);
  const corners: number[] = [];
  for (const z of [-1, 1])
    for (const y of [-1, 1])
      for (const x of [-1, 1]) {
        const p = addScaled(addScaled(addScaled(centre, axisX, x * half.x), axisY, y * half.y), axisZ, z * half.z);
        corners.push(p.x, p.y, p.z);
      }
  // Corners count x first, then y, then z; each face as two triangles that turn left seen from outside.
  const faces = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const triangles = faces.flatMap(([a, b, c, d]) => [a!, b!, c!, a!, c!, d!]);
  return { name, corners, triangles };
}

/** The same on the other side of the car. */
export function mirroredSolid({ name, corners, triangles }: Solid, otherName = name): Solid {
  return {
    name: otherName,
    corners: corners.map((value, index) => (index % 3 === 1 ? -value : value)),
    triangles: triangles.map((_, index) => triangles[index - (index % 3) + [0, 2, 1][index % 3]!]!),
  };
}

/** Volume within a closed surface, m³: positive where its triangles turn left seen from outside (divergence theorem). */
export function volumeOf({ corners, triangles }: Solid): number {
  const at = (index: number): Vec3 => ({
    x: corners[3 * index]!,
    y: corners[3 * index + 1]!,
    z: corners[3 * index + 2]!,
  });
  let six = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    six += dot(at(triangles[i]!), cross(at(triangles[i + 1]!), at(triangles[i + 2]!)));
  }
  return six / 6;
}

function squareTo(axis: Vec3): Vec3 {
  const helper = Math.abs(axis.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  return unitVector(addScaled(helper, axis, -dot(helper, axis)));
}
