import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { build } from "vite";

const FOLDER = fileURLToPath(new URL("../..", import.meta.url));
const CHROMIUM = process.env["CHROMIUM_PATH"] ?? "/usr/bin/chromium";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
};

/** As strict as the bench's own: nothing inline, nothing from elsewhere. */
const POLICY = "default-src 'self'; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'";

/** The page as it is built, on a server that knows nothing but files, in a browser of its own. */
export interface BuiltPage {
  readonly open: (options?: BrowserContextOptions) => Promise<OpenPage>;
  readonly close: () => Promise<void>;
}

export interface OpenPage {
  readonly page: Page;
  /** What went wrong on it: errors and warnings of the console, refused requests to elsewhere. */
  readonly troubles: readonly string[];
}

export async function builtPage(): Promise<BuiltPage> {
  // A runner of tests says "test" here, which would build the page with its tools for developers.
  const mode = process.env["NODE_ENV"];
  process.env["NODE_ENV"] = "production";
  // A folder of its own: another build in the meantime would take the page's parts from under it.
  const app = mkdtempSync(join(tmpdir(), "built-page-"));
  await build({
    configFile: join(FOLDER, "vite.config.ts"),
    logLevel: "error",
    build: { outDir: app, emptyOutDir: true, sourcemap: false },
  });
  process.env["NODE_ENV"] = mode;
  const server = await serve(app);
  const { port } = server.address() as AddressInfo;
  const browser = await launch();
  return {
    open: async (options = {}) => {
      const context = await browser.newContext({
        viewport: { width: 1440, height: 900 },
        serviceWorkers: "block",
        ...options,
      });
      const page = await context.newPage();
      const troubles = watch(page, port);
      await page.goto(`http://127.0.0.1:${port}/`);
      await page.locator("nav").first().waitFor();
      return { page, troubles };
    },
    close: async () => {
      await browser.close();
      server.closeAllConnections();
      await new Promise((closed) => server.close(closed));
      rmSync(app, { recursive: true, force: true });
    },
  };
}

function launch(): Promise<Browser> {
  if (!existsSync(CHROMIUM)) throw new Error(`no browser at ${CHROMIUM}: name one with CHROMIUM_PATH`);
  return chromium.launch({
    executablePath: CHROMIUM,
    args: ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-sync"],
  });
}

function watch(page: Page, port: number): readonly string[] {
  const troubles: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => {
    // The page asks whether a bench serves it; a server of files answers 404.
    if (message.type() === "error" && !message.text().includes("404")) troubles.push(message.text());
  });
  page.on("request", (request) => {
    const url = new URL(request.url());
    if (url.protocol.startsWith("http") && url.host !== `127.0.0.1:${port}`) troubles.push(`asked elsewhere: ${url}`);
  });
  return troubles;
}

async function serve(app: string): Promise<Server> {
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://page");
    try {
      const content = await readFile(join(app, pathname === "/" ? "index.html" : pathname));
      const type = TYPES[extname(pathname === "/" ? ".html" : pathname)] ?? TYPES[pathname === "/" ? ".html" : ""];
      response.writeHead(200, {
        "content-type": type ?? "application/octet-stream",
        "content-security-policy": POLICY,
      });
      response.end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  return server;
}
