import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { delimiter, extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { build } from "vite";
import { leanThree, THREE_SOURCES } from "../../build/lean-three.ts";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const APPS = here("../../../../build");
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".woff2": "font/woff2",
};
/** As strict as the bench's own: nothing inline, nothing from elsewhere. */
const POLICY = "default-src 'self'; object-src 'none'; base-uri 'none'";

/** As the page is built: only what the scene uses of three. `whole`: three as it is published. */
export type Three = "lean" | "whole";

/** A page with nothing but the scene, built and served, in a browser of its own. */
export interface ScenePage {
  open(
    query: string,
    size: { readonly width: number; readonly height: number },
  ): Promise<{ page: Page; complaints: string[] }>;
  close(): Promise<void>;
}

export async function scenePage(three: Three = "lean"): Promise<ScenePage> {
  const app = join(APPS, `scene-test-${three}`);
  const isLean = three === "lean";
  await build({
    configFile: false,
    root: here("./page"),
    base: "./",
    logLevel: "error",
    resolve: {
      alias: [
        { find: /^@armwright\/engine\/document$/, replacement: here("../../../engine/src/document/index.ts") },
        { find: /^@armwright\/([a-z]+)$/, replacement: here("../../../$1/src/index.ts") },
        ...(isLean ? [THREE_SOURCES] : []),
      ],
    },
    plugins: isLean ? [leanThree()] : [],
    worker: { format: "es", plugins: () => (isLean ? [leanThree()] : []) },
    build: { outDir: app, emptyOutDir: true, target: "es2022", assetsInlineLimit: 0, chunkSizeWarningLimit: 2000 },
  });
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://page");
    const file = pathname === "/" ? "/index.html" : pathname;
    try {
      const content = await readFile(join(app, file));
      response.writeHead(200, {
        "content-type": TYPES[extname(file)] ?? "application/octet-stream",
        "content-security-policy": POLICY,
      });
      response.end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const { port } = server.address() as AddressInfo;
  const browser = await launch();
  return {
    async open(query, size) {
      const page = await browser.newPage({ viewport: size });
      const complaints: string[] = [];
      page.on("pageerror", (error) => complaints.push(error.message));
      page.on("console", (message) => {
        if (message.type() === "error" && !message.text().includes("404")) complaints.push(message.text());
      });
      await page.goto(`http://127.0.0.1:${port}/?${query}`);
      await page.waitForFunction(() => "hands" in window);
      return { page, complaints };
    },
    async close() {
      await browser.close();
      server.closeAllConnections();
      await new Promise((closed) => server.close(closed));
    },
  };
}

function launch(): Promise<Browser> {
  const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
  const folders = (process.env["PATH"] ?? "").split(delimiter);
  const found = names.flatMap((name) => folders.map((folder) => join(folder, name))).find(existsSync);
  const executablePath = process.env["CHROMIUM_PATH"] ?? found;
  if (!executablePath) throw new Error("No Chromium here: install it, or name it in CHROMIUM_PATH.");
  return chromium.launch({
    executablePath,
    args: ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-sync"],
  });
}
