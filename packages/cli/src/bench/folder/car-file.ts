import { createHash } from "node:crypto";
import { unlink } from "node:fs/promises";
import { join } from "node:path";
import { CHANGED_UNDERNEATH, syncFolder, writeDurably } from "./durable.ts";
import {
  type Because,
  historyFolder,
  historyFolderOf,
  keepVersion,
  readVersion,
  type Version,
  versionsIn,
} from "./history.ts";
import { Journal } from "./journal.ts";
import { type Forms, type Judgement, LARGEST_DOCUMENT, unreadable } from "./judgement.ts";
import { carFile } from "./names.ts";
import { edited, type FieldOperation } from "./operation.ts";
import { readPlainFile } from "./plain-file.ts";
import { type Overruled, RecentWrites } from "./recent-writes.ts";

/** A car document as it is now. */
export interface CarState extends Omit<Judgement, "fields"> {
  readonly name: string;
  /** Grows with every change, also over restarts. */
  readonly revision: number;
  readonly text: string;
}

/** What became of one operation. */
export interface Outcome {
  readonly id: string;
  readonly outcome: "done" | "done before" | "refused";
  readonly because?: string;
  /** The value that went under without its author having been seen. */
  readonly replaced?: unknown;
}

export type Applied =
  | { readonly ok: true; readonly state: CarState; readonly outcomes: readonly Outcome[] }
  | { readonly ok: false; readonly why: "gone" | "broken"; readonly state?: CarState };

export type CarFileEvent =
  | { readonly kind: "changed"; readonly state: CarState; readonly by: string; readonly ids: readonly string[] }
  | { readonly kind: "gone"; readonly name: string }
  | ({ readonly kind: "overruled"; readonly name: string } & Overruled);

interface Present {
  readonly text: string;
  readonly hash: string;
  readonly stamp: string;
  readonly judgement: Judgement;
  readonly revision: number;
}

/** Edits that follow one another faster than this are one piece of work, put away once, s. */
const ONE_PIECE = 30_000;
const LONGEST_PIECE = 300_000;
/** A program that writes in place leaves a half-written file for a moment; it is given this long, ms. */
const SETTLING = 400;
const TRIES = 6;

/** One car document of the folder: everything that is done to it goes through here, one after another. */
export class CarFile {
  readonly name: string;
  readonly #root: string;
  readonly #forms: Forms;
  readonly #tell: (event: CarFileEvent) => void;
  readonly #writes = new RecentWrites();
  #present: Present | undefined;
  #journal: Journal | undefined;
  #revision = 0;
  #edited = 0;
  #kept = 0;
  #queue: Promise<unknown> = Promise.resolve();

  constructor(root: string, name: string, forms: Forms, tell: (event: CarFileEvent) => void) {
    this.#root = root;
    this.#forms = forms;
    this.name = name;
    this.#tell = tell;
  }

  /** The stamp of the content last read or written; "" where there is no file. */
  get stamp(): string {
    return this.#present?.stamp ?? "";
  }

