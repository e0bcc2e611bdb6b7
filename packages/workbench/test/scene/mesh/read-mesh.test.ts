import { describe, expect, test } from "vitest";
import { MeshFault, readMesh } from "../../../src/scene/mesh/read-mesh.ts";

// One tetrahedron in every kind of file.

const CORNERS = [
  [0, 0, 0],
  [100, 0, 0],
  [0, 100, 0],
  [0, 0, 100],
] as const;
const FACES = [
  [0, 2, 1],
  [0, 1, 3],
  [0, 3, 2],
  [1, 2, 3],
] as const;

const bytesOf = (text: string): ArrayBuffer => new TextEncoder().encode(text).buffer as ArrayBuffer;

const textStl = (): ArrayBuffer =>
  bytesOf(
    `solid a\n${FACES.map(
      (face) =>
        `facet normal 0 0 0\nouter loop\n${face.map((i) => `vertex ${CORNERS[i].join(" ")}`).join("\n")}\nendloop\nendfacet`,
    ).join("\n")}\nendsolid a\n`,
  );

function binaryStl(): ArrayBuffer {
  const bytes = new ArrayBuffer(84 + FACES.length * 50);
  const view = new DataView(bytes);
  view.setUint32(80, FACES.length, true);
  FACES.forEach((face, n) => {
    face.forEach((i, k) => {
      CORNERS[i].forEach((value, c) => {
        view.setFloat32(84 + n * 50 + 12 + k * 12 + c * 4, value, true);
      });
    });
  });
  return bytes;
}

const obj = (): ArrayBuffer =>
  bytesOf(
    `${CORNERS.map((c) => `v ${c.join(" ")}`).join("\n")}\n${FACES.map((f) => `f ${f.map((i) => i + 1).join(" ")}`).join("\n")}\n`,
  );

function glb(change: (content: Record<string, unknown>) => void = () => undefined): ArrayBuffer {
  const data = new ArrayBuffer(48 + 24);
  new Float32Array(data, 0, 12).set(CORNERS.flat());
  new Uint16Array(data, 48, 12).set(FACES.flat());
  const content: Record<string, unknown> = {
    asset: { version: "2.0" },
    scene: 0,
    scenes: [{ nodes: [0] }],
    // Stands ten to the side, so that the node's own place is seen to count.
    nodes: [{ mesh: 0, translation: [10, 0, 0] }],
    meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1, material: 0 }] }],
    materials: [{ pbrMetallicRoughness: { baseColorTexture: { index: 0 } } }],
    textures: [{ source: 0 }],
    images: [{ uri: "https://pictures.invalid/paint.png" }],
    accessors: [
      { bufferView: 0, componentType: 5126, count: 4, type: "VEC3", min: [0, 0, 0], max: [100, 100, 100] },
      { bufferView: 1, componentType: 5123, count: 12, type: "SCALAR" },
    ],
    bufferViews: [
      { buffer: 0, byteOffset: 0, byteLength: 48 },
      { buffer: 0, byteOffset: 48, byteLength: 24 },
    ],
    buffers: [{ byteLength: 72 }],
  };
  change(content);
  const text = new TextEncoder().encode(JSON.stringify(content));
  const padded = Math.ceil(text.length / 4) * 4;
  const bytes = new Uint8Array(12 + 8 + padded + 8 + 72);
  const view = new DataView(bytes.buffer);
  bytes.fill(0x20, 20, 20 + padded);
  bytes.set(text, 20);
  bytes.set(new Uint8Array(data), 28 + padded);
  [
    [0, 0x46546c67],
    [4, 2],
    [8, bytes.length],
    [12, padded],
    [16, 0x4e4f534a],
    [20 + padded, 72],
    [24 + padded, 0x004e4942],
  ].forEach(([at, value]) => {
    view.setUint32(at!, value!, true);
  });
  return bytes.buffer;
}

/** Volume by the divergence theorem: right only where every triangle is there, once and the right way round. */
function volume({ position: p, index }: { position: Float32Array; index: Uint32Array }): number {
  let six = 0;
  for (let i = 0; i < index.length; i += 3) {
    const [a, b, c] = [index[i]! * 3, index[i + 1]! * 3, index[i + 2]! * 3];
    six += p[a]! * (p[b + 1]! * p[c + 2]! - p[b + 2]! * p[c + 1]!);
    six += p[a + 1]! * (p[b + 2]! * p[c]! - p[b]! * p[c + 2]!);
    six += p[a + 2]! * (p[b]! * p[c + 1]! - p[b + 1]! * p[c]!);
  }
  return six / 6;
}

describe("reading a mesh file", () => {
  test.each([
    ["frame.stl", textStl()],
    ["frame.STL", binaryStl()],
    ["frame.obj", obj()],
    ["frame.glb", glb()],
  ])("%s: all four triangles, their way round", async (name, bytes) => {
    const mesh = await readMesh(name, bytes);
    expect(mesh.triangles).toBe(4);
    expect(mesh.dropped).toBe(0);
    expect(volume(mesh)).toBeCloseTo(1e6 / 6, 3);
  });

  test("a GLB's nodes are placed, and its pictures never asked for", async () => {
    const { position } = await readMesh("frame.glb", glb());
    expect(Math.min(...[0, 3, 6, 9].map((i) => position[i]!))).toBe(10);
  });

  test("triangles of no area, and corners that are no numbers, are left out and counted", async () => {
    const mesh = await readMesh("a.obj", bytesOf("v 0 0 0\nv 1 0 0\nv 0 1 0\nv nan 0 0\nf 1 2 3\nf 1 1 2\nf 1 2 4\n"));
    expect([mesh.triangles, mesh.dropped]).toEqual([1, 2]);
  });

  test.each([
    ["chassis.step", textStl(), /\.stl, \.obj and \.glb/],
    ["empty.obj", bytesOf("# nothing\n"), /no triangles/],
    ["short.glb", new ArrayBuffer(8), /too short/],
    ["other.glb", textStl(), /no GLB/],
    [
      "packed.glb",
      glb((c) => Object.assign(c, { extensionsRequired: ["KHR_draco_mesh_compression"] })),
      /without compression/,
    ],
    ["two.glb", glb((c) => Object.assign(c, { buffers: [{ byteLength: 72, uri: "other.bin" }] })), /one GLB/],
  ])("%s is refused in plain words", async (name, bytes, words) => {
    const refusal = readMesh(name, bytes);
    await expect(refusal).rejects.toThrow(words);
    await expect(refusal).rejects.toBeInstanceOf(MeshFault);
  });
});
