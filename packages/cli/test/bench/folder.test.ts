import { mkdirSync, readdirSync, renameSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { thinned } from "../../src/bench/folder/history-thinning.ts";
import { benchUnderTest, CAR_TEXT, freshId, listen, type UnderTest, until } from "./bench-under-test.ts";

const HERE = "client-here";

let bench: UnderTest;
let file: string;
beforeEach(async () => {
  bench = await benchUnderTest();
  file = join(bench.root, "cars", "saltbush.car.json");
});
afterEach(() => bench.end());

const edit = (value: unknown, path = "name") => bench.edit(HERE, [{ id: freshId(), path, value }]);
const versions = async () =>
  (await bench.ask("/api/cars/saltbush/history")).json()["versions"] as { id: string; because: string }[];

describe("other programs", () => {
  it.each([
    ["writes in place", () => writeFileSync(file, CAR_TEXT.replace("New h-arm car", "From outside"))],
    [
      "writes beside and renames",
      () => {
        writeFileSync(`${file}.swp`, CAR_TEXT.replace("New h-arm car", "From outside"));
        renameSync(`${file}.swp`, file);
      },
    ],
  ])("are seen within a second when one %s", async (_, write) => {
    const { heard, stop } = listen(bench, HERE);
    await until("the stream", () => heard.length > 0);
    write();
    const took = await until("the change", () =>
      heard.some(({ data }) => JSON.stringify(data).includes("From outside")),
    );
    expect(took).toBeLessThan(1000);
    stop();
  });

  it("are not run over: an edit goes onto what they wrote", async () => {
    await bench.ask("/api/cars/saltbush");
    writeFileSync(file, CAR_TEXT.replace('"datum": "middle', '"datum": "outside, the middle'));
    await edit("Mine");
    expect(bench.onDisk()).toContain("outside, the middle");
    expect(bench.onDisk()).toContain('"name": "Mine"');
  });

  it("are named to the one whose fresh value they undo", async () => {
    const { heard, stop } = listen(bench, HERE);
    await until("the stream", () => heard.length > 0);
    await edit("Mine");
    writeFileSync(file, CAR_TEXT);
    await until("the notice", () => heard.some(({ event }) => event === "overruled"));
    const notice = heard.find(({ event }) => event === "overruled")?.data;
    expect(notice).toMatchObject({ path: "name", yours: "Mine", theirs: "New h-arm car", by: "program" });
    stop();
  });

  it("add and take away cars, and the list is told", async () => {
    const { heard, stop } = listen(bench, HERE);
    await until("the stream", () => heard.length > 0);
    writeFileSync(join(bench.root, "cars", "gibber.car.json"), CAR_TEXT);
    await until("the list", () => heard.some(({ event }) => event === "listed"));
    rmSync(file);
    await until("the going", () => heard.some(({ event, data }) => event === "gone" && data["name"] === "saltbush"));
    const listing = (await bench.ask("/api/cars")).json();
    expect(listing).toMatchObject({ cars: [{ name: "gibber" }], removed: ["saltbush"] });
    expect((await edit("Mine")).status).toBe(404);
    stop();
  });
});

describe("broken files", () => {
  const broken: readonly (readonly [string, string | Uint8Array])[] = [
    ["half-written", CAR_TEXT.slice(0, CAR_TEXT.length / 2)],
    ["empty", ""],
    ["with a field given twice", CAR_TEXT.replace('"units"', '"name": "Twice",\n  "units"')],
    ["of a newer form", CAR_TEXT.replace('"armwright": 1', '"armwright": 99')],
    ["a list", "[1, 2]"],
    ["no text", new Uint8Array([0xff, 0xfe, 0x00, 0xd8])],
    ["too large", `${CAR_TEXT}${" ".repeat(1_000_000)}`],
    ["nested without end", `{"armwright": 1, "a": ${"[".repeat(5000)}`],
  ];
  it.each(broken)("are shown as broken and never written over: %s", async (_, content) => {
    writeFileSync(file, content);
    const before = statSync(file);
    const state = (await bench.ask("/api/cars/saltbush")).json() as { condition: string; faults: { says: string }[] };
    expect(state.condition).toBe("broken");
    expect(state.faults[0]?.says).toMatch(/\w+ \w+/);
    const answer = await edit("Mine");
    expect(answer.status).toBe(409);
    expect(statSync(file)).toMatchObject({ size: before.size, mtimeMs: before.mtimeMs, ino: before.ino });
  });

  it("are taken for what they become, where a program is still writing", async () => {
    const { heard, stop } = listen(bench, HERE);
    await until("the stream", () => heard.length > 0);
    const text = CAR_TEXT.replace("New h-arm car", "Slowly");
    writeFileSync(file, text.slice(0, 400));
    await new Promise((resolve) => setTimeout(resolve, 150));
    writeFileSync(file, text);
    await until("the change", () => heard.some(({ data }) => JSON.stringify(data).includes("Slowly")));
    expect(heard.filter(({ data }) => JSON.stringify(data).includes('"broken"'))).toEqual([]);
    stop();
  });

  it("are edited again when mended, and replaced by an earlier version when asked", async () => {
    await edit("Good");
    const half = bench.onDisk().slice(0, 300);
    writeFileSync(file, half);
    expect((await edit("Mine")).status).toBe(409);
    writeFileSync(file, CAR_TEXT);
    expect((await edit("Mended")).status).toBe(200);
    writeFileSync(file, half);
    await bench.ask("/api/cars/saltbush");
    const good = (await versions()).find(({ because }) => because === "program");
    const restored = await bench.send("POST", `/api/cars/saltbush/history/${good?.id}/restore?client=${HERE}`);
    expect(restored.json()).toMatchObject({ condition: "sound" });
    expect(bench.onDisk()).toContain("Mended");
    // The broken text itself is not lost either.
    const newest = (await versions())[0];
    const kept = await bench.ask(`/api/cars/saltbush/history/${newest?.id}`);
    expect(kept.json()).toMatchObject({ text: half, condition: "broken" });
  });
});

describe("history", () => {
  it("keeps what was before a piece of work, once, however many saves the work takes", async () => {
    for (let count = 0; count < 12; count++) await edit(`Name ${count}`);
    const list = await versions();
    expect(list).toHaveLength(1);
    const first = await bench.ask(`/api/cars/saltbush/history/${list[0]?.id}`);
    expect(first.json()).toMatchObject({ text: CAR_TEXT, condition: "sound" });
  });

  it("keeps what a restore replaces, and no version twice in a row", async () => {
    await edit("Mine");
    const [first] = await versions();
    await bench.send("POST", `/api/cars/saltbush/history/${first?.id}/restore`);
    expect(bench.onDisk()).toBe(CAR_TEXT);
    expect((await versions()).map(({ because }) => because)).toEqual(["restore", "edit"]);
    await bench.send("POST", `/api/cars/saltbush/history/${first?.id}/restore`);
    await bench.send("POST", `/api/cars/saltbush/history/${first?.id}/restore`);
    expect(await versions()).toHaveLength(3);
  });

  it("brings a removed car back", async () => {
    expect((await bench.send("DELETE", "/api/cars/saltbush")).status).toBe(200);
    expect((await bench.ask("/api/cars/saltbush")).status).toBe(404);
    const [last] = await versions();
    await bench.send("POST", `/api/cars/saltbush/history/${last?.id}/restore`);
    expect(bench.onDisk()).toBe(CAR_TEXT);
  });

  it("makes nothing in the folder when it is only asked for", async () => {
    expect((await bench.ask("/api/cars/nobody/history")).status).toBe(404);
    expect((await bench.ask("/api/cars/nobody/history/20260101T000000000Z-0123456789ab-edit")).status).toBe(404);
    expect((await bench.ask("/api/cars/saltbush/history")).json()).toEqual({ versions: [] });
    expect(readdirSync(join(bench.root, "cars"))).toEqual(["saltbush.car.json"]);
  });

  it("thins out with age and stays within its bounds", () => {
    const now = Date.parse("2026-06-30T12:00:00Z");
    const every = (minutes: number, count: number, bytes = 4000) =>
      Array.from({ length: count }, (_, index) => ({
        at: new Date(now - index * minutes * 60_000).toISOString(),
        bytes,
      }));
    expect(thinned(every(10, 100), now)).toHaveLength(100);
    expect(thinned(every(1, 5000), now)).toHaveLength(200);
    const long = thinned(every(30, 48 * 60), now);
    expect(long).toHaveLength(200);
    expect(thinned(every(24 * 60 * 2, 90), now)).toHaveLength(90);
    expect(thinned(every(1, 100, 1_000_000), now)).toHaveLength(50);
    expect(thinned(every(1, 3, 80_000_000), now)).toHaveLength(1);
  });

  it("leaves nothing half-written in the folder", async () => {
    for (let count = 0; count < 5; count++) await edit(`Name ${count}`);
    expect(readdirSync(join(bench.root, "cars")).sort()).toEqual([".history", "saltbush.car.json"]);
    expect(readdirSync(join(bench.root, "cars", ".history", "saltbush"))).toHaveLength(2);
  });

  it("is refused where its folder is a link or a file, and nothing is saved then", async () => {
    rmSync(join(bench.root, "cars", ".history"), { recursive: true, force: true });
    mkdirSync(join(bench.root, "elsewhere"));
    symlinkSync(join(bench.root, "elsewhere"), join(bench.root, "cars", ".history"));
    expect((await edit("Mine")).status).toBe(503);
    mkdirSync(join(bench.root, "elsewhere", "saltbush"));
    writeFileSync(
      join(bench.root, "elsewhere", "saltbush", "20260101T000000000Z-0123456789ab-edit.car.json"),
      CAR_TEXT,
    );
    expect((await bench.ask("/api/cars/saltbush/history")).json()).toEqual({ versions: [] });
    const through = await bench.ask("/api/cars/saltbush/history/20260101T000000000Z-0123456789ab-edit");
    expect(through.status).toBe(404);
    expect(readdirSync(join(bench.root, "elsewhere"))).toEqual(["saltbush"]);
    expect(bench.onDisk()).toBe(CAR_TEXT);
  });
});

describe("new cars", () => {
  it("are made, not made over one that is there, and made beside it when asked", async () => {
    expect((await bench.send("PUT", "/api/cars/gibber", CAR_TEXT)).status).toBe(201);
    expect((await bench.send("PUT", "/api/cars/gibber", CAR_TEXT)).status).toBe(201);
    const other = CAR_TEXT.replace("New h-arm car", "Other");
    expect((await bench.send("PUT", "/api/cars/gibber", other)).status).toBe(409);
    expect((await bench.send("PUT", "/api/cars/GIBBER", other)).status).toBe(409);
    const beside = await bench.send("PUT", "/api/cars/gibber?another=yes", other);
    expect(beside.json()).toMatchObject({ name: "gibber 2" });
    expect(bench.onDisk("gibber")).toBe(CAR_TEXT);
  });

  it.each([
    ["..%2fx", 400],
    [".hidden", 400],
    ["con", 400],
    ["a%2fb", 400],
    ["%20x", 400],
    ["x%00", 400],
    ["nul.txt", 400],
  ])("are refused the name %j", async (name, status) => {
    expect((await bench.send("PUT", `/api/cars/${name}`, CAR_TEXT)).status).toBe(status);
    expect(readdirSync(join(bench.root, "cars"))).toEqual(["saltbush.car.json"]);
  });

  it("are refused where they are no car document, or too large", async () => {
    expect((await bench.send("PUT", "/api/cars/gibber", "{")).status).toBe(422);
    expect((await bench.send("PUT", "/api/cars/gibber", `${CAR_TEXT}${" ".repeat(1_000_000)}`)).status).toBe(413);
  });
});
