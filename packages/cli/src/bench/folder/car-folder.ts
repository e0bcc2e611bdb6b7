import { createHash } from "node:crypto";
import { type FSWatcher, watch } from "node:fs";
import { readdir, realpath } from "node:fs/promises";
import { basename, join } from "node:path";
import { CarFile, type CarFileEvent, type CarState } from "./car-file.ts";
import { clearLeftovers } from "./durable.ts";
import { carsWithHistory, historyFolderOf } from "./history.ts";
import type { Condition, Forms } from "./judgement.ts";
import { CAR_ENDING, carFile, carNameOf, isCarName, NAME_RULE } from "./names.ts";
import { stampOf } from "./plain-file.ts";

export interface CarEntry {
  readonly name: string;
  /** What the document calls the car; its file's name where it does not say. */
  readonly title: string;
  readonly condition: Condition;
  readonly revision: number;
}

export interface Listing {
  readonly cars: readonly CarEntry[];
  /** Car documents of the folder that are not served, and why. */
  readonly passedOver: readonly { readonly file: string; readonly because: string }[];
  /** Cars that are gone and can be brought back out of their history. */
  readonly removed: readonly string[];
}

export type FolderEvent = CarFileEvent | { readonly kind: "listed" };

/** Where the system tells of no change, it is seen within this time, ms. */
const LOOK_EVERY = 700;
const GATHER = 30;
export const MOST_CARS = 500;

/** The car documents of one folder, as plain files: read, edited, watched. */
export class CarFolder {
  readonly root: string;
  /** The same for the same folder, and tells nothing of where it lies. */
  readonly id: string;
  readonly title: string;
  readonly #forms: Forms;
  readonly #files = new Map<string, CarFile>();
  readonly #listeners = new Set<(event: FolderEvent) => void>();
  #watcher: FSWatcher | undefined;
  #timer: NodeJS.Timeout | undefined;
  #soon: NodeJS.Timeout | undefined;
  #looking: Promise<void> | undefined;
  #again = false;
  #closed = false;
  #names = "";

  private constructor(root: string, forms: Forms) {
    this.root = root;
    this.#forms = forms;
    this.title = basename(root);
    this.id = createHash("sha256").update(root).digest("hex").slice(0, 16);
  }

  static async open(path: string, forms: Forms): Promise<CarFolder> {
    const folder = new CarFolder(await realpath(path), forms);
    await clearLeftovers(folder.root);
    for (const name of await carsWithHistory(folder.root)) await clearLeftovers(join(folder.root, ".history", name));
    await folder.#look();
    folder.#watch();
    return folder;
  }

