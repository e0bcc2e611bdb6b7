import { BufferGeometry, Float32BufferAttribute, type Matrix4, Vector3 } from "three";

/**
 * Triangles of a solid before they go to the screen. `hull`: outward direction that is the same for all faces at a corner,
 * along which the outline is blown up. `crease`: the face is inked where either part comes to −1 or 1.
 */
export interface Shape {
  readonly position: number[];
  readonly normal: number[];
  readonly hull: number[];
  readonly crease: number[];
  readonly index: number[];
}

/** A spot of a profile that is turned about the z axis: radius and height. */
export type ProfileSpot = readonly [r: number, z: number];

/** A stretch of a profile without a corner; its two ends are inked unless said otherwise. */
export interface Run {
  readonly spots: readonly ProfileSpot[];
  readonly isStartPlain?: boolean;
  readonly isEndPlain?: boolean;
}

export const run = (...spots: ProfileSpot[]): Run => ({ spots });

/** Turns a profile about z, walked with the solid on its left hand side (r to the right, z up), e.g. bottom, out, up, in. */
export function lathe(runs: readonly Run[], sides: number): Shape {
  const shape = emptyShape();
  for (const each of runs) addRun(shape, each, sides);
  return withHull(shape);
}

function addRun(shape: Shape, { spots, isStartPlain, isEndPlain }: Run, sides: number): void {
  const first = shape.position.length / 3;
  const last = spots.length - 1;
  spots.forEach(([r, z], i) => {
    const [r0, z0] = spots[Math.max(0, i - 1)]!;
    const [r1, z1] = spots[Math.min(last, i + 1)]!;
    const size = Math.hypot(r1 - r0, z1 - z0) || 1;
    const out = (z1 - z0) / size;
    const up = -(r1 - r0) / size;
    const isAxis = r === 0;
    const crease = i === 0 ? (isStartPlain || isAxis ? 0 : -1) : i === last ? (isEndPlain || isAxis ? 0 : 1) : 0;
    for (let j = 0; j <= sides; j += 1) {
      const angle = (2 * Math.PI * j) / sides;
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      shape.position.push(r * c, r * s, z);
      shape.normal.push(out * c, out * s, up);
      shape.crease.push(crease, 0);
    }
  });
  const row = sides + 1;
  for (let i = 0; i < last; i += 1) {
    for (let j = 0; j < sides; j += 1) {
      const a = first + i * row + j;
      shape.index.push(a, a + 1, a + row + 1, a, a + row + 1, a + row);
    }
  }
}

/** A prism about z from 0 to 1, across the corners 2: a jam nut, a bolt's head. */
export function prism(sides: number): Shape {
  const shape = emptyShape();
  const corner = (i: number) => [Math.cos((2 * Math.PI * i) / sides), Math.sin((2 * Math.PI * i) / sides)] as const;
  for (let i = 0; i < sides; i += 1) {
    const [x0, y0] = corner(i);
    const [x1, y1] = corner(i + 1);
    const nx = (x0 + x1) / 2;
    const ny = (y0 + y1) / 2;
    addFace(shape, [x0, y0, 0], [x1, y1, 0], [x1, y1, 1], [x0, y0, 1], [nx, ny, 0]);
    for (const z of [0, 1]) {
      const first = shape.position.length / 3;
      shape.position.push(0, 0, z, x0, y0, z, x1, y1, z);
      shape.normal.push(0, 0, 2 * z - 1, 0, 0, 2 * z - 1, 0, 0, 2 * z - 1);
      shape.crease.push(0, 0, 1, 0, 1, 0);
      shape.index.push(first, ...(z === 1 ? [first + 1, first + 2] : [first + 2, first + 1]));
    }
  }
  return withHull(shape);
}

/** A box from −1 to 1 along each axis. */
export function cube(): Shape {
  const shape = emptyShape();
  const axes = [
    [0, 1, 2],
    [1, 2, 0],
    [2, 0, 1],
  ] as const;
  for (const [a, b, c] of axes) {
    for (const side of [-1, 1]) {
      const at = (u: number, v: number): number[] => {
        const p = [0, 0, 0];
        p[a] = side;
        p[b] = u * side;
        p[c] = v;
        return p;
      };
      const normal = [0, 0, 0];
      normal[a] = side;
      addFace(shape, at(-1, -1), at(1, -1), at(1, 1), at(-1, 1), normal);
    }
  }
  return withHull(shape);
}

