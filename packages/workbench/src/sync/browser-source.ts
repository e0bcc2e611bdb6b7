import { type CarDocument, writeCarDocument } from "@armwright/engine/document";
import { baseOf, viewOf, withEdit } from "./car-view.ts";
import { browserItems, type Items } from "./items.ts";
import { memoryShelf, type Shelf } from "./shelf.ts";
import type { CarState, DocumentSource, Edit, Listing, Made, SourceEvent, Status, Version } from "./source.ts";

export interface BrowserOptions {
  readonly items?: Items;
  readonly shelf?: Shelf;
}

const CAR = "armwright:car:";
const LONGEST_NAME = 80;
/** Edits closer together than this are one piece of work, ms. */
const ONE_PIECE = 30_000;
const LONGEST_PIECE = 300_000;
const MOST_VERSIONS = 100;

/** Cars in this browser's own storage: no server, no network. Two pages of it work on the same cars. */
export function browserSource(options: BrowserOptions = {}): DocumentSource {
  return new BrowserSource(options);
}

class BrowserSource implements DocumentSource {
  readonly kind = "browser";
  readonly #items: Items;
  readonly #shelf: Shelf;
  readonly #listeners = new Set<(event: SourceEvent) => void>();
  readonly #pieces = new Map<string, { begun: number; last: number }>();
  readonly #stop = new AbortController();
  #putting: Promise<unknown> = Promise.resolve();
  #last = 0;
  #isFull = false;
  /** Edits that the storage had no room for: they live as long as the page. */
  readonly #unkept = new Map<string, string>();

  constructor({ items = browserItems(), shelf = memoryShelf() }: BrowserOptions) {
    this.#items = items;
    this.#shelf = shelf;
    this.#followOtherPages();
  }

