import { explainAsBuilt, fiveMinuteCheck, formatLength, likelyCauses, uncertainInputs } from "@armwright/engine";
import { type CarDocument, readCarDocument } from "@armwright/engine/document";
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { type UnderTest, until } from "../../../cli/test/bench/bench-under-test.ts";
import { INCH } from "../mounts/car.ts";
import { seen } from "../page/seen.ts";
import { ready, type Workshop, workshop } from "../together/bench-in-browser.ts";
import { builtOff, paperLog } from "./built-log.ts";

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

const carOnDisk = (id: string) => {
  const reading = readCarDocument(bench.onDisk(id));
  if (!reading.ok) throw new Error("the file does not read");
  return reading;
};
const foundOnDisk = (id: string) => {
  const { car } = carOnDisk(id);
  return explainAsBuilt(car, car.asBuilt ?? [], uncertainInputs(car));
};

/** The heights at which the car was read, whole inches. */
const HEIGHTS = [-6, -3, 0, 3, 5].map((inches) => inches * INCH);
const KINDS = ["half-track", "camber", "toe-at-rim", "shock", "half-shaft"];

test("a car with one point 3/16 in off: its log is entered, the explanation names the point, and the car is kept beside the plan", async () => {
  const plan = JSON.parse(bench.onDisk("saltbush")) as CarDocument;
  const log = paperLog(builtOff(plan), HEIGHTS, KINDS);
  const { page, troubles } = await shop.visit(bench.ownLink());
  await ready(page);
  await page.locator("nav.order button", { hasText: "As built" }).click();
  const work = page.locator(".as-built-work");

  // Before any welding: what the engine says is worth five minutes.
  const { car } = carOnDisk("saltbush");
  const check = fiveMinuteCheck(car, uncertainInputs(car));
  const said = await seen(work.locator(".five-minutes p"));
  expect(said).toContain(`Block the hub ${formatLength(Math.abs(check!.travel), "inch-pound")} in`);
  if (check!.card.dimension === "length") expect(said).toContain(`${formatLength(check!.reads, "inch-pound")} in ±`);

  await work.getByRole("button", { name: "Read the car, height by height" }).click();
  for (const { what, at, reads } of log) await enterReading(page, what, at, reads);
  await page.keyboard.press("Escape");
  await until("the file has the log", () => (carOnDisk("saltbush").car.asBuilt?.length ?? 0) === log.length);

  // What the page says is what the engine finds in the file: verdict, the point, its way and size, and what is alike.
  const found = foundOnDisk("saltbush");
  const likely = likelyCauses(found);
  const right = likely.find(
    ({ cause }) =>
      cause.kind === "point" && cause.input.place.path === "linkage.upperLink.inner" && cause.input.axis === "z",
  );
  expect(right).toBeDefined();
  expect(Math.abs(right!.by - (3 / 16) * INCH)).toBeLessThan(2 * right!.sd + INCH / 32);
  await expect.poll(() => work.locator(".explained").count()).toBe(likely.length);
  const verdict = found.agrees ? "Car and plan agree" : "Something is off";
  expect(await seen(work.locator(".survey-problems [role=status]").first())).toContain(verdict);
  const summary = work.locator("summary");
  if (
    (await summary.count()) > 0 &&
    !(await work.locator("details").evaluate((each) => (each as HTMLDetailsElement).open))
  )
    await summary.click();
  const sentences = await Promise.all((await work.locator(".explained > p:first-child").all()).map(seen));
  likely.forEach(({ cause, by }, index) => {
    if (cause.kind !== "point") return;
    const way = { x: ["farther forward", "farther back"], y: ["farther out", "farther in"], z: ["high", "low"] };
    expect(sentences[index]!.toLowerCase()).toContain(
      `${cause.input.place.label} is ${formatLength(Math.abs(by), "inch-pound", { denominator: 32 })} in ${way[cause.input.axis][by > 0 ? 0 : 1]}`.toLowerCase(),
    );
  });
  // The cards alone cannot tell it from others: the place itself is asked for.
  expect(likely.length).toBeGreaterThan(1);
  const label = right!.cause.kind === "point" ? right!.cause.input.place.label : "";
  await work.getByRole("button", { name: new RegExp(`^Read that place ?: ${label}, height off the floor`) }).click();
  const asked = page.getByRole("dialog");
  await asked.getByRole("heading", { name: `${label}, height off the floor` }).waitFor();
  expect(
    await asked.getByLabel(/^Hub blocked at/).evaluate((each) => (each as HTMLSelectElement).selectedOptions[0]?.text),
  ).toBe("0, ride height: where the points are");
  await page.keyboard.press("Escape");
  expect(await work.locator(".logged-table tbody tr:not(.head)").count()).toBe(log.length);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);

  // A reading in the middle is taken off and brought back where it stood.
  const before = bench.onDisk("saltbush");
  await work.locator(".logged-table tbody button").nth(3).click();
  await page.getByRole("dialog").getByRole("button", { name: "Take off" }).click();
  await until("it is off", () => (carOnDisk("saltbush").car.asBuilt?.length ?? 0) === log.length - 1);
  await page.keyboard.press("Control+z");
  await until("it is back", () => bench.onDisk("saltbush") === before);

  // Kept beside the plan: a car of its own, which agrees with its log; the plan's curves lie over it.
  await expect.poll(() => work.locator(".explained").count()).toBe(likely.length);
  await work.getByRole("button", { name: "Keep as built, beside the plan" }).click();
  await page.getByRole("heading", { name: "Saltbush as built" }).waitFor();
  expect(bench.onDisk("saltbush")).toBe(before);
  expect(foundOnDisk("saltbush-as-built").sum).toBeLessThan(found.sum);
  expect(await page.getByText("plan, Saltbush").count()).toBeGreaterThan(0);
  expect(troubles).toEqual([]);
  await page.context().close();
});