export function ball(sides: number): Shape {
  const half = Math.max(4, Math.round(sides / 2));
  const spots = Array.from({ length: half + 1 }, (_, i): ProfileSpot => {
    const angle = -Math.PI / 2 + (Math.PI * i) / half;
    return [i === 0 || i === half ? 0 : Math.cos(angle), Math.sin(angle)];
  });
  return lathe([{ spots, isStartPlain: true, isEndPlain: true }], sides);
}

/** Round bar about z from 0 to 1, radius 1. */
export const bar = (sides: number): Shape =>
  lathe([run([0, 0], [1, 0]), run([1, 0], [1, 1]), run([1, 1], [0, 1])], sides);

function addFace(shape: Shape, a: number[], b: number[], c: number[], d: number[], normal: number[]): void {
  const first = shape.position.length / 3;
  const size = Math.hypot(normal[0]!, normal[1]!, normal[2]!);
  for (const corner of [a, b, c, d]) {
    shape.position.push(...corner);
    shape.normal.push(normal[0]! / size, normal[1]! / size, normal[2]! / size);
  }
  shape.crease.push(-1, -1, 1, -1, 1, 1, -1, 1);
  shape.index.push(first, first + 1, first + 2, first, first + 2, first + 3);
}

export const emptyShape = (): Shape => ({ position: [], normal: [], hull: [], crease: [], index: [] });

/** Gives every vertex the mean of the normals of all faces that meet at its place. */
export function withHull(shape: Shape): Shape {
  const sums = new Map<string, number[]>();
  const keyOf = (i: number): string =>
    `${Math.round(shape.position[i]! * 1e5)},${Math.round(shape.position[i + 1]! * 1e5)},${Math.round(shape.position[i + 2]! * 1e5)}`;
  for (let i = 0; i < shape.position.length; i += 3) {
    const key = keyOf(i);
    const sum = sums.get(key) ?? [0, 0, 0];
    for (let k = 0; k < 3; k += 1) sum[k] = sum[k]! + shape.normal[i + k]!;
    sums.set(key, sum);
  }
  shape.hull.length = 0;
  for (let i = 0; i < shape.position.length; i += 3) {
    const [x = 0, y = 0, z = 0] = sums.get(keyOf(i)) ?? [];
    const size = Math.hypot(x, y, z) || 1;
    shape.hull.push(x / size, y / size, z / size);
  }
  return shape;
}

/** The shape moved; the matrix may scale along its axes but not mirror. */
export function moved(shape: Shape, matrix: Matrix4): Shape {
  const turn = matrix.clone().invert().transpose();
  const at = new Vector3();
  const each = (list: readonly number[], by: (v: Vector3) => Vector3): number[] => {
    const made: number[] = [];
    for (let i = 0; i < list.length; i += 3) {
      by(at.set(list[i]!, list[i + 1]!, list[i + 2]!));
      made.push(at.x, at.y, at.z);
    }
    return made;
  };
  return {
    position: each(shape.position, (v) => v.applyMatrix4(matrix)),
    normal: each(shape.normal, (v) => v.transformDirection(turn)),
    hull: each(shape.hull, (v) => v.transformDirection(turn)),
    crease: [...shape.crease],
    index: [...shape.index],
  };
}

export function joined(...shapes: readonly Shape[]): Shape {
  const all = emptyShape();
  for (const shape of shapes) {
    const first = all.position.length / 3;
    for (const key of ["position", "normal", "hull", "crease"] as const) {
      for (const value of shape[key]) all[key].push(value);
    }
    for (const i of shape.index) all.index.push(first + i);
  }
  return all;
}

export function geometryOf(shape: Shape): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new Float32BufferAttribute(shape.position, 3));
  geometry.setAttribute("normal", new Float32BufferAttribute(shape.normal, 3));
  geometry.setAttribute("hull", new Float32BufferAttribute(shape.hull, 3));
  geometry.setAttribute("crease", new Float32BufferAttribute(shape.crease, 2));
  geometry.setIndex(shape.index);
  return geometry;
}
