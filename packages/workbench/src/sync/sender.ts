import type { FieldValue } from "@armwright/engine/document";
import { Backoff } from "./backoff.ts";
import type { ServedCars } from "./served-cars.ts";
import type { Answer, Outcome, ServedCar, ServerCalls } from "./server-calls.ts";
import type { SourceEvent, Status } from "./source.ts";
import { editOf, type Waiting, type WaitingOperations } from "./waiting-operations.ts";

/** The server's answer where what is sent was meant for another folder than it serves. */
export const ANOTHER_FOLDER = 412;
/** Most edits in one message. */
const MOST = 100;

interface Trouble {
  readonly word: Status["word"];
  readonly because: string;
}

/** Sends what waits, in order, one message at a time, until the server has acknowledged it. */
export class Sender {
  readonly #waiting: WaitingOperations;
  readonly #cars: ServedCars;
  readonly #calls: ServerCalls;
  readonly #tell: (event: SourceEvent) => void;
  readonly #backoff = new Backoff();
  /** Cars that took no edits when they were last sent some. */
  readonly #held = new Set<string>();
  #most = MOST;
  #running = false;
  #closed = false;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** What kept the last message from being acknowledged. */
  #trouble: Trouble | undefined;
  /** What keeps the event stream from being open. */
  #away: Trouble | undefined;
  #said = "";

  constructor(waiting: WaitingOperations, cars: ServedCars, calls: ServerCalls, tell: (event: SourceEvent) => void) {
    this.#waiting = waiting;
    this.#cars = cars;
    this.#calls = calls;
    this.#tell = tell;
  }

  status(): Status {
    const waiting = this.#waiting.all.length;
    if (!this.#waiting.isKept && waiting > 0) {
      return { word: "not kept", waiting, because: "the browser's storage takes nothing: leave this page open" };
    }
    if (this.#away) return { ...this.#away, waiting };
    if (waiting === 0) return { word: "kept", waiting };
    if (this.#trouble) return { ...this.#trouble, waiting };
    if (this.#next().length > 0) return { word: "sending", waiting };
    return {
      word: "waiting to send",
      waiting,
      because: "the file is broken or gone; it takes edits when it is mended",
    };
  }

  /** The server is there again, or a file takes edits again: no more waiting. */
  wake(): void {
    if (this.#closed) return;
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#backoff.reset();
    this.#trouble = undefined;
    this.#away = undefined;
    this.#held.clear();
    this.send();
  }

  /** The car has changed: perhaps it takes edits now. */
  release(car: string): void {
    this.#held.delete(car);
    this.send();
  }

  /** The server was found to be out of reach, or not to know us. */
  setAway(word: Status["word"], because: string): void {
    this.#away = { word, because };
    this.say();
  }

  send(): void {
    this.say();
    if (this.#running || this.#closed || this.#timer !== undefined) return;
    this.#running = true;
    void this.#run().finally(() => {
      this.#running = false;
      this.say();
    });
  }

  /** Tells the status where it has changed. */
  say(): void {
    const status = this.status();
    const said = JSON.stringify(status);
    if (said === this.#said || this.#closed) return;
    this.#said = said;
    this.#tell({ kind: "status", status });
  }

  close(): void {
    this.#closed = true;
    clearTimeout(this.#timer);
  }

  async #run(): Promise<void> {
    for (let batch = this.#next(); batch.length > 0 && !this.#closed; batch = this.#next()) {
      const [{ car, client }] = batch as [Waiting, ...Waiting[]];
      this.#waiting.markSent(batch);
      this.say();
      const answer = await this.#calls.send(
        car,
        client,
        batch.map(({ operation }) => operation),
      );
      if (answer.ok) this.#done(car, batch, answer.body.state, answer.body.outcomes);
      else if (!this.#mayGoOn(car, batch, answer)) return;
    }
  }

  /** The first edits that wait for one car, all by one author. */
  #next(): readonly Waiting[] {
    const first = this.#waiting.all.find(({ car }) => this.#cars.takesEdits(car) && !this.#held.has(car));
    if (!first) return [];
    return this.#waiting
      .of(first.car)
      .filter(({ client }) => client === first.client)
      .slice(0, this.#most);
  }

  #done(car: string, batch: readonly Waiting[], state: ServedCar, outcomes: readonly Outcome[]): void {
    this.#trouble = undefined;
    this.#backoff.reset();
    this.#most = MOST;
    this.#cars.take(state);
    this.#waiting.settle(outcomes.map(({ id }) => id));
    for (const outcome of outcomes) {
      const sent = batch.find(({ operation }) => operation.id === outcome.id);
      if (sent && outcome.outcome === "refused") this.#refuse(car, sent, outcome.because ?? "");
      if (sent && "replaced" in outcome) {
        const theirs = outcome.replaced as FieldValue;
        this.#tell({ kind: "replaced", name: car, path: sent.operation.path, theirs });
      }
    }
    // A refused edit goes out of the view again, which the page that made it has to show.
    const by = outcomes.some(({ outcome }) => outcome === "refused") ? "elsewhere" : "here";
    if (this.#cars.isFollowed(car)) this.#tell({ kind: "car", state: this.#cars.view(car), by });
  }

  /** Whether the next message can be tried at once. */
  #mayGoOn(car: string, batch: readonly Waiting[], answer: Answer<unknown> & { readonly ok: false }): boolean {
    const { status, error, wait, body } = answer;
    if (status === 404 || status === 409) {
      const state = (body as { readonly state?: ServedCar } | undefined)?.state;
      if (state) this.#cars.take(state);
      else this.#cars.takeGone(car);
      this.#held.add(car);
      if (this.#cars.isFollowed(car)) this.#tell({ kind: "car", state: this.#cars.view(car), by: "program" });
      return true;
    }
    if (status === 400 || status === 413) {
      const [first] = batch;
      if (batch.length === 1 && first) {
        this.#waiting.settle([first.operation.id]);
        this.#refuse(car, first, error);
      }
      this.#most = 1;
      return true;
    }
    if (status === ANOTHER_FOLDER) {
      this.setAway("waiting to send", error);
      this.close();
      return false;
    }
    return this.#later(status === 401 ? "must pair" : "waiting to send", error, wait);
  }

  #later(word: Status["word"], because: string, wait: number): false {
    this.#trouble = { word, because };
    clearTimeout(this.#timer);
    this.#timer = setTimeout(
      () => {
        this.#timer = undefined;
        this.send();
      },
      Math.max(wait, this.#backoff.next()),
    );
    return false;
  }

  #refuse(name: string, waiting: Waiting, because: string): void {
    this.#tell({ kind: "refused", name, edit: editOf(waiting), because });
  }
}
