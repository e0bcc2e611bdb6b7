import { constants } from "node:fs";
import { lstat, open, realpath } from "node:fs/promises";
import { dirname, join } from "node:path";

export type FileReading =
  | { readonly found: "text"; readonly text: string; readonly stamp: string; readonly changedAt: number }
  | { readonly found: "unreadable"; readonly because: string; readonly stamp: string; readonly changedAt: number }
  | { readonly found: "nothing" };

/** Tells one content of a file from the next without reading it: file, size and times. "" where there is no file. */
export async function stampOf(path: string): Promise<string> {
  const stat = await lstat(path, { bigint: true }).catch(() => undefined);
  return stat ? stamp(stat) : "";
}

const stamp = (stat: { ino: bigint; size: bigint; mtimeNs: bigint; ctimeNs: bigint }): string =>
  `${stat.ino}:${stat.size}:${stat.mtimeNs}:${stat.ctimeNs}`;

/**
 * Reads a file that lies in the folder itself as text. Symbolic links, pipes and whatever else is no plain file are not
 * followed; more than `most` bytes are not read.
 */
export async function readPlainFile(folder: string, file: string, most: number): Promise<FileReading> {
  const path = join(folder, file);
  const before = await lstat(path, { bigint: true }).catch(() => undefined);
  if (!before) return { found: "nothing" };
  const facts = { stamp: stamp(before), changedAt: Number(before.mtimeMs) };
  const unreadable = (because: string): FileReading => ({ found: "unreadable", because, ...facts });
  if (!before.isFile()) return unreadable("it is a link or a device, not a plain file; put the file itself here");
  if (!(await liesIn(folder, path))) return unreadable("it leads out of the folder");
  const handle = await open(path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0)).catch(() => undefined);
  if (!handle)
    return (await stampOf(path)) === "" ? { found: "nothing" } : unreadable("you have no permission to read it");
  try {
    const stat = await handle.stat({ bigint: true });
    const read = { stamp: stamp(stat), changedAt: Number(stat.mtimeMs) };
    if (stat.size > BigInt(most)) {
      return { found: "unreadable", because: `it has ${stat.size} bytes; ${most} is the most`, ...read };
    }
    const text = decoded(await handle.readFile());
    return text === undefined
      ? { found: "unreadable", because: "it is not text in UTF-8", ...read }
      : { found: "text", text, ...read };
  } finally {
    await handle.close();
  }
}

/** Whether the path, with every link followed, still lies directly in the folder. */
export async function liesIn(folder: string, path: string): Promise<boolean> {
  const [real, home] = await Promise.all([realpath(path).catch(() => ""), realpath(folder).catch(() => undefined)]);
  return home !== undefined && real !== "" && dirname(real) === home;
}

function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
