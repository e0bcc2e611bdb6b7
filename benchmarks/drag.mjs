// Script time of one step of a drag in the page, demo car, in Chromium: from pointer move to numbers, charts and drawing
// updated. Run after the page is built: node benchmarks/drag.mjs
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const STEPS = 150;
/** ms, for 95 % of the steps. */
const AIM = 16;

const folder = mkdtempSync(join(tmpdir(), "armwright-drag-"));
cpSync(join(ROOT, "examples/saltbush.car.json"), join(folder, "saltbush.car.json"));
const bench = spawn(process.execPath, [join(ROOT, "packages/cli/bin/armwright.js"), "bench", folder, "--no-open"]);
const address = await new Promise((resolve, reject) => {
  bench.stdout.on("data", (text) => {
    const found = /http:\/\/\S+/.exec(String(text));
    if (found) resolve(found[0]);
  });
  bench.on("exit", () => reject(new Error("The bench did not open: is the page built?")));
});
let browser;
try {
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-sync"],
  });
  for (const [what, handle, reach] of [
    ["a pivot dragged", "linkage.upperLink.inner", 10],
    ["the wheel pulled", "travel", 60],
  ]) {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(address);
    await page.locator("nav").first().waitFor();
    // As for a builder, who looks before the hand moves: the page has fetched its panels and stands still.
    await page.waitForTimeout(2500);
    const box = await page.locator(`[data-handle="${handle}"]`).first().boundingBox();
    const x = box.x + box.width / 2;
    const y = box.y + box.height / 2;
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 0; i < STEPS; i += 1) {
      await page.mouse.move(x + 0.6 * reach * Math.sin(i / 8), y + reach * Math.sin(i / 5));
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    }
    await page.mouse.up();
    const steps = await page.evaluate(() =>
      performance.getEntriesByName("armwright-drag-step").map(({ duration, detail }) => [duration, detail.study]),
    );
    const sorted = (index) => steps.map((step) => step[index]).sort((a, b) => a - b);
    const at = (values, part) => values[Math.min(values.length - 1, Math.floor(part * values.length))];
    const times = sorted(0);
    const share = (part) => at(times, part);
    if (times.length === 0) console.log(`${what}: no step was measured`);
    else {
      const p95 = share(0.95);
      console.log(
        `${p95 <= AIM ? "met    " : "NOT MET"}  ${what}: script per step, median ${share(0.5).toFixed(1)} ms, 95 % within ${p95.toFixed(1)} ms (aim ${AIM}), ${times.length} steps${handle === "travel" ? "" : `; reading and study alone: median ${at(sorted(1), 0.5).toFixed(1)} ms, 95 % within ${at(sorted(1), 0.95).toFixed(1)} ms`}`,
      );
    }
    await page.close();
  }
} catch (error) {
  console.log(`The drag in the page is left out: ${error instanceof Error ? error.message.split("\n")[0] : error}`);
} finally {
  await browser?.close();
  bench.kill();
  rmSync(folder, { recursive: true, force: true });
}
