import { lstat, readdir, unlink } from "node:fs/promises";
import { join } from "node:path";
import { makeFolder, writeDurably } from "./durable.ts";
import { thinned } from "./history-thinning.ts";
import { readPlainFile } from "./plain-file.ts";

/** What came after the version and made it an earlier one. */
export type Because = "edit" | "program" | "restore" | "remove";

/** An earlier version of a car document. */
export interface Version {
  readonly id: string;
  /** When it was put away, ISO 8601. */
  readonly at: string;
  readonly because: Because;
  readonly bytes: number;
}

const FOLDER = ".history";
const VERSION = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)(\d{3})Z-([0-9a-f]{12})-(edit|program|restore|remove)$/;
const ENDING = ".car.json";

/** The folder of a car's earlier versions and its journal; made where absent. */
export async function historyFolder(root: string, name: string): Promise<string> {
  return makeFolder(await makeFolder(root, FOLDER), name);
}

/** The same where it is there already, in folders that are no links; nothing is made. */
export async function historyFolderOf(root: string, name: string): Promise<string | undefined> {
  const outer = join(root, FOLDER);
  for (const path of [outer, join(outer, name)]) {
    const stat = await lstat(path).catch(() => undefined);
    if (!stat?.isDirectory()) return undefined;
  }
  return join(outer, name);
}

/** Names of all cars that have a history, also of those that were removed. */
export async function carsWithHistory(root: string): Promise<readonly string[]> {
  const stat = await lstat(join(root, FOLDER)).catch(() => undefined);
  if (!stat?.isDirectory()) return [];
  const entries = await readdir(join(root, FOLDER), { withFileTypes: true });
  return entries.filter((entry) => entry.isDirectory()).map(({ name }) => name);
}

/** Earlier versions, newest first. */
export async function versionsIn(folder: string): Promise<readonly Version[]> {
  const found: Version[] = [];
  for (const file of await readdir(folder).catch(() => [])) {
    const id = file.endsWith(ENDING) ? file.slice(0, -ENDING.length) : "";
    const parts = VERSION.exec(id);
    const stat = parts ? await lstat(join(folder, file)).catch(() => undefined) : undefined;
    if (!parts || !stat?.isFile()) continue;
    const [, year, month, day, hour, minute, second, thousandth] = parts;
    const at = `${year}-${month}-${day}T${hour}:${minute}:${second}.${thousandth}Z`;
    found.push({ id, at, because: parts[9] as Because, bytes: stat.size });
  }
  return found.sort((a, b) => (a.id < b.id ? 1 : -1));
}

/** Text of an earlier version; undefined where there is none of that name. */
export async function readVersion(folder: string, id: string, most: number): Promise<string | undefined> {
  if (!VERSION.test(id)) return undefined;
  const reading = await readPlainFile(folder, `${id}${ENDING}`, most);
  return reading.found === "text" ? reading.text : undefined;
}

/** Puts a version away, durably, unless the newest one says the same; then thins the older ones out. */
export async function keepVersion(
  folder: string,
  text: string,
  hash: string,
  because: Because,
  now: number,
): Promise<void> {
  const versions = await versionsIn(folder);
  const short = hash.slice(0, 12);
  if (versions[0]?.id.slice(20, 32) === short) return;
  // Never before the newest one, also where the clock was put back.
  const time = Math.max(now, versions[0] ? Date.parse(versions[0].at) + 1 : 0);
  const id = `${new Date(time).toISOString().replace(/[-:.]/g, "")}-${short}-${because}`;
  await writeDurably(folder, `${id}${ENDING}`, text);
  const kept = { id, at: new Date(time).toISOString(), because, bytes: Buffer.byteLength(text) };
  const keep = new Set(thinned([kept, ...versions], time));
  for (const version of versions) {
    if (!keep.has(version)) await unlink(join(folder, `${version.id}${ENDING}`)).catch(() => undefined);
  }
}
