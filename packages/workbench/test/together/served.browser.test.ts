import { existsSync, readFileSync, renameSync, unlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { readCarDocument, sayFault } from "@armwright/engine/document";
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { type UnderTest, until } from "../../../cli/test/bench/bench-under-test.ts";
import { enter, field, isKeptOffline, ready, shows, type Workshop, workshop } from "./bench-in-browser.ts";
import { engineNumbers, plainTexts, shownNumbers, studyOf } from "./shown-numbers.ts";

/** What another screen or program did is seen within this, ms. */
const SOON = 1000;
const STRAP = "strap.length";
const REACH = "bumpStop.reach";

let shop: Workshop;
beforeAll(async () => {
  shop = await workshop();
});
afterAll(() => shop?.close());

let bench: UnderTest;
let pages: Page[] = [];
afterEach(async () => {
  for (const page of pages) await page.context().close();
  pages = [];
  await bench?.end();
});

async function opened(options: Parameters<Workshop["visit"]>[1] = {}) {
  const visit = await shop.visit(bench.ownLink(), options);
  pages.push(visit.page);
  await ready(visit.page);
  return visit;
}

const file = (name = "saltbush"): string => join(bench.folder, `${name}.car.json`);
const onDisk = (path: string): unknown =>
  path.split(".").reduce<unknown>((at, step) => (at as Record<string, unknown>)[step], JSON.parse(bench.onDisk()));

/** As most programs save: whole, beside the file, then in its place. */
function savedElsewhere(text: string): void {
  writeFileSync(`${file()}.tmp`, text);
  renameSync(`${file()}.tmp`, file());
}

const told = (page: Page) => page.locator(".notices");

test("opens on the demo car, and every number shown is the engine's of the file", async () => {
  bench = await shop.bench();
  const { page, troubles } = await opened();
  expect(await page.title()).toBe("Saltbush, Armwright");
  const expected = engineNumbers(studyOf(bench.onDisk()));
  const shown = await shownNumbers(page);
  expect(shown.stops).toEqual(expected.stops);
  expect(shown.findings.map((said) => said.replace(/^(?:Must|Mind|Note)\. /, ""))).toEqual(expected.findings);
  expect(shown.results.length).toBeGreaterThan(20);
  for (const line of shown.results) {
    const [, label = "", value] = /^\w+: (.*) \| (.*)$/.exec(line) ?? [];
    expect([label, value]).toEqual([label, expected.result(label)]);
  }
  expect(troubles).toEqual([]);
});

describe("page and file", () => {
  test("an edit in the page is in the file within a second, and nothing else of the file has changed", async () => {
    bench = await shop.bench();
    const { page } = await opened();
    const before = readFileSync(file(), "utf8");
    await enter(page, STRAP, "23 1/2");
    await until("the file has it", () => onDisk(STRAP) === "23 1/2", SOON);
    const { strap, ...rest } = JSON.parse(before);
    const { strap: now, ...restNow } = JSON.parse(bench.onDisk());
    expect(restNow).toEqual(rest);
    expect(now).toEqual({ ...strap, length: "23 1/2" });
  });

  test("what another program writes is on the page within a second, studied", async () => {
    bench = await shop.bench();
    const { page } = await opened();
    const text = bench.onDisk().replace('"23 7/8"', '"23 1/4"');
    savedElsewhere(text);
    await shows(page, STRAP, "23 1/4", SOON);
    writeFileSync(file(), text.replace('"23 1/4"', '"23"'));
    await shows(page, STRAP, "23", SOON);
    const { stops } = engineNumbers(studyOf(bench.onDisk()));
    const strap = page.locator(".stops-table tr.chosen").first().locator("th, td");
    expect(`droop: ${(await plainTexts(strap)).slice(0, 3).join(" | ")}`).toBe(stops[0]);
  });

  test("a file broken on disk is told with its reasons, never overwritten, and comes back mended", async () => {
    bench = await shop.bench();
    const { page } = await opened();
    const whole = bench.onDisk();
    const broken = whole.replace('"strap": {', '"strap": {{');
    const reading = readCarDocument(broken);
    if (reading.ok) throw new Error("the text was to be broken");
    savedElsewhere(broken);
    const reasons = page.locator(".findings-list li", { hasText: "Mend." });
    await reasons.first().waitFor();
    expect(await plainTexts(reasons)).toEqual(reading.faults.map((fault) => `Mend. ${sayFault(fault)}`));
    expect(await page.locator(".is-older").count()).toBe(1);
    // Whatever is pressed meanwhile.
    await page.keyboard.press("Control+z");
    await page.keyboard.press("ArrowUp");
    expect(await field(page, STRAP).count()).toBe(0);
    await page.reload();
    await ready(page);
    await reasons.first().waitFor();
    expect(bench.onDisk()).toBe(broken);
    savedElsewhere(whole);
    await shows(page, STRAP, "23 7/8");
    expect(await reasons.count()).toBe(0);
    await enter(page, STRAP, "23");
    await until("the mended file takes edits", () => onDisk(STRAP) === 23, SOON);
  });

  test("a broken car that is opened after a sound one shows nothing of that one, and takes none of its undoing", async () => {
    bench = await shop.bench();
    const whole = bench.onDisk("greasewood");
    writeFileSync(file("greasewood"), whole.slice(0, 300));
    const { page } = await opened();
    await enter(page, STRAP, "23");
    await page.locator(".bench-foot").getByRole("button", { name: "Cars" }).click();
    await page.locator(".car-list button", { hasText: "cannot be read" }).click();
    await page.getByText("its file cannot be read").waitFor();
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("greasewood");
    expect(await page.locator("svg.drawing, .stops-table, svg.tape").count()).toBe(0);
    expect(await plainTexts(page.locator(".findings-list li"))).toEqual([expect.stringMatching(/^Mend\. /)]);
    writeFileSync(file("greasewood"), whole);
    await page.locator(".stops-table").waitFor();
    expect(await page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);
    await page.keyboard.press("Control+z");
    expect(bench.onDisk("greasewood")).toBe(whole);
  });

  test("a broken file is brought back from its history, and the broken text is kept", async () => {
    bench = await shop.bench();
    const { page } = await opened();
    const whole = bench.onDisk();
    const broken = whole.slice(0, 400);
    savedElsewhere(broken);
    await page.locator(".findings-list li", { hasText: "Mend." }).first().waitFor();
    await openHistory(page);
    await page.getByRole("button", { name: "Bring back" }).first().click();
    await shows(page, STRAP, "23 7/8");
    expect(bench.onDisk()).toBe(whole);
    const { versions } = (await bench.send("GET", "/api/cars/saltbush/history")).json() as {
      versions: { id: string }[];
    };
    const texts = await Promise.all(
      versions.map(async ({ id }) => (await bench.send("GET", `/api/cars/saltbush/history/${id}`)).json()["text"]),
    );
    expect(texts).toContain(broken);
  });
});

test("a file taken away is told; what is entered waits, and is in the file once that is brought back", async () => {
  bench = await shop.bench();
  const { page } = await opened();
  unlinkSync(file());
  await told(page).waitFor();
  expect(await told(page).textContent()).toContain("the file was taken away");
  await enter(page, STRAP, "23");
  await until("it waits", async () => /^1 change waits/.test((await page.locator(".saved").textContent()) ?? ""));
  expect(existsSync(file())).toBe(false);
  await openHistory(page);
  await page.getByRole("button", { name: "Bring back" }).first().click();
  await until("the file is back, with what was entered", () => existsSync(file()) && onDisk(STRAP) === 23);
  await shows(page, STRAP, "23");
});

describe("two pages on one car", () => {
  test("edits of two fields are both kept, and both are seen by both", async () => {
    bench = await shop.bench();
    const [one, other] = await Promise.all([opened(), opened()]);
    await Promise.all([enter(one.page, STRAP, "23"), enter(other.page, REACH, "4 1/2")]);
    await until("the file has both", () => onDisk(STRAP) === 23 && onDisk(REACH) === "4 1/2", SOON);
    for (const { page } of [one, other]) {
      await shows(page, STRAP, "23", SOON);
      await shows(page, REACH, "4 1/2", SOON);
      expect(await told(page).count()).toBe(0);
    }
    expect([...one.troubles, ...other.troubles]).toEqual([]);
  });

  test("at one field the later wins, and the earlier is told until they have seen it", async () => {
    bench = await shop.bench();
    const [one, other] = await Promise.all([opened(), opened()]);
    // The other's edit is under way while the first one's arrives.
    let letGo = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    await other.page.route("**/operations", async (route) => {
      await held;
      await route.continue();
    });
    await enter(other.page, STRAP, "24");
    await enter(one.page, STRAP, "23");
    await until("the first is kept", () => onDisk(STRAP) === 23, SOON);
    letGo();
    await until("the later one wins", () => onDisk(STRAP) === 24, SOON);
    await shows(one.page, STRAP, "24", SOON);
    expect(await field(other.page, STRAP).inputValue()).toBe("24");
    await told(one.page).waitFor();
    expect(await told(one.page).textContent()).toContain(
      "Strap, length: your 23 was replaced by 24, entered on another screen",
    );
    await told(other.page).waitFor();
    expect(await told(other.page).textContent()).toContain("Strap, length: replaced 23");
    const { violations } = await new AxeBuilder({ page: one.page }).include(".notices").analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await told(one.page).getByRole("button", { name: "Seen" }).click();
    expect(await told(one.page).count()).toBe(0);
  });
});

test("without the server work goes on, is kept over a reload, and is sent when it is back", async () => {
  bench = await shop.bench();
  const { port, root } = bench;
  const { page } = await opened({ serviceWorkers: "allow" });
  await isKeptOffline(page);
  await bench.close();
  await enter(page, STRAP, "23");
  await enter(page, REACH, "4 1/2");
  const saved = page.locator(".saved");
  await until("it says what waits", async () => /^2 changes wait/.test((await saved.textContent()) ?? ""));
  const changed = JSON.parse(bench.onDisk());
  changed.strap.length = 23;
  changed.bumpStop.reach = "4 1/2";
  const { stops } = engineNumbers(studyOf(JSON.stringify(changed)));
  const studied = async (): Promise<void> => {
    const rows = await plainTexts(page.locator(".stops-table tr.chosen td:nth-child(2)"));
    expect(rows).toEqual(stops.filter((row) => row.endsWith("| ")).map((row) => row.split(" | ")[1]));
  };
  await studied();
  await page.reload();
  await ready(page);
  await shows(page, STRAP, "23");
  await shows(page, REACH, "4 1/2");
  await studied();
  expect(onDisk(STRAP)).toBe("23 7/8");
  bench = await shop.bench({ root, port });
  await until("it is sent", () => onDisk(STRAP) === 23 && onDisk(REACH) === "4 1/2", 15_000);
  await until("it says so", async () => /^kept in the folder/.test((await saved.textContent()) ?? ""));
  expect(JSON.parse(bench.onDisk())).toEqual(changed);
});

describe.skipIf(process.platform !== "linux")("shared", () => {
  /** A second address of the loopback network stands for the local network's. */
  const SHARE = "127.0.0.2";

  test("nothing without pairing; with the link all of it; no secret works twice", async () => {
    const secrets: string[] = [];
    bench = await shop.bench({ share: SHARE, onSecret: (secret) => secrets.push(secret) });
    const address = `http://${SHARE}:${bench.port}`;
    const guest = async (path: string): Promise<Page> => {
      const { page } = await shop.visit(`${address}${path}`);
      pages.push(page);
      return page;
    };
    const stranger = await guest("/");
    expect(await stranger.title()).toBe("Armwright: pair this device");
    expect(await stranger.locator("nav, svg, [data-field]").count()).toBe(0);
    const asked = await stranger.evaluate(() =>
      Promise.all(
        ["api/cars", "api/cars/saltbush", "api/ready", "index.html", "service-worker.js"].map(async (path) => {
          const answer = await fetch(`./${path}`);
          return [answer.status, await answer.text()] as const;
        }),
      ),
    );
    for (const [status, text] of asked) {
      expect(status).toBe(401);
      expect(text).not.toMatch(/saltbush/i);
    }
    const [secret = ""] = secrets;
    const phone = await guest(`/pair#${secret}`);
    await ready(phone);
    expect(phone.url()).toBe(`${address}/`);
    expect(await phone.title()).toBe("Saltbush, Armwright");
    await enter(phone, STRAP, "23");
    await until("the phone's edit is in the file", () => onDisk(STRAP) === 23, SOON);
    const second = await guest(`/pair#${secret}`);
    await second.getByText("That secret is not known, or was used already").waitFor();
    expect(await second.locator("nav, svg, [data-field]").count()).toBe(0);
    expect(await second.evaluate(async () => (await fetch("/api/cars")).status)).toBe(401);
    await phone.reload();
    await ready(phone);
    await shows(phone, STRAP, "23");
  });
});

test("an earlier version is listed, laid over, and brought back to page and file", async () => {
  bench = await shop.bench();
  const before = JSON.parse(bench.onDisk());
  const { page, troubles } = await opened();
  await enter(page, STRAP, "22");
  await enter(page, REACH, "5");
  await until("they are kept", () => onDisk(STRAP) === 22 && onDisk(REACH) === 5, SOON);
  await openHistory(page);
  const versions = page.locator(".version-list li");
  await versions.first().waitFor();
  // Edits close together are one piece of work.
  expect(await versions.count()).toBe(1);
  expect(await versions.first().textContent()).toContain("before a change");
  await versions.first().getByRole("button", { name: "Lay over" }).click();
  await page.locator(".stops").getByText("before, ").waitFor();
  expect(onDisk(STRAP)).toBe(22);
  await openHistory(page);
  await versions.first().getByRole("button", { name: "Bring back" }).click();
  await shows(page, STRAP, "23 7/8");
  await until("the file has it", () => onDisk(STRAP) === "23 7/8", SOON);
  expect(JSON.parse(bench.onDisk())).toEqual(before);
  await page.getByRole("button", { name: "Undo" }).click();
  await shows(page, STRAP, "22");
  await until("and what was brought back is undone", () => onDisk(STRAP) === 22 && onDisk(REACH) === 5, SOON);
  expect(troubles).toEqual([]);
});

async function openHistory(page: Page): Promise<void> {
  await page.locator(".bench-foot").getByRole("button", { name: "Cars" }).click();
  await page.getByRole("button", { name: "Earlier versions" }).click();
  await page.locator(".version-list li").first().waitFor();
}
