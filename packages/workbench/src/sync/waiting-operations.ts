import { type CarDocument, type FieldValue, type Path, parsePath, valueAt } from "@armwright/engine/document";
import { withEdit } from "./car-view.ts";
import { freshId } from "./ids.ts";
import type { Items } from "./items.ts";
import type { Edit } from "./source.ts";

/** One field's change as it is sent. */
export interface FieldOperation {
  readonly id: string;
  readonly path: string;
  readonly value?: FieldValue;
  readonly remove?: true;
  readonly was?: FieldValue;
  readonly item?: string;
}

export interface Waiting {
  readonly key: string;
  readonly car: string;
  /** The client that typed it: the one to be told about it. */
  readonly client: string;
  readonly operation: FieldOperation;
}

/** A page that has not been heard of for so long is gone, and what it left waiting is taken over, ms. */
const SILENT = 12_000;
const HEARTBEAT = 3000;

/**
 * Edits that the server has not acknowledged, each kept in the browser from the moment it is made: over a reload, a
 * crash, an empty battery. What another page of this browser left behind is sent too; the server does each only once.
 */
export class WaitingOperations {
  readonly #items: Items;
  readonly #scope: string;
  readonly #page = freshId();
  readonly #sent = new Set<string>();
  #list: Waiting[] = [];
  #count = 0;
  #isKept = true;
  #beat: ReturnType<typeof setInterval> | undefined;

  /** `scope` names the served folder: what waits for one is never sent to another. */
  constructor(items: Items, scope: string) {
    this.#items = items;
    this.#scope = scope;
    this.stay();
    this.adopt();
  }

  /** Whether all that waits is kept over a reload. */
  get isKept(): boolean {
    return this.#isKept && this.#items.isLasting;
  }

  get all(): readonly Waiting[] {
    return this.#list;
  }

  of(car: string): readonly Waiting[] {
    return this.#list.filter((waiting) => waiting.car === car);
  }

  /** Keeps edits of a document that looks like this before them. */
  add(car: string, client: string, document: CarDocument, edits: readonly Edit[]): void {
    let now = document;
    for (const edit of edits) {
      this.#addOne(car, client, now, edit);
      now = withEdit(now, edit);
    }
  }

  /** These are on their way: what is typed over them now is an edit of its own. */
  markSent(sent: readonly Waiting[]): void {
    for (const { operation } of sent) this.#sent.add(operation.id);
  }

  /** These are done, or can never be. */
  settle(ids: readonly string[]): void {
    const settled = new Set(ids);
    for (const { key, operation } of this.#list) {
      if (!settled.has(operation.id)) continue;
      this.#items.remove(key);
      this.#sent.delete(operation.id);
    }
    this.#list = this.#list.filter(({ operation }) => !settled.has(operation.id));
    if (this.#list.length === 0) this.#isKept = true;
  }

  /** Takes over what pages that are gone have left. Gives whether there was anything. */
  adopt(): boolean {
    const known = new Set(this.#list.map(({ operation }) => operation.id));
    const found: Waiting[] = [];
    for (const key of this.#items.keys(this.#start())) {
      const page = key.slice(this.#start().length).split(":")[0] ?? "";
      if (page === this.#page || this.#isAlive(page)) continue;
      const kept = this.#parsed(key);
      if (kept && !known.has(kept.operation.id)) found.push(kept);
    }
    // Typed before anything of this page's.
    this.#list = [...found, ...this.#list];
    return found.length > 0;
  }

  /** The page is there, or there again. */
  stay(): void {
    this.#mark();
    this.#beat ??= setInterval(() => this.#mark(), HEARTBEAT);
  }

  /** The page goes: another may take over at once. */
  leave(): void {
    clearInterval(this.#beat);
    this.#beat = undefined;
    this.#items.remove(`armwright:page:${this.#page}`);
  }

  #addOne(car: string, client: string, document: CarDocument, { path, value }: Edit): void {
    const steps = parsePath(path);
    if (!steps) throw new RangeError(`no place in a car document: ${path}`);
    const older = this.#list.findLast((waiting) => waiting.car === car && waiting.operation.path === path);
    const merges = older && !this.#sent.has(older.operation.id) && this.#mayMerge(older, steps);
    const was = merges ? older.operation.was : (valueAt(document, steps) as FieldValue);
    const item = itemOf(document, steps);
    const operation: FieldOperation = {
      id: freshId(),
      path,
      ...(value === undefined ? { remove: true } : { value }),
      ...(was === undefined ? {} : { was }),
      ...(item === undefined ? {} : { item }),
    };
    this.#count += 1;
    const order = `${Date.now().toString(36).padStart(9, "0")}${this.#count.toString(36).padStart(6, "0")}`;
    const key = `${this.#start()}${this.#page}:${order}`;
    this.#isKept = this.#items.set(key, JSON.stringify({ car, client, operation })) && this.#isKept;
    if (merges) this.settle([older.operation.id]);
    this.#list = [...this.#list, { key, car, client, operation }];
  }

  /** Two values for one field are one edit, unless the list around it has changed in between. */
  #mayMerge(older: Waiting, steps: Path): boolean {
    if (!steps.some((step) => typeof step === "number")) return true;
    const since = this.#list.slice(this.#list.indexOf(older));
    return since.every(({ operation }) => !operation.remove && !operation.path.endsWith("]"));
  }

  #start(): string {
    return `armwright:waiting:${this.#scope}:`;
  }

  #mark(): void {
    this.#items.set(`armwright:page:${this.#page}`, String(Date.now()));
  }

  #isAlive(page: string): boolean {
    const age = Date.now() - Number(this.#items.get(`armwright:page:${page}`) ?? Number.NaN);
    return age >= 0 && age < SILENT;
  }

  #parsed(key: string): Waiting | undefined {
    try {
      const { car, client, operation } = JSON.parse(this.#items.get(key) ?? "") as Omit<Waiting, "key">;
      const isWhole = typeof car === "string" && typeof client === "string" && typeof operation.id === "string";
      return isWhole ? { key, car, client, operation } : undefined;
    } catch {
      return undefined;
    }
  }
}

/** The edit that an operation makes. */
export const editOf = ({ operation }: Waiting): Edit => ({
  path: operation.path,
  value: operation.remove ? undefined : operation.value,
});

/** The name of the list item that the path leads through. */
function itemOf(document: CarDocument, steps: Path): string | undefined {
  const at = steps.findIndex((step) => typeof step === "number");
  const name = at === -1 ? undefined : valueAt(document, [...steps.slice(0, at + 1), "name"]);
  return typeof name === "string" ? name : undefined;
}
