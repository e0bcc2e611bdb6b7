import { type FileHandle, open, readFile } from "node:fs/promises";
import { join } from "node:path";
import { writeDurably } from "./durable.ts";

/** What one line of the journal says. */
type Line =
  /** About to be written: the document with this hash, which has these operations done. */
  | { readonly saving: string; readonly ids: readonly string[] }
  | { readonly saved: string }
  | { readonly dropped: string };

const FILE = "operations.log";
/** Operations that are known again when they come a second time, also after a restart. */
const REMEMBERED = 5000;
const LONGEST = 1000;

/**
 * Which operations are done, kept beside the document. A line is on the disk before the document is written, and counts
 * only if the document with its hash came to be: so an operation that comes again after a crash is done exactly once.
 */
export class Journal {
  readonly #folder: string;
  readonly #done: Set<string>;
  #file: FileHandle;
  #lines = 0;

  private constructor(folder: string, done: Set<string>, file: FileHandle, lines: number) {
    this.#folder = folder;
    this.#done = done;
    this.#file = file;
    this.#lines = lines;
  }

  /** Opens the journal in the folder; `present` is the hash of the document as it stands on the disk. */
  static async open(folder: string, present: string): Promise<Journal> {
    const text = await readFile(join(folder, FILE), "utf8").catch(() => "");
    const lines = text.split("\n").flatMap(parsed);
    const { done, unsure } = settled(lines, present);
    const file = await open(join(folder, FILE), "a", 0o644);
    const journal = new Journal(folder, done, file, lines.length);
    // A line that was cut off in the middle must not run into the next.
    if (text !== "" && !text.endsWith("\n")) await file.appendFile("\n");
    if (unsure !== undefined) await journal.#add(unsure === present ? { saved: unsure } : { dropped: unsure }, true);
    return journal;
  }

  has(id: string): boolean {
    return this.#done.has(id);
  }

  /** Before the document is written. On the disk when it returns. */
  async saving(hash: string, ids: readonly string[]): Promise<void> {
    await this.#add({ saving: hash, ids }, true);
  }

  /** After it was written. */
  async saved(hash: string, ids: readonly string[]): Promise<void> {
    for (const id of ids) this.#done.add(id);
    await this.#add({ saved: hash }, false);
    if (this.#lines > LONGEST) await this.#shorten(hash);
  }

  /** After it could not be written. */
  async dropped(hash: string): Promise<void> {
    await this.#add({ dropped: hash }, false);
  }

  async close(): Promise<void> {
    await this.#file.close();
  }

  async #add(line: Line, now: boolean): Promise<void> {
    await this.#file.appendFile(`${JSON.stringify(line)}\n`);
    if (now) await this.#file.datasync();
    this.#lines += 1;
  }

  async #shorten(hash: string): Promise<void> {
    const ids = [...this.#done].slice(-REMEMBERED);
    this.#done.clear();
    for (const id of ids) this.#done.add(id);
    const lines: readonly Line[] = [{ saving: hash, ids }, { saved: hash }];
    await writeDurably(this.#folder, FILE, lines.map((line) => `${JSON.stringify(line)}\n`).join(""));
    await this.#file.close();
    this.#file = await open(join(this.#folder, FILE), "a", 0o644);
    this.#lines = lines.length;
  }
}

/** What is done; and the hash of a last write of which the journal does not know how it ended. */
function settled(lines: readonly Line[], present: string): { done: Set<string>; unsure: string | undefined } {
  const done = new Set<string>();
  let open: { readonly saving: string; readonly ids: readonly string[] } | undefined;
  const close = (happened: boolean) => {
    if (happened) for (const id of open?.ids ?? []) done.add(id);
    open = undefined;
  };
  for (const line of lines) {
    // "saved" is written without waiting for the disk; the next "saving" follows only on one that happened.
    if ("saving" in line) {
      close(true);
      open = line;
    } else close("saved" in line);
  }
  const unsure = open?.saving;
  close(unsure === present);
  return { done, unsure };
}

function parsed(text: string): readonly Line[] {
  try {
    const line: unknown = JSON.parse(text);
    if (typeof line !== "object" || line === null) return [];
    if ("saving" in line && typeof line.saving === "string" && "ids" in line && Array.isArray(line.ids)) {
      return [{ saving: line.saving, ids: line.ids.filter((id): id is string => typeof id === "string") }];
    }
    if ("saved" in line && typeof line.saved === "string") return [{ saved: line.saved }];
    if ("dropped" in line && typeof line.dropped === "string") return [{ dropped: line.dropped }];
    return [];
  } catch {
    return [];
  }
}
