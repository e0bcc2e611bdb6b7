import { readSpringShelf } from "@armwright/engine";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { shelfKeeper } from "../../src/store/shelf-keeper.ts";

const storage = new Map<string, string>();
beforeEach(() => {
  storage.clear();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => storage.get(key) ?? null,
    setItem: (key: string, value: string) => void storage.set(key, value),
    removeItem: (key: string) => void storage.delete(key),
  });
});
afterEach(() => vi.unstubAllGlobals());

const { kept, keep } = shelfKeeper("springs", readSpringShelf);
const METRIC = "name,rate,freeLength\nlong,35,300\n";

test("a shelf is read anew in the units that it was brought in, and put away", () => {
  expect(kept()).toBeNull();
  keep({ file: "mine.csv", text: METRIC, units: "metric" });
  const reading = readSpringShelf(METRIC, "mine.csv", "metric");
  expect(reading.ok).toBe(true);
  expect(kept()).toEqual(reading.ok && reading.shelf);
  keep(null);
  expect(kept()).toBeNull();
});

test("what is damaged in the storage is no shelf, and a browser that keeps nothing still works", () => {
  for (const damaged of ["{", "7", '{"file":"a","text":3}', '{"file":"a.csv","text":"no shelf"}']) {
    storage.set("springs", damaged);
    expect(kept(), damaged).toBeNull();
  }
  vi.stubGlobal("localStorage", {
    getItem: () => {
      throw new Error("forbidden");
    },
    setItem: () => {
      throw new Error("full");
    },
  });
  expect(kept()).toBeNull();
  expect(() => keep({ file: "mine.csv", text: METRIC, units: "metric" })).not.toThrow();
});
