import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { benchCommand } from "../../src/bench/command.ts";
import { workingFolder } from "../../src/bench/working-folder.ts";
import { Refusal } from "../../src/refusal.ts";
import { benchUnderTest, CAR_TEXT, until } from "./bench-under-test.ts";

let here: string;
let stop: AbortController;
let out: string;
beforeEach(() => {
  here = mkdtempSync(join(tmpdir(), "command-"));
  mkdirSync(join(here, "app"));
  writeFileSync(join(here, "app", "index.html"), "<!doctype html><title>page</title>");
  stop = new AbortController();
  out = "";
});
afterEach(() => rmSync(here, { recursive: true, force: true }));

const io = {
  out: (text: string) => {
    out += text;
  },
};
const bench = (operands: string[], flags: string[] = [], values: Record<string, string> = {}) =>
  benchCommand({ operands, flags: new Set(flags), values: new Map(Object.entries(values)) }, io, {
    stop: stop.signal,
    here,
    app: join(here, "app"),
  });

describe("the command", () => {
  it("opens the bench, says where, and ends when it is stopped", async () => {
    const ended = bench([], [], { port: "0" });
    await until("it is said", () => out.includes("Stop it with"));
    const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(out)?.[0] ?? "";
    expect(await (await fetch(address)).text()).toContain("page");
    expect(existsSync(join(here, "cars"))).toBe(true);
    stop.abort();
    expect(await ended).toBe(0);
    await expect(fetch(address)).rejects.toThrow();
  });

  it.skipIf(process.platform !== "linux")("shows address, code and secret when it is shared", async () => {
    const ended = bench([], ["share", "no-open"], { port: "0", address: "127.0.0.2" });
    await until("it is said", () => out.includes("It pairs one device") && out.includes("Stop it with"));
    expect(out).toMatch(/open http:\/\/127\.0\.0\.2:\d+ and type [A-Z2-9]{4}(-[A-Z2-9]{4}){3}/);
    expect(out).toMatch(/[\u2580\u2584\u2588]{7}/);
    stop.abort();
    await ended;
  });

  it.each([
    ["a folder that is not there", () => bench(["nowhere"]), /There is no folder nowhere/],
    ["a file for a folder", () => bench(["app/index.html"]), /is a file/],
    ["a port that is none", () => bench([], [], { port: "many" }), /whole number/],
    ["an address of the wide net", () => bench([], ["share"], { address: "8.8.8.8" }), /local network/],
  ])("refuses %s in a plain sentence", async (_, run, words) => {
    const error = await run().catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(Refusal);
    expect(String(error)).toMatch(words);
  });

  it("says so where the port is taken", async () => {
    const other = await benchUnderTest();
    const error = await bench([], [], { port: String(other.port) }).catch((thrown: unknown) => thrown);
    expect(String(error)).toMatch(/is in use/);
    await other.end();
  });
});

describe("the working folder", () => {
  it("is filled with copies of the examples once, and then left as it is", async () => {
    const examples = join(here, "examples");
    mkdirSync(examples);
    writeFileSync(join(examples, "a.car.json"), CAR_TEXT);
    writeFileSync(join(examples, "notes.txt"), "none");
    expect(await workingFolder(undefined, here, examples)).toEqual({
      path: join(here, "cars"),
      copied: ["a.car.json"],
    });
    rmSync(join(here, "cars", "a.car.json"));
    expect((await workingFolder(undefined, here, examples)).copied).toEqual([]);
    expect(readdirSync(join(here, "cars"))).toEqual([]);
  });
});
