import { readFileSync } from "node:fs";
import { formatLength, solveAt, study } from "@armwright/engine";
import { applyOperations, type CarDocument, readCarDocument, readCarValue } from "@armwright/engine/document";
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { STEPS } from "../../src/steps/steps.ts";
import { spoken } from "../../src/words/fractions.ts";
import { type BuiltPage, builtPage } from "./built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const DEMO = readCarDocument(readFileSync(new URL("../../../../examples/saltbush.car.json", import.meta.url), "utf8"));
if (!DEMO.ok) throw new Error("the demo car cannot be read");
const demo: CarDocument = DEMO.document;

/** The study of the demo car with some fields changed. */
function studyWith(changes: Readonly<Record<string, string | number>>) {
  const edited = applyOperations(
    demo,
    Object.entries(changes).map(([path, value]) => ({ path, value })),
  );
  const reading = readCarValue(edited);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return study(reading.car);
}

/** Text as it is seen: fractions back to `12 3/16`. */
const plain = (text: string | null): string =>
  (text ?? "")
    .replace(/(\d)?(\d+)\u2044(\d+)/g, "$1 $2/$3")
    .replace(/\u2212/g, "-")
    .replace(/\s+/g, " ")
    .trim();

/** A row of what stops the wheel, as it is read aloud: name, travel. */
async function stopTravels(page: Page): Promise<readonly string[]> {
  return page.locator(".stops-table tr:not(.head):not(.farther) td:nth-child(2)").allTextContents();
}

const seen = (metres: number): string => {
  const text = formatLength(metres, "inch-pound", { sign: true }).replace("-", "\u2212");
  return text.replace(/(\d) (\d+)\/(\d+)/, "$1$2\u2044$3").replace(/^([+\u2212]?)(\d+)\/(\d+)$/, "$1$2\u2044$3");
};

/** The key that chooses a step: ten with Alt and a digit, the next ten with Shift as well. */
function altOf(title: string): string {
  const index = STEPS.findIndex((step) => step.title === title);
  return `Alt+${index >= 10 ? "Shift+" : ""}Digit${(index + 1) % 10}`;
}

async function drag(page: Page, handle: string, dx: number, dy: number): Promise<void> {
  const box = await page.locator(`[data-handle="${handle}"]`).boundingBox();
  if (!box) throw new Error(`no handle ${handle}`);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2);
  await page.mouse.move(x + dx, y + dy);
  await page.mouse.up();
}

