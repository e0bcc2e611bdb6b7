import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { build } from "vite";
import { expect } from "vitest";
import { benchUnderTest, type UnderTest, until } from "../../../cli/test/bench/bench-under-test.ts";

const WORKBENCH = fileURLToPath(new URL("../..", import.meta.url));
const EXAMPLES = fileURLToPath(new URL("../../../../examples/", import.meta.url));
const CHROMIUM = process.env["CHROMIUM_PATH"] ?? "/usr/bin/chromium";

/** The page as it is built and a browser to see it in: made once for a file of tests. */
export interface Workshop {
  /** Folder of the built page. */
  readonly app: string;
  /** A real bench on a folder of copies of the examples; every one is ended by `close`. */
  readonly bench: (options?: Parameters<typeof benchUnderTest>[0]) => Promise<UnderTest>;
  /** A browser of its own, with nothing kept in it, that goes to the address. */
  readonly visit: (address: string, options?: BrowserContextOptions) => Promise<Visit>;
  readonly close: () => Promise<void>;
}

export interface Visit {
  readonly page: Page;
  /** Errors of the page and of its console. */
  readonly troubles: readonly string[];
}

export async function workshop(): Promise<Workshop> {
  if (!existsSync(CHROMIUM)) throw new Error(`no browser at ${CHROMIUM}: name one with CHROMIUM_PATH`);
  const root = mkdtempSync(join(tmpdir(), "together-"));
  const app = join(root, "app");
  // A runner of tests says "test" here, which would build the page with its tools for developers.
  const mode = process.env["NODE_ENV"];
  process.env["NODE_ENV"] = "production";
  await build({
    configFile: join(WORKBENCH, "vite.config.ts"),
    logLevel: "error",
    build: { outDir: app, emptyOutDir: true, sourcemap: false },
  });
  process.env["NODE_ENV"] = mode;
  const browser = await launch();
  return {
    app,
    bench: (options = {}) => benchUnderTest({ app, root: options.root ?? folderOfExamples(root), ...options }),
    visit: (address, options) => visit(browser, address, options),
    close: async () => {
      await browser.close();
      rmSync(root, { recursive: true, force: true });
    },
  };
}

const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: CHROMIUM,
    args: ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-sync"],
  });

function folderOfExamples(root: string): string {
  const made = mkdtempSync(join(root, "bench-"));
  mkdirSync(join(made, "cars"));
  for (const file of readdirSync(EXAMPLES))
    if (file.endsWith(".car.json")) copyFileSync(join(EXAMPLES, file), join(made, "cars", file));
  return made;
}

async function visit(browser: Browser, address: string, options: BrowserContextOptions = {}): Promise<Visit> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: "block",
    ...options,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  const troubles: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => message.type() === "error" && troubles.push(message.text()));
  await page.goto(address);
  return { page, troubles };
}

/** Until the bench can be worked on. */
export const ready = (page: Page): Promise<void> => page.locator("nav").first().waitFor();

export const field = (page: Page, path: string) => page.locator(`[data-field="${path}"]`);

/** Types a value into a field, as a hand does. */
export async function enter(page: Page, path: string, value: string): Promise<void> {
  await field(page, path).fill(value);
  await field(page, path).press("Enter");
}

/** Waits until a field shows a value; gives how long that took, ms. */
export const shows = (page: Page, path: string, value: string, most = 5000): Promise<number> =>
  until(`${path} shows ${value}`, async () => (await field(page, path).inputValue()) === value, most);

/** Until the service worker answers for this page, so that it starts without a server. */
export const isKeptOffline = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => navigator.serviceWorker.controller !== null);

/** The file that the page hands out for the car on the bench. */
export async function takenOut(page: Page): Promise<string> {
  await page.locator(".bench-foot").getByRole("button", { name: "Cars" }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Take this car out as a file" }).click();
  const text = readFileSync(await (await download).path(), "utf8");
  await page.keyboard.press("Escape");
  expect(await page.getByRole("dialog").count()).toBe(0);
  return text;
}
