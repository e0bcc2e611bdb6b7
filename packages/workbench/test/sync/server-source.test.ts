import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { readCarDocument } from "@armwright/engine/document";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { benchUnderTest, CAR_TEXT, type UnderTest, until } from "../../../cli/test/bench/bench-under-test.ts";
import type { Edit } from "../../src/sync/source.ts";
import { type Page, page } from "./page-under-test.ts";

let bench: UnderTest;
let pages: Page[];
beforeEach(async () => {
  bench = await benchUnderTest();
  pages = [];
});
afterEach(async () => {
  for (const { source } of pages) source.close();
  await bench.end();
});

const opened = async (from?: Promise<Page>): Promise<Page> => {
  const made = await (from ?? page(bench.port));
  pages.push(made);
  return made;
};
const type = (on: Page, path: string, value: Edit["value"]): void => {
  on.car = on.source.apply("saltbush", [{ path, value }]);
};
const onDisk = (path: string): unknown => {
  const reading = readCarDocument(bench.onDisk());
  if (!reading.ok) throw new Error("the file does not read");
  return path.split(".").reduce<unknown>((at, step) => (at as Record<string, unknown>)?.[step], reading.document);
};
const quiet = (on: Page) => until("all is kept", () => on.source.status().word === "kept", 8000);

describe("laptop and phone on one car", () => {
  it("show an edit at once here, and within a second there", async () => {
    const laptop = await opened();
    const phone = await opened();
    await until("both streams", () => [laptop, phone].every(({ told }) => told("list").length > 0));
    const times: number[] = [];
    for (let count = 0; count < 10; count++) {
      type(laptop, "name", `Car ${count}`);
      expect(laptop.get("name")).toBe(`Car ${count}`);
      times.push(await until("the phone", () => phone.get("name") === `Car ${count}`));
    }
    console.log(`laptop to phone, ms: ${times.map((time) => time.toFixed(0)).join(" ")}`);
    expect(Math.max(...times)).toBeLessThan(1000);
  });

  it("keep both hands' work at two fields, typed in the same moment", async () => {
    const laptop = await opened();
    const phone = await opened();
    type(laptop, "wheel.hubFace.x", 1);
    type(phone, "wheel.hubFace.y", 31);
    await Promise.all([quiet(laptop), quiet(phone)]);
    for (const path of ["wheel.hubFace.x", "wheel.hubFace.y"]) {
      await until("both show both", () => [laptop, phone].every((each) => each.get(path) === onDisk(path)));
    }
    expect([onDisk("wheel.hubFace.x"), onDisk("wheel.hubFace.y")]).toEqual([1, 31]);
  });

  it("tell the earlier at one field, and the later what it went over", async () => {
    const laptop = await opened();
    const phone = await opened();
    await until("both streams", () => [laptop, phone].every(({ told }) => told("list").length > 0));
    phone.net.isUp = false;
    type(phone, "name", "From the phone");
    type(laptop, "name", "From the laptop");
    await quiet(laptop);
    phone.net.isUp = true;
    await quiet(phone);
    await until("the laptop is told", () => laptop.told("overruled").length > 0);
    const yours = { path: "name", yours: "From the laptop", theirs: "From the phone", by: "person" };
    expect(laptop.told("overruled")).toMatchObject([yours]);
    expect(phone.told("replaced")).toMatchObject([{ path: "name", theirs: "From the laptop" }]);
    expect(phone.told("overruled")).toEqual([]);
    await until("both show the later", () => [laptop, phone].every(({ get }) => get("name") === "From the phone"));
  });

  it("see what another program does to the file", async () => {
    const laptop = await opened();
    await until("the stream", () => laptop.told("list").length > 0);
    writeFileSync(join(bench.folder, "saltbush.car.json"), CAR_TEXT.replace("New h-arm car", "From outside"));
    expect(await until("the change", () => laptop.get("name") === "From outside")).toBeLessThan(1000);
  });
});

