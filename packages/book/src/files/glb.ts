import type { Solid } from "./solid.ts";

/**
 * Solids as a binary glTF 2.0 (Khronos): a node and mesh each, metres. The form has y up and the front toward +z, with x to
 * the left: the car's left, up and forward.
 */
export function glbBytes(solids: readonly Solid[], title: string): Uint8Array {
  const views: { buffer: 0; byteOffset: number; byteLength: number; target: number }[] = [];
  const accessors: object[] = [];
  const chunks: Uint8Array[] = [];
  let offset = 0;
  const add = (data: Float32Array | Uint32Array, target: number): number => {
    const bytes = new Uint8Array(data.buffer);
    views.push({ buffer: 0, byteOffset: offset, byteLength: bytes.length, target });
    chunks.push(bytes);
    offset += bytes.length;
    return views.length - 1;
  };
  const meshes = solids.map(({ name, corners, triangles }) => {
    const positions = new Float32Array(corners.length);
    for (let i = 0; i < corners.length; i += 3) {
      positions[i] = corners[i + 1]!;
      positions[i + 1] = corners[i + 2]!;
      positions[i + 2] = corners[i]!;
    }
    const axis = (k: number): number[] => Array.from(positions.filter((_, i) => i % 3 === k));
    accessors.push({
      bufferView: add(positions, ARRAY_BUFFER),
      componentType: FLOAT,
      count: corners.length / 3,
      type: "VEC3",
      min: [0, 1, 2].map((k) => Math.min(...axis(k))),
      max: [0, 1, 2].map((k) => Math.max(...axis(k))),
    });
    accessors.push({
      bufferView: add(new Uint32Array(triangles), ELEMENT_ARRAY_BUFFER),
      componentType: UNSIGNED_INT,
      count: triangles.length,
      type: "SCALAR",
    });
    return {
      name,
      primitives: [{ attributes: { POSITION: accessors.length - 2 }, indices: accessors.length - 1, material: 0 }],
    };
  });
  const json = {
    asset: { version: "2.0", generator: "Armwright" },
    scene: 0,
    scenes: [{ name: title, nodes: meshes.map((_, index) => index) }],
    nodes: meshes.map(({ name }, mesh) => ({ name, mesh })),
    meshes,
    materials: [{ name: "steel", pbrMetallicRoughness: { metallicFactor: 0.2, roughnessFactor: 0.7 } }],
    accessors,
    bufferViews: views,
    buffers: [{ byteLength: offset }],
  };
  const text = padded(new TextEncoder().encode(JSON.stringify(json)), 0x20);
  const whole = new Uint8Array(12 + 8 + text.length + 8 + offset);
  const view = new DataView(whole.buffer);
  const head = [GLTF, 2, whole.length, text.length, JSON_CHUNK];
  for (let i = 0; i < head.length; i += 1) view.setUint32(4 * i, head[i]!, true);
  whole.set(text, 20);
  view.setUint32(20 + text.length, offset, true);
  view.setUint32(24 + text.length, BINARY_CHUNK, true);
  let at = 28 + text.length;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

const GLTF = 0x46546c67;
const JSON_CHUNK = 0x4e4f534a;
const BINARY_CHUNK = 0x004e4942;
const ARRAY_BUFFER = 34962;
const ELEMENT_ARRAY_BUFFER = 34963;
const FLOAT = 5126;
const UNSIGNED_INT = 5125;

function padded(bytes: Uint8Array, fill: number): Uint8Array {
  const longer = new Uint8Array(Math.ceil(bytes.length / 4) * 4).fill(fill);
  longer.set(bytes);
  return longer;
}
