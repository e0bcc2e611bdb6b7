import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fingerprintOf, readCarDocument } from "@armwright/engine/document";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { printedCar, printedOf, rememberPrinted } from "../../src/bench/folder/printed.ts";
import { localDay } from "../../src/local-day.ts";
import { benchUnderTest, freshId, type UnderTest } from "./bench-under-test.ts";

let bench: UnderTest;
beforeEach(async () => {
  bench = await benchUnderTest();
});
afterEach(() => bench.end());

interface Contents {
  readonly fingerprint: string;
  readonly sheets: readonly { readonly id: string; readonly title: string }[];
  readonly files: readonly string[];
  readonly printed: readonly { readonly fingerprint: string; readonly paper: string }[];
}

const contents = async (query = ""): Promise<Contents> =>
  (await (await bench.ask(`/api/cars/saltbush/book${query}`)).json()) as unknown as Contents;

describe("the build book, served", () => {
  it("says its sheets, its files and what it is made from", async () => {
    const { fingerprint, sheets, files, printed } = await contents();
    const reading = readCarDocument(readFileSync(join(bench.folder, "saltbush.car.json"), "utf8"));
    expect(reading.ok && fingerprintOf(reading.document)).toBe(fingerprint);
    expect(sheets.length).toBeGreaterThan(15);
    expect(sheets[0]).toEqual({ id: "car", title: "New h-arm car" });
    expect(files[0]).toBe("new-h-arm-car-book.pdf");
    expect(printed).toEqual([]);
  });

  it("shows a sheet as a picture of true size", async () => {
    const answer = await bench.ask("/api/cars/saltbush/book/sheets/jig-corner?paper=a4");
    expect(String(answer.headers["content-type"])).toContain("image/svg+xml");
    const { text } = answer;
    expect(text).toContain('width="210mm" height="297mm"');
    expect(text).toContain("Jig: whole corner at ride height");
  });

  it("gives the PDF, and remembers what was printed from which state", async () => {
    const answer = await bench.ask("/api/cars/saltbush/book/files/new-h-arm-car-book.pdf?paper=letter");
    expect(answer.status).toBe(200);
    expect(answer.text.slice(0, 5)).toBe("%PDF-");
    const { fingerprint, printed } = await contents();
    expect(printed).toMatchObject([{ fingerprint, paper: "letter" }]);
    expect((await contents("?paper=a4")).printed).toHaveLength(1);
  });

  it("keeps the car that each printed book was made from, whatever the history lets go", async () => {
    const before = bench.onDisk();
    await bench.ask("/api/cars/saltbush/book/files/new-h-arm-car-book.pdf?paper=letter");
    const { fingerprint: first } = (await contents()).printed[0]!;
    expect((await bench.edit("client-aa", [{ id: freshId(), path: "wheel.camber", value: -1.5 }])).status).toBe(200);
    await bench.ask("/api/cars/saltbush/book/files/new-h-arm-car-book.pdf?paper=letter");
    const { fingerprint, printed } = await contents();
    expect(fingerprint).not.toBe(first);
    expect(printed.map((each) => each.fingerprint)).toEqual([fingerprint, first]);
    // The history is gone altogether: the paper's own record is not.
    const history = join(bench.folder, ".history", "saltbush");
    for (const file of readdirSync(history)) if (/^\d/.test(file)) rmSync(join(history, file));
    const answer = await bench.ask(`/api/cars/saltbush/book/printed/${first}`);
    expect(answer.status).toBe(200);
    expect(answer.text).toBe(before);
    const reading = readCarDocument(answer.text);
    expect(reading.ok && fingerprintOf(reading.document)).toBe(first);
  });

  it("thirty books are remembered, and no more cars than they were made from", async () => {
    for (let i = 0; i < 33; i += 1) {
      const fingerprint = `0000-0000-${String(i).padStart(4, "0")}`;
      await rememberPrinted(bench.folder, "saltbush", { fingerprint, day: "2026-11-25", paper: "a4" }, "{}");
    }
    expect(await printedOf(bench.folder, "saltbush")).toHaveLength(30);
    const kept = readdirSync(join(bench.folder, ".history", "saltbush")).filter((file) => file.startsWith("printed-"));
    expect(kept).toHaveLength(30);
    expect(await printedCar(bench.folder, "saltbush", "0000-0000-0000", 100)).toBeUndefined();
    expect(await printedCar(bench.folder, "saltbush", "../../saltbush", 1e6)).toBeUndefined();
  });

  it("prints nothing of a car with faults, and says so", async () => {
    writeFileSync(
      join(bench.folder, "saltbush.car.json"),
      bench.onDisk().replace(/"units": "[a-z-]+"/, '"units": "cubits"'),
    );
    for (const path of ["", "/sheets/car", "/files/new-h-arm-car-book.pdf"]) {
      const answer = await bench.ask(`/api/cars/saltbush/book${path}`);
      expect(answer.status).toBe(409);
      expect(answer.json().error).toContain("mend them");
    }
    expect(await printedOf(bench.folder, "saltbush")).toEqual([]);
  });

  it.each([
    ["/api/cars/saltbush/book/printed/0000-1111-2222", 404],
    ["/api/cars/saltbush/book/printed/..%2F..%2Fsaltbush", 400],
    ["/api/cars/nobody/book", 404],
    ["/api/cars/saltbush/book?paper=napkin", 400],
    ["/api/cars/saltbush/book/sheets/nothing", 404],
    ["/api/cars/saltbush/book/files/nothing.pdf", 404],
    ["/api/cars/saltbush/book/files/..%2F..%2Fsaltbush.car.json", 400],
  ])("refuses %s with %i", async (path, status) => {
    expect((await bench.ask(path)).status).toBe(status);
  });
});

it("the day on paper is the day on the wall", () => {
  const late = new Date(2026, 10, 25, 23, 59);
  expect(localDay(late)).toBe("2026-11-25");
  expect(localDay(new Date(2026, 0, 3, 0, 1))).toBe("2026-01-03");
});
