import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { told } from "../fake-io.ts";

const text = readFileSync(new URL("../../../../examples/saltbush.car.json", import.meta.url), "utf8");
const book = (...words: readonly string[]) => told(["book", "car.json", ...words], { files: { "car.json": text } });

describe("book", () => {
  test("writes its files into the folder asked for and tells of each as it goes", async () => {
    const { code, out, err, bytes } = await book("--out", "paper", "--paper", "a4");
    expect(code).toBe(0);
    expect([...bytes.keys()].every((path) => path.startsWith("paper/saltbush-"))).toBe(true);
    expect(bytes.has("paper/saltbush-book.pdf")).toBe(true);
    expect(err.trim().split("\n")).toHaveLength(bytes.size);
    expect(out).toContain(`Wrote ${bytes.size} files into paper.`);
    expect(out).toContain("100 %");
  });

  test("the solid assembly stands where --travel says; other files do not care", async () => {
    const [ride, hanging] = [await book("--out", "p"), await book("--out", "p", "--travel", "-3 1/2")];
    const differ = [...ride.bytes].filter(([path, bytes]) => !Buffer.from(bytes).equals(hanging.bytes.get(path)!));
    expect(differ.map(([path]) => path).sort()).toEqual(["p/saltbush-assembly.glb", "p/saltbush-assembly.stl"]);
  });

  test.each([
    ["--travel", "30", "past the stops"],
    ["--travel", "up a bit", "is not a travel"],
    ["--paper", "napkin", "letter or a4"],
  ])("refuses %s %s", async (option, value, words) => {
    const { code, err, bytes } = await book(option, value);
    expect(code).not.toBe(0);
    expect(err).toContain(words);
    expect(bytes.size).toBe(0);
  });
});
