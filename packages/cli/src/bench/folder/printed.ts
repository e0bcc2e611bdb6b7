import { readdir, unlink } from "node:fs/promises";
import { join } from "node:path";
import { writeDurably } from "./durable.ts";
import { historyFolder, historyFolderOf } from "./history.ts";
import { readPlainFile } from "./plain-file.ts";

/** A build book that was made of a car: what is printed on each of its sheets. */
export interface Printed {
  readonly fingerprint: string;
  /** Day, `2026-11-25`. */
  readonly day: string;
  readonly paper: "letter" | "a4";
}

const FILE = "printed.json";
const MOST = 30;
const LARGEST = 20_000;

/** Books made of a car, the newest first; a record that cannot be read counts as none. */
export async function printedOf(root: string, name: string): Promise<readonly Printed[]> {
  const folder = await historyFolderOf(root, name);
  if (folder === undefined) return [];
  const reading = await readPlainFile(folder, FILE, LARGEST);
  if (reading.found !== "text") return [];
  try {
    const list: unknown = JSON.parse(reading.text);
    return Array.isArray(list) ? list.filter(isPrinted).slice(0, MOST) : [];
  } catch {
    return [];
  }
}

/**
 * Remembers that a book was made, and the car that it was made from: the history is thinned out, paper is not. The same once
 * more on one day is one.
 */
export async function rememberPrinted(root: string, name: string, printed: Printed, text: string): Promise<void> {
  const before = await printedOf(root, name);
  const others = before.filter(
    (each) => each.fingerprint !== printed.fingerprint || each.day !== printed.day || each.paper !== printed.paper,
  );
  const list = [printed, ...others].slice(0, MOST);
  const folder = await historyFolder(root, name);
  await writeDurably(folder, carFile(printed.fingerprint), text);
  await writeDurably(folder, FILE, `${JSON.stringify(list)}\n`);
  const kept = new Set(list.map(({ fingerprint }) => carFile(fingerprint)));
  for (const file of await readdir(folder).catch(() => [])) {
    if (CAR_FILE.test(file) && !kept.has(file)) await unlink(join(folder, file)).catch(() => undefined);
  }
}

const CAR_FILE = /^printed-[0-9A-F]{4}-[0-9A-F]{4}-[0-9A-F]{4}\.car\.json$/;
const carFile = (fingerprint: string): string => `printed-${fingerprint}.car.json`;

/** The car that a printed sheet was made from, as it was then; undefined where no book with that fingerprint is known. */
export async function printedCar(
  root: string,
  name: string,
  fingerprint: string,
  most: number,
): Promise<string | undefined> {
  const file = carFile(fingerprint);
  const folder = await historyFolderOf(root, name);
  if (folder === undefined || !CAR_FILE.test(file)) return undefined;
  const reading = await readPlainFile(folder, file, most);
  return reading.found === "text" ? reading.text : undefined;
}

function isPrinted(value: unknown): value is Printed {
  const one = value as Partial<Record<keyof Printed, unknown>> | null;
  return (
    typeof one === "object" &&
    one !== null &&
    typeof one.fingerprint === "string" &&
    /^[0-9A-F-]{14}$/.test(one.fingerprint) &&
    typeof one.day === "string" &&
    /^\d{4}-\d\d-\d\d$/.test(one.day) &&
    (one.paper === "letter" || one.paper === "a4")
  );
}