  subscribe(listener: (event: FolderEvent) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** The car of that name; undefined where there is none, or the name breaks the rule. */
  async car(name: string): Promise<CarFile | undefined> {
    if (!isCarName(name)) return undefined;
    const isThere = this.#files.has(name) || (await stampOf(join(this.root, carFile(name)))) !== "";
    return isThere ? this.place(name) : undefined;
  }

  /** The car of that name, also one that was removed and has only its history. */
  async carOrHistory(name: string): Promise<CarFile | undefined> {
    const car = await this.car(name);
    if (car || !isCarName(name) || (await historyFolderOf(this.root, name)) === undefined) return car;
    return this.place(name);
  }

  /** Where a car of that name is, or may be put. Only for names that keep the rule. */
  place(name: string): CarFile {
    const file = this.#files.get(name) ?? new CarFile(this.root, name, this.#forms, (event) => this.#tell(event));
    this.#files.set(name, file);
    return file;
  }

  async list(): Promise<Listing> {
    const entries = await this.#entries();
    const cars: CarEntry[] = [];
    for (const name of entries.names) {
      const state = await this.place(name).read();
      if (state) cars.push({ name, title: titleOf(state), condition: state.condition, revision: state.revision });
    }
    const removed = (await carsWithHistory(this.root)).filter(
      (name) => isCarName(name) && !entries.names.includes(name),
    );
    return { cars, passedOver: entries.passedOver, removed };
  }

  /** A name like the wanted one that no file has, also not in other letters' case. */
  async freeName(wanted: string): Promise<string> {
    const base = wanted
      .replace(/[^A-Za-z0-9 _-]+/g, " ")
      .replace(/ +/g, " ")
      .trim()
      .replace(/^[-_ ]+/, "")
      .slice(0, 70)
      .trim();
    const start = isCarName(base) ? base : "car";
    const taken = new Set((await readdir(this.root)).map((file) => file.toLowerCase()));
    for (let count = 1; ; count++) {
      const name = count === 1 ? start : `${start} ${count}`;
      if (!taken.has(carFile(name).toLowerCase())) return name;
    }
  }

  async close(): Promise<void> {
    this.#closed = true;
    this.#watcher?.close();
    clearInterval(this.#timer);
    clearTimeout(this.#soon);
    await this.#looking;
    await Promise.all([...this.#files.values()].map((file) => file.close()));
    this.#listeners.clear();
  }

  #tell(event: FolderEvent): void {
    for (const listener of this.#listeners) listener(event);
  }

  async #entries(): Promise<{ names: readonly string[]; passedOver: Listing["passedOver"] }> {
    const names: string[] = [];
    const passedOver: { file: string; because: string }[] = [];
    for (const entry of await readdir(this.root, { withFileTypes: true })) {
      if (!entry.name.endsWith(CAR_ENDING) || entry.name.startsWith(".")) continue;
      const name = carNameOf(entry.name);
      if (name === undefined) passedOver.push({ file: entry.name, because: NAME_RULE });
      else if (!entry.isFile())
        passedOver.push({ file: entry.name, because: "it is a link or a folder, not a plain file" });
      else if (names.length >= MOST_CARS)
        passedOver.push({ file: entry.name, because: `a folder holds ${MOST_CARS} cars at most` });
      else names.push(name);
    }
    return { names: names.sort((a, b) => a.localeCompare(b, "en")), passedOver };
  }

  #watch(): void {
    try {
      this.#watcher = watch(this.root, () => this.#lookSoon());
      this.#watcher.on("error", () => this.#watcher?.close());
    } catch {
      // Some network drives tell nothing; looking does it there.
    }
    this.#timer = setInterval(() => this.#lookSoon(), LOOK_EVERY);
    this.#timer.unref();
  }

  #lookSoon(): void {
    if (this.#soon || this.#closed) return;
    this.#soon = setTimeout(() => {
      this.#soon = undefined;
      if (this.#looking) this.#again = true;
      else
        this.#looking = this.#look().finally(() => {
          this.#looking = undefined;
          if (this.#again) this.#lookSoon();
          this.#again = false;
        });
    }, GATHER);
    this.#soon.unref();
  }

  /** Looks at every file's stamp and reads those that differ. */
  async #look(): Promise<void> {
    const { names } = await this.#entries().catch(() => ({ names: [] as readonly string[] }));
    for (const name of new Set([...names, ...this.#files.keys()])) {
      if (this.#closed) return;
      const file = this.#files.get(name);
      const stamp = await stampOf(join(this.root, carFile(name)));
      if ((file?.stamp ?? "") === stamp) continue;
      await this.place(name)
        .read()
        .catch(() => undefined);
    }
    const listed = names.join("\n");
    if (listed !== this.#names) this.#tell({ kind: "listed" });
    this.#names = listed;
  }
}

function titleOf(state: CarState): string {
  const said = /"name"\s*:\s*("(?:[^"\\]|\\.)*")/.exec(state.text)?.[1];
  try {
    const title: unknown = said === undefined ? undefined : JSON.parse(said);
    return typeof title === "string" && title !== "" ? title : state.name;
  } catch {
    return state.name;
  }
}
