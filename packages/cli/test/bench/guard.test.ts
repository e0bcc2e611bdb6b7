import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Asking, benchUnderTest, CAR_TEXT, freshId, type UnderTest } from "./bench-under-test.ts";

let bench: UnderTest;
beforeAll(async () => {
  bench = await benchUnderTest();
  const cars = join(bench.root, "cars");
  mkdirSync(join(bench.root, "elsewhere"));
  writeFileSync(join(bench.root, "elsewhere", "other.car.json"), CAR_TEXT);
  symlinkSync(join(bench.root, "elsewhere", "other.car.json"), join(cars, "linked.car.json"));
  symlinkSync(join(bench.root, "secret.txt"), join(bench.root, "app", "leak.txt"));
  symlinkSync(join(bench.root, "elsewhere"), join(bench.root, "app", "out"));
  mkdirSync(join(cars, "folder.car.json"));
  writeFileSync(join(cars, "ünder.car.json"), CAR_TEXT);
  symlinkSync(join(bench.root, "secret.txt"), join(cars, "scan.stl"));
});
afterAll(() => bench.end());

describe("paths", () => {
  const hostile = [
    "/../secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e/secret.txt",
    "/%2e%2e%2fsecret.txt",
    "/.%2e/secret.txt",
    "/assets/../../secret.txt",
    "/assets/%2e%2e/%2e%2e/secret.txt",
    "/..%5csecret.txt",
    "/..\\secret.txt",
    "/%252e%252e%252fsecret.txt",
    "/%c0%ae%c0%ae/secret.txt",
    "/%uff0e%uff0e/secret.txt",
    "//secret.txt",
    "/./index.html",
    "/index.html%00.txt",
    "/%00",
    "/assets//main-abc.js",
    "/assets/",
    "/leak.txt",
    "/out/other.car.json",
    "/.git/config",
    "/C:/secret.txt",
    "/index.html::$DATA",
    "/api/cars/..%2f..%2fsecret",
    "/api/cars/%2e%2e%2felsewhere%2fother",
    "/api/cars/..%5celsewhere%5cother",
    "/api/cars/linked",
    "/api/cars/folder",
    "/api/cars/saltbush.car.json",
    "/api/cars/saltbush%00",
    "/api/cars/.history",
    "/api/cars/con",
    "/api/cars/%C3%BCnder",
    `/api/cars/${"a".repeat(200)}`,
    "/api/cars/saltbush/history/..%2f..%2f..%2fsaltbush",
    "/api/cars/saltbush/history/operations.log",
    "/api/meshes/scan.stl",
    "/api/meshes/saltbush.car.json",
    "http://127.0.0.1/index.html",
    "*",
    `/${"a".repeat(5000)}`,
  ];
  it.each(hostile.map((path) => [path.slice(0, 80), path]))("gives nothing for %j", async (_, path) => {
    const answer = await bench.ask(path);
    // A link is shown as a broken car, with the reason and none of its content.
    if (path.endsWith("/linked") || path.endsWith("/folder")) {
      expect(answer.json()).toMatchObject({ condition: "broken", text: "" });
    } else expect([400, 404]).toContain(answer.status);
    expect(answer.text).not.toContain("outside");
    expect(answer.text).not.toContain("linkage");
  });

  it("gives the page and its files", async () => {
    expect((await bench.ask("/")).text).toContain("page");
    const script = await bench.ask("/assets/main-abc.js");
    expect(script.headers).toMatchObject({ "content-type": "text/javascript; charset=utf-8" });
    expect(script.headers["cache-control"]).toContain("immutable");
    const again = await bench.ask("/", { headers: { "if-none-match": (await bench.ask("/")).headers.etag ?? "" } });
    expect(again.status).toBe(304);
  });

  it("never writes through a link", async () => {
    const id = freshId();
    const answer = await bench.edit("client-aa", [{ id, path: "name", value: "mine" }], "linked");
    expect(answer.status).toBe(409);
    expect((await bench.send("DELETE", "/api/cars/linked")).status).toBe(409);
    expect((await bench.send("PUT", "/api/cars/linked", CAR_TEXT)).status).toBe(409);
    expect(readFileSync(join(bench.root, "elsewhere", "other.car.json"), "utf8")).toBe(CAR_TEXT);
  });

  it("lists what it passes over, with the reason", async () => {
    const listing = (await bench.ask("/api/cars")).json() as {
      cars: { name: string }[];
      passedOver: { file: string }[];
    };
    expect(listing.cars.map(({ name }) => name)).toEqual(["saltbush"]);
    expect(listing.passedOver.map(({ file }) => file).sort()).toEqual([
      "folder.car.json",
      "linked.car.json",
      "ünder.car.json",
    ]);
  });
});

