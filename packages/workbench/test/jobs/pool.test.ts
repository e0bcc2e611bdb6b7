import { expect, test } from "vitest";
import type { Job } from "../../src/jobs/job.ts";
import { newestWins } from "../../src/jobs/newest-wins.ts";
import { type Catalogue, makePerformer } from "../../src/jobs/perform.ts";
import { makePool, type WorkerLike } from "../../src/jobs/pool.ts";
import type { FromWorker, ToWorker } from "../../src/jobs/protocol.ts";

/** Counts up with a pause between, telling how far it is. */
const count: Job<number, string> = async (to, { tell, pause }) => {
  for (let i = 1; i <= to; i += 1) {
    await pause();
    tell(i);
  }
  return `counted to ${to}`;
};
const fail: Job<null, never> = () => {
  throw new Error("The shelf is empty.");
};
/** Never ends and never pauses, as far as the pool can tell. */
const hang: Job<null, never> = () => new Promise<never>(() => undefined);
const list: Job<number, { readonly list: Float64Array }> = (size) => ({ list: new Float64Array(size) });

const JOBS: Catalogue = {
  count: async () => count,
  fail: async () => fail,
  hang: async () => hang,
  list: async () => list,
};

/** Workers of the same speech, here in the same thread; `log` tells what became of them. */
function workshop() {
  const log = { started: 0, ended: 0, moved: 0 };
  const start = (): WorkerLike => {
    log.started += 1;
    let isOver = false;
    const hearers: ((event: { readonly data: FromWorker }) => void)[] = [];
    const perform = makePerformer(JOBS, (message, moved) => {
      log.moved += moved.length;
      if (!isOver)
        queueMicrotask(() => {
          for (const hear of hearers) hear({ data: message });
        });
    });
    return {
      postMessage: (message: ToWorker) => queueMicrotask(() => void perform(message)),
      addEventListener: (kind: string, hear: (event: never) => void) => {
        if (kind === "message") hearers.push(hear as (event: { readonly data: FromWorker }) => void);
      },
      terminate: () => {
        isOver = true;
        log.ended += 1;
      },
    };
  };
  return { log, start };
}

test("a job answers, and tells how far it is on the way", async () => {
  const { start } = workshop();
  const pool = makePool(2, start);
  const told: unknown[] = [];
  const outcome = await pool.run({ name: "count", input: 3, onProgress: (progress) => told.push(progress) });
  expect(outcome).toEqual({ ok: true, answer: "counted to 3" });
  expect(told).toEqual([1, 2, 3]);
});

test("no more workers are started than there are jobs, nor more than the pool's size; all jobs are done", async () => {
  const { log, start } = workshop();
  const pool = makePool(2, start);
  await pool.run({ name: "count", input: 1 });
  expect(log.started).toBe(1);
  const outcomes = await Promise.all([4, 5, 6, 7, 8].map((input) => pool.run({ name: "count", input })));
  expect(outcomes.map((outcome) => outcome.ok && outcome.answer)).toEqual(
    [4, 5, 6, 7, 8].map((to) => `counted to ${to}`),
  );
  expect(log.started).toBe(2);
  pool.dispose();
  expect(log.ended).toBe(2);
});

test("what a job throws comes back in words, and so does a job that there is not", async () => {
  const pool = makePool(1, workshop().start);
  expect(await pool.run({ name: "fail", input: null })).toEqual({
    ok: false,
    why: "failed",
    words: "The shelf is empty.",
  });
  expect(await pool.run({ name: "nonsense", input: null })).toMatchObject({ ok: false, why: "failed" });
  expect(await pool.run({ name: "count", input: 1 })).toMatchObject({ ok: true });
});

test("a job given up ends at its next pause, and its worker goes on with the next", async () => {
  const { log, start } = workshop();
  const pool = makePool(1, start);
  const stop = new AbortController();
  let told = 0;
  const outcome = await pool.run({
    name: "count",
    input: 100_000,
    signal: stop.signal,
    onProgress: () => {
      told += 1;
      if (told === 3) stop.abort();
    },
  });
  expect(outcome).toEqual({ ok: false, why: "given up" });
  expect(told).toBeLessThan(10);
  expect(await pool.run({ name: "count", input: 2 })).toMatchObject({ ok: true });
  expect(log).toMatchObject({ started: 1, ended: 0 });
});

test("a job that never pauses takes its worker with it when it is given up; another worker does the next", async () => {
  const { log, start } = workshop();
  const pool = makePool(1, start);
  const stop = new AbortController();
  const hanging = pool.run({ name: "hang", input: null, signal: stop.signal });
  const waiting = pool.run({ name: "count", input: 2 });
  stop.abort();
  expect(await hanging).toEqual({ ok: false, why: "given up" });
  expect(await waiting).toEqual({ ok: true, answer: "counted to 2" });
  expect(log).toMatchObject({ started: 2, ended: 1 });
});

test("a waiting job that is given up is never begun", async () => {
  const { start } = workshop();
  const pool = makePool(1, start);
  const stop = new AbortController();
  const told: unknown[] = [];
  const first = pool.run({ name: "count", input: 5 });
  const second = pool.run({ name: "count", input: 5, signal: stop.signal, onProgress: (p) => told.push(p) });
  stop.abort();
  expect(await second).toEqual({ ok: false, why: "given up" });
  expect(await first).toMatchObject({ ok: true });
  expect(told).toEqual([]);
});

test("the newest of several asked for wins", async () => {
  const pool = makePool(2, workshop().start);
  const lane = newestWins();
  const ask = async (input: number) => {
    const signal = lane.begin();
    const outcome = await pool.run({ name: "count", input, signal });
    return { outcome, isNewest: lane.isNewest(signal) };
  };
  const asked = [50, 60, 70].map(ask);
  const [a, b, c] = await Promise.all(asked);
  expect(a).toEqual({ outcome: { ok: false, why: "given up" }, isNewest: false });
  expect(b).toEqual({ outcome: { ok: false, why: "given up" }, isNewest: false });
  expect(c).toEqual({ outcome: { ok: true, answer: "counted to 70" }, isNewest: true });
});

test("lists of an answer are moved, not copied", async () => {
  const { log, start } = workshop();
  const outcome = await makePool(1, start).run({ name: "list", input: 10 });
  expect(outcome.ok).toBe(true);
  expect(log.moved).toBe(1);
});
