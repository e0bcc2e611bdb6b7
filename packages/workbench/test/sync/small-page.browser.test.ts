import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { delimiter, extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { build } from "vite";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { benchUnderTest, CAR_TEXT, type UnderTest, until } from "../../../cli/test/bench/bench-under-test.ts";
import { offline } from "../../src/offline/plugin.ts";
import type { Chosen } from "../../src/sync/choose-source.ts";
import type { Shelf } from "../../src/sync/shelf.ts";

declare global {
  var chosen: Chosen;
  var registered: Promise<boolean>;
  var browserShelf: () => Promise<Shelf>;
}

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
const folders = (process.env["PATH"] ?? "").split(delimiter);
const found = names.flatMap((name) => folders.map((folder) => join(folder, name))).find(existsSync);
const executablePath = process.env["CHROMIUM_PATH"] ?? found;

let root: string;
let app: string;
let browser: Browser;
beforeAll(async () => {
  if (!executablePath) throw new Error("No Chromium here: install it, or name it in CHROMIUM_PATH.");
  root = mkdtempSync(join(tmpdir(), "small-page-"));
  app = join(root, "app");
  writeFileSync(
    join(root, "index.html"),
    '<!doctype html><html lang="en"><head><link rel="icon" href="./mark.svg"><title>begins</title></head><body><script type="module" src="./main.ts"></script></body></html>',
  );
  mkdirSync(join(root, "public"));
  writeFileSync(join(root, "public", "mark.svg"), '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>');
  writeFileSync(join(root, "main.ts"), `import ${JSON.stringify(here("./small-page.ts"))};`);
  const alias = [{ find: "@armwright/engine/document", replacement: here("../../../engine/src/document/index.ts") }];
  await build({
    root,
    base: "./",
    configFile: false,
    logLevel: "silent",
    plugins: [offline()],
    resolve: { alias },
    build: { outDir: app, target: "es2022" },
  });
  browser = await chromium.launch({
    executablePath,
    args: [
      "--no-sandbox",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
});
afterAll(async () => {
  await browser?.close();
  rmSync(root, { recursive: true, force: true });
});

let complaints: string[];
const visit = async (address: string): Promise<Page> => {
  const context = await browser.newContext();
  const page = await context.newPage();
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(address);
  return page;
};
const ready = (page: Page, title: string) =>
  until(`the page says ${title}`, async () => (await page.title()) === title, 15_000);
const name = (page: Page) =>
  page.evaluate(async () => (chosen.ok ? (await chosen.source.open("saltbush"))?.document?.name : chosen.why));
const type = (page: Page, value: string) =>
  page.evaluate(async (typed) => {
    if (!chosen.ok) throw new Error(chosen.why);
    await chosen.source.open("saltbush");
    chosen.source.apply("saltbush", [{ path: "name", value: typed }]);
  }, value);
const status = (page: Page) => page.evaluate(() => (chosen.ok ? chosen.source.status().word : chosen.why));
const isControlled = (page: Page) => page.evaluate(() => navigator.serviceWorker.controller !== null);
beforeEach(() => {
  complaints = [];
});

describe("a served page", () => {
  let bench: UnderTest;
  afterEach(() => bench.end());

  it("goes on without its server, also over a reload, and sends when it is back", async () => {
    bench = await benchUnderTest({ app });
    const { port, root: kept } = bench;
    const page = await visit(bench.ownLink());
    await ready(page, "server");
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
    await type(page, "Typed with a server");
    await until("it is kept", async () => (await status(page)) === "kept");
    await until("the worker", () => isControlled(page), 10_000);
    expect(complaints).toEqual([]);
    await bench.close();
    await type(page, "Typed without");
    await page.reload();
    await ready(page, "server");
    expect(await name(page)).toBe("Typed without");
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
    expect(bench.onDisk()).toContain("Typed with a server");
    bench = await benchUnderTest({ root: kept, port, app });
    await until("it is sent", () => bench.onDisk().includes("Typed without"), 15_000);
    await page.context().close();
  });

  it("pairs by its link, and not without it", async () => {
    const secrets: string[] = [];
    bench = await benchUnderTest({ app, share: "127.0.0.2", onSecret: (secret) => secrets.push(secret) });
    const address = `http://127.0.0.2:${bench.port}`;
    const stranger = await visit(`${address}/`);
    expect(await stranger.title()).toBe("Armwright: pair this device");
    await stranger.fill("input", "AAAA-BBBB-CCCC-DDDD");
    await stranger.click("button");
    expect(await stranger.textContent("#says")).toContain("not known");
    await stranger.fill("input", secrets[0] ?? "");
    await stranger.click("button");
    await ready(stranger, "server");
    const phone = await visit(`${address}/pair#${secrets[1]}`);
    await ready(phone, "server");
    expect(phone.url()).toBe(`${address}/`);
    await type(phone, "From the phone");
    await until("the other sees it", async () => (await name(stranger)) === "From the phone");
    await stranger.context().close();
    await phone.context().close();
  });
});

describe("a static page", () => {
  let server: Server;
  let isUp = true;
  afterEach(() => server.close());

  it("keeps cars in the browser, and starts without a network", async () => {
    const kinds: Record<string, string> = {
      ".js": "text/javascript",
      ".html": "text/html",
      ".png": "image/png",
      ".webmanifest": "application/manifest+json",
    };
    server = createServer((asked, answer) => {
      const path = new URL(asked.url ?? "", "http://x").pathname.replace(/^\/armwright\//, "") || "index.html";
      const file = join(app, path);
      if (!isUp) asked.socket.destroy();
      else if (!existsSync(file)) answer.writeHead(404).end();
      else
        answer
          .writeHead(200, { "content-type": kinds[extname(file)] ?? "application/octet-stream" })
          .end(readFileSync(file));
    });
    await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
    const page = await visit(`http://127.0.0.1:${(server.address() as AddressInfo).port}/armwright/`);
    await ready(page, "browser");
    const made = await page.evaluate(
      async (text) => (chosen.ok ? chosen.source.importText("saltbush", text) : undefined),
      CAR_TEXT,
    );
    expect(made).toEqual({ ok: true, name: "saltbush" });
    await type(page, "In the browser");
    expect(await page.evaluate(async () => (chosen.ok ? (await chosen.source.history("saltbush")).length : 0))).toBe(1);
    const kept = await page.evaluate(async () => {
      const shelf = await browserShelf();
      await shelf.put("mesh:scan.stl", new Uint8Array([1, 2, 3]));
      return [await shelf.keys("mesh:"), await shelf.keys("nothing:")];
    });
    expect(kept).toEqual([["mesh:scan.stl"], []]);
    await until("the worker", () => isControlled(page), 10_000);
    isUp = false;
    await page.reload();
    await ready(page, "browser");
    expect(await name(page)).toBe("In the browser");
    const mesh = await page.evaluate(async () =>
      Array.from((chosen.ok && (await chosen.source.readMesh("scan.stl"))) || []),
    );
    expect(mesh).toEqual([1, 2, 3]);
    expect(await page.evaluate(async () => (chosen.ok ? (await chosen.source.history("saltbush")).length : 0))).toBe(1);
    await page.context().close();
  });
});
