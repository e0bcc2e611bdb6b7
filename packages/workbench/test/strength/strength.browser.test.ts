import { caseForces, caseGround, formatLength, placeTravel, study, studyStrength, toUnit } from "@armwright/engine";
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { threeFigures } from "../../src/words/three-figures.ts";
import { exampleCar, exampleFile } from "../mounts/car.ts";
import { bringCar } from "../page/bring-car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

/** Found in a worker, on a machine that may be busy with other tests. */
const PATIENCE = { timeout: 20_000 };

const LAPTOP = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

async function openStep(page: Page, title: string): Promise<void> {
  const isPhone = (page.viewportSize()?.width ?? 0) < 500;
  if (!isPhone) {
    await page.locator(".order button", { hasText: title }).first().click();
    return;
  }
  await page.locator(".step-button").click();
  await page.locator("dialog li button", { hasText: title }).first().click();
  await page.getByRole("button", { name: "Inputs" }).click();
}

const pounds = (newtons: number): string => `${threeFigures(toUnit(newtons, "force", "inch-pound"))}\u00a0lb`;

const factorsOf = (page: Page): Promise<readonly string[]> => page.locator(".check .factor b").allTextContents();

test("the step Strength shows the engine's factors, each in its case, weakest first", async () => {
  const { page, troubles } = await built.open();
  await openStep(page, "Strength");
  await page.locator(".check").first().waitFor();
  const found = studyStrength(study(exampleCar("saltbush").car));
  if (!found) throw new Error("the demo car has a corner weight");
  const loaded = found.checks.filter(({ factor }) => factor !== null);
  expect(await factorsOf(page)).toEqual(loaded.map(({ factor }) => threeFigures(factor ?? 0)));
  const cases = await page.locator(".check .to-case").allTextContents();
  loaded.forEach(({ loadCase }, index) => {
    expect(cases[index]).toContain(`in ${loadCase},`);
  });
  expect(await page.locator(".check.is-weak").count()).toBe(loaded.filter(({ factor }) => (factor ?? 9) < 1).length);
  // What the bending costs the wheel, to a hundredth of a degree.
  for (const { loadCase, toe, camber } of found.give) {
    const row = (await page.locator(`[data-give="${loadCase}"]`).textContent()) ?? "";
    for (const angle of [toe, camber]) {
      const degrees = ((Math.abs(angle) * 180) / Math.PI).toFixed(2);
      expect(row, loadCase).toContain(degrees === "0.00" ? "none" : `${degrees}°`);
    }
  }
  const cautions = page.locator(".cautions");
  expect(await cautions.textContent()).toContain("a licensed engineer decides");
  expect(await cautions.isVisible()).toBe(true);
  expect(troubles).toEqual([]);
});

test("a heavier tube is taken out of the table, makes the arm stronger, and is given back", async () => {
  const { page } = await built.open();
  await openStep(page, "Strength");
  await page.locator(".check").first().waitFor();
  const before = await factorsOf(page);
  await page.locator(".sizes .take").last().click();
  await expect.poll(async () => Number((await factorsOf(page))[0]), PATIENCE).toBeGreaterThan(Number(before[0]));
  await page.keyboard.press("Control+z");
  await expect.poll(() => factorsOf(page), PATIENCE).toEqual(before);
});

test("a bare car is asked for its weight, and is told that nothing holds its wheel yet", async () => {
  const { page } = await built.open();
  const { weights: _, ...weightless } = JSON.parse(exampleFile("saltbush-bare.car.json")) as Record<string, unknown>;
  await bringCar(page, weightless);
  await openStep(page, "Strength");
  await page.getByText("Put a scale under that wheel").waitFor();
  const weight = page.locator('[data-field="weights.corner"]');
  await weight.fill("700");
  await weight.press("Enter");
  await page.getByText(/holds the wheel in no case/).waitFor();
});

/** The demo car with other walls and steel, or with nothing said of them. */
async function openWith(page: Page, strength?: object): Promise<void> {
  const { strength: _, ...rest } = exampleCar("saltbush").document;
  const plain = strength ? { ...rest, strength } : rest;
  await bringCar(page, { ...plain, name: "Plain" });
}

test("a weak arm is told what makes it hold, which is taken in one step", async () => {
  const { page } = await built.open();
  // The demo's arm without the second tube under its mounts: a thin one.
  await openWith(page, { tubes: { lowerArm: { wall: 0.12, material: "4130 N" } } });
  await openStep(page, "Strength");
  const take = page.locator(".proposals .take");
  await take.first().waitFor();
  expect(Number((await factorsOf(page))[0])).toBeLessThan(1);
  expect(await page.locator(".findings-list").textContent()).toContain("Lower arm, rear tube at the bump-stop pad");
  await take.first().click();
  await expect.poll(async () => Number((await factorsOf(page))[0]), PATIENCE).toBeGreaterThanOrEqual(1);
  expect(await page.locator(".proposals .take").count()).toBe(0);
});

