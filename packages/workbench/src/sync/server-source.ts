import { type CarDocument, type FieldValue, writeCarDocument } from "@armwright/engine/document";
import { Backoff } from "./backoff.ts";
import { readEvents, type StreamMessage } from "./event-stream.ts";
import { freshId } from "./ids.ts";
import { browserItems, type Items } from "./items.ts";
import { Sender } from "./sender.ts";
import { ServedCars } from "./served-cars.ts";
import { type Ready, type ServedCar, type ServerCalls, serverCalls } from "./server-calls.ts";
import type { CarState, DocumentSource, Edit, Listing, Made, SourceEvent, Version } from "./source.ts";
import { WaitingOperations } from "./waiting-operations.ts";

export interface ServerOptions {
  /** Address of the folder the page lies in, e.g. `./`. */
  readonly base: string;
  /** The served folder, as the server named it, now or at the last visit. */
  readonly folder: string;
  /** What outlasts the page. */
  readonly items?: Items;
  /** What outlasts a reload of this page, but is its own. */
  readonly session?: Items;
  readonly fetch?: typeof fetch;
}

const ADOPT_EVERY = 5000;

/** Cars in the folder of a running bench. Goes on without it, from what was seen last, and sends when it is back. */
export function serverSource(options: ServerOptions): DocumentSource {
  return new ServerSource(options);
}

class ServerSource implements DocumentSource {
  readonly kind = "server";
  readonly #base: string;
  readonly #folder: string;
  readonly #items: Items;
  readonly #session: Items;
  readonly #fetch: typeof fetch;
  readonly #client: string;
  readonly #calls: ServerCalls;
  readonly #waiting: WaitingOperations;
  readonly #cars: ServedCars;
  readonly #sender: Sender;
  readonly #listeners = new Set<(event: SourceEvent) => void>();
  readonly #stop = new AbortController();
  readonly #adopting: ReturnType<typeof setInterval>;
  #run = "";
  #retry: (() => void) | undefined;

  constructor({ base, folder, items = browserItems(), session = items, fetch: fetchIt }: ServerOptions) {
    this.#base = base;
    this.#folder = folder;
    this.#items = items;
    this.#session = session;
    this.#fetch = fetchIt ?? ((...asked) => fetch(...asked));
    this.#client = session.get("armwright:client") ?? freshId();
    session.set("armwright:client", this.#client);
    this.#calls = serverCalls(base, this.#client, folder, this.#fetch);
    this.#waiting = new WaitingOperations(items, folder);
    this.#cars = new ServedCars(items, folder, this.#waiting);
    this.#sender = new Sender(this.#waiting, this.#cars, this.#calls, (event) => this.#tell(event));
    this.#adopting = setInterval(() => {
      if (this.#waiting.adopt()) this.#showAll();
    }, ADOPT_EVERY);
    this.#listenToBrowser();
    void this.#follow();
    this.#sender.send();
  }

  status() {
    return this.#sender.status();
  }

  async list(): Promise<Listing> {
    const key = `armwright:list:${this.#folder}`;
    const answer = await this.#calls.list();
    if (answer.ok) {
      this.#items.set(key, JSON.stringify(answer.body));
      return answer.body;
    }
    const seen = this.#items.get(key);
    return seen === undefined ? { cars: [], passedOver: [], removed: [] } : (JSON.parse(seen) as Listing);
  }