describe("without the connection", () => {
  it("work goes on, and is sent when it is back, over what came meanwhile", async () => {
    const laptop = await opened();
    const phone = await opened();
    phone.net.isUp = false;
    for (let count = 0; count < 20; count++) type(phone, "name", `Typed ${count}`);
    type(phone, "wheel.hubFace.x", 2);
    expect(phone.source.status()).toMatchObject({ waiting: 3 });
    await until("it is said", () => phone.source.status().word === "waiting to send");
    type(laptop, "wheel.hubFace.z", 16);
    await quiet(laptop);
    expect([phone.get("name"), phone.get("wheel.hubFace.x")]).toEqual(["Typed 19", 2]);
    phone.net.isUp = true;
    await quiet(phone);
    expect([onDisk("name"), onDisk("wheel.hubFace.x"), onDisk("wheel.hubFace.z")]).toEqual(["Typed 19", 2, 16]);
    await until("the phone sees the rest", () => phone.get("wheel.hubFace.z") === 16);
    // Twenty words for one field: the one that was being sent when the line was cut, and the last.
    expect(phone.net.sent).toBeLessThanOrEqual(2);
  });

  it("nothing typed is lost over a reload, also a reload without a server", async () => {
    let phone = await opened();
    phone.net.isUp = false;
    type(phone, "name", "Typed under the car");
    phone = await opened(phone.reload());
    expect(phone.get("name")).toBe("Typed under the car");
    expect((await phone.source.list()).cars).toEqual([]);
    type(phone, "wheel.hubFace.x", 3);
    phone = await opened(phone.reload());
    expect([phone.get("name"), phone.get("wheel.hubFace.x")]).toEqual(["Typed under the car", 3]);
    phone.net.isUp = true;
    await quiet(phone);
    expect([onDisk("name"), onDisk("wheel.hubFace.x")]).toEqual(["Typed under the car", 3]);
    expect(phone.items.keys("armwright:waiting:")).toEqual([]);
  });

  it("an answer that is lost makes no edit twice", async () => {
    const laptop = await opened();
    const phone = await opened();
    phone.net.losesAnswers = true;
    type(phone, "name", "Once");
    await until("it is on the disk", () => onDisk("name") === "Once");
    await until("the laptop sees it", () => laptop.get("name") === "Once");
    type(laptop, "name", "After it");
    await quiet(laptop);
    phone.net.losesAnswers = false;
    await quiet(phone);
    expect(onDisk("name")).toBe("After it");
  });

  it("a restart of the server in the middle makes no edit twice and loses none", async () => {
    const laptop = await opened();
    laptop.net.losesAnswers = true;
    type(laptop, "wheel.hubFace.x", 4);
    await until("it is on the disk", () => onDisk("wheel.hubFace.x") === 4);
    const { port, root } = bench;
    await bench.close();
    type(laptop, "name", "While it was down");
    bench = await benchUnderTest({ root, port });
    const phone = await opened();
    type(phone, "wheel.hubFace.x", 5);
    await quiet(phone);
    laptop.net.losesAnswers = false;
    await quiet(laptop);
    expect([onDisk("wheel.hubFace.x"), onDisk("name")]).toEqual([5, "While it was down"]);
    await until("the laptop sees it", () => laptop.get("wheel.hubFace.x") === 5);
  });

  it("what waits for one folder is not sent to another at the same address", async () => {
    const phone = await opened();
    phone.net.isUp = false;
    type(phone, "name", "For the first folder");
    const { port } = bench;
    await bench.end();
    bench = await benchUnderTest({ port });
    phone.net.isUp = true;
    await until("it is said", () => /another folder/.test(phone.source.status().because ?? ""), 5000);
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(bench.onDisk()).toBe(CAR_TEXT);
    expect(phone.items.keys("armwright:waiting:")).toHaveLength(1);
  });
});

describe("files in trouble", () => {
  it("a broken file is shown, what is typed meanwhile waits, and is made when it is mended", async () => {
    const laptop = await opened();
    await until("the stream", () => laptop.told("list").length > 0);
    const file = join(bench.folder, "saltbush.car.json");
    laptop.net.isUp = false;
    type(laptop, "name", "Typed before I knew");
    writeFileSync(file, CAR_TEXT.slice(0, 300));
    laptop.net.isUp = true;
    await until("it is shown", () => laptop.car?.condition === "broken");
    expect(laptop.car?.faults[0]?.says).toContain("JSON");
    await until("it waits", () => laptop.source.status().word === "waiting to send");
    writeFileSync(file, CAR_TEXT);
    await quiet(laptop);
    expect(onDisk("name")).toBe("Typed before I knew");
  });

  it("a file that is taken away keeps what waits for it, and another car is not held up", async () => {
    const laptop = await opened();
    const made = await laptop.source.importText("gibber", CAR_TEXT);
    expect(made).toEqual({ ok: true, name: "gibber" });
    await laptop.source.open("gibber");
    laptop.net.isUp = false;
    type(laptop, "name", "For a file that is gone");
    rmSync(join(bench.folder, "saltbush.car.json"));
    laptop.source.apply("gibber", [{ path: "name", value: "For the other" }]);
    laptop.net.isUp = true;
    await until("the other", () => bench.onDisk("gibber").includes("For the other"), 8000);
    // On the disk a moment before its acknowledgement is here.
    await until("only the first waits", () => laptop.source.status().waiting === 1);
    await until("it is shown as gone", () => laptop.car?.condition === "gone");
    expect(laptop.source.status().word).toBe("waiting to send");
    expect(laptop.car?.waiting).toBe(1);
    expect(laptop.source.exportText("saltbush")).toContain("For a file that is gone");
  });

  it("an edit that can never be made is handed back", async () => {
    const laptop = await opened();
    type(laptop, "name.first", "Nobody");
    await until("it is handed back", () => laptop.told("refused").length > 0);
    expect(laptop.told("refused")).toMatchObject([{ edit: { path: "name.first", value: "Nobody" } }]);
    expect(laptop.source.status().word).toBe("kept");
  });

  it("earlier versions are looked through and brought back", async () => {
    const laptop = await opened();
    type(laptop, "name", "Later");
    await quiet(laptop);
    const [first] = await laptop.source.history("saltbush");
    expect(await laptop.source.version("saltbush", first?.id ?? "")).toBe(CAR_TEXT);
    expect(await laptop.source.restore("saltbush", first?.id ?? "")).toBe(true);
    expect(laptop.get("name")).toBe("New h-arm car");
    expect(bench.onDisk()).toBe(CAR_TEXT);
  });

  it("a mesh goes there and comes back", async () => {
    const laptop = await opened();
    const bytes = new Uint8Array([1, 2, 3]);
    expect(await laptop.source.keepMesh("scan.stl", bytes)).toEqual({ ok: true, name: "scan.stl" });
    expect(await laptop.source.readMesh("scan.stl")).toEqual(bytes);
    expect(await laptop.source.keepMesh("scan.stl", bytes)).toMatchObject({ ok: false });
  });
});
