import type { Outcome } from "./job.ts";
import type { FromWorker, ToWorker } from "./protocol.ts";

/** As much of a Worker as the pool uses; tests have one of their own. */
export interface WorkerLike {
  postMessage(message: ToWorker): void;
  addEventListener(kind: "message", hear: (event: { readonly data: FromWorker }) => void): void;
  addEventListener(kind: "error" | "messageerror", hear: (event: unknown) => void): void;
  terminate(): void;
}

export interface Ask {
  readonly name: string;
  readonly input: unknown;
  readonly onProgress?: (progress: unknown) => void;
  /** Gives the job up: a waiting one at once, a running one at its next pause. */
  readonly signal?: AbortSignal;
}

export interface Pool {
  readonly size: number;
  readonly run: (ask: Ask) => Promise<Outcome<unknown>>;
  /** Ends every worker; what is waiting or running is given up. */
  readonly dispose: () => void;
}

/** A running job that does not end within this after it has been given up takes its worker with it, ms. */
const PATIENCE = 300;

interface Waiting extends Ask {
  readonly id: number;
  readonly settle: (outcome: Outcome<unknown>) => void;
}

interface Bench {
  readonly worker: WorkerLike;
  doing: Waiting | null;
}

const GIVEN_UP = { ok: false, why: "given up" } as const;

/** Up to `size` workers, started as they are needed, one job each at a time; what waits is done in the order of asking. */
export function makePool(size: number, start: () => WorkerLike): Pool {
  const benches: Bench[] = [];
  const waiting: Waiting[] = [];
  let count = 0;

  const finish = (bench: Bench, outcome: Outcome<unknown>): void => {
    const { doing } = bench;
    bench.doing = null;
    doing?.settle(outcome);
    next();
  };
  const discard = (bench: Bench, outcome: Outcome<unknown>): void => {
    bench.worker.terminate();
    benches.splice(benches.indexOf(bench), 1);
    finish(bench, outcome);
  };
  const hire = (): Bench => {
    const bench: Bench = { worker: start(), doing: null };
    bench.worker.addEventListener("message", ({ data }) => {
      if (data.id !== bench.doing?.id) return;
      if (data.say === "progress") bench.doing.onProgress?.(data.progress);
      else if (data.say === "done") finish(bench, { ok: true, answer: data.answer });
      else if (data.say === "given up") finish(bench, GIVEN_UP);
      else finish(bench, { ok: false, why: "failed", words: data.words });
    });
    const broken = (): void =>
      discard(bench, { ok: false, why: "failed", words: "The work could not be done here: its worker did not start." });
    bench.worker.addEventListener("error", broken);
    bench.worker.addEventListener("messageerror", broken);
    benches.push(bench);
    return bench;
  };
  const next = (): void => {
    while (waiting.length > 0) {
      const bench = benches.find(({ doing }) => doing === null) ?? (benches.length < size ? hire() : undefined);
      if (!bench) return;
      const job = waiting.shift()!;
      bench.doing = job;
      bench.worker.postMessage({ say: "do", id: job.id, name: job.name, input: job.input });
    }
  };
  const giveUp = (job: Waiting): void => {
    const place = waiting.indexOf(job);
    if (place >= 0) {
      waiting.splice(place, 1);
      job.settle(GIVEN_UP);
      return;
    }
    const bench = benches.find(({ doing }) => doing === job);
    if (!bench) return;
    bench.worker.postMessage({ say: "give up", id: job.id });
    setTimeout(() => {
      if (bench.doing === job) discard(bench, GIVEN_UP);
    }, PATIENCE);
  };

  return {
    size,
    run: (ask) =>
      new Promise((resolve) => {
        if (ask.signal?.aborted) {
          resolve(GIVEN_UP);
          return;
        }
        count += 1;
        const leave = (): void => giveUp(job);
        const settle = (outcome: Outcome<unknown>): void => {
          ask.signal?.removeEventListener("abort", leave);
          // What was given up while its answer was on the way stays given up.
          resolve(ask.signal?.aborted ? GIVEN_UP : outcome);
        };
        const job: Waiting = { ...ask, id: count, settle };
        ask.signal?.addEventListener("abort", leave);
        waiting.push(job);
        next();
      }),
    dispose: () => {
      for (const job of waiting.splice(0)) job.settle(GIVEN_UP);
      for (const { worker, doing } of benches.splice(0)) {
        worker.terminate();
        doing?.settle(GIVEN_UP);
      }
    },
  };
}
