import { drawPoints } from "@armwright/drawing";
import { formatLength, nextReadings, type SurveyResult, sayMatter, sayReading, study } from "@armwright/engine";
import { readCarDocument, readSurvey } from "@armwright/engine/document";
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { type UnderTest, until } from "../../../cli/test/bench/bench-under-test.ts";
import { seen } from "../page/seen.ts";
import { ready, type Workshop, workshop } from "../together/bench-in-browser.ts";

let shop: Workshop;
let bench: UnderTest;
beforeAll(async () => {
  shop = await workshop();
});
beforeEach(async () => {
  bench = await shop.bench();
});
afterEach(() => bench?.end());
afterAll(() => shop?.close());

const WRONG = "gearbox flange to left frame tube, front";

const surveyOnDisk = (id = "brittlebush") => {
  const report = readSurvey(bench.onDisk(id));
  if (!report) throw new Error("the file has no survey");
  return report.survey;
};

/** Coordinates as the sheet's table has them, point by point. */
async function shownPoints(page: Page): Promise<readonly (readonly string[])[]> {
  const rows = await page.locator(".points-table tbody tr").all();
  return Promise.all(
    rows.map(async (row) =>
      Promise.all(
        (await row.locator("td").all()).map(async (cell) => (await seen(cell)).replace(/\s*(±.*|held)$/, "")),
      ),
    ),
  );
}

const expectedPoints = ({ points }: SurveyResult): readonly (readonly string[])[] =>
  points.map(({ at }) => [at.x, Math.abs(at.y), at.z].map((metres) => formatLength(metres, "inch-pound")));

/** A ± in thirty-seconds, or sixty-fourths where it is less. */
const inParts = (metres: number): string =>
  metres / 0.0254 < 3 / 128 ? "1/64" : formatLength(metres, "inch-pound", { denominator: 32 });

