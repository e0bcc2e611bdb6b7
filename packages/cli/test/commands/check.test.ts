import { writeCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { hArm, SAMPLES, textWith, unprotected } from "../documents.ts";
import { told } from "../fake-io.ts";

const CAR = "my.car.json";
const check = (text: string) => told(["check", CAR], { files: { [CAR]: text } });

describe("exit codes of check", () => {
  it.each<readonly [string, number, string]>([
    ["sound", 0, writeCarDocument(hArm())],
    ["findings that must be put right", 1, unprotected()],
    ["a faulty document", 2, textWith(hArm(), { "shock.longest": 2 })],
    ["no JSON", 2, '{ "armwright": 1, '],
    ["no car", 2, "{}"],
    ["nothing", 2, ""],
  ])("%s: %i", async (_, expected, text) => {
    const { code, out, err } = await check(text);
    expect(code).toBe(expected);
    expect(expected === 2 ? out : err).toBe("");
  });

  it("knows no unsound starting document", async () => {
    for (const { text, name } of SAMPLES) {
      if (!name.endsWith(".car.json")) expect(await check(text), name).toMatchObject({ code: 0, err: "" });
    }
  });
});

it("tells every fault on its own line, with its place in the file", async () => {
  const text = writeCarDocument(hArm())
    .replace('"shortest": "15 1/4"', '"shortest": "15 1/3"')
    .replace('"strap"', '"strop"')
    .replace('"x": 8,', '"x": 8, "x": 9,');
  const { err } = await check(text);
  const lineOf = (part: string) => 1 + text.split("\n").findIndex((line) => line.includes(part));
  expect(err.split("\n")).toEqual([
    expect.stringMatching(new RegExp(`^my\\.car\\.json:${lineOf('"x": 9')}:\\d+: .*: given twice`)),
    expect.stringMatching(new RegExp(`^my\\.car\\.json:${lineOf("15 1/3")}:\\d+: shock\\.shortest: "15 1/3" is not`)),
    expect.stringMatching(new RegExp(`^my\\.car\\.json:${lineOf("strop")}:\\d+: strop: .* did you mean strap\\?$`)),
    "3 faults in the document: nothing was computed.",
    "",
  ]);
});

it("counts its findings and tells those that matter, worst first", async () => {
  const { out } = await check(unprotected());
  expect(out).toMatch(/^my\.car\.json reads well: \d that must be changed, \d to mind, \d notes\.\nMUST {2}/);
  expect(out).not.toContain("Note");
  expect(out.lastIndexOf("MUST")).toBeLessThan(out.indexOf("Mind"));
});

it("reads standard input and says so in its faults", async () => {
  expect(await told(["check", "-"], { input: writeCarDocument(hArm()) })).toMatchObject({ code: 0, err: "" });
  const { code, err } = await told(["check", "-"], { input: "{}" });
  expect(code).toBe(2);
  expect(err).toMatch(/^standard input:1:1: this is not a car document/);
});
