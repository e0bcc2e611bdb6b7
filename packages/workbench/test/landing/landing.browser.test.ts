import { cornerModel, INCH, runLanding, study, toUnit } from "@armwright/engine";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { threeFigures } from "../../src/words/three-figures.ts";
import { exampleCar } from "../mounts/car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

/** Found in a worker, on a machine that may be busy with other tests. */
const PATIENCE = { timeout: 20_000 };

async function openLanding(page: Page): Promise<void> {
  await page.locator(".order button", { hasText: "Landing" }).first().click();
  await page.locator(".landing-work").waitFor();
}

async function letItHappen(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Let it happen" }).click();
  await page.locator("[data-play]").waitFor();
}

const travelNow = async (page: Page): Promise<string> =>
  (await page.locator("svg.tape").getAttribute("aria-valuenow")) ?? "";

test("a drop has the engine's peaks, and its slider moves the real wheel by keys", async () => {
  const { page, troubles } = await built.open();
  await openLanding(page);
  await letItHappen(page);
  const made = study(exampleCar("saltbush").car);
  const found = cornerModel(made);
  if (!found.ok) throw new Error("the demo car can land");
  const landing = runLanding(made.corner, found.model, { kind: "drop", height: 24 * INCH });
  const { peaks, bottomings } = landing;
  const shown = async (peak: string): Promise<string> =>
    (await page.locator(`[data-peak="${peak}"] td b`).textContent()) ?? "";
  for (const peak of ["wheelLoad", "shockForce", "stopForce", "strapForce"] as const) {
    expect(await shown(peak)).toBe(`${threeFigures(toUnit(peaks[peak].value, "force", "inch-pound"))}\u00a0lb`);
  }
  expect(await shown("shockSpeedIn")).toContain(threeFigures(toUnit(peaks.shockSpeedIn.value, "speed", "inch-pound")));
  expect(await page.locator(".told").getAttribute("data-bottomings")).toBe(String(bottomings));

  // At its beginning the wheel hangs; at the peak of the wheel load it is where the engine has it.
  const atStart = await travelNow(page);
  await page.locator('[data-peak="wheelLoad"] button').click();
  await expect.poll(async () => Number(await travelNow(page)), PATIENCE).toBeCloseTo(peaks.wheelLoad.travel / INCH, 1);
  const slider = page.getByLabel("Time of the landing");
  await slider.focus();
  await page.keyboard.press("Home");
  await expect.poll(() => travelNow(page), PATIENCE).not.toBe("");
  const atHome = await travelNow(page);
  expect(Number(atHome)).toBeLessThan(Number(atStart) + 1e-9);
  for (let i = 0; i < 45; i += 1) await page.keyboard.press("ArrowRight");
  await expect.poll(() => travelNow(page), PATIENCE).not.toBe(atHome);
  expect(troubles).toEqual([]);
});

test("played, the mechanism moves and stands still where it is stopped", async () => {
  const { page } = await built.open();
  await openLanding(page);
  await letItHappen(page);
  const play = page.locator("[data-play]");
  await play.click();
  const seen = new Set<string>();
  for (let i = 0; i < 12; i += 1) {
    await page.waitForTimeout(200);
    seen.add(await travelNow(page));
  }
  expect(seen.size).toBeGreaterThan(3);
  await play.click();
  const stood = await travelNow(page);
  await page.waitForTimeout(400);
  expect(await travelNow(page)).toBe(stood);
  // The hand goes before: a key moves the wheel, and it does not play on against it.
  await play.click();
  await page.waitForTimeout(300);
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press("0");
  await expect.poll(() => play.getAttribute("aria-pressed"), PATIENCE).toBe("false");
});

test("with reduced motion it jumps instead of gliding", async () => {
  const { page } = await built.open({ reducedMotion: "reduce" });
  await openLanding(page);
  await letItHappen(page);
  await page.locator("[data-play]").click();
  const seen = new Set<string>();
  for (let i = 0; i < 14; i += 1) {
    seen.add((await page.locator(".player output").textContent()) ?? "");
    await page.waitForTimeout(200);
  }
  expect(seen.size).toBeGreaterThan(1);
  expect(seen.size).toBeLessThanOrEqual(5);
});

test("a long road is given up, and what was typed wrong is said", async () => {
  const { page } = await built.open();
  await openLanding(page);
  await page.locator(".event-kinds label", { hasText: "a rough road" }).click();
  await page.locator('[data-event="road.class"]').fill("Q");
  await page.getByText("is not a class, write A (smooth) to H (very rough)").waitFor();
  await page.locator('[data-event="road.class"]').fill("H");
  await page.locator('[data-event="road.seconds"]').fill("300");
  await page.getByRole("button", { name: "Let it happen" }).click();
  await page.getByRole("button", { name: "Give up" }).click();
  await page.getByText("Given up.").waitFor();
  await page.waitForTimeout(3000);
  expect(await page.locator("[data-play]").count()).toBe(0);
  // Another one then goes through.
  await page.locator('[data-event="road.seconds"]').fill("2");
  await letItHappen(page);
});

test("peaks go among the load cases in one step", async () => {
  const { page } = await built.open();
  await openLanding(page);
  await letItHappen(page);
  await page.getByRole("button", { name: "Put them among the load cases" }).click();
  await page.locator(".order button", { hasText: "Loads" }).first().click();
  await page.getByRole("button", { name: /drop from 24 in, wheel loaded most/ }).waitFor();
  await page.keyboard.press("Control+z");
  await expect.poll(() => page.getByRole("button", { name: /drop from 24 in/ }).count(), PATIENCE).toBe(0);
});
