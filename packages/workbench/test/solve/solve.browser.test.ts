import { answerSolve, SOLVE_QUESTIONS, solveContext } from "@armwright/engine";
import { type CarDocument, readCarValue, setField } from "@armwright/engine/document";
import AxeBuilder from "@axe-core/playwright";
import { afterAll, beforeAll, expect, test } from "vitest";
import { exampleCar } from "../mounts/car.ts";
import { type BuiltPage, builtPage } from "../page/built-page.ts";

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

test("constant camber is found in a worker, taken as one step, and taken back", async () => {
  const { page, troubles } = await built.open({ viewport: { width: 1440, height: 1000 } });
  await page.getByRole("button", { name: /Arms/ }).first().click();
  const work = page.locator(".solve-for");
  await work.getByRole("button", { name: "Least change of camber over the travel" }).click();
  await work.locator(".take").waitFor({ timeout: 30_000 });
  const { car, document } = exampleCar("saltbush");
  const carWith = (operations: readonly { readonly path: string; readonly value: number | string }[]) => {
    const made = readCarValue(
      operations.reduce<CarDocument>((d, { path, value }) => setField(d, path, value), document),
    );
    return made.ok ? made.car : null;
  };
  const question = SOLVE_QUESTIONS.find(({ id }) => id === "constant-camber")!;
  const answer = answerSolve(solveContext({ car, ownRight: [], carWith }), question);
  const { violations } = await new AxeBuilder({ page }).include(".solve-for").analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await work.locator(".take").click();
  const text = () =>
    page.evaluate(() => Object.values(localStorage).find((value) => value.includes('"Saltbush"')) ?? "");
  await expect.poll(text, { timeout: 10_000 }).toContain(String(answer.operations[0]!.value));
  await page.getByRole("button", { name: "Undo" }).first().click();
  await expect.poll(() => page.getByText("undone: least change of camber over the travel").count()).toBeGreaterThan(0);
  expect(troubles).toEqual([]);
});
