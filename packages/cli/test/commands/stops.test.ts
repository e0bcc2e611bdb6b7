import { readFileSync } from "node:fs";
import { study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";

const read = (name: string): string => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const CAR = "my.car.json";
const stops = (car: string, ...words: string[]) => told(["stops", CAR, ...words], { files: { [CAR]: car } });
const without = (name: string, ...fields: string[]): string => {
  const document = JSON.parse(read(name));
  for (const field of fields) delete document[field];
  return JSON.stringify(document);
};

describe("stops", () => {
  it("tells on every example where they end the travel and what they rest on, within the page", async () => {
    for (const name of ["saltbush", "greasewood", "rabbitbrush", "catclaw", "juniper"]) {
      const { code, out, err } = await stops(read(`${name}.car.json`));
      expect({ code, err }).toEqual({ code: 0, err: "" });
      expect(out).toContain("WHAT THIS RESTS ON");
      expect(out).not.toMatch(/NaN|undefined|Infinity|null/);
      expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(96);
    }
  });

  it("tells the demo's strap, pad and drop", async () => {
    const { out } = await stops(read("saltbush.car.json"), "--drop", "24");
    expect(out).toMatch(/Taut at -8 1\/4 in of travel/);
    expect(out).toContain("falls flat 24 in");
    expect(out).toContain("IT GOES SOLID");
  });

  it("writes a car whose strap and stop then end the travel", async () => {
    const bare = without("saltbush.car.json", "strap", "bumpStop", "stops");
    const { code, files } = await stops(bare, "--apply", "stopped.car.json");
    expect(code).toBe(0);
    const reading = readCarDocument(files.get("stopped.car.json")!);
    if (!reading.ok) throw new Error("what was written does not read");
    const { bump, droop } = study(reading.car).travel;
    expect([bump.stop.by, bump.stop.works, droop.stop.by, droop.stop.works]).toEqual([
      "bump-stop",
      true,
      "strap",
      true,
    ]);
    expect(bump.first!.travelLeft).toBeGreaterThan(0);
    expect(droop.first!.travelLeft).toBeGreaterThan(0);
  });

  it("says what it cannot tell where shock and weights are missing, and refuses to write nothing", async () => {
    const { code, out } = await stops(without("saltbush.car.json", "shock", "weights"));
    expect(code).toBe(0);
    expect(out).toContain("what arrives at it cannot be told");
    const none = await stops(without("catclaw.car.json", "strap", "bumpStop", "stops"), "--apply", "x.car.json");
    expect(none.code).toBe(2);
    expect(none.err).toContain("Nothing can be proposed");
    expect(none.files.has("x.car.json")).toBe(false);
  });

  it("prints what it proposes as JSON that can be copied, and tells the findings of now and of then apart", async () => {
    const { out } = await stops(without("saltbush.car.json", "strap", "bumpStop", "stops"));
    const copied = [...out.matchAll(/^ {2}(strap|bumpStop): (\{[\s\S]*?\})$(?=\n {2}\w|\n\S|\n\n)/gm)];
    expect(copied.map(([, name]) => name)).toEqual(["strap", "bumpStop"]);
    for (const [, , json] of copied)
      expect(JSON.parse(json!)).toHaveProperty(json!.includes("reach") ? "base" : "upper");
    const [now = "", then = ""] = out.split("FINDINGS ON THE STOPS ").slice(1);
    expect(now).toContain("No strap is entered");
    expect(then).toMatch(/^ONCE SET SO/);
    expect(then).not.toContain("No strap is entered");
  });

  it("gives JSON, and refuses nonsense", async () => {
    const made = JSON.parse((await stops(read("saltbush.car.json"), "--json")).out);
    expect(made).toMatchObject({ armwrightStops: 1, units: "SI", strap: { margin: expect.any(Number) } });
    for (const words of [
      ["--drop", "high"],
      ["--margin", "-1"],
      ["--snatch", "fast"],
      ["--apply", CAR],
    ])
      expect((await stops(read("saltbush.car.json"), ...words)).code).toBe(2);
  });
});