describe("on a laptop", () => {
  test("opens on the demo car and shows what the engine says stops the wheel", async () => {
    const { page, troubles } = await built.open();
    const { travel } = studyWith({});
    const shown = await stopTravels(page);
    expect(shown[0]).toContain(seen(travel.droop.stop.travel));
    const hard = travel.droop.limits.filter(({ nature }) => nature === "hard");
    expect(shown[1]).toContain(seen(hard[0]!.travel));
    expect(await page.title()).toBe("Saltbush, Armwright");
    expect(troubles).toEqual([]);
  });

  test("a dragged pivot moves every number with it, and undo brings all back", async () => {
    const { page, troubles } = await built.open();
    const before = await stopTravels(page);
    await page.keyboard.press(altOf("Arms"));
    await drag(page, "linkage.upperLink.inner", 6, -24);
    const field = (axis: string) => page.locator(`[data-field="linkage.upperLink.inner.${axis}"]`).inputValue();
    const [y, z] = [await field("y"), await field("z")];
    expect([y, z]).not.toEqual(["11 1/8", "20 5/8"]);
    const now = studyWith({ "linkage.upperLink.inner.y": y, "linkage.upperLink.inner.z": z });
    const shown = await stopTravels(page);
    expect(shown[0]).toContain(seen(now.travel.droop.stop.travel));
    const camber = now.quantities.find(({ id }) => id === "camber")!;
    await page.locator("svg.tape").focus();
    await page.keyboard.press("End");
    const travel = now.travel.droop.stop.travel;
    const atEnd = solveAt(now.corner, Math.max(travel, now.travel.droop.first?.travel ?? travel))!;
    const degrees = ((camber.read(atEnd.row, now.corner) ?? 0) * 180) / Math.PI;
    const row = page.locator(".results li", { hasText: "camber" }).first();
    expect(plain(await row.locator("b").textContent())).toContain(`${degrees > 0 ? "+" : ""}${degrees.toFixed(1)}`);
    await page.getByRole("button", { name: "Undo" }).click();
    expect(await stopTravels(page)).toEqual(before);
    expect(await field("z")).toBe("20 5/8");
    expect(troubles).toEqual([]);
  });

  test("the wheel is pulled along the tape, and a stop is dragged on it", async () => {
    const { page } = await built.open();
    const tape = page.locator("svg.tape");
    const box = (await tape.boundingBox())!;
    await page.mouse.move(box.x + 275, box.y + box.height * 0.5);
    await page.mouse.down();
    await page.mouse.move(box.x + 275, box.y + box.height * 0.35, { steps: 3 });
    await page.mouse.up();
    const now = Number(await tape.getAttribute("aria-valuenow"));
    expect(now).toBeGreaterThan(1);
    expect((now * 16) % 1).toBe(0);
    const strap = page.getByRole("button", { name: /^Stop in droop/ });
    const grip = (await strap.boundingBox())!;
    await page.mouse.move(grip.x + 60, grip.y + grip.height / 2);
    await page.mouse.down();
    await page.mouse.move(grip.x + 60, grip.y + grip.height / 2 - 28, { steps: 3 });
    await page.mouse.up();
    expect(await page.getByRole("status").textContent()).toMatch(/^strap .*tab to tab$/);
    const length = await page.locator('[data-field="strap.length"]').inputValue();
    expect(length).not.toBe("23 7/8");
    const stop = studyWith({ "strap.length": length }).travel.droop.stop.travel;
    expect((await stopTravels(page))[0]).toContain(seen(stop));
  });

  test("a broken entry is told in words, loses nothing, and leaves the last study marked as older", async () => {
    const { page } = await built.open();
    const field = page.locator('[data-field="strap.length"]');
    await field.fill("23 7/9");
    await field.press("Enter");
    expect(await page.locator(".field.faulty .fault").textContent()).toContain("23 7/9");
    expect(plain(await page.locator(".findings-list li").first().textContent())).toMatch(/^Mend\. Strap, length/);
    await page.locator(".older-note").waitFor();
    expect(await field.inputValue()).toBe("23 7/9");
    await field.fill("24");
    await field.press("Enter");
    expect(await page.locator(".older-note").count()).toBe(0);
    expect(await page.locator(".fault").count()).toBe(0);
  });

  test("units switch live and leave the entries as typed", async () => {
    const { page } = await built.open();
    await page.getByText("mm", { exact: true }).click();
    expect(await page.locator('[data-field="strap.length"]').inputValue()).toBe("23 7/8");
    expect(await page.locator(".stops-table").textContent()).toContain("\u2212209");
    const field = page.locator('[data-field="strap.length"]');
    await field.fill("600");
    await field.press("Enter");
    expect(await field.inputValue()).toBe("600 mm");
  });

  test("work is kept over a reload", async () => {
    const { page } = await built.open();
    const field = page.locator('[data-field="strap.length"]');
    await field.fill("23");
    await field.press("Enter");
    await page.reload();
    await page.locator("nav").first().waitFor();
    expect(await page.locator('[data-field="strap.length"]').inputValue()).toBe("23");
  });

  test("a finding leads to its place", async () => {
    const { page } = await built.open();
    await page.locator(".findings-list .finding", { hasText: "fuel tank" }).click();
    expect(await page.locator(".sheet-head h2").textContent()).toBe("9 Room");
    expect(Number(await page.locator("svg.tape").getAttribute("aria-valuenow"))).toBeLessThan(-1);
  });

  test("a result tells how it is known, and what was assumed", async () => {
    const { page } = await built.open();
    await page.keyboard.press(altOf("Shock"));
    await page.locator(".results button", { hasText: "motion ratio (shock per wheel)" }).click();
    const panel = page.getByRole("dialog", { name: "How do you know?" });
    await panel.getByText("shock shortening ÷ wheel travel, from how fast both mounts move").waitFor();
    expect(await panel.textContent()).toContain("31 1/2".replace(" 1/2", "1\u20442"));
    await page.keyboard.press("Escape");
    expect(await panel.count()).toBe(0);
  });

  test("a new car starts from a few answers, is exported, and comes back in", async () => {
    const { page } = await built.open();
    await page.getByRole("button", { name: "Cars" }).click();
    await page.getByRole("button", { name: "New car" }).click();
    await page.getByLabel("What it is called").fill("Dust");
    await page.getByLabel("Travel up wanted").fill("8");
    await page.getByRole("button", { name: "Start from a guess" }).click();
    await page.getByRole("heading", { name: "Dust" }).waitFor();
    await page.getByRole("button", { name: "Cars" }).click();
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Take this car out as a file" }).click();
    const text = readFileSync((await (await download).path())!, "utf8");
    const reading = readCarDocument(text);
    expect(reading.ok && reading.document.targets?.bump).toBe(8);
    await page.locator('input[type="file"]').setInputFiles({
      name: "dust-2.car.json",
      mimeType: "application/json",
      buffer: Buffer.from(text.replace('"Dust"', '"Dust again"')),
    });
    await page.getByRole("heading", { name: "Dust again" }).waitFor();
  });

  test("everything is done by the keyboard alone", async () => {
    const { page } = await built.open();
    await page.keyboard.press(altOf("Arms"));
    const handle = page.locator('[data-handle="linkage.upperLink.inner"]');
    for (let i = 0; i < 80 && !(await handle.evaluate((element) => element === document.activeElement)); i += 1)
      await page.keyboard.press("Tab");
    expect(await handle.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    expect(await page.locator('[data-field="linkage.upperLink.inner.z"]').inputValue()).toBe("20 3/4");
    await page.keyboard.press("Control+z");
    expect(await page.locator('[data-field="linkage.upperLink.inner.z"]').inputValue()).toBe("20 11/16");
    await page.locator("svg.tape").focus();
    await page.keyboard.press("Shift+ArrowUp");
    expect(await page.locator("svg.tape").getAttribute("aria-valuetext")).toBe("plus 1 inches");
    await page.keyboard.press("Home");
    expect(Number(await page.locator("svg.tape").getAttribute("aria-valuenow"))).toBeCloseTo(
      studyWith({ "linkage.upperLink.inner.z": "20 11/16" }).travel.bump.stop.travel / 0.0254,
      2,
    );
  });

  test("prints without what only a screen needs", async () => {
    const { page } = await built.open({ colorScheme: "dark" });
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".move-wheel").isVisible()).toBe(false);
    expect(await page.locator("svg.drawing").first().isVisible()).toBe(true);
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe("rgb(255, 255, 255)");
    expect((await page.pdf({ landscape: true })).length).toBeGreaterThan(20_000);
  });
});

