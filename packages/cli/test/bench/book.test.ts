import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fingerprintOf, readCarDocument } from "@armwright/engine/document";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { benchUnderTest, type UnderTest } from "./bench-under-test.ts";

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

  it.each([
    ["/api/cars/nobody/book", 404],
    ["/api/cars/saltbush/book?paper=napkin", 400],
    ["/api/cars/saltbush/book/sheets/nothing", 404],
    ["/api/cars/saltbush/book/files/nothing.pdf", 404],
    ["/api/cars/saltbush/book/files/..%2F..%2Fsaltbush.car.json", 400],
  ])("refuses %s with %i", async (path, status) => {
    expect((await bench.ask(path)).status).toBe(status);
  });
});
