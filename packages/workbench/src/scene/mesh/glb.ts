const MAGIC = 0x46546c67;
const JSON_CHUNK = 0x4e4f534a;
const HEAD = 12;
const CHUNK_HEAD = 8;

/**
 * A GLB file (glTF 2.0, §4.4 "GLB File Format") without materials and pictures, which only the eye needs: so nothing is
 * fetched or decoded. Refuses what would need a decoder or a second file.
 */
export function withoutPictures(
  bytes: ArrayBuffer,
): { readonly ok: true; readonly bytes: ArrayBuffer } | { readonly ok: false; readonly why: string } {
  if (bytes.byteLength < HEAD + CHUNK_HEAD) return { ok: false, why: "the file is too short for a GLB." };
  const view = new DataView(bytes);
  if (view.getUint32(0, true) !== MAGIC) return { ok: false, why: "this is no GLB file." };
  const jsonLength = view.getUint32(HEAD, true);
  if (view.getUint32(HEAD + 4, true) !== JSON_CHUNK || HEAD + CHUNK_HEAD + jsonLength > bytes.byteLength) {
    return { ok: false, why: "the GLB file is cut short." };
  }
  const text = new TextDecoder().decode(new Uint8Array(bytes, HEAD + CHUNK_HEAD, jsonLength));
  let content: GltfContent;
  try {
    content = JSON.parse(text) as GltfContent;
  } catch {
    return { ok: false, why: "the GLB file's contents cannot be read." };
  }
  const packed = (content.extensionsRequired ?? []).find((name) => /draco|meshopt|quantization/i.test(name));
  if (packed !== undefined && !/quantization/i.test(packed)) {
    return { ok: false, why: `its triangles are compressed (${packed}); save it without compression.` };
  }
  if ((content.buffers ?? []).some(({ uri }) => uri !== undefined && !uri.startsWith("data:"))) {
    return { ok: false, why: "it needs a second file; save it as one GLB." };
  }
  const { materials: _, textures: _t, images: _i, samplers: _s, ...rest } = content;
  for (const mesh of rest.meshes ?? []) for (const primitive of mesh.primitives ?? []) delete primitive["material"];
  return { ok: true, bytes: rebuilt(bytes, JSON.stringify(rest), HEAD + CHUNK_HEAD + jsonLength) };
}

interface GltfContent {
  readonly extensionsRequired?: readonly string[];
  readonly buffers?: readonly { readonly uri?: string }[];
  readonly meshes?: readonly { readonly primitives?: readonly Record<string, unknown>[] }[];
  readonly materials?: unknown;
  readonly textures?: unknown;
  readonly images?: unknown;
  readonly samplers?: unknown;
}

/** The file with another JSON chunk before the chunks that follow it. */
function rebuilt(bytes: ArrayBuffer, json: string, restFrom: number): ArrayBuffer {
  const text = new TextEncoder().encode(json);
  const padded = Math.ceil(text.length / 4) * 4;
  const rest = new Uint8Array(bytes, restFrom);
  const total = HEAD + CHUNK_HEAD + padded + rest.length;
  const made = new Uint8Array(total);
  const view = new DataView(made.buffer);
  view.setUint32(0, MAGIC, true);
  view.setUint32(4, 2, true);
  view.setUint32(8, total, true);
  view.setUint32(HEAD, padded, true);
  view.setUint32(HEAD + 4, JSON_CHUNK, true);
  made.fill(0x20, HEAD + CHUNK_HEAD, HEAD + CHUNK_HEAD + padded);
  made.set(text, HEAD + CHUNK_HEAD);
  made.set(rest, HEAD + CHUNK_HEAD + padded);
  return made.buffer;
}
