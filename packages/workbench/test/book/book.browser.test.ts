import { fingerprintOf } from "@armwright/engine/document";
import AxeBuilder from "@axe-core/playwright";
import { afterAll, beforeAll, expect, test } from "vitest";
import { exampleCar } from "../mounts/car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const STEPS = ["Survey", "Strength", "Book", "As built"] as const;

for (const [name, viewport] of [
  ["a laptop", { width: 1440, height: 900 }],
  ["a phone", { width: 390, height: 844 }],
] as const) {
  test(`survey, strength, book and as built on ${name}: axe finds nothing, nothing runs out of the page`, async () => {
    const { page, troubles } = await built.open({ viewport });
    for (const step of STEPS) {
      if (viewport.width < 500) await page.locator(".step-button").click();
      await page
        .getByRole("button", { name: new RegExp(step) })
        .last()
        .click();
      if (viewport.width < 500) await page.getByRole("button", { name: "Inputs" }).click();
      await page.waitForTimeout(600);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(
        violations.map(({ id, nodes }) => `${step}: ${id} ${nodes[0]?.html}`),
        step,
      ).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    }
    expect(troubles).toEqual([]);
  });
}

test("a sheet in the hand holds or does not", async () => {
  const { page } = await built.open({ viewport: { width: 1440, height: 900 } });
  await page.getByRole("button", { name: /Book/ }).first().click();
  const field = page.getByLabel(/A sheet in your hand/);
  await field.fill(fingerprintOf(exampleCar("saltbush").document).toLowerCase().replaceAll("-", " "));
  await page.getByRole("button", { name: "Does it still hold?" }).click();
  await page.getByText("It holds: it was made from the car as it is now.").waitFor();
  await field.fill("0000 1111 2222");
  await page.getByRole("button", { name: "Does it still hold?" }).click();
  await page.getByText(/no state of this car/).waitFor();
});

test("a page without a server says where paper is made, and leads to the file", async () => {
  const { page } = await built.open();
  await page.getByRole("button", { name: /Book/ }).first().click();
  const work = page.locator(".book-work");
  await work.getByText("makes no paper").waitFor();
  expect(await work.locator("code").count()).toBe(0);
  await work.getByRole("button", { name: "take it out as a file" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Take this car out as a file" }).waitFor();
});
