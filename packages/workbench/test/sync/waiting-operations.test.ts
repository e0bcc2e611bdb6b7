import { type CarDocument, startingDocument } from "@armwright/engine/document";
import { afterEach, expect, it, vi } from "vitest";
import { memoryItems } from "../../src/sync/items.ts";
import { WaitingOperations } from "../../src/sync/waiting-operations.ts";

const CAR: CarDocument = startingDocument("h-arm", "inch-pound");
const made: WaitingOperations[] = [];
const waitingIn = (items = memoryItems(new Map(), true), scope = "folder") => {
  const waiting = new WaitingOperations(items, scope);
  made.push(waiting);
  return waiting;
};
afterEach(() => {
  for (const waiting of made.splice(0)) waiting.leave();
  vi.useRealTimers();
});

const paths = (waiting: WaitingOperations) => waiting.all.map(({ operation }) => operation.path);

it("merges values for one field, keeping what was there before the first", () => {
  const waiting = waitingIn();
  for (const value of ["a", "b", "c"])
    waiting.add("car", "client", { ...CAR, name: `before ${value}` }, [{ path: "name", value }]);
  expect(waiting.all.map(({ operation }) => operation)).toMatchObject([{ path: "name", value: "c", was: "before a" }]);
});

it("does not merge into an edit that is on its way", () => {
  const waiting = waitingIn();
  waiting.add("car", "client", CAR, [{ path: "name", value: "a" }]);
  waiting.markSent(waiting.all);
  waiting.add("car", "client", { ...CAR, name: "a" }, [{ path: "name", value: "b" }]);
  expect(waiting.all.map(({ operation }) => operation.value)).toEqual(["a", "b"]);
  waiting.settle([waiting.all[0]!.operation.id]);
  expect(waiting.all.map(({ operation }) => operation.value)).toEqual(["b"]);
});

it("does not merge what a change of the list has come between", () => {
  const waiting = waitingIn();
  const edit = (path: string, value?: string) => waiting.add("car", "client", CAR, [{ path, value }]);
  edit("keepOuts[0]");
  edit("keepOuts[0]");
  edit("keepOuts[0].name", "a");
  edit("keepOuts[0].name", "b");
  edit("keepOuts[0]");
  edit("keepOuts[0].name", "c");
  expect(paths(waiting)).toEqual(["keepOuts[0]", "keepOuts[0]", "keepOuts[0].name", "keepOuts[0]", "keepOuts[0].name"]);
});

it("names the list item that the hand meant", () => {
  const waiting = waitingIn();
  waiting.add("car", "client", CAR, [
    { path: "keepOuts[1].point.x", value: 27 },
    { path: "keepOuts[1]", value: undefined },
  ]);
  expect(waiting.all.map(({ operation }) => operation.item)).toEqual(["firewall", "firewall"]);
  expect(waiting.all[1]?.operation).toMatchObject({ remove: true });
});

it("takes over what another page left, at once where it said good-bye, else when it has fallen silent", () => {
  vi.useFakeTimers();
  const items = memoryItems(new Map(), true);
  const gone = waitingIn(items);
  gone.add("car", "client-gone", CAR, [{ path: "name", value: "left behind" }]);
  const beside = waitingIn(items);
  expect(beside.all).toEqual([]);
  gone.leave();
  expect(beside.adopt()).toBe(true);
  expect(beside.all).toMatchObject([{ client: "client-gone", operation: { value: "left behind" } }]);

  const crashed = waitingIn(items);
  crashed.add("car", "client-b", CAR, [{ path: "datum", value: "from a crash" }]);
  crashed.leave();
  items.set([...items.keys("armwright:page:"), "armwright:page:x"][0]!, String(Date.now()));
  vi.advanceTimersByTime(13_000);
  expect(waitingIn(items).all.map(({ operation }) => operation.value)).toContain("from a crash");
  expect(waitingIn(items, "another folder").all).toEqual([]);
});

it("passes over what is not its own in the storage", () => {
  const texts = new Map([
    ["armwright:waiting:folder:page:1", "{"],
    ["armwright:waiting:folder:page:2", '{"car":1}'],
  ]);
  expect(waitingIn(memoryItems(texts, true)).all).toEqual([]);
});

it("says so when the storage takes nothing", () => {
  const waiting = waitingIn({ ...memoryItems(new Map(), true), set: () => false });
  waiting.add("car", "client", CAR, [{ path: "name", value: "a" }]);
  expect([waiting.all.length, waiting.isKept]).toEqual([1, false]);
});
