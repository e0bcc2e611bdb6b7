import {
  chooseSprings,
  dampingOverTravel,
  formatLength,
  formatNumber,
  roadHeat,
  type SpringStudy,
  type Study,
  shaftForces,
  study,
  studySprings,
  toUnit,
  USUAL_CROSSOVER_PAST,
  USUAL_RATIOS,
  USUAL_TYRE_RATE,
} from "@armwright/engine";
import AxeBuilder from "@axe-core/playwright";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { INVENTED_SHELF } from "../../src/springs/invented-shelf.ts";
import { exampleCar, exampleFile } from "../mounts/car.ts";
import { bringCar } from "../page/bring-car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";
import { seen } from "../page/seen.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const demo: Study = study(exampleCar("saltbush").car);
const springs: SpringStudy = studySprings(demo)!;
const { car, corner } = demo;

const pounds = (newtons: number): string => formatNumber(toUnit(newtons, "force", "inch-pound"), 0);
const rate = (value: number): string => formatNumber(toUnit(value, "rate", "inch-pound"), 0);
const inches = (metres: number, sign = false): string => formatLength(metres, "inch-pound", { sign });

const cellsOf = async (table: Locator): Promise<readonly string[]> =>
  Promise.all((await table.locator("tbody td").all()).map(seen));

const atRest = (made: SpringStudy): readonly string[] =>
  made.positions.flatMap(({ state, frequency }) => [
    inches(state.travel, true),
    pounds(state.shockForce),
    pounds(state.wheelForce),
    rate(state.wheelRate),
    formatNumber(frequency!, 2),
  ]);

async function openSprings(page: Page, isPhone: boolean): Promise<Locator> {
  if (isPhone) {
    await page.locator(".step-button").click();
    await page
      .getByRole("button", { name: /Springs/ })
      .last()
      .click();
    await page.getByRole("button", { name: "Inputs" }).click();
  } else await page.keyboard.press("Alt+8");
  const work = page.locator(".springs-work");
  await work.locator("table").first().waitFor();
  return work;
}

