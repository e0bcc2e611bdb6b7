import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { enter, ready, type Workshop, workshop } from "../together/bench-in-browser.ts";
import { type BuiltPage, builtPage } from "./built-page.ts";

let shop: Workshop;
let site: BuiltPage;
beforeAll(async () => {
  [shop, site] = [await workshop(), await builtPage()];
});
afterAll(async () => {
  await shop?.close();
  await site?.close();
});

/** Bytes, gzipped: what is fetched before the car can be seen. */
const MOST = 120_000;

/** Holds back everything beyond the first drawing, until it is let go. */
async function holdTheRest(page: Page): Promise<() => void> {
  let letGo = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route(/open-bench-[\w-]+\.js$/, async (route) => {
    await held;
    await route.continue();
  });
  return letGo;
}

/** A drawing is there: the tape's numerals, the wheel, the charts. */
const isDrawn = (page: Page): Promise<unknown> =>
  page.waitForFunction(
    () => document.querySelectorAll(".board-area path").length > 100 && /camber/.test(document.body.textContent ?? ""),
    undefined,
    { timeout: 60_000 },
  );

test("a served car is drawn before what reads documents is fetched, within the size that was aimed at", async () => {
  const bench = await shop.bench();
  const { page, troubles } = await shop.visit("about:blank");
  const letGo = await holdTheRest(page);
  await page.goto(`http://127.0.0.1:${bench.port}/`);
  await isDrawn(page);
  const scripts = await page.evaluate(() => {
    const [painted] = performance.getEntriesByName("armwright-first-paint");
    return performance
      .getEntriesByType("resource")
      .filter(({ name, startTime }) => name.endsWith(".js") && startTime < painted!.startTime)
      .map(({ name }) => name.slice(name.indexOf("assets/")));
  });
  const sizes = scripts.map((name) => gzipSync(readFileSync(join(shop.app, name))).length);
  expect(sizes.length).toBeGreaterThan(0);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(MOST);
  letGo();
  await ready(page);
  expect(troubles).toEqual([]);
  await bench.end();
});

test("on a plain site the demo car is drawn at the first visit, and the car as it was left at the next", async () => {
  const { page } = await site.open();
  await ready(page);
  await page.locator("nav.order button", { hasText: "Travel" }).click();
  const before = await stopOf(page);
  await enter(page, "strap.length", "22");
  await expect.poll(() => stopOf(page)).not.toBe(before);
  const shortened = await stopOf(page);
  const letGo = await holdTheRest(page);
  await page.reload();
  await isDrawn(page);
  expect(await stopOf(page)).toBe(shortened);
  letGo();
  await ready(page);
  expect(await stopOf(page)).toBe(shortened);
  await page.context().close();
});

/** The travel on the flag of the strap. */
const stopOf = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const texts = [...document.querySelectorAll(".board-area text")].map(({ textContent }) => textContent ?? "");
    const at = texts.indexOf("strap");
    const reading = [texts[at + 1], texts[at - 1]].find((text) => text !== undefined && /^\u2212\d/.test(text));
    if (at < 0 || reading === undefined) throw new Error(`no flag of the strap: ${texts.join(" | ")}`);
    return reading;
  });
