import { readCarDocument } from "@armwright/engine/document";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { benchUnderTest, CAR_TEXT, freshId, listen, type UnderTest, until } from "./bench-under-test.ts";

const HERE = "client-here";
const THERE = "client-there";

let bench: UnderTest;
beforeEach(async () => {
  bench = await benchUnderTest();
});
afterEach(() => bench.end());

const value = (path: string): unknown => {
  const reading = readCarDocument(bench.onDisk());
  if (!reading.ok) throw new Error("the document does not read");
  return path.split(".").reduce<unknown>((at, step) => (at as Record<string, unknown>)?.[step], reading.document);
};
const set = (path: string, to: unknown, was?: unknown, more: object = {}) => ({
  id: freshId(),
  path,
  value: to,
  ...(was === undefined ? {} : { was }),
  ...more,
});
const outcomes = (answer: { json: () => Record<string, unknown> }) =>
  answer.json()["outcomes"] as { outcome: string; because?: string; replaced?: unknown }[];

describe("edits", () => {
  it("are on the disk when they are acknowledged, as the builder typed them", async () => {
    const answer = await bench.edit(HERE, [set("wheel.freeRadius", "17 3/16")]);
    expect(answer.status).toBe(200);
    expect(bench.onDisk()).toContain('"freeRadius": "17 3/16"');
    expect(answer.json()["state"]).toMatchObject({ condition: "sound", text: bench.onDisk() });
  });

  it("keep both hands' work at two fields, also in one section", async () => {
    const before = value("wheel.hubFace") as { x: unknown; y: unknown };
    await Promise.all([
      bench.edit(HERE, [set("wheel.hubFace.x", 1, before.x)]),
      bench.edit(THERE, [set("wheel.hubFace.y", 31, before.y)]),
    ]);
    expect(value("wheel.hubFace")).toMatchObject({ x: 1, y: 31 });
  });

  it("let the later win at one field, and tell the earlier with both values", async () => {
    const { heard, stop } = listen(bench, HERE);
    await until("the stream", () => heard.some(({ event }) => event === "hello"));
    const was = value("wheel.freeRadius");
    await bench.edit(HERE, [set("wheel.freeRadius", 17, was)]);
    const late = await bench.edit(THERE, [set("wheel.freeRadius", 18, was)]);
    expect(value("wheel.freeRadius")).toBe(18);
    expect(outcomes(late)[0]).toMatchObject({ outcome: "done", replaced: 17 });
    const told = await until("the notice", () => heard.some(({ event }) => event === "overruled"));
    expect(told).toBeLessThan(1000);
    const notice = heard.find(({ event }) => event === "overruled");
    expect(notice?.data).toMatchObject({
      name: "saltbush",
      path: "wheel.freeRadius",
      yours: 17,
      theirs: 18,
      by: "person",
    });
    stop();
  });

  it("tell nobody when the later hand had seen the earlier value", async () => {
    const { heard, stop } = listen(bench, HERE);
    await until("the stream", () => heard.some(({ event }) => event === "hello"));
    await bench.edit(HERE, [set("wheel.freeRadius", 17, value("wheel.freeRadius"))]);
    await bench.edit(THERE, [set("wheel.freeRadius", 18, 17)]);
    await until("the change", () => heard.filter(({ event }) => event === "changed").length >= 2);
    expect(heard.filter(({ event }) => event === "overruled")).toEqual([]);
    stop();
  });

  it("tell the author of one coordinate when the whole point goes under", async () => {
    const point = value("wheel.hubFace") as { x: number; y: number; z: number };
    await bench.edit(HERE, [set("wheel.hubFace.x", 3, point.x), set("wheel.hubFace.z", point.z, point.z)]);
    await bench.edit(THERE, [set("wheel.hubFace", { ...point, x: 4 }, point)]);
    // Told also when the stream is opened only afterwards, until it is said to have been heard.
    const { heard, stop } = listen(bench, HERE);
    await until("the notice", () => heard.some(({ event }) => event === "overruled"));
    stop();
    const notices = heard.filter(({ event }) => event === "overruled");
    expect(notices.map(({ data }) => data["path"])).toEqual(["wheel.hubFace.x"]);
    const later = listen(bench, HERE, `&heard=${notices[0]?.data["number"]}`);
    await until("the second stream", () => later.heard.length > 0);
    expect(later.heard.filter(({ event }) => event === "overruled")).toEqual([]);
    later.stop();
  });

  it("are done once, however often they come, also after a restart", async () => {
    const first = set("wheel.freeRadius", 17, value("wheel.freeRadius"));
    await bench.edit(HERE, [first]);
    await bench.edit(THERE, [set("wheel.freeRadius", 18, 17)]);
    expect(outcomes(await bench.edit(HERE, [first]))[0]?.outcome).toBe("done before");
    await bench.close();
    const again = await benchUnderTest({ root: bench.root });
    const answer = await again.edit(HERE, [first]);
    expect(outcomes(answer)[0]?.outcome).toBe("done before");
    expect(again.onDisk()).toContain('"freeRadius": 18');
    bench = again;
  });

  it("follow a list item that has moved, and never hit its neighbour", async () => {
    const items = value("keepOuts") as { name: string }[];
    expect(items.length).toBeGreaterThan(1);
    await bench.edit(HERE, [{ id: freshId(), path: "keepOuts[0]", remove: true, was: items[0], item: items[0]!.name }]);
    const moved = await bench.edit(THERE, [set("keepOuts[1].point.x", 27, 26, { item: items[1]!.name })]);
    expect(outcomes(moved)[0]?.outcome).toBe("done");
    expect(value("keepOuts")).toMatchObject([{ name: items[1]!.name, point: { x: 27 } }]);
    const lost = await bench.edit(THERE, [set("keepOuts[0].diameter", 2, 1.5, { item: items[0]!.name })]);
    expect(outcomes(lost)[0]).toMatchObject({ outcome: "refused" });
    expect(value("keepOuts")).toMatchObject([{ name: items[1]!.name }]);
  });

  it("put two new items that came to the same place behind one another", async () => {
    const item = (name: string) => ({ shape: "half-space", name, point: { x: 26, y: 0, z: 20 }, normal: "rearward" });
    await bench.edit(HERE, [set("keepOuts[2]", item("tank"))]);
    await bench.edit(THERE, [set("keepOuts[2]", item("seat"))]);
    expect((value("keepOuts") as { name: string }[]).map(({ name }) => name).slice(2)).toEqual(["tank", "seat"]);
  });

  it("keep a value that makes the car faulty, with the fault", async () => {
    const answer = await bench.edit(HERE, [set("wheel.freeRadius", "about fourteen")]);
    expect(answer.json()["state"]).toMatchObject({ condition: "faulty", faults: [{ path: "wheel.freeRadius" }] });
    expect(bench.onDisk()).toContain("about fourteen");
    expect(outcomes(await bench.edit(HERE, [set("wheel.freeRadius", 17)]))[0]?.outcome).toBe("done");
    expect((await bench.ask("/api/cars/saltbush")).json()).toMatchObject({ condition: "sound" });
    expect(outcomes(await bench.edit(HERE, [set("units", "furlongs")]))[0]?.outcome).toBe("done");
    expect((await bench.ask("/api/cars/saltbush")).json()).toMatchObject({ condition: "faulty" });
  });

  const dangerous: readonly (readonly [string, unknown])[] = [
    ["__proto__.polluted", 1],
    ['["__proto__"]', { polluted: 1 }],
    ["wheel.constructor.prototype.polluted", 1],
    ["", 1],
    ["wheel..x", 1],
    ["wheel[", 1],
    ["keepOuts[99999999]", {}],
    ["keepOuts.name", 1],
    ["wheel[0]", 1],
    ["name.first", 1],
    ["armwright", 2],
    ["a.b.c.d.e.f.g.h.i.j.k.l.m.n", 1],
  ];
  it.each(dangerous)("refuse the place %j", async (path, to) => {
    const answer = await bench.edit(HERE, [set(path, to)]);
    expect(outcomes(answer)[0]).toMatchObject({ outcome: "refused", because: expect.stringMatching(/\w/) });
    expect(bench.onDisk()).toBe(CAR_TEXT);
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
  });

  const malformed: readonly (readonly [string, string])[] = [
    ["no JSON", "{"],
    ["nothing", ""],
    ["a list", "[]"],
    ["no client", JSON.stringify({ operations: [set("name", "x")] })],
    ["no operations", JSON.stringify({ client: HERE, operations: [] })],
    [
      "an id with a path in it",
      JSON.stringify({ client: HERE, operations: [{ ...set("name", "x"), id: "../../../etc" }] }),
    ],
    [
      "a prototype in a value",
      `{"client":"${HERE}","operations":[{"id":"aaaaaaaaaa","path":"wheel","value":{"__proto__":{"a":1}}}]}`,
    ],
    ["no value", JSON.stringify({ client: HERE, operations: [{ id: freshId(), path: "name" }] })],
    ["a value nested without end", JSON.stringify({ client: HERE, operations: [set("name", nested(40))] })],
    ["bytes that are no text", "\u0000\u0001"],
  ];
  it.each(malformed)("refuse a message with %s", async (_, body) => {
    const answer = await bench.send("POST", "/api/cars/saltbush/operations", body);
    expect(answer.status).toBe(400);
    expect(bench.onDisk()).toBe(CAR_TEXT);
  });

  it("refuse to let a document grow beyond its size", async () => {
    const long = "x".repeat(9_000);
    for (let part = 0; part < 130; part += 26) {
      const operations = Array.from({ length: 26 }, (_, index) => set(`note${part + index}`, long));
      const last = await bench.edit(HERE, operations);
      if (part === 104) expect(outcomes(last)[0]).toMatchObject({ outcome: "refused" });
    }
    expect(bench.onDisk().length).toBeLessThanOrEqual(1_000_000);
  });
});

function nested(depth: number): unknown {
  return depth === 0 ? 1 : { a: nested(depth - 1) };
}
