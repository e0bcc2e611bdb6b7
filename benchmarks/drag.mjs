// Script time of one step of a drag in the page, demo car, in Chromium: from pointer move to numbers, charts and drawing
// updated. Run after the page is built: node benchmarks/drag.mjs
import { inThePage, within } from "./in-the-page.mjs";

const STEPS = 150;
/** ms, for 95 % of the steps. */
const AIM = 16;

await inThePage("The drag in the page", async (open) => {
  for (const [what, handle, reach] of [
    ["a pivot dragged", "linkage.upperLink.inner", 10],
    ["the wheel pulled", "travel", 60],
  ]) {
    const page = await open();
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
    const times = sorted(0);
    if (times.length === 0) console.log(`${what}: no step was measured`);
    else {
      const p95 = within(times, 0.95);
      console.log(
        `${p95 <= AIM ? "met    " : "NOT MET"}  ${what}: script per step, median ${within(times, 0.5).toFixed(1)} ms, 95 % within ${p95.toFixed(1)} ms (aim ${AIM}), ${times.length} steps${handle === "travel" ? "" : `; reading and study alone: median ${within(sorted(1), 0.5).toFixed(1)} ms, 95 % within ${within(sorted(1), 0.95).toFixed(1)} ms`}`,
      );
    }
    await page.close();
  }
});