  read(): Promise<CarState | undefined> {
    return this.#alone(async () => {
      await this.#refresh();
      return this.#state();
    });
  }

  /** Does the operations on the newest document. When it returns, what was done is on the disk. */
  apply(client: string, operations: readonly FieldOperation[]): Promise<Applied> {
    return this.#alone(async () => {
      for (let attempt = 0; attempt < TRIES; attempt++) {
        await this.#refresh();
        const applied = await this.#applyOnce(client, operations);
        if (applied !== CHANGED_UNDERNEATH) return applied;
      }
      throw new Error(`another program keeps writing ${carFile(this.name)}`);
    });
  }

  /** Puts a new document here. Gives false where there is one already that says something else. */
  create(client: string, text: string): Promise<boolean> {
    return this.#replace(client, text, "restore", () => this.#present === undefined || this.#present.text === text);
  }

  /** Brings an earlier text back, also over a broken one, which then lies in the history. */
  restore(client: string, text: string): Promise<boolean> {
    return this.#replace(client, text, "restore", () => !this.#isUnreadable());
  }

  #replace(client: string, text: string, because: Because, mayBe: () => boolean): Promise<boolean> {
    return this.#alone(async () => {
      for (let attempt = 0; attempt < TRIES; attempt++) {
        await this.#refresh();
        if (!mayBe()) return false;
        await this.#putAway(because);
        if ((await this.#write(text, client, [], this.#forms.judge(text))) === "written") return true;
      }
      throw new Error(`another program keeps writing ${carFile(this.name)}`);
    });
  }

  /** Takes the file away; its text stays in the history. */
  remove(): Promise<boolean> {
    return this.#alone(async () => {
      await this.#refresh();
      if (!this.#present || this.#isUnreadable()) return false;
      await this.#putAway("remove");
      await unlink(join(this.#root, carFile(this.name)));
      await syncFolder(this.#root);
      this.#present = undefined;
      this.#tell({ kind: "gone", name: this.name });
      return true;
    });
  }

  async versions(): Promise<readonly Version[]> {
    const folder = await historyFolderOf(this.#root, this.name);
    return folder === undefined ? [] : versionsIn(folder);
  }

  /** Text of an earlier version. */
  async version(id: string): Promise<string | undefined> {
    const folder = await historyFolderOf(this.#root, this.name);
    return folder === undefined ? undefined : readVersion(folder, id, LARGEST_DOCUMENT);
  }

  close(): Promise<void> {
    return this.#alone(async () => {
      await this.#journal?.close();
      this.#journal = undefined;
    });
  }

  async #applyOnce(
    client: string,
    operations: readonly FieldOperation[],
  ): Promise<Applied | typeof CHANGED_UNDERNEATH> {
    const present = this.#present;
    if (!present) return { ok: false, why: "gone" };
    let fields = present.judgement.fields;
    if (!fields) return { ok: false, why: "broken", state: this.#state()! };
    const journal = await this.#journalOf(present);
    const outcomes: Outcome[] = [];
    const notes: (() => readonly Overruled[])[] = [];
    const done: string[] = [];
    const now = Date.now();
    for (const operation of operations) {
      const { id } = operation;
      if (journal.has(id) || done.includes(id)) {
        outcomes.push({ id, outcome: "done before" });
        continue;
      }
      const edit = edited(fields, operation);
      if (!edit.ok) {
        outcomes.push({ id, outcome: "refused", because: edit.because });
        continue;
      }
      fields = edit.document;
      done.push(id);
      outcomes.push({ id, outcome: "done", ...(edit.unseen ? { replaced: edit.before ?? null } : {}) });
      notes.push(() => this.#note(client, operation, edit.path, now));
    }
    if (done.length > 0) {
      const text = this.#forms.write(fields);
      const judgement = this.#forms.judge(text);
      if (Buffer.byteLength(text) > LARGEST_DOCUMENT || judgement.condition === "broken") {
        return { ok: true, state: this.#state()!, outcomes: operations.map(({ id }) => refusedWhole(id, journal)) };
      }
      if (text !== present.text) await this.#putAwayPiece(now);
      if ((await this.#write(text, client, done, judgement)) === CHANGED_UNDERNEATH) return CHANGED_UNDERNEATH;
      for (const note of notes) for (const told of note()) this.#tell({ kind: "overruled", name: this.name, ...told });
    }
    return { ok: true, state: this.#state()!, outcomes };
  }

  #note(
    client: string,
    operation: FieldOperation,
    path: readonly (string | number)[],
    now: number,
  ): readonly Overruled[] {
    const last = path.at(-1);
    const overruled = this.#writes.note(client, path, operation.value, operation.was, now);
    if (operation.remove && typeof last === "number") this.#writes.forgetUnder(path.slice(0, -1));
    return overruled;
  }

  async #write(text: string, by: string, ids: readonly string[], judgement: Judgement) {
    const hash = hashOf(text);
    const journal = await this.#journalOf(this.#present);
    const changes = text !== this.#present?.text;
    await journal.saving(hash, ids);
    if (changes) {
      const written = await writeDurably(this.#root, carFile(this.name), text, this.stamp).catch(
        async (error: unknown) => {
          await journal.dropped(hash);
          throw error;
        },
      );
      if (written === CHANGED_UNDERNEATH) {
        await journal.dropped(hash);
        return CHANGED_UNDERNEATH;
      }
    }
    await journal.saved(hash, ids);
    if (!changes) return "written";
    const reading = await readPlainFile(this.#root, carFile(this.name), LARGEST_DOCUMENT);
    // Where another program was there already, the next refresh finds its stamp differing and reads it.
    const stamp = reading.found === "text" && reading.text === text ? reading.stamp : "changed since";
    this.#take(text, hash, stamp, judgement, by, ids);
    return "written";
  }

  #take(text: string, hash: string, stamp: string, judgement: Judgement, by: string, ids: readonly string[]): void {
    this.#revision = Math.max(this.#revision + 1, Date.now());
    this.#present = { text, hash, stamp, judgement, revision: this.#revision };
    this.#tell({ kind: "changed", state: this.#state()!, by, ids });
  }

  /** Takes in what another program did to the file. */
  async #refresh(): Promise<void> {
    const until = Date.now() + SETTLING;
    for (;;) {
      const reading = await readPlainFile(this.#root, carFile(this.name), LARGEST_DOCUMENT);
      if (reading.found === "nothing") {
        if (this.#present) {
          await this.#putAway("remove");
          this.#present = undefined;
          this.#tell({ kind: "gone", name: this.name });
        }
        return;
      }
      if (reading.stamp === this.#present?.stamp) return;
      const text = reading.found === "text" ? reading.text : "";
      const judgement = reading.found === "text" ? this.#forms.judge(text) : unreadable(reading.because);
      const fresh = Date.now() - reading.changedAt < 1000;
      if (judgement.condition === "broken" && fresh && Date.now() < until) {
        await new Promise((resolve) => setTimeout(resolve, 60));
        continue;
      }
      if (reading.found === "text" && text === this.#present?.text) {
        this.#present = { ...this.#present, stamp: reading.stamp };
        return;
      }
      if (this.#present) await this.#putAway("program");
      this.#take(text, hashOf(text), reading.stamp, judgement, "program", []);
      for (const told of judgement.fields ? this.#writes.program(judgement.fields, Date.now()) : []) {
        this.#tell({ kind: "overruled", name: this.name, ...told });
      }
      return;
    }
  }

  /** Not text that a history could hold: it is never written over. */
  #isUnreadable(): boolean {
    return this.#present?.judgement.faults[0]?.code === "unreadable";
  }

  async #putAwayPiece(now: number): Promise<void> {
    if (now - this.#edited > ONE_PIECE || now - this.#kept > LONGEST_PIECE) await this.#putAway("edit");
    this.#edited = now;
  }

  async #putAway(because: Because): Promise<void> {
    if (!this.#present || this.#present.text === "") return;
    this.#kept = Date.now();
    this.#edited = 0;
    await keepVersion(
      await historyFolder(this.#root, this.name),
      this.#present.text,
      this.#present.hash,
      because,
      this.#kept,
    );
  }

  async #journalOf(present: Present | undefined): Promise<Journal> {
    this.#journal ??= await Journal.open(await historyFolder(this.#root, this.name), present?.hash ?? "");
    return this.#journal;
  }

  #state(): CarState | undefined {
    if (!this.#present) return undefined;
    const { text, judgement, revision } = this.#present;
    return { name: this.name, revision, text, condition: judgement.condition, faults: judgement.faults };
  }

  #alone<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#queue.then(work, work);
    this.#queue = turn.catch(() => undefined);
    return turn;
  }
}

const refusedWhole = (id: string, journal: Journal): Outcome =>
  journal.has(id)
    ? { id, outcome: "done before" }
    : { id, outcome: "refused", because: "the car document would grow beyond 1 MB, or nest too deep" };

const hashOf = (text: string): string => createHash("sha256").update(text).digest("hex");