describe("on a phone", () => {
  const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;

  test("the tape keypad sets a reading, and targets are large enough for a glove", async () => {
    const { page } = await built.open(PHONE);
    await page.getByRole("button", { name: "Inputs" }).tap();
    await page.locator('[data-field="strap.length"]').tap();
    const keypad = page.getByRole("dialog", { name: "Strap, length" });
    for (const key of ["2", "4"]) await keypad.getByRole("button", { name: key, exact: true }).tap();
    await keypad.getByRole("button", { name: "3 eighths" }).tap();
    await keypad.getByRole("button", { name: /^Set/ }).tap();
    expect(await page.locator('[data-field="strap.length"] .unseen').textContent()).toBe("24 and 3 eighths");
    for (const tab of ["Stops", "Inputs", "Findings"]) {
      await page.getByRole("button", { name: tab }).tap();
      const small = await page.locator("button:visible").evaluateAll((buttons) =>
        buttons
          .filter((button) => {
            const { height, width } = button.getBoundingClientRect();
            return height < 40 || width < 40;
          })
          .map((button) => button.outerHTML.slice(0, 120)),
      );
      expect(small).toEqual([]);
    }
    const isWide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
    expect(isWide).toBe(false);
  });

  test("cycle and read shows one number for each height of the wheel", async () => {
    const { page } = await built.open(PHONE);
    await page.getByRole("button", { name: "Cycle and read" }).tap();
    const dialog = page.getByRole("dialog", { name: "Cycle and read" });
    const now = studyWith({});
    const shock = now.quantities.find(({ id }) => id === "shockLength")!;
    const reads = (travel: number) =>
      formatLength(shock.read(solveAt(now.corner, travel)!.row, now.corner)!, "inch-pound");
    expect(await dialog.locator(".one-number .unseen").textContent()).toBe(spoken(reads(0)));
    await dialog.getByRole("button", { name: "Higher" }).tap();
    expect(await dialog.locator(".one-number").textContent()).toContain(spoken(reads(0.0254)));
    const size = await dialog
      .locator(".one-number")
      .evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
    expect(size).toBeGreaterThanOrEqual(90);
  });
});

