import {
  defaultRequest,
  findMounts,
  formatLength,
  formatNumber,
  hangShock,
  type MountsFound,
  makeCorner,
  ownShock,
  REQUIREMENTS,
} from "@armwright/engine";
import { applyOperations, type CarDocument, readCarValue } from "@armwright/engine/document";
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { counted, RULED_OUT } from "../../src/mounts/words.ts";
import { bringCar } from "../page/bring-car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";
import { seen } from "../page/seen.ts";
import { exampleCar, exampleFile, INCH } from "./car.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const { document: demo, car, corner } = exampleCar("saltbush");

/** What the engine itself finds for a document, asked as the sheet asks at first. */
function foundBy(document: CarDocument): MountsFound {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error("the car does not read");
  const own = ownShock(reading.car);
  if (!own) throw new Error("the car has no shock");
  const at = makeCorner(reading.car);
  return findMounts(at, defaultRequest(at, [own]));
}

/** What the browser's storage holds of the car. */
const kept = (page: Page): Promise<CarDocument> =>
  page.evaluate(() => {
    const texts = Object.values({ ...localStorage }) as string[];
    return JSON.parse(texts.find((text) => text.includes('"linkage"')) ?? "null");
  });

async function openFinder(page: Page): Promise<void> {
  await page.keyboard.press("Alt+7");
  await page.getByRole("button", { name: "Find places for the shock" }).click();
  await page.locator(".short-list, .openings").first().waitFor();
}

const rowOf = async (page: Page, label: string): Promise<readonly string[]> => {
  const cells = page.locator(".short-list table").first().locator("tr", { hasText: label }).locator("td");
  return Promise.all((await cells.all()).map(seen));
};

/** Middle of a zone's grip on the page. */
async function gripAt(page: Page, id: string): Promise<readonly [number, number]> {
  const box = await page.locator(`[data-zone="${id}"]`).boundingBox();
  if (!box) throw new Error(`no grip ${id}`);
  return [box.x + box.width / 2, box.y + box.height / 2];
}

const inches = (metres: number): string => formatLength(metres, "inch-pound");

test("the sheet shows what the engine finds; a place is tried, taken and undone", async () => {
  const { page, troubles } = await built.open();
  const before = await kept(page);
  await openFinder(page);
  const found = foundBy(demo);
  expect(await seen(page.locator(".finder-status p").first())).toBe(
    `${counted(found.feasible.count)} of ${counted(found.tested)} places fit.`.replace(/\s+/g, " "),
  );
  expect(await rowOf(page, "stroke used")).toEqual(
    found.best.map(({ strokeUsed }) => formatNumber(100 * strokeUsed, 0)),
  );
  expect(await rowOf(page, "motion ratio, ride")).toEqual(
    found.best.map(({ motionRatio }) => formatNumber(motionRatio, 2)),
  );
  expect(await rowOf(page, "nearest thing")).toEqual(
    found.best.map(({ nearest }) => inches(nearest?.gap ?? Number.NaN)),
  );
  expect(await rowOf(page, "slack")).toEqual(found.best.map(({ slack }) => inches(slack)));
  for (const code of REQUIREMENTS.filter((each) => found.killedBy[each] > 0)) {
    const row = page.locator(".ruled-out tr", { hasText: RULED_OUT[code] }).first();
    expect(await seen(row.locator("td"))).toBe(counted(found.killedBy[code]).replace(/\s/g, " "));
  }

  await page.getByRole("button", { name: "Look at place 2" }).click();
  const place = found.best[1];
  if (!place) throw new Error("the engine finds more than one place");
  const taping = page.locator(".taping td");
  const read = (await Promise.all((await taping.all()).map(seen))).filter((text) => text !== "");
  const { upper, lower } = place.tape;
  expect(read).toEqual(
    [
      upper.forward,
      upper.out,
      upper.up,
      lower.forward,
      lower.out,
      lower.up,
      place.atDroop,
      place.atRide,
      place.atBump,
    ].map(inches),
  );

  await page.getByRole("button", { name: "Try place 2 on the drawing" }).click();
  expect(await page.locator(".mounts-over .tried").count()).toBe(1);
  expect(await kept(page)).toEqual(before);

  await page.getByRole("button", { name: "Take it" }).click();
  await expect.poll(() => kept(page)).toEqual(applyOperations(demo, hangShock(demo, car, place).operations));
  await page.getByText("As the shock hangs now it meets every wish.").waitFor();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => kept(page)).toEqual(before);
  expect(troubles).toEqual([]);
});

test("a dragged zone snaps to the tape and is answered while the hand moves; keys move it as well", async () => {
  const { page, troubles } = await built.open();
  await openFinder(page);
  const outer = page.getByLabel("zone of the upper mount: out, to");
  const first = Number(await outer.inputValue());
  const [x, y] = await gripAt(page, "upper.y+");
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 10; i += 1) {
    await page.mouse.move(x - 3 * i, y + i);
    await page.waitForTimeout(40);
  }
  await page.getByText("roughly, while you drag").waitFor();
  await page.mouse.up();
  await page.locator(".short-list").waitFor();
  const wider = await outer.inputValue();
  // Out is to the left as seen from behind. The reading is a mark of the tape: it has no finer fraction than a sixteenth.
  expect(wider).toMatch(/^\d+( \d+\/(2|4|8|16))?$/);
  expect(wider).not.toBe(String(first));
  const times = await page.evaluate(() =>
    performance.getEntriesByName("armwright-mounts-coarse").map(({ duration }) => duration),
  );
  expect(times.length).toBeGreaterThan(2);
  times.sort((a, b) => a - b);
  expect(times[Math.floor(times.length / 2)]).toBeLessThan(300);

  await page.locator('[data-zone="upper.y+"]').focus();
  await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("Shift+ArrowRight");
  const back = await outer.inputValue();
  expect(back).not.toBe(wider);
  await page.keyboard.press("ArrowLeft");
  expect(await outer.inputValue()).not.toBe(back);
  expect(troubles).toEqual([]);
});

