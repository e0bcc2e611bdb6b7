import { lstat, open, readdir, rename, unlink } from "node:fs/promises";
import { join } from "node:path";
import { syncFolder } from "./durable.ts";
import { isMeshName } from "./names.ts";
import { liesIn } from "./plain-file.ts";

/** Largest scan or drawing of a chassis beside a document, bytes. */
export const LARGEST_MESH = 100_000_000;
const MOST_MESHES = 100;

export interface MeshEntry {
  readonly file: string;
  readonly bytes: number;
}

export async function meshesIn(root: string): Promise<readonly MeshEntry[]> {
  const found: MeshEntry[] = [];
  for (const entry of await readdir(root, { withFileTypes: true })) {
    if (!entry.isFile() || !isMeshName(entry.name)) continue;
    const stat = await lstat(join(root, entry.name)).catch(() => undefined);
    if (stat) found.push({ file: entry.name, bytes: stat.size });
  }
  return found.sort((a, b) => a.file.localeCompare(b.file, "en"));
}

/** The whole path of a mesh that is there as a plain file of the folder. */
export async function meshPath(root: string, file: string): Promise<string | undefined> {
  if (!isMeshName(file)) return undefined;
  const path = join(root, file);
  const stat = await lstat(path).catch(() => undefined);
  return stat?.isFile() && stat.size <= LARGEST_MESH && (await liesIn(root, path)) ? path : undefined;
}

export type MeshKept = "kept" | "too large" | "too many" | "taken";

/** Writes a mesh as it comes in; nothing is left of one that breaks off or is too large. Never over one that is there. */
export async function keepMesh(root: string, file: string, chunks: AsyncIterable<Uint8Array>): Promise<MeshKept> {
  const meshes = await meshesIn(root);
  if (meshes.some((mesh) => mesh.file.toLowerCase() === file.toLowerCase())) return "taken";
  if (meshes.length >= MOST_MESHES) return "too many";
  const temporary = join(root, `.${file}.${process.pid}.${Date.now()}.tmp`);
  const handle = await open(temporary, "wx", 0o644);
  let bytes = 0;
  try {
    for await (const chunk of chunks) {
      bytes += chunk.byteLength;
      if (bytes > LARGEST_MESH) return "too large";
      await handle.write(chunk);
    }
    await handle.sync();
    const isFree = await lstat(join(root, file)).then(
      () => false,
      () => true,
    );
    if (!isFree) return "taken";
    await rename(temporary, join(root, file));
    await syncFolder(root);
    return "kept";
  } finally {
    await handle.close();
    await unlink(temporary).catch(() => undefined);
  }
}
