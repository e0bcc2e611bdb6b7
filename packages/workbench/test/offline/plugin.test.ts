import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { runInNewContext } from "node:vm";
import { inflateSync } from "node:zlib";
import { build } from "vite";
import { afterAll, beforeAll, expect, it } from "vitest";
import { markPng } from "../../src/offline/icon.ts";
import { manifest } from "../../src/offline/manifest.ts";
import { buildOf, offline } from "../../src/offline/plugin.ts";
import { serviceWorkerSource } from "../../src/offline/service-worker-source.ts";

let root: string;
let out: string;
beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), "offline-"));
  out = join(root, "dist");
  mkdirSync(join(root, "public"));
  writeFileSync(join(root, "public", "mark.svg"), "<svg/>");
  writeFileSync(join(root, "main.js"), 'import("./later.js").then(({ later }) => later());');
  writeFileSync(join(root, "later.js"), "export const later = () => 1;");
  writeFileSync(
    join(root, "index.html"),
    '<!doctype html><head></head><script type="module" src="./main.js"></script>',
  );
  await build({
    root,
    base: "./",
    configFile: false,
    logLevel: "silent",
    plugins: [offline()],
    build: { outDir: out },
  });
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const read = (file: string): string => readFileSync(join(out, file), "utf8");

it("writes a worker that knows every file of the build, and only files that are there", () => {
  const files = JSON.parse(/const FILES = (.*);/.exec(read("service-worker.js"))?.[1] ?? "") as string[];
  expect(files).toEqual(
    expect.arrayContaining(["./", "mark.svg", "manifest.webmanifest", "icon-192.png", "icon-512.png"]),
  );
  expect(files.filter((file) => /later-.*\.js$/.test(file))).toHaveLength(1);
  expect(files).not.toContain("service-worker.js");
  for (const file of files) if (file !== "./") expect(readFileSync(join(out, file)).length).toBeGreaterThan(0);
});

it("names manifest and icon in the page, and writes no script into it", () => {
  expect(read("index.html")).toContain(
    '<link rel="manifest" href="./manifest.webmanifest" crossorigin="use-credentials">',
  );
  expect(read("index.html")).not.toMatch(/<script(?![^>]*src)/);
  for (const { src } of manifest.icons) expect(readFileSync(join(out, src)).length).toBeGreaterThan(0);
  expect(JSON.parse(read("manifest.webmanifest"))).toMatchObject({ name: "Armwright", start_url: "./" });
});

it("names a build by what is in it", () => {
  const of = (...files: [string, string][]) => buildOf(new Map(files)).version;
  expect(of(["a", "1"], ["b", "2"])).toBe(of(["b", "2"], ["a", "1"]));
  expect(of(["a", "1"])).not.toBe(of(["a", "2"]));
  expect(of(["a", "1"])).not.toBe(of(["b", "1"]));
  expect(of(["index.html", "1"])).not.toBe(of(["index.html", "2"]));
});

it("draws the mark with its pixels where they belong", () => {
  const png = markPng(64);
  const data = png.subarray(png.indexOf(0x49, 37) + 4);
  const rows = inflateSync(data.subarray(0, data.length - 16));
  const grey = (x: number, y: number) => rows[Math.round(y) * (64 * 3 + 1) + 1 + Math.round(x) * 3] ?? 0;
  const at = (x: number, y: number) => grey(10.24 + (x * 43.52) / 32 - 0.5, 10.24 + (y * 43.52) / 32 - 0.5);
  expect(at(20, 11.5)).toBeLessThan(60);
  expect(at(20, 16)).toBe(0xf3);
  expect(at(27, 20.5)).toBeGreaterThan(200);
  expect(grey(0, 0)).toBe(0xf3);
});

/** The worker in a world of its own, with a page at https://cars.example/bench/. */
function worker() {
  const listeners = new Map<string, (event: object) => void>();
  const stored = new Map<string, Map<string, string>>([
    ["armwright-old", new Map()],
    ["another", new Map()],
  ]);
  const href = (asked: { url: string } | URL | string) =>
    typeof asked === "string" ? asked : "url" in asked ? asked.url : asked.href;
  const caches = {
    open: async (name: string) => {
      const cache = stored.get(name) ?? new Map<string, string>();
      stored.set(name, cache);
      return {
        addAll: async (requests: { url: string }[]) => {
          for (const { url } of requests) cache.set(url, `kept ${url}`);
        },
        match: async (asked: string) => cache.get(href(asked)),
      };
    },
    keys: async () => [...stored.keys()],
    delete: async (name: string) => stored.delete(name),
  };
  const self = {
    location: { href: "https://cars.example/bench/service-worker.js" },
    clients: { claim: async () => undefined },
    skipWaiting: () => undefined,
    addEventListener: (kind: string, listener: (event: object) => void) => listeners.set(kind, listener),
  };
  class Request {
    readonly url: string;
    constructor(url: URL | string) {
      this.url = String(url);
    }
  }
  const source = serviceWorkerSource({ version: "new", files: ["assets/a.js"] });
  runInNewContext(source, { self, caches, URL, Request, fetch: async () => "from the network" });
  const fire = async (kind: string, more: object = {}): Promise<unknown> => {
    let answer: Promise<unknown> | undefined;
    const hold = (promise: Promise<unknown>) => {
      answer = promise;
    };
    listeners.get(kind)?.({ waitUntil: hold, respondWith: hold, ...more });
    return answer;
  };
  return {
    stored,
    fire,
    ask: (url: string, mode = "cors", method = "GET") => fire("fetch", { request: { url, mode, method } }),
  };
}

it("keeps the new build, clears its own old ones and nothing else's", async () => {
  const { stored, fire } = worker();
  await fire("install");
  await fire("activate");
  expect([...stored.keys()]).toEqual(["another", "armwright-new"]);
});

it("answers visits with the page and files from what is kept, and leaves everything else alone", async () => {
  const { fire, ask } = worker();
  await fire("install");
  const home = "https://cars.example/bench/";
  expect(await ask(home, "navigate")).toBe(`kept ${home}`);
  expect(await ask(`${home}cars/any?x=1`, "navigate")).toBe(`kept ${home}`);
  expect(await ask(`${home}assets/a.js`)).toBe(`kept ${home}assets/a.js`);
  const left: readonly (readonly [string, string?, string?])[] = [
    [`${home}api/cars`],
    [`${home}api/events?client=1`],
    [`${home}pair`, "navigate"],
    [`${home}pair.js`],
    [`${home}assets/other.js`],
    [`${home}api/cars/a/operations`, "cors", "POST"],
    ["https://elsewhere.example/bench/assets/a.js"],
    ["https://cars.example/other/", "navigate"],
  ];
  for (const asked of left) expect(await ask(...asked)).toBeUndefined();
});
