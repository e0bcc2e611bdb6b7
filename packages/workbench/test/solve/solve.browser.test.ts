import { answerSolve, formatValue, SOLVE_QUESTIONS, solveContext } from "@armwright/engine";
import { type CarDocument, readCarValue, setField } from "@armwright/engine/document";
import AxeBuilder from "@axe-core/playwright";
import { afterAll, beforeAll, expect, test } from "vitest";
import { exampleCar } from "../mounts/car.ts";
import { bringCar } from "../page/bring-car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";
import { seen } from "../page/seen.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const DEMO = exampleCar("saltbush");

function answerOf(id: string, values: Readonly<Record<string, number | string>>) {
  const { car, document } = DEMO;
  const carWith = (operations: readonly { readonly path: string; readonly value: number | string }[]) => {
    const made = readCarValue(
      operations.reduce<CarDocument>((d, { path, value }) => setField(d, path, value), document),
    );
    return made.ok ? made.car : null;
  };
  const question = SOLVE_QUESTIONS.find((each) => each.id === id)!;
  return answerSolve(solveContext({ car, ownRight: [], carWith }), question, values);
}

const INCH = 0.0254;
const DEGREE = Math.PI / 180;

test("what is wanted is typed, the answer is found in a worker, taken as one step, and taken back", async () => {
  const { page, troubles } = await built.open({ viewport: { width: 1440, height: 1000 } });
  await page.getByRole("button", { name: /Arms/ }).first().click();
  const work = page.locator(".solve-for");
  await work.getByRole("button", { name: "Wanted camber at two travels" }).click();
  const enter = async (label: string, text: string, nth = 0): Promise<void> => {
    const field = work.getByLabel(label).nth(nth);
    await field.fill(text);
    await field.press("Enter");
  };
  await enter("First travel", "5");
  await enter("Camber wanted there", "-1.5", 0);
  await enter("Second travel", "-6 1/2");
  await enter("Camber wanted there", "0.25", 1);
  await work.getByLabel("What is moved").selectOption("upperLink.outer");
  await enter("How far it may go up and down, each way", "1 1/2");
  // Out of bounds is told at the field, and not asked.
  const far = work.getByLabel("How far it may go in and out, each way");
  await far.fill("40");
  expect(await far.getAttribute("aria-invalid")).toBe("true");
  await far.press("Escape");
  await work.getByRole("button", { name: "Find it" }).click();
  await work.locator(".take").waitFor({ timeout: 60_000 });
  const answer = answerOf("camber-at-two", {
    at: 5 * INCH,
    camber: -1.5 * DEGREE,
    "at-2": -6.5 * INCH,
    "camber-2": 0.25 * DEGREE,
    point: "upperLink.outer",
    "up-down": 1.5 * INCH,
  });
  const told = await seen(work.locator(".solve-answer"));
  for (const { label, after } of answer.changes)
    expect(told).toContain(
      `${label}${formatValue(answer.changes.find((each) => each.label === label)!.before!, "length", "inch-pound")}${formatValue(after, "length", "inch-pound")}`,
    );
  for (const { label } of answer.effects) expect(told).toContain(label);
  expect(told).not.toMatch(/, [xyz]\b/);
  expect(await work.getByRole("img", { name: /^camber off by/ }).count()).toBe(answer.curves.length);
  const { violations } = await new AxeBuilder({ page }).include(".solve-for").analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await work.locator(".take").click();
  const text = () =>
    page.evaluate(() => Object.values(localStorage).find((value) => value.includes('"Saltbush"')) ?? "");
  await expect.poll(text, { timeout: 10_000 }).toContain(String(answer.operations[0]!.value));
  await work.getByText("has changed since").waitFor();
  await page.getByRole("button", { name: "Undo" }).first().click();
  await expect.poll(() => page.getByText("undone: wanted camber at two travels").count()).toBeGreaterThan(0);
  expect(troubles).toEqual([]);
});

test("a search that takes long tells how far it is, and can be stopped", async () => {
  const { page, troubles } = await built.open();
  await bringCar(page, exampleCar("catclaw").document);
  await page.getByRole("button", { name: /Arms/ }).first().click();
  const work = page.locator(".solve-for");
  await work.getByRole("button", { name: "Least change of toe over the travel" }).click();
  await work.getByRole("button", { name: "Find it" }).click();
  const progress = work.locator("progress");
  await expect.poll(() => progress.evaluate((bar) => (bar as HTMLProgressElement).value)).toBeGreaterThan(0);
  await work.getByRole("button", { name: "Stop" }).click();
  await work.getByText("Given up.").waitFor();
  expect(await progress.count()).toBe(0);
  expect(troubles).toEqual([]);
});

for (const colorScheme of ["light", "dark"] as const)
  test(`nothing of an answer runs out of a phone: ${colorScheme}`, async () => {
    const { page, troubles } = await built.open({ viewport: { width: 390, height: 844 }, colorScheme });
    await page.locator(".step-button").click();
    await page
      .getByRole("button", { name: /Driveshaft/ })
      .last()
      .click();
    await page.getByRole("button", { name: "Inputs" }).click();
    const work = page.locator(".solve-for");
    await work.getByRole("button", { name: "Least plunge of the half shaft" }).click();
    await work.getByRole("button", { name: "Find it" }).click();
    await work.locator(".solve-answer").waitFor({ timeout: 60_000 });
    const { violations } = await new AxeBuilder({ page }).include(".solve-for").analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    expect(await work.evaluate((element) => element.scrollWidth <= element.clientWidth)).toBe(true);
    expect(troubles).toEqual([]);
  });