test("the usual parts are begun by one press, and taken back by one undo", async () => {
  const { page } = await built.open();
  await openWith(page);
  await openStep(page, "Strength");
  await page.locator(".check").first().waitFor();
  const bolts = page.locator(".check-name", { hasText: "Bolt" });
  expect(await bolts.count()).toBe(0);
  await page.getByRole("button", { name: /Begin with the usual parts/ }).click();
  await expect.poll(() => bolts.count(), PATIENCE).toBeGreaterThan(0);
  expect(await page.locator(".findings-list b", { hasText: "Mend" }).count()).toBe(0);
  await page.keyboard.press("Control+z");
  await expect.poll(() => bolts.count(), PATIENCE).toBe(0);
});

test("the step Loads: a chosen case brings the wheel there, its forces are the engine's and stand in the drawing", async () => {
  const { page, troubles } = await built.open();
  await openStep(page, "Loads");
  await page.getByRole("button", { name: "landing on one wheel" }).click();
  const made = study(exampleCar("saltbush").car);
  const ground = caseGround(made)!;
  const loadCase = ground.loads.cases.find(({ name }) => name === "landing on one wheel")!;
  const travel = placeTravel(loadCase.at, ground.stops);
  await expect
    .poll(() => page.locator(".travel-now .big").textContent(), PATIENCE)
    .toContain(formatLength(travel, "inch-pound", { sign: true }).split(" ")[0]);
  const { balance } = caseForces(ground, loadCase, travel);
  if (!balance.ok) throw new Error("this case has a balance");
  const { joints, struts } = balance.forces;
  for (const joint of joints) {
    const row = page.locator(`[data-joint="${joint.pivot}"] td`).first();
    expect(await row.textContent(), joint.label).toContain(
      pounds(Math.hypot(joint.worst.x, joint.worst.y, joint.worst.z)),
    );
    expect(await page.locator(`.forces-over [data-meaning="${joint.pivot}"] text`).textContent()).toContain(
      pounds(Math.hypot(joint.force.x, joint.force.y, joint.force.z)),
    );
  }
  for (const { name, magnitude } of struts) {
    expect(await page.locator(`[data-strut="${name}"] td`).first().textContent()).toBe(pounds(Math.abs(magnitude)));
  }
  // The builder's own factor: marked, at work, and undone.
  const before = await page.locator("[data-joint] td").first().textContent();
  const up = page.getByLabel("up, g");
  await up.fill("much");
  await up.press("Enter");
  await page.getByText('up, g: "much" is not a number').waitFor();
  expect(await page.locator("[data-joint] td").first().textContent()).toBe(before);
  await up.fill("8");
  await up.press("Enter");
  await expect.poll(() => page.locator("[data-joint] td").first().textContent(), PATIENCE).not.toBe(before);
  expect(await page.locator(".cases .is-chosen").textContent()).toContain("*");
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press("Control+z");
  await expect.poll(() => page.locator("[data-joint] td").first().textContent(), PATIENCE).toBe(before);
  expect(troubles).toEqual([]);
});

for (const [name, options] of [
  ["a laptop, light", { viewport: LAPTOP, colorScheme: "light" }],
  ["a laptop, dark", { viewport: LAPTOP, colorScheme: "dark" }],
  ["a phone, light", { viewport: PHONE, colorScheme: "light", hasTouch: true }],
] as const) {
  test(`axe finds nothing on loads, landing and strength, and nothing runs out of the page: ${name}`, async () => {
    const { page } = await built.open(options);
    for (const title of ["Loads", "Landing", "Strength"]) {
      await openStep(page, title);
      await page.locator(".long-work").waitFor();
      if (title === "Landing") {
        await page.getByRole("button", { name: "Let it happen" }).click();
        await page.locator("[data-play]").waitFor();
      }
      await page.waitForTimeout(300);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => `${title}: ${id} ${nodes[0]?.html.slice(0, 160)}`)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
        options.viewport.width,
      );
    }
  });
}

test("a frame of the builder's own is begun from the starting one, and a node of it is moved in space", async () => {
  const { page, troubles } = await built.open();
  await openStep(page, "Strength");
  await page.locator(".check").first().waitFor();
  await page.locator("summary", { hasText: "Lower arm" }).first().click();
  await page.getByRole("button", { name: /Draw its frame yourself/ }).click();
  const coordinates = page.locator(`[data-field^='strength.frames["lower-arm"].nodes'][data-field*=".point."]`);
  await expect.poll(() => coordinates.count(), PATIENCE).toBeGreaterThan(10);
  const read = (): Promise<readonly string[]> =>
    coordinates.evaluateAll((inputs) =>
      // The one in the hand is asked for its ± as well.
      inputs.flatMap((input) =>
        (input as HTMLElement).dataset["field"]?.endsWith("plusMinus") ? [] : [(input as HTMLInputElement).value],
      ),
    );
  const before = await read();
  await page.getByRole("button", { name: "in space" }).click();
  const canvas = page.locator(".scene canvas");
  await canvas.waitFor();
  await canvas.focus();
  const held = page.locator(".scene-label-hold");
  await expect
    .poll(async () => {
      await page.keyboard.press("n");
      await page.waitForTimeout(60);
      return (await held.count()) > 0 ? await held.first().textContent() : "";
    }, PATIENCE)
    .toContain("cross tube");
  await page.keyboard.press("ArrowUp");
  await expect.poll(async () => (await read()).filter((value, i) => value !== before[i]).length, PATIENCE).toBe(1);
  await page.keyboard.press("Control+z");
  await expect.poll(read, PATIENCE).toEqual(before);
  expect(troubles).toEqual([]);
});
