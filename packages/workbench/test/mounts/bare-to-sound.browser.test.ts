import { study } from "@armwright/engine";
import { readCarValue } from "@armwright/engine/document";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bringCar } from "../page/bring-car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";
import { exampleFile } from "./car.ts";

// As a hand does it: from a car without a shock, one sheet after the other, nothing typed.

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

/** What the browser keeps of the car, studied anew. */
async function keptStudy(page: Page, name: string) {
  const text = await page.evaluate(
    (title) => Object.values({ ...localStorage }).find((each) => String(each).includes(`"name": "${title}"`)) ?? "null",
    name,
  );
  const reading = readCarValue(JSON.parse(String(text)));
  if (!reading.ok) throw new Error("what is kept does not read");
  return study(reading.car);
}

async function openFinder(page: Page): Promise<void> {
  await page.keyboard.press("Alt+7");
  await page.getByRole("button", { name: "Find places for the shock" }).click();
  await page.getByRole("button", { name: "Try the example shelf" }).click();
}

/** Takes the best place, then springs, then strap and bump stop, each from its own sheet. */
async function takeAll(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Take it" }).click();
  await page.getByText("Places for the shock", { exact: true }).waitFor();
  await takeTheRest(page);
}

/** Springs, then strap and bump stop, for a shock that hangs. */
async function takeTheRest(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Close the finder" }).click();
  await page.keyboard.press("Alt+8");
  const springs = page.locator(".springs-work");
  await springs.getByRole("button", { name: "Choose springs" }).click();
  await springs.getByRole("button", { name: "Take set 1" }).click();
  await springs.getByText("At full droop the springs are held").waitFor();
  await page.keyboard.press("Alt+6");
  const stops = page.locator(".stops-work");
  await stops.getByRole("button", { name: "Take it" }).click();
  await stops.getByText("Both are set for it.").waitFor();
}

/** Words before the first full stop of each finding: how grave it is. */
const gravities = async (page: Page): Promise<readonly string[]> => {
  const texts = await page.locator(".findings-list li").allTextContents();
  return texts.map((text) => /^(Must|Mind|Note)/.exec(text.trim())?.[1] ?? text);
};

async function isSound(page: Page, name: string): Promise<void> {
  await expect.poll(async () => (await gravities(page)).filter((word) => word !== "Note")).toEqual([]);
  expect((await gravities(page)).length).toBeGreaterThan(0);
  const { car, findings, travel } = await keptStudy(page, name);
  expect(car.shock?.springs?.tender && car.strap && car.bumpStop).toBeTruthy();
  expect([travel.bump.stop.by, travel.bump.stop.works]).toEqual(["bump-stop", true]);
  expect([travel.droop.stop.by, travel.droop.stop.works]).toEqual(["strap", true]);
  expect(findings.filter(({ gravity }) => gravity !== "note").map(({ code }) => code)).toEqual([]);
}

test("from a car without a shock, three sheets lead to shock, springs, strap and bump stop with nothing left to mend", async () => {
  const { page, troubles } = await built.open();
  await bringCar(page, exampleFile("saltbush-bare.car.json"));
  await openFinder(page);
  await page.locator(".short-list").waitFor({ timeout: 30_000 });
  await takeAll(page);
  await isSound(page, "Saltbush, bare");
  // Three steps back, and the car is bare again.
  for (let i = 0; i < 3; i += 1) await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(async () => (await keptStudy(page, "Saltbush, bare")).car.shock).toBeUndefined();
  expect(troubles).toEqual([]);
}, 120_000);

test.each([
  ["lowered", "fuel tank lower by", "Lower it on the drawing", 0],
  ["let nearer", "nearer to the fuel tank", "Let it come nearer", 1],
] as const)(
  "where the tank blocks every place it is %s as the sheet says, and the place that this opens is sound",
  async (_, change, label, nearer) => {
    const { page, troubles } = await built.open();
    await bringCar(page, exampleFile("saltbush-tank.car.json"));
    await openFinder(page);
    await page.getByText("Nothing fits on this grid.").waitFor({ timeout: 30_000 });
    const before = await keptStudy(page, "Saltbush, wide tank");
    const opening = page.locator(".openings li", { hasText: change });
    await opening.getByRole("button", { name: label }).click({ timeout: 90_000 });
    await page.locator(".short-list").waitFor({ timeout: 60_000 });
    await takeAll(page);
    await isSound(page, "Saltbush, wide tank");
    const tankOf = ({ car }: Awaited<ReturnType<typeof keptStudy>>) => {
      const tank = car.keepOuts.find(({ name }) => name === "fuel tank");
      if (tank?.shape !== "box") throw new Error("the tank is a box");
      return tank;
    };
    const [was, is] = [tankOf(before), tankOf(await keptStudy(page, "Saltbush, wide tank"))];
    if (nearer) expect(is.clearance).toBeLessThan(was.clearance);
    else expect(is.centre.z).toBeLessThan(was.centre.z - 0.05);
    expect(troubles).toEqual([]);
  },
  240_000,
);

test("where the tank blocks every place it is notched on both sides, and the shock hung in the notch", async () => {
  const { page, troubles } = await built.open();
  await bringCar(page, exampleFile("saltbush-tank.car.json"));
  await openFinder(page);
  await page.getByText("Nothing fits on this grid.").waitFor({ timeout: 30_000 });
  const before = await keptStudy(page, "Saltbush, wide tank");
  const opening = page.locator(".openings li", { hasText: "nearer to the fuel tank" });
  await opening.getByRole("button", { name: "Cut the notch" }).click({ timeout: 90_000 });
  await expect
    .poll(async () => (await keptStudy(page, "Saltbush, wide tank")).car.keepOuts.length, { timeout: 30_000 })
    .toBeGreaterThan(before.car.keepOuts.length);
  const after = await keptStudy(page, "Saltbush, wide tank");
  expect(after.car.shock).toBeDefined();
  const tanks = after.car.keepOuts.filter(({ name }) => name.startsWith("fuel tank"));
  const was = before.car.keepOuts.find(({ name }) => name === "fuel tank");
  for (const { clearance } of tanks) expect(clearance).toBe(was?.clearance);
  await takeTheRest(page);
  await isSound(page, "Saltbush, wide tank");
  expect(troubles).toEqual([]);
}, 240_000);

test("zones and wishes are there again when the page is opened anew", async () => {
  const { page, troubles } = await built.open();
  await page.keyboard.press("Alt+7");
  const open = async () => {
    await page.getByRole("button", { name: "Find places for the shock" }).click();
    await page.locator(".short-list, .openings").first().waitFor({ timeout: 30_000 });
  };
  await open();
  const outer = page.getByLabel("zone of the upper mount: out, to");
  const lean = page.getByLabel("Lean, at most");
  await outer.fill("25 1/2");
  await outer.press("Enter");
  await lean.fill("31");
  await lean.press("Enter");
  await page.reload();
  await page.locator("nav").first().waitFor();
  await page.keyboard.press("Alt+7");
  await open();
  expect(await outer.inputValue()).toBe("25 1/2");
  expect(Number.parseFloat(await lean.inputValue())).toBe(31);
  expect(troubles).toEqual([]);
}, 90_000);