  status(): Status {
    const waiting = this.#unkept.size;
    if (this.#isFull) {
      return { word: "not kept", waiting, because: "the browser's storage is full: take the car out as a file" };
    }
    if (this.#items.isLasting) return { word: "kept", waiting };
    return {
      word: "not kept",
      waiting,
      because: "this browser keeps nothing for this page: take the car out as a file",
    };
  }

  async list(): Promise<Listing> {
    const cars = this.#names().map((name) => {
      const { condition, document } = baseOf(this.#text(name) ?? "");
      const title: unknown = document?.name;
      return { name, title: typeof title === "string" && title !== "" ? title : name, condition };
    });
    const kept = new Set((await this.#shelf.keys("version:")).map((key) => key.split(":")[1] ?? ""));
    return { cars, passedOver: [], removed: [...kept].filter((name) => this.#text(name) === undefined) };
  }

  async open(name: string): Promise<CarState | undefined> {
    const text = this.#text(name);
    return text === undefined ? undefined : viewOf(name, baseOf(text), []);
  }

  apply(name: string, edits: readonly Edit[]): CarState {
    // Always onto what is kept now: another page may have been at it.
    const text = this.#text(name);
    const { document } = baseOf(text ?? "");
    if (text === undefined || !document) throw new RangeError(`the car ${JSON.stringify(name)} takes no edits`);
    const edited = writeCarDocument(edits.reduce(withEdit, document));
    if (edited !== text) {
      this.#putAwayPiece(name, text);
      this.#keep(name, edited);
    }
    return this.#show(name, edited);
  }

  subscribe(listener: (event: SourceEvent) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async history(name: string): Promise<readonly Version[]> {
    await this.#putting;
    const versions: Version[] = [];
    for (const key of await this.#shelf.keys(`version:${name}:`)) {
      const [, , time = "", because = "edit"] = key.split(":");
      const text = await this.#shelf.get(key);
      const at = new Date(Number(time)).toISOString();
      const bytes = typeof text === "string" ? text.length : 0;
      versions.unshift({ id: `${time}:${because}`, at, because: because as Version["because"], bytes });
    }
    return versions;
  }

  async version(name: string, id: string): Promise<string | undefined> {
    const text = await this.#shelf.get(`version:${name}:${id}`);
    return typeof text === "string" ? text : undefined;
  }

  async restore(name: string, id: string): Promise<boolean> {
    const text = await this.version(name, id);
    if (text === undefined) return false;
    const before = this.#text(name);
    if (before !== undefined) await this.#putAway(name, before, "restore");
    this.#keep(name, text);
    this.#show(name, text);
    if (before === undefined) this.#tell({ kind: "list" });
    return true;
  }

  create(name: string, document: CarDocument): Promise<Made> {
    return this.importText(name, writeCarDocument(document));
  }

  async importText(wanted: string, text: string): Promise<Made> {
    const { document, faults } = baseOf(text);
    if (!document) return { ok: false, because: faults[0]?.says ?? "this is no car document" };
    const plain =
      wanted
        .replace(/[^A-Za-z0-9 _-]+/g, " ")
        .trim()
        .slice(0, LONGEST_NAME - 5) || "car";
    const taken = new Set(this.#names().map((name) => name.toLowerCase()));
    let name = plain;
    for (let count = 2; taken.has(name.toLowerCase()); count++) name = `${plain} ${count}`;
    if (!this.#keep(name, text)) {
      this.#unkept.delete(name);
      return { ok: false, because: "the browser's storage is full" };
    }
    this.#tell({ kind: "list" });
    return { ok: true, name };
  }

  exportText(name: string): string | undefined {
    return this.#text(name);
  }

  async remove(name: string): Promise<boolean> {
    const text = this.#text(name);
    if (text === undefined || !(await this.#putAway(name, text, "remove"))) return false;
    this.#items.remove(`${CAR}${name}`);
    this.#unkept.delete(name);
    this.#tell({ kind: "list" });
    return true;
  }

  async readMesh(file: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    const bytes = await this.#shelf.get(`mesh:${file}`);
    return typeof bytes === "string" ? undefined : bytes;
  }

  async keepMesh(file: string, bytes: Uint8Array<ArrayBuffer>): Promise<Made> {
    if ((await this.#shelf.get(`mesh:${file}`)) !== undefined) {
      return { ok: false, because: `there is a mesh ${file} already` };
    }
    const isKept = await this.#shelf.put(`mesh:${file}`, bytes);
    return isKept ? { ok: true, name: file } : { ok: false, because: "the browser's storage is full" };
  }

  close(): void {
    this.#stop.abort();
    this.#listeners.clear();
  }

  #names(): readonly string[] {
    return this.#items.keys(CAR).map((key) => key.slice(CAR.length));
  }

  #text(name: string): string | undefined {
    return this.#unkept.get(name) ?? this.#items.get(`${CAR}${name}`);
  }

  #keep(name: string, text: string): boolean {
    const isKept = this.#items.set(`${CAR}${name}`, text);
    if (isKept) this.#unkept.delete(name);
    else this.#unkept.set(name, text);
    const wasFull = this.#isFull;
    this.#isFull = this.#unkept.size > 0;
    if (wasFull !== this.#isFull) this.#tell({ kind: "status", status: this.status() });
    return isKept;
  }

  #show(name: string, text: string): CarState {
    const state = viewOf(name, baseOf(text), []);
    this.#tell({ kind: "car", state, by: "here" });
    return state;
  }

  #tell(event: SourceEvent): void {
    for (const listener of this.#listeners) listener(event);
  }

  #putAwayPiece(name: string, text: string): void {
    const now = Date.now();
    const piece = this.#pieces.get(name);
    const goesOn = piece && now - piece.last < ONE_PIECE && now - piece.begun < LONGEST_PIECE;
    this.#pieces.set(name, { begun: goesOn ? piece.begun : now, last: now });
    if (!goesOn) void this.#putAway(name, text, "edit");
  }

  #putAway(name: string, text: string, because: Version["because"]): Promise<boolean> {
    this.#pieces.delete(because === "edit" ? "" : name);
    this.#last = Math.max(this.#last + 1, Date.now());
    const key = `version:${name}:${this.#last}:${because}`;
    const putting = this.#putting.then(async () => {
      const keys = await this.#shelf.keys(`version:${name}:`);
      const newest = keys.at(-1);
      if (newest !== undefined && (await this.#shelf.get(newest)) === text) return true;
      for (const old of keys.slice(0, Math.max(0, keys.length + 1 - MOST_VERSIONS))) await this.#shelf.remove(old);
      return this.#shelf.put(key, text);
    });
    this.#putting = putting;
    return putting;
  }

  #followOtherPages(): void {
    if (typeof window === "undefined") return;
    const changed = ({ key, newValue }: StorageEvent) => {
      if (!key?.startsWith(CAR)) return;
      const name = key.slice(CAR.length);
      if (newValue === null) this.#tell({ kind: "list" });
      else this.#tell({ kind: "car", state: viewOf(name, baseOf(newValue), []), by: "elsewhere" });
    };
    window.addEventListener("storage", changed, { signal: this.#stop.signal });
  }
}
