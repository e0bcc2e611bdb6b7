import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { type IncomingHttpHeaders, request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { startingDocument, writeCarDocument } from "@armwright/engine/document";
import { type Bench, type BenchOptions, startBench } from "../../src/bench/start-bench.ts";

/** An invented car, sound. */
export const CAR_TEXT = writeCarDocument(startingDocument("h-arm", "inch-pound"));

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
  // Read by tests, each of which knows what it asked for.
  readonly json: () => Record<string, unknown> & { readonly error?: string };
}

export interface Asking {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string | readonly string[]>>;
  readonly body?: string | Uint8Array;
  readonly host?: string;
}

export interface UnderTest extends Bench {
  readonly root: string;
  readonly ask: (path: string, asking?: Asking) => Promise<Answer>;
  /** A write as the page sends it. */
  readonly send: (method: string, path: string, body?: unknown) => Promise<Answer>;
  readonly edit: (client: string, operations: readonly object[], name?: string) => Promise<Answer>;
  readonly onDisk: (name?: string) => string;
  readonly end: () => Promise<void>;
}

/** A real server on a free port, with a folder and a page of its own. */
export async function benchUnderTest(
  options: Partial<BenchOptions> & { readonly root?: string } = {},
): Promise<UnderTest> {
  const root = options.root ?? mkdtempSync(join(tmpdir(), "bench-"));
  const folder = join(root, "cars");
  const app = join(root, "app");
  if (options.root === undefined) {
    mkdirSync(folder);
    mkdirSync(join(app, "assets"), { recursive: true });
    writeFileSync(join(app, "index.html"), "<!doctype html><title>page</title>");
    writeFileSync(join(app, "assets", "main-abc.js"), "export {};");
    writeFileSync(join(root, "secret.txt"), "outside");
    writeFileSync(join(folder, "saltbush.car.json"), CAR_TEXT);
  }
  const bench = await startBench({ folder, app, port: 0, ...options });
  const ask = (path: string, asking: Asking = {}) => rawAsk(bench.port, path, asking);
  const send = (method: string, path: string, body?: unknown) =>
    ask(path, {
      method,
      headers: { "x-armwright": "1", "content-type": "application/json" },
      ...(body === undefined ? {} : { body: typeof body === "string" ? body : JSON.stringify(body) }),
    });
  return {
    ...bench,
    root,
    ask,
    send,
    edit: (client, operations, name = "saltbush") =>
      send("POST", `/api/cars/${name}/operations`, { client, operations }),
    onDisk: (name = "saltbush") => readFileSync(join(folder, `${name}.car.json`), "utf8"),
    end: async () => {
      await bench.close();
      rmSync(root, { recursive: true, force: true });
    },
  };
}

/** Asks with the path exactly as given: nothing is tidied on the way. */
export function rawAsk(
  port: number,
  path: string,
  { method = "GET", headers = {}, body, host }: Asking,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const head = { host: host ?? `127.0.0.1:${port}`, ...headers } as Record<string, string | string[]>;
    const asked = request({ host: "127.0.0.1", port, path, method, headers: head, agent: false }, (answer) => {
      const chunks: Buffer[] = [];
      answer.on("data", (chunk: Buffer) => chunks.push(chunk));
      answer.on("end", () => {
        const text = Buffer.concat(chunks).toString("utf8");
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text, json: () => JSON.parse(text) });
      });
      answer.on("error", reject);
    });
    asked.on("error", reject);
    asked.end(body);
  });
}

let count = 0;
/** An id that no other operation of the tests has. */
export const freshId = (): string => `test-${process.pid}-${(count++).toString().padStart(5, "0")}`;

/**
 * Waits until something is so, looking often, and gives the milliseconds it took; says what it waited for where it never
 * is. The patience is for a machine that has other things to do: where a time is promised, the test holds it to that.
 */
export async function until(what: string, isSo: () => boolean | Promise<boolean>, most = 20_000): Promise<number> {
  const start = performance.now();
  while (performance.now() - start < most) {
    if (await isSo()) return performance.now() - start;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  throw new Error(`waited ${most} ms in vain: ${what}`);
}

export interface Heard {
  readonly event: string;
  readonly data: Record<string, unknown>;
}

/** Listens to the event stream. */
export function listen(
  bench: { readonly port: number },
  client: string,
  query = "",
): { heard: Heard[]; stop: () => void } {
  const heard: Heard[] = [];
  const stop = new AbortController();
  void (async () => {
    const answer = await fetch(`http://127.0.0.1:${bench.port}/api/events?client=${client}${query}`, {
      signal: stop.signal,
    });
    let rest = "";
    for await (const chunk of answer.body!.pipeThrough(new TextDecoderStream())) {
      const parts = (rest + chunk).split("\n\n");
      rest = parts.pop() ?? "";
      for (const part of parts) {
        const event = /^event: (.*)$/m.exec(part)?.[1];
        const data = /^data: (.*)$/m.exec(part)?.[1];
        if (event && data) heard.push({ event, data: JSON.parse(data) });
      }
    }
  })().catch(() => undefined);
  return { heard, stop: () => stop.abort() };
}
