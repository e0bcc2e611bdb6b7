import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { afterAll, beforeAll, expect, test } from "vitest";
import { freshId } from "../../../cli/test/bench/bench-under-test.ts";
import { ready, type Workshop, workshop } from "./bench-in-browser.ts";

let shop: Workshop;
beforeAll(async () => {
  shop = await workshop();
});
afterAll(() => shop?.close());

/** A book takes a second or two, more on a busy machine. */
const PATIENCE = { timeout: 60_000 };

test("paper: leafed through, its words read, printed, and told when it is out of date, by its record and as typed from the sheet", async () => {
  const bench = await shop.bench();
  try {
    const { page, troubles } = await shop.visit(bench.ownLink());
    await ready(page);
    await page.getByRole("button", { name: /Book/ }).first().click();
    const picture = page.locator(".book-page img");
    await picture.waitFor(PATIENCE);
    await page.getByText("Nothing has been printed of this car yet.").waitFor();

    // Leafing, and the words of a sheet.
    await page.getByRole("button", { name: "Next", exact: true }).click();
    await page.getByText("The words of this sheet").click();
    await page.locator(".sheet-words", { hasText: "Go on only when the gate is open" }).waitFor(PATIENCE);
    expect(await picture.getAttribute("src")).toContain("/sheets/order?");
    // The picture has its own face: it is decoded, and as high as a Letter page is.
    const shape = await picture.evaluate((img: HTMLImageElement) => img.naturalHeight / img.naturalWidth);
    expect(shape).toBeCloseTo(11 / 8.5, 2);

    // Printed: the status follows without a reload.
    const [download] = await Promise.all([
      page.waitForEvent("download", PATIENCE),
      page.getByRole("button", { name: "Get the whole book (PDF)" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("saltbush-book.pdf");
    expect(
      readFileSync(await download.path())
        .subarray(0, 5)
        .toString(),
    ).toBe("%PDF-");
    const status = page.locator(".printed");
    await status.getByText("still holds").waitFor(PATIENCE);
    const first = /[0-9A-F]{4}-[0-9A-F]{4}-[0-9A-F]{4}/.exec((await status.textContent()) ?? "")![0];

    // The car changes twice, printed in between: both old books are told of.
    for (const value of [-1.25, -1.5]) {
      await bench.edit("client-aa", [{ id: freshId(), path: "wheel.camber", value }]);
      await status.getByText("OUT OF DATE").waitFor(PATIENCE);
      if (value === -1.25) {
        await page.getByRole("button", { name: "Get the whole book (PDF)" }).click();
        await status.getByText("still holds").waitFor(PATIENCE);
      }
    }
    await status.getByText("throw these 2 books away").waitFor(PATIENCE);
    expect(await status.textContent()).toContain(first);

    // As typed from the sheet, also when the history no longer has that state.
    const history = join(bench.folder, ".history", "saltbush");
    for (const name of readdirSync(history)) if (/^\d/.test(name)) rmSync(join(history, name));
    await page.getByLabel(/A sheet in your hand/).fill(first.toLowerCase().replaceAll("-", " "));
    await page.getByRole("button", { name: "Does it still hold?" }).click();
    await page.getByText(/OUT OF DATE: .*1 field has changed since: .*camber/i).waitFor(PATIENCE);

    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)).toEqual([]);
    expect(troubles).toEqual([]);
  } finally {
    await bench.end();
  }
});
