import { BufferGeometry, Mesh, type Object3D } from "three";
import { GLTFLoader } from "three/examples/jsm/loaders/GLTFLoader.js";
import { OBJLoader } from "three/examples/jsm/loaders/OBJLoader.js";
import { STLLoader } from "three/examples/jsm/loaders/STLLoader.js";
import { withoutPictures } from "./glb.ts";

/** A mesh's triangles as one list, in the file's own axes and unit. */
export interface ReadMesh {
  readonly position: Float32Array;
  readonly index: Uint32Array;
  readonly triangles: number;
  /** Left out: of no area, or with corners that are no numbers. */
  readonly dropped: number;
}

/** What is wrong with a file, in the words of the job. */
export class MeshFault extends Error {}

/** More than this would not be drawn or asked with any speed. */
export const MOST_TRIANGLES = 2_000_000;

/** Reads STL (binary or text), OBJ or GLB, by the file's ending. Throws MeshFault. */
export async function readMesh(name: string, bytes: ArrayBuffer): Promise<ReadMesh> {
  const ending = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
  const geometries = await geometriesOf(ending, name, bytes);
  return joined(geometries);
}

async function geometriesOf(ending: string, name: string, bytes: ArrayBuffer): Promise<readonly BufferGeometry[]> {
  switch (ending) {
    case "stl":
      return [attempt(name, () => new STLLoader().parse(bytes))];
    case "obj":
      return geometriesIn(attempt(name, () => new OBJLoader().parse(new TextDecoder().decode(bytes))));
    case "glb": {
      const plain = withoutPictures(bytes);
      if (!plain.ok) throw new MeshFault(`${name}: ${plain.why}`);
      try {
        const { scene } = await new GLTFLoader().parseAsync(plain.bytes, "");
        scene.updateMatrixWorld(true);
        return geometriesIn(scene);
      } catch (error) {
        throw unreadable(name, error);
      }
    }
    default:
      throw new MeshFault(`${name}: the file's name ends in .${ending}; .stl, .obj and .glb can be read.`);
  }
}

function attempt<T>(name: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw unreadable(name, error);
  }
}

const unreadable = (name: string, error: unknown): MeshFault =>
  new MeshFault(`${name} cannot be read: ${error instanceof Error ? error.message : String(error)}`);

/** All meshes below an object, each where it stands in the file. */
function geometriesIn(root: Object3D): readonly BufferGeometry[] {
  const found: BufferGeometry[] = [];
  root.updateMatrixWorld(true);
  root.traverse((object) => {
    if (object instanceof Mesh && object.geometry instanceof BufferGeometry) {
      found.push(object.geometry.clone().applyMatrix4(object.matrixWorld));
    }
  });
  return found;
}

function joined(geometries: readonly BufferGeometry[]): ReadMesh {
  let vertices = 0;
  let corners = 0;
  for (const geometry of geometries) {
    const position = geometry.getAttribute("position");
    if (!position) continue;
    vertices += position.count;
    corners += geometry.getIndex()?.count ?? position.count;
  }
  if (corners < 3) throw new MeshFault("The file holds no triangles.");
  if (corners / 3 > MOST_TRIANGLES) {
    throw new MeshFault(
      `The file holds ${Math.round(corners / 3).toLocaleString("en")} triangles; at most ${MOST_TRIANGLES.toLocaleString("en")} can be used. Thin it out first; what is near the suspension is enough.`,
    );
  }
  const position = new Float32Array(vertices * 3);
  const index = new Uint32Array(corners);
  let first = 0;
  let count = 0;
  let dropped = 0;
  for (const geometry of geometries) {
    const attribute = geometry.getAttribute("position");
    if (!attribute) continue;
    for (let i = 0; i < attribute.count; i += 1) {
      position[(first + i) * 3] = attribute.getX(i);
      position[(first + i) * 3 + 1] = attribute.getY(i);
      position[(first + i) * 3 + 2] = attribute.getZ(i);
    }
    const order = geometry.getIndex();
    const each = order?.count ?? attribute.count;
    for (let i = 0; i + 2 < each; i += 3) {
      const a = first + (order ? order.getX(i) : i);
      const b = first + (order ? order.getX(i + 1) : i + 1);
      const c = first + (order ? order.getX(i + 2) : i + 2);
      if (!hasArea(position, a, b, c)) {
        dropped += 1;
        continue;
      }
      index[count] = a;
      index[count + 1] = b;
      index[count + 2] = c;
      count += 3;
    }
    first += attribute.count;
    geometry.dispose();
  }
  if (count === 0) throw new MeshFault("The file holds no triangles that have an area.");
  return { position, index: count === corners ? index : index.slice(0, count), triangles: count / 3, dropped };
}

/** False also where a corner is no number. */
function hasArea(p: Float32Array, a: number, b: number, c: number): boolean {
  const ux = p[b * 3]! - p[a * 3]!;
  const uy = p[b * 3 + 1]! - p[a * 3 + 1]!;
  const uz = p[b * 3 + 2]! - p[a * 3 + 2]!;
  const vx = p[c * 3]! - p[a * 3]!;
  const vy = p[c * 3 + 1]! - p[a * 3 + 1]!;
  const vz = p[c * 3 + 2]! - p[a * 3 + 2]!;
  const area = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
  return area > 0 && Number.isFinite(area);
}