async function openCar(page: Page, isPhone: boolean): Promise<void> {
  await ready(page);
  if (isPhone) await page.locator(".car-button").click();
  else await page.locator(".bench-foot").getByRole("button", { name: "Cars" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Brittlebush brittlebush" }).click();
  if (isPhone) {
    await page.locator(".step-button").click();
    await page
      .getByRole("button", { name: /Survey/ })
      .last()
      .click();
    await page.getByRole("button", { name: "Inputs" }).click();
  } else await page.locator("nav.order button", { hasText: "Survey" }).click();
  await page.locator(".survey-work").waitFor();
}

test("a builder finds the wrong reading, reads it again, sees the ±, takes the next one and undoes it", async () => {
  const { page, troubles } = await shop.visit(bench.ownLink());
  await openCar(page, false);
  const work = page.locator(".survey-work");
  await expect.poll(() => shownPoints(page)).toEqual(expectedPoints(surveyOnDisk().result));

  // The wrong one is named in words before anything else, with what the others say.
  const problem = work.locator(".survey-problems li").first();
  const [suspicion] = surveyOnDisk().result.suspicions;
  expect((await seen(problem)).toLowerCase()).toContain(`${WRONG}: reads 17 3/4, the others say 18 3/4 in`);
  expect(formatLength(suspicion!.others, "inch-pound")).toBe("18 3/4");
  await problem.getByRole("button", { name: /Read it again/ }).click();
  const panel = page.getByRole("dialog");
  expect(await seen(panel.locator(".before"))).toBe("Read before: 17 3/4. The others say 18 3/4 in.");
  await panel.locator(".reading-picture > svg").waitFor();
  await panel.getByLabel("The tape reads").fill("eighteen");
  expect(await panel.locator(".fault").count()).toBe(1);
  await panel.getByLabel("The tape reads").fill("18 3/4");
  await panel.getByLabel("The tape reads").press("Enter");
  await expect.poll(() => work.locator(".survey-problems li").count()).toBe(0);
  await until("the file has it", () => surveyOnDisk().result.suspicions.length === 0);
  await expect.poll(() => shownPoints(page)).toEqual(expectedPoints(surveyOnDisk().result));
  expect(await seen(work.locator(".survey-verdict"))).toMatch(/^Points are known to ± [\d /]+ to ± [\d /]+ in\./);

  // The next one is what the engine says would narrow the used points most.
  const { survey, solved, uses } = surveyOnDisk();
  const used = survey.points.flatMap(({ name }, i) => (uses.some(({ point }) => point === name) ? [i] : []));
  const [next] = nextReadings(survey, solved, { kind: "points", points: used }, 1);
  const words = sayReading(survey, next!.reading);
  expect((await seen(work.locator(".next-words b"))).toLowerCase()).toBe(words.toLowerCase());
  await work.getByRole("button", { name: "Read it", exact: true }).click();
  await panel.getByLabel("The tape reads").fill(formatLength(next!.expected, "inch-pound"));
  await panel.getByRole("button", { name: /1 thirty-second$/ }).click();
  await panel.getByRole("button", { name: "Set it" }).click();
  await until("the file has the next one", () => {
    const entry = JSON.parse(bench.onDisk("brittlebush")).survey.readings.at(-1);
    return entry.reads !== undefined && entry.plusMinus === "1/32" && entry.deferred === undefined;
  });
  const before = bench.onDisk("brittlebush");

  // Taken off and brought back: it stands where it stood.
  await work.locator(".survey-readings button").nth(4).click();
  await panel.locator("summary").click();
  await panel.getByRole("button", { name: "Take off" }).click();
  await until(
    "it is off",
    () => JSON.parse(bench.onDisk("brittlebush")).survey.readings.length === survey.readings.length - 1,
  );
  await page.keyboard.press("Control+z");
  await until("it is back", () => bench.onDisk("brittlebush") === before);

  // Results carry their ±, limits the ± of what is left to them: as the engine has them of the file.
  const reading = readCarDocument(before);
  if (!reading.ok) throw new Error("the file does not read");
  const { certainty } = study(reading.car);
  await page.locator("nav.order button", { hasText: "Shock" }).click();
  const ofShock = certainty.cycle.readings.find(
    ({ quantity, travel }) => quantity.id === "shockLength" && travel === 0,
  );
  const row = page.locator(".results li", { hasText: ofShock!.quantity.label }).first();
  await expect.poll(() => seen(row.locator(".within")), { timeout: 20_000 }).toBe(`± ${inParts(2 * ofShock!.sd!)}`);
  const first = certainty.limits.find(({ limit }) => limit.id === "shock-longest");
  const limitRow = page.locator(".stops-table tr", { hasText: "shock longest" });
  expect(await seen(limitRow.locator("td .within").first())).toBe(`± ${inParts(2 * first!.sd)}`);
  await row.getByRole("button").click();
  expect(await seen(panel)).toContain("of 100 cars built so, about 95 lie between");
  await page.keyboard.press("Escape");
  await page.locator("nav.order button", { hasText: "Check" }).click();
  const [matter] = certainty.matters;
  const mattersMost = page.locator(".matters-most li").first();
  expect((await seen(mattersMost)).toLowerCase()).toContain(
    sayMatter(matter!.source, reading.car.survey).toLowerCase(),
  );
  expect(await mattersMost.locator("b").textContent()).toBe(`${Math.round(100 * matter!.weight)} %`);
  expect(troubles).toEqual([]);
  await page.context().close();
});

test("on a phone a new point is named, readings of other kinds are keyed in, and what is open is said", async () => {
  const { page, troubles } = await shop.visit(bench.ownLink(), {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await openCar(page, true);
  const work = page.locator(".survey-work");
  const panel = page.getByRole("dialog");
  await work.getByRole("button", { name: "Add a reading" }).click();
  await panel.getByLabel("What was read").selectOption("height");
  await panel.getByLabel("point", { exact: true }).selectOption({ label: "a new point …" });
  await panel.getByLabel("What the new point is called").fill("tank corner");
  await panel.getByRole("button", { name: "Name it" }).click();
  await panel.getByRole("button", { name: /^Next/ }).click();
  for (const key of ["2", "2"]) await panel.locator(".whole").getByRole("button", { name: key, exact: true }).click();
  await panel.locator(".sixteenths button").nth(6).click();
  const { violations: ofPanel } = await new AxeBuilder({ page }).analyze();
  expect(ofPanel.map(({ id }) => id)).toEqual([]);
  await panel.getByRole("button", { name: /^Set/ }).click();
  const last = () => JSON.parse(bench.onDisk("brittlebush")).survey;
  await until("the file has the point", () => last().points.at(-1).name === "tank corner");
  // Readings come one after the other; points are touched in the picture, one end and then the other.
  expect(await seen(panel.locator(".written"))).toContain("Tank corner, height off the floor: 22 3/8");
  await panel.getByLabel("What was read").selectOption("tape");
  const { handles } = drawPoints(
    { study: null, points: surveyOnDisk().result.points, held: [], view: "from behind" },
    360,
    300,
  );
  const picture = panel.locator(".points-picture > svg");
  const box = await picture.boundingBox();
  for (const name of ["hub face", "upper bracket"]) {
    const { at } = handles.find(({ label }) => label === name)!;
    await page.touchscreen.tap(box!.x + (at.x / 360) * box!.width, box!.y + (at.y / 300) * box!.height);
  }
  expect(await panel.getByLabel("from", { exact: true }).inputValue()).toBe("hub face");
  expect(await panel.getByLabel("to", { exact: true }).inputValue()).toBe("upper bracket");
  await panel.getByRole("button", { name: "That was the last" }).click();
  expect(last().readings.at(-1)).toEqual({ kind: "height", point: "tank corner", reads: "22 3/8" });

  // Two of its three ways are open: said by name, each with the one reading that tells it.
  const problems = work.locator(".survey-problems li");
  await expect
    .poll(async () => (await Promise.all((await problems.all()).map(seen))).join(" "))
    .toContain("tank corner");
  const open = surveyOnDisk().result.undetermined.length;
  expect(open).toBeGreaterThan(0);
  for (let left = open; left > 0; left = surveyOnDisk().result.undetermined.length) {
    const { survey, result } = surveyOnDisk();
    const { remedy } = result.undetermined[0]!;
    await work
      .getByRole("button", { name: /Take that reading/ })
      .first()
      .click();
    const number = survey.readings.length;
    const read = remedy!.kind === "along" ? ["1", "1"] : ["2", "0"];
    for (const key of read) await panel.locator(".whole").getByRole("button", { name: key, exact: true }).click();
    await panel.getByRole("button", { name: /^Set/ }).click();
    await until("the file has it", () => last().readings.length === number + 1);
    if (survey.readings.length > 80) break;
  }
  expect(surveyOnDisk().result.undetermined).toEqual([]);
  await expect.poll(() => shownPoints(page)).toEqual(expectedPoints(surveyOnDisk().result));

  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(troubles).toEqual([]);
  await page.context().close();
});

test("a point follows from readings or is typed, either way, and undoing brings it back", async () => {
  const { page, troubles } = await shop.visit(bench.ownLink());
  await openCar(page, false);
  const document = () => JSON.parse(bench.onDisk("brittlebush"));
  await page.locator(".point-sources summary").click();
  const hub = page.locator(".point-sources").getByLabel("Hub face");
  expect(await hub.inputValue()).toBe("hub face");
  const { at } = surveyOnDisk().result.points.find(({ name }) => name === "hub face")!;
  await hub.selectOption("");
  await until("it is typed", () => document().wheel.hubFace.surveyed === undefined);
  const typed = [at.x, at.y, at.z].map((metres) => formatLength(metres, "inch-pound"));
  expect(Object.values(document().wheel.hubFace).map(String)).toEqual(typed);
  await page.keyboard.press("Control+z");
  await until("it follows again", () => document().wheel.hubFace.surveyed === "hub face");
  // In its own step's sheet, too: the lower shock mount was typed.
  await page.locator("nav.order button", { hasText: "Shock" }).click();
  const source = page.locator('[data-point="shock.lower"]').getByLabel("comes from");
  await source.selectOption("shock upper");
  await until("it follows", () => document().shock.lower.surveyed === "shock upper");
  expect(document().shock.lower.on).toBe("lower-arm");
  await page.keyboard.press("Control+z");
  await until("it is typed again", () => document().shock.lower.z === "12 1/2");
  expect(troubles).toEqual([]);
  await page.context().close();
});
