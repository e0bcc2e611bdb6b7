import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltPage, builtPage } from "../page/built-page.ts";
import { boxFrame } from "./box-frame.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

test("on a phone too a scan is chosen, and its spots are touched in the scene", async () => {
  const { page, troubles } = await built.open({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await page.locator(".step-button").tap();
  await page.locator("nav.order button", { hasText: "Room" }).tap();
  await page.locator(".tabs button", { hasText: "Inputs" }).tap();
  await page
    .locator("[data-mesh-file]")
    .setInputFiles({ name: "box frame.stl", mimeType: "model/stl", buffer: boxFrame() });
  const spot = page.getByRole("button", { name: /^Touch spot/ });
  await spot.tap();
  const canvas = page.locator(".scene canvas");
  await canvas.waitFor();
  await page.waitForTimeout(1000);
  const box = await canvas.boundingBox();
  if (!box) throw new Error("no scene");
  const drafts = page.locator(".mesh-part fieldset");
  for (const [across, down] of [
    [0.6, 0.4],
    [0.75, 0.45],
    [0.5, 0.5],
    [0.7, 0.55],
    [0.8, 0.35],
    [0.85, 0.5],
  ] as const) {
    if ((await drafts.count()) > 0) break;
    await page.touchscreen.tap(box.x + across * box.width, box.y + down * box.height);
    await page.waitForTimeout(300);
  }
  expect(await drafts.count()).toBe(1);
  await page.getByLabel("Spot 1, forward").fill("10");
  expect(await page.getByLabel("Spot 1, forward").inputValue()).toBe("10");
  expect(troubles).toEqual([]);
  await page.context().close();
});