/** In the panel: the height, then cards are skipped up to the one that was read. */
async function enterReading(page: Page, what: string, at: number, reads: string): Promise<void> {
  const panel = page.getByRole("dialog");
  const select = panel.getByLabel(/^Hub blocked at/);
  const label = at === 0 ? "0, ride height" : formatLength(at, "inch-pound", { sign: true }).replace("-", "\u2212");
  const shown = await select.evaluate((element) => {
    const list = element as HTMLSelectElement;
    return list.options[list.selectedIndex]?.text ?? "";
  });
  if (shown !== label) await select.selectOption({ label });
  const title = TITLES[what] ?? "";
  for (let k = 0; k < 10 && (await panel.locator("h2").textContent()) !== title; k += 1)
    await panel.getByRole("button", { name: "Skip" }).click();
  await panel.getByLabel(/reads$/).fill(reads);
  await panel.getByLabel(/reads$/).press("Enter");
}

const TITLES: Readonly<Record<string, string>> = {
  "half-track": "Tyre's middle out from the centreline, at the floor",
  camber: "Camber, angle finder on the rim",
  "toe-at-rim": "Toe across the rim, front against rear (+ in)",
  shock: "Shock, eye to eye",
  "half-shaft": "Half shaft, joint to joint",
};

test("a reading that is far off is said to be so, and taken off again", async () => {
  const { page, troubles } = await shop.visit(bench.ownLink());
  await ready(page);
  await page.locator("nav.order button", { hasText: "As built" }).click();
  const work = page.locator(".as-built-work");
  await work.getByRole("button", { name: "Read the car, height by height" }).click();
  await enterReading(page, "shock", -3 * INCH, "24");
  await page.keyboard.press("Escape");
  await work.getByText("Something is off by more than tape and building allow.").waitFor();
  await work.locator(".logged-table tbody button").click();
  await page.getByRole("dialog").getByRole("button", { name: "Take off" }).click();
  await work.getByText("Something is off").waitFor({ state: "detached" });
  await until("the file has no log", () => JSON.parse(bench.onDisk("saltbush")).asBuilt === undefined);
  expect(troubles).toEqual([]);
  await page.context().close();
});