describe("for everyone", () => {
  test("every step has a key of its own", async () => {
    const { page } = await built.open();
    const pressed = new Set<string>();
    for (const { title } of STEPS) {
      await page.keyboard.press(altOf(title));
      await page.locator(".sheet-head h2", { hasText: title }).waitFor({ timeout: 5000 });
      pressed.add(altOf(title));
    }
    expect(pressed.size).toBe(STEPS.length);
  });

  test.each(["light", "dark"] as const)(
    "axe finds nothing on any sheet or panel, %s",
    async (colorScheme) => {
      const { page } = await built.open({ colorScheme });
      const check = async (what: string): Promise<void> => {
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id, nodes }) => [what, id, nodes[0]?.html.slice(0, 160)])).toEqual([]);
      };
      for (const { title } of STEPS) {
        await page.locator(".order button", { hasText: title }).first().click();
        await page.locator(".sheet-head h2", { hasText: title }).waitFor();
        await check(title);
      }
      for (const panel of ["Cars", "Compare"]) {
        await page.locator(".bench-foot").getByRole("button", { name: panel }).click();
        await page.getByRole("dialog").waitFor();
        await check(panel);
        await page.keyboard.press("Escape");
      }
      await page.locator(".bench-foot").getByRole("button", { name: "Cars" }).click();
      await page.getByRole("button", { name: "New car" }).click();
      await page.getByRole("dialog", { name: "New car" }).waitFor();
      await check("New car");
      // Every sheet in turn: on a busy machine that takes minutes.
    },
    300_000,
  );

  test.each(["light", "dark"] as const)("axe finds nothing on the phone, %s", async (colorScheme) => {
    const { page } = await built.open({ viewport: { width: 390, height: 844 }, hasTouch: true, colorScheme });
    for (const tab of ["Stops", "Inputs", "Charts", "Findings"]) {
      await page.locator(".tabs").getByRole("button", { name: tab }).click();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => [tab, id, nodes[0]?.html.slice(0, 160)])).toEqual([]);
    }
  });

  test("with reduced motion the cycle jumps instead of gliding", async () => {
    const { page } = await built.open({ reducedMotion: "reduce" });
    await page.getByRole("button", { name: "cycle", exact: true }).click();
    const seenAt = new Set<string>();
    for (let i = 0; i < 12; i += 1) {
      seenAt.add((await page.locator("svg.tape").getAttribute("aria-valuenow")) ?? "");
      await page.waitForTimeout(200);
    }
    expect(seenAt.size).toBeGreaterThan(1);
    expect(seenAt.size).toBeLessThanOrEqual(4);
  });
});
