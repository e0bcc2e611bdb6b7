import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { STEPS } from "../../src/steps/steps.ts";
import { type BuiltPage, builtPage } from "./built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const alt = (title: string): string => `Alt+${(STEPS.findIndex((step) => step.title === title) + 1) % 10}`;
const step = (page: Page, title: string) => page.locator("nav.order button", { hasText: title });

describe("everything can be reached", () => {
  test("a step is chosen out of a field, which keeps what was typed in it", async () => {
    const { page } = await built.open();
    await step(page, "Travel").click();
    const strap = page.locator('[data-field="strap.length"]');
    await strap.fill("23 1/2");
    await page.keyboard.press(alt("Arms"));
    await page.locator(".sheet-head h2", { hasText: "Arms" }).waitFor();
    await page.keyboard.press(alt("Travel"));
    await page.locator(".sheet-head h2", { hasText: "Travel" }).waitFor();
    expect(await strap.inputValue()).toBe("23 1/2");
    await page.context().close();
  });

  test.each([1920, 1440, 1199, 1024, 390])("charts are chosen at a width of %i", async (width) => {
    const { page } = await built.open({ viewport: { width, height: 900 } });
    if (width === 390) await page.getByRole("button", { name: "Charts" }).click();
    await page.getByRole("button", { name: "Choose charts" }).first().click();
    await page.getByRole("dialog", { name: "Charts" }).waitFor();
    await page.context().close();
  });

  test("a limit and a finding are asked how they are known", async () => {
    const { page, troubles } = await built.open();
    await page.locator(".stops-table .how").first().click();
    const answer = page.getByRole("dialog", { name: "How do you know?" });
    await answer.getByText("How its travel is found").waitFor();
    await answer.getByText("Lower arm, inner front").first().waitFor();
    await page.keyboard.press("Escape");
    await page.locator(".findings-list .how").first().click();
    await answer.getByText("The rule, and where it comes from").waitFor();
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  test("what one turn of a rod end does is told with the arms", async () => {
    const { page } = await built.open();
    await step(page, "Arms").click();
    const row = page.locator(".turn-effects tr", { hasText: "upper link" });
    // A turn of a right and a left hand thread of 16 to the inch makes the link an eighth longer, and leans the wheel in.
    expect(await row.textContent()).toMatch(/upper link1\u20448 in1 eighth in[+\u2212]0\.\d\d°/);
    await page.context().close();
  });
});

describe("the page itself never scrolls: what is hidden from sight in a long sheet does not make it longer", () => {
  test.each([
    [1440, 900],
    [390, 844],
  ])("at %i \u00d7 %i, in every step", async (width, height) => {
    const { page } = await built.open({ viewport: { width, height } });
    if (width === 390) await page.getByRole("button", { name: "Inputs" }).click();
    const longer: string[] = [];
    for (const { title } of STEPS) {
      await page.keyboard.press(alt(title));
      if (STEPS.findIndex((each) => each.title === title) >= 10) await goOn(page, title, width);
      await page.locator(".sheet-head h2", { hasText: title }).waitFor();
      const sheet = await page.locator(".sheet-head").evaluate((head) => head.parentElement!.scrollHeight);
      expect(sheet).toBeGreaterThan(0);
      const over = await page.evaluate(() => document.documentElement.scrollHeight - innerHeight);
      if (over > 0) longer.push(`${title}: ${over} px`);
    }
    expect(longer).toEqual([]);
    await page.context().close();
  });

  /** Beyond the tenth a step has no key of its own. */
  async function goOn(page: Page, title: string, width: number): Promise<void> {
    if (width === 390) await page.locator(".step-button").click();
    await step(page, title).click();
  }
});

describe("on a phone", () => {
  const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

  test("the view is gone on to by its name, round to the first again", async () => {
    const { page } = await built.open(PHONE);
    const name = page.locator(".phone-view");
    const seen: (string | null)[] = [];
    for (let i = 0; i < 5; i += 1) {
      seen.push(await name.textContent());
      await name.click();
    }
    expect(seen).toEqual(["from behind", "from above", "from the left", "in space", "from behind"]);
    await page.context().close();
  });

  test("a file that cannot be read keeps its name, and says so", async () => {
    const { page } = await built.open(PHONE);
    await page.evaluate(() => {
      for (const key of Object.keys(localStorage))
        if (localStorage.getItem(key)?.includes('"armwright"')) localStorage.setItem(key, "{ no json");
    });
    await page.reload();
    await page.getByText("This car cannot be drawn yet").waitFor();
    expect(await page.locator(".car-button").textContent()).toBe("saltbush, cannot be read");
    await page.context().close();
  });
});

test("under a finger whatever is pressed on the bench is 48 px", async () => {
  const { page } = await built.open({ viewport: { width: 1280, height: 900 }, hasTouch: true, isMobile: true });
  await step(page, "Arms").click();
  const small = await page
    .locator(
      ".bench-foot button, .bench-foot label, .stops-table button, .results button, .finding, .order button, .findings-list .how, .choose-charts, .chart-head",
    )
    .evaluateAll((buttons) =>
      buttons.flatMap((button) => {
        const { width, height } = button.getBoundingClientRect();
        return height > 0 && (height < 47.5 || width < 36) ? [`${button.textContent} ${width} × ${height}`] : [];
      }),
    );
  expect(small).toEqual([]);
  await page.context().close();
});
