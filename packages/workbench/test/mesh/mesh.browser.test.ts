import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltPage, builtPage } from "../page/built-page.ts";
import { boxFrame } from "./box-frame.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

interface KeptMesh {
  readonly file: string;
  readonly points: readonly { readonly mesh: { readonly x: number; readonly y: number; readonly z: number } }[];
}

/** What the browser's storage holds of the scan. */
const kept = (page: Page): Promise<KeptMesh | null> =>
  page.evaluate(() => {
    const texts = Object.values({ ...localStorage }) as string[];
    const text = texts.find((each) => each.includes('"chassisMesh"'));
    return text === undefined ? null : JSON.parse(text).chassisMesh;
  });

/** Touches the scene here and there until so many spots of the scan are found. */
async function touchSpots(page: Page, wanted: number): Promise<void> {
  const box = await page.locator(".scene canvas").boundingBox();
  if (!box) throw new Error("no scene");
  const spots = page.locator(".mesh-part fieldset");
  for (const down of [0.35, 0.5, 0.65, 0.42, 0.58]) {
    for (const across of [0.6, 0.8, 0.5, 0.7]) {
      const button = page.getByRole("button", { name: /^Touch spot/ });
      if ((await button.count()) > 0) await button.click();
      const before = await spots.count();
      await page.mouse.click(box.x + across * box.width, box.y + down * box.height);
      await page.waitForTimeout(200);
      if ((await spots.count()) > before && before + 1 === wanted) return;
    }
  }
  throw new Error(`found ${await spots.count()} spots of ${wanted}`);
}

test("a scan is chosen, placed by touched spots, measured against, undone, and there again after a reload", async () => {
  const { page, troubles } = await built.open();
  await page.locator("nav.order button", { hasText: "Room" }).click();
  await page
    .locator("[data-mesh-file]")
    .setInputFiles({ name: "box frame.stl", mimeType: "model/stl", buffer: boxFrame() });
  await page.getByText("box-frame.stl, 192 triangles, not placed yet").waitFor();
  expect(await kept(page)).toBeNull();

  await page.getByRole("button", { name: "Touch spot 1" }).click();
  await page.locator(".scene canvas").waitFor();
  await page.waitForTimeout(1000);
  await touchSpots(page, 3);
  const place = page.getByRole("button", { name: "Place the scan" });
  expect(await place.isDisabled()).toBe(true);
  const guess = [
    [0, 10, 20],
    [10, 12, 10],
    [-10, 8, 12],
  ];
  for (const [i, values] of guess.entries()) {
    for (const [k, word] of ["forward", "out", "up"].entries()) {
      await page.getByLabel(`Spot ${i + 1}, ${word}`).fill(String(values[k]));
    }
  }
  await place.click();
  const placed = await kept(page);
  expect(placed?.points.length).toBe(3);

  // Where these spots really are: the frame stands 600 mm behind its own zero and 150 mm up.
  for (const [i, { mesh }] of (placed?.points ?? []).entries()) {
    for (const [axis, mm] of [
      ["x", mesh.x - 600],
      ["y", mesh.y],
      ["z", mesh.z + 150],
    ] as const) {
      const field = page.locator(`[data-field="chassisMesh.points[${i}].car.${axis}"]`);
      await field.fill((mm / 25.4).toFixed(3));
      await field.press("Enter");
    }
  }
  await page.locator(".mesh-gaps").waitFor();
  await page.getByText("One unit of the file comes out as 1.000 mm").waitFor();
  const rows = page.locator(".mesh-gaps tr:not(.head)");
  await page.waitForTimeout(1500);
  // The frame's rails run 11 to 13 in out, right through the half shaft.
  expect(await rows.first().textContent()).toMatch(/half shaft[\s\S]*into it/);
  // And so it is told where everything else is told: among the findings, and as what stops the wheel.
  await page.locator(".findings .finding", { hasText: "half shaft to scan" }).first().waitFor();
  await page.locator(".stops-table tr.limit", { hasText: "half shaft to scan" }).first().waitFor();
  await page.locator(".mesh-part .finding").first().click();
  await page.getByRole("button", { name: "drawing" }).click();
  await page.locator('main [data-handle="linkage.upperLink.inner"]').waitFor();
  for (let i = 0; i < 10; i += 1) await page.getByRole("button", { name: "Undo" }).click();
  expect(await kept(page)).toBeNull();
  await page.getByText("not placed yet").waitFor();
  for (let i = 0; i < 10; i += 1) await page.getByRole("button", { name: "Redo" }).click();
  await page.reload();
  await page.locator("nav").first().waitFor();
  await page.locator("nav.order button", { hasText: "Room" }).click();
  await page.locator(".mesh-gaps").waitFor();
  expect(troubles).toEqual([]);
}, 60_000);
