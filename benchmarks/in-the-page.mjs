import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const ROOT = fileURLToPath(new URL("..", import.meta.url));

/**
 * Measures in the built page, on the demo car served by a bench of its own: `measure` gets a function that opens a page there.
 * Where there is no browser or no built page, it says that `what` is left out; what fails while measuring is a failure.
 */
export async function inThePage(what, measure) {
  const folder = mkdtempSync(join(tmpdir(), "armwright-benchmark-"));
  cpSync(join(ROOT, "examples/saltbush.car.json"), join(folder, "saltbush.car.json"));
  const bench = spawn(process.execPath, [join(ROOT, "packages/cli/bin/armwright.js"), "bench", folder, "--no-open"]);
  let browser;
  try {
    const address = await new Promise((resolve, reject) => {
      bench.stdout.on("data", (text) => {
        const found = /http:\/\/\S+/.exec(String(text));
        if (found) resolve(found[0]);
      });
      bench.on("exit", () => reject(new Error("The bench did not open: is the page built?")));
    });
    browser = await chromium.launch({
      executablePath: process.env.CHROMIUM_PATH ?? "/usr/bin/chromium",
      args: ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-sync"],
    });
    await measured(what, measure, async () => {
      const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
      await page.goto(address);
      await page.locator("nav").first().waitFor();
      return page;
    });
  } catch (error) {
    console.log(`${what} is left out: ${error instanceof Error ? error.message.split("\n")[0] : error}`);
  } finally {
    await browser?.close();
    bench.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measured(what, measure, open) {
  try {
    await measure(open);
  } catch (error) {
    console.log(`NOT MEASURED  ${what}: ${error instanceof Error ? error.message.split("\n")[0] : error}`);
    process.exitCode = 1;
  }
}

/** Of sorted values the one that the share lies within. */
export const within = (sorted, share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