for (const [name, options] of [
  ["a wide window, light", { viewport: { width: 1440, height: 900 }, colorScheme: "light" }],
  ["a wide window, dark", { viewport: { width: 1440, height: 900 }, colorScheme: "dark" }],
  ["a phone", { viewport: { width: 390, height: 844 }, colorScheme: "light" }],
] as const) {
  test(`the step Springs shows what the engine finds, and a set of the shelf is taken and given back: ${name}`, async () => {
    const { page, troubles } = await built.open(options);
    const work = await openSprings(page, options.viewport.width < 500);
    const sits = work.locator("table").nth(0);
    expect(await cellsOf(sits)).toEqual(atRest(springs));
    const { main, tender } = springs.springs;
    const member = (at: 0 | 2, which: "main" | "tender") =>
      springs.positions[at]!.state.springs.members.find(({ name: each }) => each === which)!;
    expect(await cellsOf(work.locator("table").nth(1))).toEqual(
      (["main", "tender"] as const).flatMap((which) => [
        rate(which === "main" ? main.rate : tender!.rate),
        inches(which === "main" ? main.freeLength : tender!.freeLength),
        inches(member(0, which).length),
        inches(member(2, which).length),
        inches(member(2, which).leftToSolid),
      ]),
    );
    const { heavier } = springs.weightError!;
    expect(await seen(work)).toContain(
      `With 5 % more sprung weight it sits ${inches(heavier.lower)} in lower (${formatNumber(heavier.turns, 1)} turns down mend it)`,
    );
    for (const summary of await work.locator("summary").all()) await summary.click();

    const most = Math.max(...dampingOverTravel(corner, springs).map(({ atShock }) => atShock));
    expect(await work.getByRole("img", { name: /^Critical damping/ }).count()).toBe(1);
    expect(toUnit(most, "damping", "inch-pound")).toBeGreaterThan(60);
    const critical = springs.positions[1]!.damping!;
    const speeds = [2, 5, 10, 15, 20].map((speed) => speed * 0.0254);
    const forces = shaftForces(critical, USUAL_RATIOS, speeds);
    const damping = work.locator("details", { hasText: "shaft speed" }).locator("table");
    expect(await cellsOf(damping)).toEqual([
      ...forces.map(({ bump }) => pounds(bump)),
      ...forces.map(({ rebound }) => pounds(rebound)),
    ]);
    const heat = roadHeat(car.shock!, car.wheel.tyreRate ?? USUAL_TYRE_RATE, "D", 15);
    expect(await seen(work)).toContain(`${formatNumber((heat.perMetre * 1609.344) / 1000, 0)} kJ a mile`);

    await work.getByRole("button", { name: "Choose springs" }).click();
    const choices = chooseSprings(corner, springs.shockSpring, INVENTED_SHELF, {
      sprungMass: springs.sprungMass,
      stops: springs.stops,
      rideTravel: 0,
      band: { from: 0.9, to: 1.6 },
      crossoverPast: USUAL_CROSSOVER_PAST,
      collarPitch: springs.springs.collarPitch,
    })!;
    const row = (label: string) => work.locator(".short-list tr", { hasText: label });
    const best = choices.fitting.slice(0, 5);
    expect(await Promise.all((await row("preload").locator("td").all()).map(seen))).toEqual(
      best.map((choice) => inches(choice.springs.preload)),
    );
    expect(await Promise.all((await row("turns of the collar").locator("td").all()).map(seen))).toEqual(
      best.map(({ preloadTurns }) => formatNumber(preloadTurns, 1)),
    );
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html.slice(0, 100)}`)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(options.viewport.width);
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(
      options.viewport.height,
    );

    await work.getByRole("button", { name: "Look at set 2" }).click();
    await work.getByRole("button", { name: "Take set 2" }).click();
    await expect.poll(async () => (await cellsOf(sits)).join()).not.toBe(atRest(springs).join());
    await page.keyboard.press("Control+z");
    await expect.poll(async () => (await cellsOf(sits)).join()).toBe(atRest(springs).join());
    expect(troubles).toEqual([]);
  });
}

test("a typed wish chooses other sets, and a height out of the travel is told", async () => {
  const { page, troubles } = await built.open();
  const work = await openSprings(page, false);
  const count = work.locator("[role=status]").first();
  await work.getByRole("button", { name: "Choose springs" }).click();
  const before = await seen(count);
  const field = work.getByLabel("Frequency, at most");
  await field.fill("0.95");
  await field.press("Enter");
  await expect.poll(() => seen(count)).not.toBe(before);
  await work.getByLabel("Sits lower than drawn by").fill("30");
  await work.getByLabel("Sits lower than drawn by").press("Enter");
  await work.getByText("The car has to sit between its stops").waitFor();
  expect(troubles).toEqual([]);
});

test("a shelf of springs is brought, kept, told where it is wrong, and put away", async () => {
  const { page, troubles } = await built.open();
  let work = await openSprings(page, false);
  const bring = (name: string, text: string) =>
    work.locator("[data-spring-shelf]").setInputFiles({ name, mimeType: "text/plain", buffer: Buffer.from(text) });
  await bring("bad.csv", "rate,freeLength\n250,");
  await work.getByText("bad.csv: springs[0].freeLength: missing").waitFor();
  await bring("mine.json", exampleFile("springs.shelf.json"));
  await work.getByText(/^55 springs of mine\.json\.$/).waitFor();
  await page.reload();
  work = await openSprings(page, false);
  await work.getByText(/^55 springs of mine\.json\.$/).waitFor();
  await work.getByRole("button", { name: "Put it away" }).click();
  await work.getByText("An invented shelf of 44 springs, 10 to 16 in long").waitFor();
  expect(troubles).toEqual([]);
});

test("a shock without springs gets them off the shelf, and the car then sits as drawn", async () => {
  const { page, troubles } = await built.open();
  const { document } = exampleCar("saltbush");
  const { springs: _, ...shock } = document.shock ?? {};
  await bringCar(page, { ...document, name: "Unsprung", shock });
  await page.keyboard.press("Alt+8");
  const work = page.locator(".springs-work");
  await work.getByText("or choose them from a shelf").waitFor();
  expect(await work.getByText("full droop").count()).toBe(0);
  await work.getByRole("button", { name: "Choose springs" }).click();
  await work.getByRole("button", { name: "Take set 1" }).click();
  await work.getByText("At full droop the springs are held").waitFor();
  // To an eighth: the preload is set to a tape's mark.
  expect(await seen(work.locator("tbody tr:nth-child(2) td").first())).toMatch(/^[-+]?(0|1\/16|1\/8)$/);
  expect(troubles).toEqual([]);
});
