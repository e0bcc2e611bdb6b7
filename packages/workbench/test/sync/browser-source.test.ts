import { startingDocument, writeCarDocument } from "@armwright/engine/document";
import { expect, it } from "vitest";
import { browserSource } from "../../src/sync/browser-source.ts";
import { chooseSource } from "../../src/sync/choose-source.ts";
import { type Items, memoryItems } from "../../src/sync/items.ts";
import { memoryShelf } from "../../src/sync/shelf.ts";

const CAR = startingDocument("five-link", "metric");

async function browser(items: Items = memoryItems(new Map(), true)) {
  const shelf = memoryShelf();
  const source = browserSource({ items, shelf });
  const made = await source.create("wattle", CAR);
  expect(made).toEqual({ ok: true, name: "wattle" });
  return { source, items, shelf };
}

it("keeps a car and its edits over a reload", async () => {
  const { source, items, shelf } = await browser();
  await source.open("wattle");
  source.apply("wattle", [{ path: "name", value: "Wattle" }]);
  expect(source.status().word).toBe("kept");
  const again = browserSource({ items, shelf });
  expect((await again.open("wattle"))?.document?.name).toBe("Wattle");
  expect((await again.list()).cars).toEqual([{ name: "wattle", title: "Wattle", condition: "sound" }]);
});

it("puts two pages' work together", async () => {
  const { source, items, shelf } = await browser();
  const other = browserSource({ items, shelf });
  await source.open("wattle");
  await other.open("wattle");
  source.apply("wattle", [{ path: "name", value: "Mine" }]);
  const state = other.apply("wattle", [{ path: "datum", value: "theirs" }]);
  expect(state.document).toMatchObject({ name: "Mine", datum: "theirs" });
});

it("puts a piece of work away once, and brings it back", async () => {
  const { source } = await browser();
  for (const value of ["a", "b", "c"]) source.apply("wattle", [{ path: "name", value }]);
  const versions = await source.history("wattle");
  expect(versions).toHaveLength(1);
  expect(await source.version("wattle", versions[0]!.id)).toBe(writeCarDocument(CAR));
  expect(await source.restore("wattle", versions[0]!.id)).toBe(true);
  expect(source.exportText("wattle")).toBe(writeCarDocument(CAR));
  expect((await source.history("wattle")).map(({ because }) => because)).toEqual(["restore", "edit"]);
});

it("brings a removed car back", async () => {
  const { source } = await browser();
  expect(await source.remove("wattle")).toBe(true);
  expect(await source.list()).toMatchObject({ cars: [], removed: ["wattle"] });
  const [last] = await source.history("wattle");
  expect(await source.restore("wattle", last!.id)).toBe(true);
  expect((await source.list()).cars).toHaveLength(1);
});

it("takes a faulty document in, refuses what is none, and finds a free name", async () => {
  const { source } = await browser();
  const faulty = writeCarDocument(CAR).replace('"datum"', '"datun"');
  expect(await source.importText("wattle", faulty)).toEqual({ ok: true, name: "wattle 2" });
  expect(await source.open("wattle 2")).toMatchObject({ condition: "faulty" });
  expect(await source.importText("x", "{")).toMatchObject({ ok: false });
  expect(await source.importText("x", "[]")).toMatchObject({ ok: false });
  expect(await source.importText("../../x", faulty)).toEqual({ ok: true, name: "x" });
});

it("says so where the storage is full, and goes on", async () => {
  const items = memoryItems(new Map(), true);
  let isFull = false;
  const { source } = await browser({ ...items, set: (key, text) => !isFull && items.set(key, text) });
  isFull = true;
  const state = source.apply("wattle", [{ path: "name", value: "No room" }]);
  expect(state.document?.name).toBe("No room");
  expect(source.status()).toMatchObject({ word: "not kept", because: expect.stringContaining("full") });
  expect(source.exportText("wattle")).toContain("No room");
  isFull = false;
  source.apply("wattle", [{ path: "name", value: "Room" }]);
  expect(source.status().word).toBe("kept");
});

it("says so where the browser keeps nothing", async () => {
  expect((await browser(memoryItems())).source.status().word).toBe("not kept");
});

const answering = (status: number, body: unknown) =>
  (async () => Response.json(body, { status })) as unknown as typeof fetch;
const ready = { armwright: "bench", run: "r", folder: "f", title: "cars", shared: false };

it("chooses the bench that serves the page, also while it is down, and the browser where there never was one", async () => {
  const items = memoryItems(new Map(), true);
  const down = (async () => {
    throw new TypeError("no network");
  }) as unknown as typeof fetch;
  const kinds: string[] = [];
  for (const asking of [down, answering(404, {}), answering(200, "<!doctype html>"), answering(200, ready), down]) {
    const chosen = await chooseSource("./", items, asking);
    kinds.push(chosen.ok ? chosen.source.kind : chosen.why);
    if (chosen.ok) chosen.source.close();
  }
  expect(kinds).toEqual(["browser", "browser", "browser", "server", "server"]);
  expect(await chooseSource("./", items, answering(401, {}))).toEqual({ ok: false, why: "must pair", goTo: "./pair" });
});
