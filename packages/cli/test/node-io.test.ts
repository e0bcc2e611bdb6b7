import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { nodeIo } from "../src/node-io.ts";

const folder = mkdtempSync(join(tmpdir(), "armwright-"));
const path = join(folder, "my.car.json");
const read = (bytes: Uint8Array): string => {
  writeFileSync(path, bytes);
  return nodeIo().read(path);
};

beforeAll(() => writeFileSync(path, ""));
afterAll(() => rmSync(folder, { recursive: true }));

describe("what is no text in UTF-8 is refused in one sentence", () => {
  it.each([
    ["UTF-16 with its mark", Buffer.from("\ufeff{}", "utf16le")],
    ["UTF-16 without", Buffer.from("{}", "utf16le")],
    ["a program", Buffer.from([0x7f, 0x45, 0x4c, 0x46, 0, 1, 2])],
    ["Latin-1", Buffer.from('{ "name": "caf\u00e9" }', "latin1")],
  ])("%s", (_, bytes) => {
    expect(() => read(bytes)).toThrow(`${path} is not text in UTF-8: save it as UTF-8 in your editor.`);
  });

  it("but not UTF-8 with its mark, nor letters beyond ASCII", () => {
    expect(read(Buffer.from("\ufeff{}"))).toBe("{}");
    expect(read(Buffer.from('"½ 漢字"'))).toBe('"½ 漢字"');
    expect(read(new Uint8Array())).toBe("");
  });
});

describe("what is too large", () => {
  it("is refused, also where it has no end", () => {
    expect(() => read(Buffer.alloc(4_000_001, " "))).toThrow(`${path} is larger than 4 MB: that is no car document.`);
    expect(read(Buffer.alloc(4_000_000, " "))).toHaveLength(4_000_000);
  });

  it.runIf(process.platform === "linux")("such as /dev/zero", () => {
    expect(() => nodeIo().read("/dev/zero")).toThrow("/dev/zero is larger than 4 MB: that is no car document.");
  });
});

it("says why nothing can be read or written", () => {
  expect(() => nodeIo().read(folder)).toThrow("it is a folder; name a file in it.");
  expect(() => nodeIo().read(join(folder, "absent"))).toThrow("there is no such file or folder.");
  expect(() => nodeIo().read(join(folder, "x".repeat(300)))).toThrow("the name is too long.");
  expect(() => nodeIo().write(join(path, "below"), "")).toThrow("a part of the path is a file, not a folder.");
});
