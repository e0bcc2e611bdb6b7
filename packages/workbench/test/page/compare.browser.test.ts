import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltPage, builtPage } from "./built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

/** Curves and dots of camber on its chart. */
const drawn = (page: Page): Promise<number> => page.locator('svg.chart path[data-meaning="camber"]').count();

async function compare(page: Page, what: string | RegExp): Promise<void> {
  await page.locator(".bench-foot").getByRole("button", { name: "Compare" }).click();
  await page.getByRole("button", { name: what }).click();
}

test("a car of another linkage kind is laid over this one", async () => {
  const { page, troubles } = await built.open();
  await page.locator(".bench-foot").getByRole("button", { name: "Cars" }).click();
  await page.getByRole("button", { name: "New car" }).click();
  await page.getByLabel("Five links").check();
  await page.getByLabel("What it is called").fill("Thistle");
  await page.getByRole("button", { name: "Start from a guess" }).click();
  await page.getByRole("heading", { name: "Thistle" }).waitFor();
  // A new car opens on the sheet that it is entered in, which has the charts' room.
  await page.getByRole("button", { name: "Charts back" }).click();
  const alone = await drawn(page);
  await compare(page, "With Saltbush");
  const rows = page.locator(".compare-table tbody tr");
  await rows.first().waitFor();
  expect(await page.locator(".compare-table thead").textContent()).toContain("Saltbush");
  expect(await rows.filter({ hasText: "camber" }).count()).toBeGreaterThan(0);
  await page.keyboard.press("Escape");
  expect(await page.locator(".compared").textContent()).toBe("dashed: Saltbush");
  expect(await drawn(page)).toBe(alone + 1);
  await compare(page, "Compare no more");
  await page.keyboard.press("Escape");
  expect(await drawn(page)).toBe(alone);
  expect(troubles).toEqual([]);
  await page.context().close();
});

test("today is laid over before while the car is changed", async () => {
  const { page } = await built.open();
  const alone = await drawn(page);
  await compare(page, /as it is now/);
  expect(await drawn(page)).toBe(alone + 1);
  await page.locator("nav.order button", { hasText: "Arms" }).click();
  const field = page.locator('[data-field="linkage.upperLink.inner.z"]');
  await field.fill("21");
  await field.press("Enter");
  const paths = await page
    .locator('svg.chart path[data-meaning="camber"]')
    .evaluateAll((all) => all.map((each) => each.getAttribute("d")));
  expect(new Set(paths).size).toBe(paths.length);
  await page.context().close();
});