  async open(name: string): Promise<CarState | undefined> {
    const answer = await this.#calls.car(name);
    if (answer.ok) this.#cars.take(answer.body);
    else if (answer.status === 404) {
      // What was typed for it stays readable where it waits.
      if (this.#waiting.of(name).length === 0 || !this.#cars.recall(name)) return undefined;
      this.#cars.takeGone(name);
    } else if (!this.#cars.recall(name)) return undefined;
    this.#sender.send();
    return this.#cars.view(name);
  }

  apply(name: string, edits: readonly Edit[]): CarState {
    const { document } = this.#cars.view(name);
    if (!document) throw new RangeError(`the car ${JSON.stringify(name)} is broken and takes no edits`);
    this.#waiting.add(name, this.#client, document, edits);
    this.#sender.send();
    return this.#cars.view(name);
  }

  subscribe(listener: (event: SourceEvent) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async history(name: string): Promise<readonly Version[]> {
    const answer = await this.#calls.history(name);
    return answer.ok ? answer.body.versions : [];
  }

  async version(name: string, id: string): Promise<string | undefined> {
    const answer = await this.#calls.version(name, id);
    return answer.ok ? answer.body.text : undefined;
  }

  async restore(name: string, id: string): Promise<boolean> {
    const answer = await this.#calls.restore(name, id);
    if (answer.ok) this.#show(answer.body, "here");
    return answer.ok;
  }

  create(name: string, document: CarDocument): Promise<Made> {
    return this.importText(name, writeCarDocument(document));
  }

  async importText(name: string, text: string): Promise<Made> {
    const plain = name.replace(/[^A-Za-z0-9 _-]+/g, " ").trim() || "car";
    const answer = await this.#calls.create(plain, text);
    return answer.ok ? { ok: true, name: answer.body.name } : { ok: false, because: answer.error };
  }

  exportText(name: string): string | undefined {
    if (!this.#cars.isFollowed(name)) return undefined;
    const { document, waiting } = this.#cars.view(name);
    return waiting > 0 && document ? writeCarDocument(document) : this.#cars.text(name);
  }

  async remove(name: string): Promise<boolean> {
    return (await this.#calls.remove(name)).ok;
  }

  readMesh(file: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    return this.#calls.readMesh(file);
  }

  async keepMesh(file: string, bytes: Uint8Array<ArrayBuffer>): Promise<Made> {
    const answer = await this.#calls.keepMesh(file, bytes);
    return answer.ok ? { ok: true, name: file } : { ok: false, because: answer.error };
  }

  close(): void {
    this.#stop.abort();
    this.#retry?.();
    clearInterval(this.#adopting);
    this.#sender.close();
    this.#waiting.leave();
    this.#listeners.clear();
  }

  #tell(event: SourceEvent): void {
    for (const listener of this.#listeners) listener(event);
  }

  /** Keeps one event stream open, for as long as the page is. */
  async #follow(): Promise<void> {
    const backoff = new Backoff();
    const { signal } = this.#stop;
    while (!signal.aborted) {
      const heard = this.#session.get("armwright:heard") ?? "0";
      const address = `${this.#base}api/events?client=${this.#client}&heard=${heard}`;
      let isReached = false;
      const status = await readEvents(this.#fetch, address, signal, (message) => {
        isReached = true;
        this.#hear(message);
      }).catch(() => 0);
      if (signal.aborted) return;
      if (isReached) backoff.reset();
      if (status === 401) this.#sender.setAway("must pair", "this device is not paired with the bench");
      else if (!isReached) this.#sender.setAway("waiting to send", "the server is out of reach");
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, backoff.next());
        this.#retry = () => {
          clearTimeout(timer);
          resolve();
        };
      });
    }
  }

  #hear({ event, data }: StreamMessage): void {
    if (event === "hello") void this.#meet(data as Ready);
    if (event === "listed") this.#tell({ kind: "list" });
    if (event === "gone") {
      const { name } = data as { readonly name: string };
      this.#cars.takeGone(name);
      if (this.#cars.isFollowed(name)) this.#tell({ kind: "car", state: this.#cars.view(name), by: "program" });
    }
    if (event === "changed") {
      const { state, by, ids } = data as { state: ServedCar; by: string; ids: readonly string[] };
      this.#waiting.settle(ids);
      this.#show(state, by === this.#client ? "here" : by === "program" ? "program" : "elsewhere");
    }
    if (event === "overruled") {
      const { number, ...notice } = data as {
        number: number;
        name: string;
        path: string;
        yours?: FieldValue;
        theirs?: FieldValue;
        by: "person" | "program";
      };
      if (number <= Number(this.#session.get("armwright:heard") ?? 0)) return;
      this.#session.set("armwright:heard", String(number));
      this.#tell({ kind: "overruled", ...notice });
    }
  }

  /** The server is there (again): what was missed is read, what waits is sent. */
  async #meet({ run, folder }: Ready): Promise<void> {
    if (folder !== this.#folder) {
      this.#sender.setAway("waiting to send", "another folder is served here now: reload the page");
      this.#sender.close();
      return this.#stop.abort();
    }
    if (run !== this.#run) this.#cars.forgetRevisions();
    this.#run = run;
    this.#sender.wake();
    this.#tell({ kind: "list" });
    for (const name of this.#cars.names) {
      const answer = await this.#calls.car(name);
      if (answer.ok) this.#show(answer.body, "elsewhere");
      else if (answer.status === 404) this.#hear({ event: "gone", data: { name } });
    }
  }

  #show(state: ServedCar, by: "here" | "elsewhere" | "program"): void {
    if (this.#cars.isFollowed(state.name)) {
      this.#cars.take(state);
      this.#tell({ kind: "car", state: this.#cars.view(state.name), by });
    }
    this.#sender.release(state.name);
  }

  #showAll(): void {
    for (const name of this.#cars.names) this.#tell({ kind: "car", state: this.#cars.view(name), by: "elsewhere" });
    this.#sender.send();
  }

  /** A browser tells when the network is back, or the page in front again: no need to wait then. */
  #listenToBrowser(): void {
    if (typeof window === "undefined") return;
    const { signal } = this.#stop;
    const again = () => {
      this.#retry?.();
      this.#sender.wake();
    };
    window.addEventListener("online", again, { signal });
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && again(), { signal });
    window.addEventListener("pagehide", () => this.#waiting.leave(), { signal });
    window.addEventListener("pageshow", () => this.#waiting.stay(), { signal });
  }
}