test("a tube's angle and a point itself are read at ride height; read again, each stays what it is", async () => {
  const { page, troubles } = await shop.visit(bench.ownLink());
  await ready(page);
  await page.locator("nav.order button", { hasText: "As built" }).click();
  const work = page.locator(".as-built-work");
  const panel = page.getByRole("dialog");
  const logOnDisk = () => JSON.parse(bench.onDisk("saltbush")).asBuilt?.readings ?? [];
  const read = async (round: string, title: string, reads: string): Promise<void> => {
    await panel.getByLabel(/^Hub blocked at/).selectOption({ label: round });
    for (let k = 0; k < 60 && (await panel.locator("h2").textContent()) !== title; k += 1)
      await panel.getByRole("button", { name: "Skip" }).click();
    await panel.locator(".reading-picture svg").first().waitFor();
    await panel.getByLabel(/reads$/).fill(reads);
    await panel.getByLabel(/reads$/).press("Enter");
  };
  await work.getByRole("button", { name: "Read the car, height by height" }).click();
  await read("0, ride height", "Upper link, angle, outer end up +", "2");
  await read("0, ride height: where the points are", "Shock, upper, height off the floor", "31 7/8");
  await page.keyboard.press("Escape");
  const entries = [
    { what: "angle", of: "upper link", at: 0, degrees: 2 },
    { what: "height", of: "shock, upper", at: 0, reads: "31 7/8" },
  ];
  await until("the file has both", () => logOnDisk().length === 2);
  expect(logOnDisk()).toEqual(entries);
  // The point itself says what is off, by as much as it was read off: 31 1/2 was planned.
  const { car } = carOnDisk("saltbush");
  const of = explainAsBuilt(car, car.asBuilt!.slice(1), uncertainInputs(car));
  expect(formatLength(of.readings[0]!.predicted!, "inch-pound")).toBe("31 1/2");
  await work.getByRole("button", { name: "Shock, upper, height off the floor" }).click();
  await panel.getByRole("heading", { name: "Shock, upper, height off the floor" }).waitFor();
  await panel.getByLabel(/reads$/).fill("31 9/16");
  await panel.getByLabel(/reads$/).press("Enter");
  await until("the file has the new one", () => logOnDisk()[1]?.reads === "31 9/16");
  expect(logOnDisk()).toEqual([entries[0], { ...entries[1], reads: "31 9/16" }]);
  expect(troubles).toEqual([]);
  await page.context().close();
});

test("on a phone the log is keyed in height by height, on the tape keypad", async () => {
  const { page, troubles } = await shop.visit(bench.ownLink(), {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await ready(page);
  await page.locator(".step-button").click();
  await page
    .getByRole("button", { name: /As built/ })
    .last()
    .click();
  await page.getByRole("button", { name: "Inputs" }).click();
  const work = page.locator(".as-built-work");
  await work.getByRole("button", { name: "Read the car, height by height" }).click();
  const panel = page.getByRole("dialog");
  const whole = (digit: string) => panel.locator(".whole").getByRole("button", { name: digit, exact: true });
  for (const digit of ["3", "5"]) await whole(digit).click();
  await panel.locator(".sixteenths button").nth(5).click();
  const { violations: ofPanel } = await new AxeBuilder({ page }).analyze();
  expect(ofPanel.map(({ id }) => id)).toEqual([]);
  await panel.getByRole("button", { name: /^Set/ }).click();
  // The next one comes by itself: camber, in degrees.
  await panel.getByRole("heading", { name: "Camber, angle finder on the rim" }).waitFor();
  await whole("1").click();
  await whole(".").click();
  await whole("5").click();
  await panel.getByRole("button", { name: "change of sign" }).click();
  await panel.getByRole("button", { name: /^Set/ }).click();
  const logOnDisk = () => JSON.parse(bench.onDisk("saltbush")).asBuilt?.readings ?? [];
  await until("the file has both", () => logOnDisk().length === 2);
  expect(logOnDisk().map(({ what, reads, degrees }: Record<string, unknown>) => [what, reads ?? degrees])).toEqual([
    ["half-track", "35 5/16"],
    ["camber", -1.5],
  ]);
  await page.keyboard.press("Escape");
  await expect.poll(() => work.locator(".logged-table tbody tr:not(.head)").count()).toBe(2);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect(troubles).toEqual([]);
  await page.context().close();
});
