import { lstat, mkdir, open, readdir, rename, unlink } from "node:fs/promises";
import { join } from "node:path";
import { stampOf } from "./plain-file.ts";

let count = 0;

/** Why a write did not happen: another program changed the file since it was read. Nothing was written. */
export const CHANGED_UNDERNEATH = "changed underneath";

/**
 * Writes a whole file so that at every moment, also through a power cut, either the old content or the new stands
 * there: temporary file beside it, fsync, rename, fsync of the folder. When it returns, the new content is on the disk.
 * With `expected`, only over a file that still has that stamp.
 */
export async function writeDurably(
  folder: string,
  file: string,
  content: string | Uint8Array,
  expected?: string,
): Promise<typeof CHANGED_UNDERNEATH | "written"> {
  count += 1;
  const path = join(folder, file);
  const temporary = join(folder, `.${file}.${process.pid}.${count}.tmp`);
  const handle = await open(temporary, "wx", 0o644);
  try {
    await handle.writeFile(content);
    await handle.sync();
    await handle.close();
    if (expected !== undefined && (await stampOf(path)) !== expected) {
      await unlink(temporary);
      return CHANGED_UNDERNEATH;
    }
    await rename(temporary, path);
  } catch (error) {
    await handle.close().catch(() => undefined);
    await unlink(temporary).catch(() => undefined);
    throw error;
  }
  await syncFolder(folder);
  return "written";
}

/** Puts the folder's own list of names on the disk. Windows has no such thing and needs none. */
export async function syncFolder(folder: string): Promise<void> {
  if (process.platform === "win32") return;
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Makes a folder in a folder; refuses one that is a link, since that may lead anywhere. */
export async function makeFolder(parent: string, name: string): Promise<string> {
  const path = join(parent, name);
  const made = await mkdir(path).then(
    () => true,
    () => false,
  );
  const stat = await lstat(path);
  if (!stat.isDirectory()) throw new Error(`${path} has to be a folder of its own, not a file or a link`);
  if (made) await syncFolder(parent);
  return path;
}

const LEFTOVER = /^\..+\.(?:json|log|stl|obj|glb)\.(\d+)\.\d+\.tmp$/i;

/** Takes away what a process that was killed in the middle of a write has left; never what a living one is writing. */
export async function clearLeftovers(folder: string): Promise<void> {
  for (const file of await readdir(folder).catch(() => [])) {
    const pid = Number(LEFTOVER.exec(file)?.[1] ?? Number.NaN);
    if (Number.isNaN(pid) || (pid !== process.pid && isAlive(pid))) continue;
    await unlink(join(folder, file)).catch(() => undefined);
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && "code" in error && error.code === "EPERM";
  }
}
