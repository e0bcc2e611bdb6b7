import { formatValue, study, studySprings } from "@armwright/engine";
import AxeBuilder from "@axe-core/playwright";
import type { Locator } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { exampleCar } from "../mounts/car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

/** Text as it is seen: without what is only read aloud, fractions with a plain stroke. */
const seen = (of: Locator): Promise<string> =>
  of.evaluate((element) => {
    const copy = element.cloneNode(true) as HTMLElement;
    for (const unseen of copy.querySelectorAll(".unseen")) unseen.remove();
    for (const fraction of copy.querySelectorAll(".q")) fraction.prepend(" ");
    const text = (copy.textContent ?? "").replace(/\u2044/g, "/").replace(/\u2212/g, "-");
    return text
      .replace(/\s+/g, " ")
      .replace(/([-+]) /g, "$1")
      .trim();
  });

for (const [name, options] of [
  ["a wide window, light", { viewport: { width: 1440, height: 900 }, colorScheme: "light" }],
  ["a wide window, dark", { viewport: { width: 1440, height: 900 }, colorScheme: "dark" }],
  ["a phone", { viewport: { width: 390, height: 844 }, colorScheme: "light" }],
] as const) {
  test(`the step Springs shows what the engine finds: ${name}`, async () => {
    const { page, troubles } = await built.open(options);
    if (options.viewport.width < 500) {
      await page.locator(".step-button").click();
      await page
        .getByRole("button", { name: /Springs/ })
        .last()
        .click();
      await page.getByRole("button", { name: "Inputs" }).click();
    } else await page.keyboard.press("Alt+8");
    const work = page.locator(".springs-work");
    await work.locator("table").waitFor();
    const springs = studySprings(study(exampleCar("saltbush").car));
    if (!springs) throw new Error("the demo car has springs");
    const cells = await Promise.all((await work.locator("tbody td").all()).map(seen));
    expect(cells).toEqual(
      springs.positions.flatMap(({ state, frequency }) => [
        formatValue(state.travel, "length", "inch-pound", { sign: true }),
        formatValue(state.shockForce, "force", "inch-pound"),
        state.springs.isSolid ? "solid" : formatValue(state.wheelRate, "rate", "inch-pound"),
        frequency === null ? "none" : `${frequency.toFixed(2)} Hz`,
      ]),
    );
    await work.getByRole("button", { name: "Choose springs" }).click();
    const takes = work.getByRole("button", { name: /^Take it/ });
    await takes.first().waitFor();
    expect(await takes.count()).toBe(5);
    await work.scrollIntoViewIfNeeded();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(options.viewport.width);
    await takes.first().click();
    await expect
      .poll(async () => (await Promise.all((await work.locator("tbody td").all()).map(seen))).join())
      .not.toBe(cells.join());
    await page.keyboard.press("Control+z");
    await expect
      .poll(async () => (await Promise.all((await work.locator("tbody td").all()).map(seen))).join())
      .toBe(cells.join());
    expect(troubles).toEqual([]);
  });
}

test("a shock without springs gets them off the shelf, and the car then sits as drawn", async () => {
  const { page, troubles } = await built.open();
  const { document } = exampleCar("saltbush");
  const { springs: _, ...shock } = document.shock ?? {};
  await page.getByRole("button", { name: "Cars" }).click();
  await page.locator('input[type="file"]').setInputFiles({
    name: "unsprung.car.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify({ ...document, name: "Unsprung", shock })),
  });
  await page.getByRole("heading", { name: "Unsprung" }).waitFor();
  await page.keyboard.press("Alt+8");
  const work = page.locator(".springs-work");
  await work.getByText("or choose them from a shelf").waitFor();
  expect(await work.locator("table").count()).toBe(0);
  await work.getByRole("button", { name: "Choose springs" }).click();
  await work
    .getByRole("button", { name: /^Take it/ })
    .first()
    .click();
  await work.locator("table").waitFor();
  // To an eighth: the preload is set to a tape's mark.
  expect(await seen(work.locator("tbody tr:nth-child(2) td").first())).toMatch(/^[-+]?(0|1\/16|1\/8) in$/);
  expect(troubles).toEqual([]);
});