test("where a tank blocks every place, the smallest changes are told, and a press on one opens a place", async () => {
  const { page, troubles } = await built.open();
  const index = (demo.keepOuts ?? []).findIndex(({ name }) => name === "fuel tank");
  const blocked = applyOperations(demo, [
    { path: "name", value: "Saltbush, blocked" },
    { path: `keepOuts[${index}].size`, value: { x: 14, y: 34, z: 6 } },
    { path: `keepOuts[${index}].centre`, value: { x: 16.5, y: 0, z: 22 } },
  ]);
  await bringCar(page, blocked);
  await openFinder(page);
  // So far in and forward that every shock would have to pass through the tank.
  for (const [end, reading] of [
    ["forward, from", "10"],
    ["out, to", "16"],
  ]) {
    const field = page.getByLabel(`zone of the upper mount: ${end}`);
    await field.fill(reading ?? "");
    await field.press("Enter");
  }
  await page.getByText("Nothing fits on this grid.").waitFor();
  await page.locator(".openings").waitFor({ timeout: 60_000 });
  const lower = page.locator(".openings li", { hasText: "fuel tank lower by" });
  await lower.getByRole("button").click();
  await page.locator(".short-list").waitFor({ timeout: 20_000 });
  expect(await page.locator(".finder-status .count").textContent()).not.toBe("0");
  expect(troubles).toEqual([]);
}, 120_000);

test("a shelf is brought, kept, told where it is wrong, and put away", async () => {
  const { page, troubles } = await built.open();
  await openFinder(page);
  const chooser = page.locator("[data-shelf-file]");
  await chooser.setInputFiles({ name: "bad.csv", mimeType: "text/csv", buffer: Buffer.from("name,shortest\nlong,15") });
  await page.getByText("bad.csv, shock 1: longest is missing.").waitFor();
  await chooser.setInputFiles({
    name: "shocks.shelf.json",
    mimeType: "application/json",
    buffer: Buffer.from(exampleFile("shocks.shelf.json")),
  });
  await page.getByRole("checkbox", { name: /^twelve/ }).check();
  await page.locator(".short-list tr", { hasText: "twelve" }).first().waitFor();
  await page.reload();
  await page.locator("nav").first().waitFor();
  await openFinder(page);
  await page.getByRole("checkbox", { name: /^fourteen/ }).waitFor();
  await page.getByRole("button", { name: /^Put shocks.shelf.json away/ }).click();
  expect(await page.getByRole("checkbox", { name: /^fourteen/ }).count()).toBe(0);
  expect(troubles).toEqual([]);
});

test("zones, region and tried shock are there in space, and a zone is dragged there", async () => {
  const { page, troubles } = await built.open();
  await openFinder(page);
  await page.getByRole("button", { name: "Try place 1 on the drawing" }).click();
  await page.getByRole("button", { name: /^(in )?space$/ }).click();
  const canvas = page.locator(".scene canvas");
  await canvas.waitFor();
  await page.getByRole("button", { name: "behind", exact: true }).click();
  await page.waitForTimeout(800);
  const box = await canvas.boundingBox();
  if (!box) throw new Error("no scene");
  const outer = page.getByLabel("zone of the upper mount: out, to");
  const before = await outer.inputValue();
  // The keys choose one grip after the other; the zone's own come after those of the car.
  await canvas.focus();
  const heldZone = page.locator(".scene-labels", { hasText: "zone of the upper mount, outer face" });
  for (let i = 0; i < 60 && (await heldZone.count()) === 0; i += 1) {
    await page.keyboard.press("n");
    await page.waitForTimeout(30);
  }
  expect(await heldZone.count()).toBe(1);
  await page.keyboard.press("ArrowLeft");
  await expect.poll(() => outer.inputValue()).not.toBe(before);
  expect(troubles).toEqual([]);
});

test.each([
  ["a laptop, light", { width: 1440, height: 900 }, "light"],
  ["a laptop, dark", { width: 1440, height: 900 }, "dark"],
  ["a phone, light", { width: 390, height: 844 }, "light"],
  ["a phone, dark", { width: 390, height: 844 }, "dark"],
] as const)(
  "axe finds nothing on the open finder, and nothing runs out of the page: %s",
  async (_, viewport, colorScheme) => {
    const { page, troubles } = await built.open({ viewport, colorScheme });
    if (viewport.width < 500) {
      await page.locator(".step-button").click();
      await page.getByRole("button", { name: /Shock/ }).last().click();
      await page.getByRole("button", { name: "Inputs" }).click();
      await page.getByRole("button", { name: "Find places for the shock" }).click();
      await page.locator(".short-list").waitFor();
    } else await openFinder(page);
    await page.getByRole("button", { name: "Try place 1 on the drawing" }).click();
    await page.getByRole("button", { name: "Try the example shelf" }).click();
    await page.getByRole("checkbox", { name: /^twelve/ }).check();
    await page.locator(".short-list tr", { hasText: "twelve" }).first().waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`),
    ).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    expect(troubles).toEqual([]);
  },
);

test("in millimetres the same places are told", async () => {
  const { page } = await built.open();
  await openFinder(page);
  await page.locator(".units label").last().click();
  const found = foundBy(demo);
  await expect.poll(() => rowOf(page, "slack")).toEqual(found.best.map(({ slack }) => formatLength(slack, "metric")));
  expect(found.search.request.step).toBeCloseTo(0.5 * INCH, 12);
  expect(corner.car.name).toBe("Saltbush");
});
