import { cylinderToTriangle, nearest, segmentToTriangle, type Vec3 } from "@armwright/engine";
import { type Box3, BufferAttribute, BufferGeometry, Ray, Vector3 } from "three";
import { MeshBVH } from "three-mesh-bvh";
import { apart, cross, midway, squareUnit, subtract, UP, unit } from "../kit/space.ts";
import { directionToFile, type Similarity, toCar, toFile } from "./similarity.ts";

/** A moving part as clearances see it, vehicle axes, m. */
export type MeshSolid = MeshCapsule | MeshWheel;

export interface MeshCapsule {
  readonly shape: "capsule";
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}

/** A disc with rounded shoulders: outside radius = coreRadius + radius, half of its width = coreHalfWidth + radius. */
export interface MeshWheel {
  readonly shape: "wheel";
  readonly centre: Vec3;
  readonly axis: Vec3;
  readonly coreRadius: number;
  readonly coreHalfWidth: number;
  readonly radius: number;
}

export interface MeshGap {
  /** m; negative where the skin of the mesh reaches into the part, and then no less than −radius: see `gapTo`. */
  readonly gap: number;
  /** Middle between the nearest places of the part and of the mesh, vehicle axes, m. */
  readonly at: Vec3;
  readonly triangle: number;
}

/** Triangles with a tree over them, in the file's own axes and unit: placing them anew costs nothing. */
export interface MeshTree {
  readonly geometry: BufferGeometry;
  readonly bvh: MeshBVH;
}

/** Builds the tree; `index` is put in another order by it. About a second for 500,000 triangles. */
export function makeMeshTree(position: Float32Array, index: Uint32Array): MeshTree {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(position, 3));
  geometry.setIndex(new BufferAttribute(index, 1));
  return { geometry, bvh: new MeshBVH(geometry, { targetLeafSize: 8 }) };
}

const triangle = new Float64Array(9);
const corner = new Float64Array(9);
const best = new Float64Array(6);

/**
 * The gap of one part to the mesh, or null where none is nearer than `most` (m). Exact: the nearest distance of the part's
 * core (segment, or cylinder for a wheel) to every triangle that could be nearest, less its radius; good to the file's own
 * single precision. The mesh is a skin, not a solid: a part that lies wholly inside it reads as clear by its way to the
 * skin, and one whose core is cut reads −radius, however deep. `near`: a triangle that was nearest before, to begin with.
 */
export function gapTo(
  tree: MeshTree,
  placement: Similarity,
  solid: MeshSolid,
  most: number,
  near = -1,
): MeshGap | null {
  const probe = probeOf(placement, solid);
  const { bvh, geometry } = tree;
  const position = geometry.getAttribute("position").array;
  const index = geometry.getIndex()!.array;
  let least = (most + solid.radius) / placement.scale;
  let found = -1;
  const look = (i: number): void => {
    for (let k = 0; k < 3; k += 1) {
      const v = index[i * 3 + k]! * 3;
      corner[k * 3] = position[v]!;
      corner[k * 3 + 1] = position[v + 1]!;
      corner[k * 3 + 2] = position[v + 2]!;
    }
    const distance = probe.toTriangle(corner);
    if (distance >= least) return;
    least = distance;
    found = i;
    best.set(nearest);
  };
  if (near >= 0 && near < index.length / 3) look(near);
  bvh.shapecast({
    boundsTraverseOrder: (box) => probe.below(box),
    intersectsBounds: (_box, _isLeaf, score) => (score ?? 0) < least,
    intersectsRange: (offset, count) => {
      for (let i = offset; i < offset + count; i += 1) look(i);
      return least === 0;
    },
  });
  if (found < 0) return null;
  const distance = least * placement.scale;
  const onMesh = toCar(placement, probe.back(best[0]!, best[1]!, best[2]!));
  const onCore = toCar(placement, probe.back(best[3]!, best[4]!, best[5]!));
  const way = apart(onCore, onMesh);
  const onPart = way > 0 ? midway(onCore, onMesh, solid.radius / way) : onCore;
  return { gap: distance - solid.radius, at: midway(onPart, onMesh), triangle: found };
}

/** A part's core in the file's unit. */
interface Probe {
  /** Distance of a triangle of the file to the core. */
  toTriangle(corners: Float64Array): number;
  /** No triangle in the box is nearer to the core than this. */
  below(box: Box3): number;
  /** A point of the probe's own frame in the file's axes. */
  back(x: number, y: number, z: number): Vec3;
}

const probeOf = (placement: Similarity, solid: MeshSolid): Probe =>
  solid.shape === "capsule"
    ? segmentProbe(toFile(placement, solid.from), toFile(placement, solid.to))
    : cylinderProbe(placement, solid);

