import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltPage, builtPage } from "./built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

test("the right side is given its own arms, moved by itself, and mirrored again", async () => {
  const { page, troubles } = await built.open();
  await page.locator("nav.order button", { hasText: "Arms" }).click();
  const field = (path: string) => page.locator(`[data-field="${path}"]`);
  const left = await field("linkage.upperLink.inner.y").inputValue();
  const travel = await page.locator(".sum").textContent();
  await page.getByRole("button", { name: /right side differs.*linkage/ }).click();
  // So far the left one's mirror image: the same point on the other side, the same travel.
  expect(await field("right.linkage.upperLink.inner.y").inputValue()).toBe(`-${left}`);
  expect(await field("linkage.upperLink.inner.y").count()).toBe(0);
  expect(await page.locator(".sum").textContent()).toBe(travel);
  // It is named as what is drawn: the right corner, seen as in a mirror.
  await page.locator(".drawing text", { hasText: "right corner from behind, mirrored" }).first().waitFor();
  expect(await page.locator(".drawing text", { hasText: "from the left" }).count()).toBe(0);
  // From behind, out is to the left, on a right corner drawn as a left one too.
  await page.locator('[data-handle="linkage.upperLink.inner"]').focus();
  await page.keyboard.press("Shift+ArrowUp");
  await page.keyboard.press("ArrowLeft");
  expect(await field("right.linkage.upperLink.inner.y").inputValue()).toBe("-11 3/16");
  expect(await page.locator(".sum").textContent()).not.toBe(travel);
  // The left side is as it was.
  await page.getByRole("button", { name: /right rear corner/ }).click();
  await page
    .locator(".drawing text", { hasText: /^from the left$/ })
    .first()
    .waitFor();
  expect(await field("linkage.upperLink.inner.y").inputValue()).toBe(left);
  expect(await page.locator(".sum").textContent()).toBe(travel);
  await page.getByRole("button", { name: /Mirror the left again.*linkage/ }).click();
  await page.getByRole("button", { name: /right side differs.*linkage/ }).waitFor();
  expect(await page.getByRole("button", { name: /rear corner/ }).count()).toBe(0);
  expect(troubles).toEqual([]);
  await page.context().close();
});
