import { LINKAGE_KINDS } from "@armwright/engine";
import { readCarDocument, simplestDocument, startingDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";

describe.each(LINKAGE_KINDS)("new --kind %s", (kind) => {
  it.each(["inch-pound", "metric"] as const)("gives the starting document in %s", async (units) => {
    for (const [flags, made] of [
      [[], startingDocument(kind, units)],
      [["--simple"], simplestDocument(kind, units)],
    ] as const) {
      const { code, out, err } = await told(["new", "--kind", kind, "--units", units, "--name", "Dust", ...flags]);
      expect({ code, err }).toEqual({ code: 0, err: "" });
      const reading = readCarDocument(out);
      expect(reading).toMatchObject({ ok: true, document: { ...made, $schema: "./car.schema.json", name: "Dust" } });
    }
  });
});

it("is in inches where nothing is said", async () => {
  expect(JSON.parse((await told(["new", "--kind", "h-arm"])).out).units).toBe("inch-pound");
});

describe("--out", () => {
  const words = ["new", "--kind", "h-arm", "--out", "cars/my.car.json"];

  it("writes the document, and the schema that it names beside it", async () => {
    const { out, err, files } = await told(words);
    expect(out).toBe("");
    expect(readCarDocument(files.get("cars/my.car.json")!).ok).toBe(true);
    expect(JSON.parse(files.get("cars/car.schema.json")!).title).toBe("Armwright car document");
    expect(err).toBe("Wrote cars/my.car.json.\nWrote cars/car.schema.json, by which an editor explains each field.\n");
  });

  it("leaves a schema that is there, and refuses to write over a car", async () => {
    const there = { "cars/my.car.json": "mine", "cars/car.schema.json": "also mine" };
    const refused = await told(words, { files: there });
    expect(refused.code).toBe(2);
    expect(refused.err).toBe("cars/my.car.json is there already: name another, or add --force.\n");
    expect(Object.fromEntries(refused.files)).toEqual(there);
    const forced = await told([...words, "--force"], { files: there });
    expect(forced.code).toBe(0);
    expect(readCarDocument(forced.files.get("cars/my.car.json")!).ok).toBe(true);
    expect(forced.files.get("cars/car.schema.json")).toBe("also mine");
  });
});

it.each<readonly [readonly string[], RegExp]>([
  [[], /^new needs --kind: one of h-arm, double-a-arm, trailing-arm, five-link\.$/],
  [["--kind", "harm"], /^--kind: "harm" is not known: did you mean h-arm\?$/],
  [["--kind", "wishbone"], /write one of h-arm,/],
  [["--kind", "h-arm", "--units", "inches"], /^--units: "inches" is not known: write one of inch-pound, metric\.$/],
  [["--kind", "h-arm", "--name", " "], /^--name is empty/],
])("refuses %j", async (words, sentence) => {
  const { code, out, err } = await told(["new", ...words]);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err.trimEnd()).toMatch(sentence);
});