function segmentProbe(a: Vec3, b: Vec3): Probe {
  const d = subtract(b, a);
  const dd = d.x * d.x + d.y * d.y + d.z * d.z;
  const low = { x: Math.min(a.x, b.x), y: Math.min(a.y, b.y), z: Math.min(a.z, b.z) };
  const high = { x: Math.max(a.x, b.x), y: Math.max(a.y, b.y), z: Math.max(a.z, b.z) };
  return {
    toTriangle: (t) => segmentToTriangle(a.x, a.y, a.z, b.x, b.y, b.z, t),
    below: ({ min, max }) => {
      const boxes = boxesApart(min, max, low, high);
      const cx = (min.x + max.x) / 2;
      const cy = (min.y + max.y) / 2;
      const cz = (min.z + max.z) / 2;
      const along = dd > 0 ? ((cx - a.x) * d.x + (cy - a.y) * d.y + (cz - a.z) * d.z) / dd : 0;
      const t = Math.min(1, Math.max(0, along));
      const ball = Math.hypot(cx - a.x - d.x * t, cy - a.y - d.y * t, cz - a.z - d.z * t) - halfDiagonal(min, max);
      return Math.max(boxes, ball);
    },
    back: (x, y, z) => ({ x, y, z }),
  };
}

function cylinderProbe(placement: Similarity, wheel: MeshWheel): Probe {
  const c = toFile(placement, wheel.centre);
  const s = unit(directionToFile(placement, wheel.axis));
  const u = squareUnit(UP, s);
  const v = cross(s, u);
  const radius = wheel.coreRadius / placement.scale;
  const half = wheel.coreHalfWidth / placement.scale;
  const reach = (n: number): number => radius * Math.sqrt(Math.max(0, 1 - n * n)) + half * Math.abs(n);
  const low = { x: c.x - reach(s.x), y: c.y - reach(s.y), z: c.z - reach(s.z) };
  const high = { x: c.x + reach(s.x), y: c.y + reach(s.y), z: c.z + reach(s.z) };
  return {
    toTriangle: (t) => {
      for (let k = 0; k < 9; k += 3) {
        const x = t[k]! - c.x;
        const y = t[k + 1]! - c.y;
        const z = t[k + 2]! - c.z;
        triangle[k] = u.x * x + u.y * y + u.z * z;
        triangle[k + 1] = v.x * x + v.y * y + v.z * z;
        triangle[k + 2] = s.x * x + s.y * y + s.z * z;
      }
      return cylinderToTriangle(radius, half, triangle);
    },
    below: ({ min, max }) => {
      const boxes = boxesApart(min, max, low, high);
      const x = (min.x + max.x) / 2 - c.x;
      const y = (min.y + max.y) / 2 - c.y;
      const z = (min.z + max.z) / 2 - c.z;
      const axial = s.x * x + s.y * y + s.z * z;
      const across = Math.sqrt(Math.max(0, x * x + y * y + z * z - axial * axial));
      const ball =
        Math.hypot(Math.max(0, Math.abs(axial) - half), Math.max(0, across - radius)) - halfDiagonal(min, max);
      return Math.max(boxes, ball);
    },
    back: (x, y, z) => ({
      x: c.x + u.x * x + v.x * y + s.x * z,
      y: c.y + u.y * x + v.y * y + s.y * z,
      z: c.z + u.z * x + v.z * y + s.z * z,
    }),
  };
}

function boxesApart(min: Vec3, max: Vec3, low: Vec3, high: Vec3): number {
  const x = Math.max(0, low.x - max.x, min.x - high.x);
  const y = Math.max(0, low.y - max.y, min.y - high.y);
  const z = Math.max(0, low.z - max.z, min.z - high.z);
  return Math.sqrt(x * x + y * y + z * z);
}

const halfDiagonal = (min: Vec3, max: Vec3): number => Math.hypot(max.x - min.x, max.y - min.y, max.z - min.z) / 2;

/** Where a ray (vehicle axes) first meets the mesh; `file`: that spot in the file's axes and unit. */
export function hitBy(
  tree: MeshTree,
  placement: Similarity,
  origin: Vec3,
  direction: Vec3,
): { readonly file: Vec3; readonly car: Vec3 } | null {
  const from = toFile(placement, origin);
  const way = unit(directionToFile(placement, direction));
  const ray = new Ray(new Vector3(from.x, from.y, from.z), new Vector3(way.x, way.y, way.z));
  const hit = tree.bvh.raycastFirst(ray, 2);
  if (!hit) return null;
  const file = { x: hit.point.x, y: hit.point.y, z: hit.point.z };
  return { file, car: toCar(placement, file) };
}