describe("hosts and origins", () => {
  const edit: Asking = {
    method: "POST",
    headers: { "x-armwright": "1" },
    body: JSON.stringify({ client: "client-aa", operations: [{ id: "never-done-1", path: "name", value: "foreign" }] }),
  };
  const edits = "/api/cars/saltbush/operations";
  const withHeaders = (asking: Asking, headers: Record<string, string>): Asking => ({
    ...asking,
    headers: { ...asking.headers, ...headers },
  });
  const cases: readonly (readonly [what: string, path: string, asking: () => Asking, status: number])[] = [
    ["another name that is bent to this machine", "/", () => ({ host: `evil.example:${bench.port}` }), 421],
    ["a name that only begins like ours", "/", () => ({ host: `127.0.0.1.evil.example:${bench.port}` }), 421],
    ["no port", "/", () => ({ host: "127.0.0.1" }), 421],
    ["another port", "/", () => ({ host: "127.0.0.1:1" }), 421],
    ["every address", "/", () => ({ host: `0.0.0.0:${bench.port}` }), 421],
    ["localhost", "/", () => ({ host: `localhost:${bench.port}` }), 200],
    ["another site's origin", "/api/cars", () => ({ headers: { origin: "http://evil.example" } }), 403],
    ["no origin at all, by its name", "/api/cars", () => ({ headers: { origin: "null" } }), 403],
    ["our origin with another port", "/api/cars", () => ({ headers: { origin: "http://127.0.0.1:1" } }), 403],
    ["our origin, but secure", "/api/cars", () => ({ headers: { origin: `https://127.0.0.1:${bench.port}` } }), 403],
    ["our own origin", "/api/cars", () => ({ headers: { origin: `http://127.0.0.1:${bench.port}` } }), 200],
    ["a read from another site", "/api/cars", () => ({ headers: { "sec-fetch-site": "cross-site" } }), 403],
    ["a read from another port", "/api/cars", () => ({ headers: { "sec-fetch-site": "same-site" } }), 403],
    [
      "an image on another site",
      "/assets/main-abc.js",
      () => ({ headers: { "sec-fetch-site": "cross-site", "sec-fetch-mode": "no-cors" } }),
      403,
    ],
    [
      "a stream from another site",
      "/api/events?client=client-aa",
      () => ({ headers: { "sec-fetch-site": "cross-site" } }),
      403,
    ],
    [
      "a frame on another site",
      "/",
      () => ({ headers: { "sec-fetch-site": "cross-site", "sec-fetch-mode": "navigate", "sec-fetch-dest": "iframe" } }),
      403,
    ],
    [
      "a link on another site",
      "/",
      () => ({
        headers: { "sec-fetch-site": "cross-site", "sec-fetch-mode": "navigate", "sec-fetch-dest": "document" },
      }),
      200,
    ],
    ["a write from another site", edits, () => withHeaders(edit, { "sec-fetch-site": "cross-site" }), 403],
    ["a write with another origin", edits, () => withHeaders(edit, { origin: "http://evil.example" }), 403],
    ["a write from a form", edits, () => ({ ...edit, headers: { "content-type": "text/plain" } }), 403],
    ["an asking for permission", edits, () => ({ method: "OPTIONS", headers: { origin: "http://evil.example" } }), 405],
    ["a trace", "/", () => ({ method: "TRACE" }), 405],
  ];
  it.each(cases)("%s", async (_, path, asking, status) => {
    const answer = await bench.ask(path, asking());
    expect(answer.status).toBe(status);
    expect(answer.headers["access-control-allow-origin"]).toBeUndefined();
    expect(bench.onDisk()).toBe(CAR_TEXT);
  });

  it.each(["Host: 127.0.0.1:PORT\r\nHost: evil.example\r\n", "Host:\r\n", ""])("refuses the head %j", async (hosts) => {
    const head = hosts.replace("PORT", String(bench.port));
    expect(await bytesFor(`GET / HTTP/1.1\r\n${head}Connection: close\r\n\r\n`)).toMatch(/^HTTP\/1\.1 4\d\d /);
  });

  it("sets the guard headers on every kind of answer", async () => {
    for (const path of ["/", "/api/cars", "/nothing.js", "/../x", "/api/nothing"]) {
      const { headers } = await bench.ask(path);
      expect(headers["content-security-policy"]).toContain("script-src 'self';");
      expect(headers["content-security-policy"]).not.toContain("unsafe");
      expect(headers).toMatchObject({
        "x-content-type-options": "nosniff",
        "referrer-policy": "no-referrer",
        "cross-origin-opener-policy": "same-origin",
        "cross-origin-embedder-policy": "require-corp",
        "cross-origin-resource-policy": "same-origin",
      });
    }
  });
});

function bytesFor(message: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(bench.port, "127.0.0.1", () => socket.write(message));
    let text = "";
    socket.on("data", (chunk) => {
      text += String(chunk);
    });
    socket.on("close", () => resolve(text));
    socket.on("error", reject);
  });
}
