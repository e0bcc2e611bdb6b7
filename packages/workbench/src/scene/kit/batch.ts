import type { Vec3 } from "@armwright/engine";
import {
  type BufferGeometry,
  DynamicDrawUsage,
  Group,
  InstancedBufferAttribute,
  InstancedMesh,
  type Material,
} from "three";
import { STATE, type State } from "./materials.ts";
import { cross, FORWARD, squareUnit, UP } from "./space.ts";

/** Many solids of one form, drawn at once. Between `begin` and `end` each is put in its place anew; nothing is allocated. */
export class Batch {
  readonly object = new Group();
  private count = 0;
  private readonly meshes: readonly InstancedMesh[];
  private readonly geometry: BufferGeometry;
  private matrices: InstancedBufferAttribute;
  private states: InstancedBufferAttribute;

  /** The form is drawn once with each material. The batch owns the geometry, not the materials. */
  constructor(geometry: BufferGeometry, materials: readonly Material[], capacity = 16) {
    this.geometry = geometry;
    this.matrices = dynamic(capacity, 16);
    this.states = dynamic(capacity, 1);
    geometry.setAttribute("state", this.states);
    this.meshes = materials.map((material) => {
      const mesh = new InstancedMesh(geometry, material, 0);
      mesh.instanceMatrix = this.matrices;
      mesh.frustumCulled = false;
      mesh.matrixAutoUpdate = false;
      this.object.add(mesh);
      return mesh;
    });
  }

  begin(): void {
    this.count = 0;
  }

  end(): void {
    for (const mesh of this.meshes) mesh.count = this.count;
    this.object.visible = this.count > 0;
    this.matrices.needsUpdate = true;
    this.states.needsUpdate = true;
  }

  /** Puts one by the place of its origin and where its own three axes (with their lengths) go. */
  put(at: Vec3, x: Vec3, y: Vec3, z: Vec3, state: State = STATE.plain): void {
    if (this.count === this.states.count) this.grow();
    const m = this.matrices.array;
    const i = this.count * 16;
    m[i] = x.x;
    m[i + 1] = x.y;
    m[i + 2] = x.z;
    m[i + 4] = y.x;
    m[i + 5] = y.y;
    m[i + 6] = y.z;
    m[i + 8] = z.x;
    m[i + 9] = z.y;
    m[i + 10] = z.z;
    m[i + 12] = at.x;
    m[i + 13] = at.y;
    m[i + 14] = at.z;
    m[i + 15] = 1;
    this.states.array[this.count] = state;
    this.count += 1;
  }

  /** Puts one with its z axis along the unit vector `axis`, as far round as `side` says. */
  along(at: Vec3, axis: Vec3, radius: number, size: number, state: State = STATE.plain, side: Vec3 = UP): void {
    const x = squareUnit(side, axis);
    const y = cross(axis, x);
    this.put(at, times(x, radius), times(y, radius), times(axis, size), state);
  }

  /** Puts one whose z axis reaches from one point to the other. Nothing where the points coincide. */
  between(from: Vec3, to: Vec3, radius: number, state: State = STATE.plain): void {
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    const dz = to.z - from.z;
    const size = Math.sqrt(dx * dx + dy * dy + dz * dz);
    if (size > 1e-6) this.along(from, { x: dx / size, y: dy / size, z: dz / size }, radius, size, state, FORWARD);
  }

  dispose(): void {
    for (const mesh of this.meshes) mesh.dispose();
    this.geometry.dispose();
  }

  private grow(): void {
    const matrices = dynamic(this.states.count * 2, 16);
    const states = dynamic(this.states.count * 2, 1);
    matrices.array.set(this.matrices.array);
    states.array.set(this.states.array);
    this.matrices = matrices;
    this.states = states;
    // A geometry's old attributes are let go with it; this happens a few times at most.
    this.geometry.setAttribute("state", states);
    for (const mesh of this.meshes) mesh.instanceMatrix = matrices;
  }
}

const times = (a: Vec3, by: number): Vec3 => ({ x: a.x * by, y: a.y * by, z: a.z * by });

function dynamic(count: number, size: number): InstancedBufferAttribute {
  const attribute = new InstancedBufferAttribute(new Float32Array(count * size), size);
  attribute.setUsage(DynamicDrawUsage);
  return attribute;
}
