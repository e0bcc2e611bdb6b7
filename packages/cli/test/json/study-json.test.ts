import { describe, expect, it } from "vitest";
import { z } from "zod";
import { studyJson } from "../../src/json/study-json.ts";
import type { OutUnits } from "../../src/units-out.ts";
import { carOf, hArm, movedOf, SAMPLES, textWith, threaded, unprotected } from "../documents.ts";
import { told } from "../fake-io.ts";

const CAR = "my.car.json";
const json = (text: string, units: OutUnits) => {
  const car = carOf(text);
  return JSON.parse(studyJson({ ...movedOf(car), right: car.right ? movedOf(car.right) : null }, units));
};
const published = async () => JSON.parse((await told(["schema", "--study"])).out);
/** A reader of JSON Schema that knows nothing of how ours is made. */
let made: z.ZodType | undefined;
const validator = async (): Promise<z.ZodType> => {
  made ??= z.fromJSONSchema(await published());
  return made;
};

const RIGHT = { upper: { x: -4, y: -17, z: 32 }, lower: { x: -4, y: -24, z: 12.5, on: "lower-arm" } };
const CASES = [
  ...SAMPLES,
  { name: "an unprotected car", text: unprotected() },
  { name: "a car with threads", text: threaded() },
  {
    name: "a car with its own right side",
    text: textWith(hArm(), { "right.shock": { ...RIGHT, shortest: 15.25, longest: 24 } }),
  },
];

it.each<readonly [readonly string[], (text: string) => OutUnits]>([
  [[], (text) => carOf(text).units],
  [["--si"], () => "SI"],
])("the command writes it, %j", async (words, unitsOf) => {
  for (const { text } of [CASES.at(-1)!, { text: unprotected() }]) {
    const { code, out } = await told(["study", CAR, "--json", "--stations", "9", ...words], { files: { [CAR]: text } });
    expect(code).toBe(0);
    const { right: ofCommand, ...left } = JSON.parse(out);
    const { right, ...expected } = json(text, unitsOf(text));
    expect(left).toEqual(expected);
    expect(ofCommand).toEqual(right);
  }
});

describe.each(CASES)("the study of $name as JSON", ({ text }) => {
  it.each(["SI", "own"] as const)("meets the published schema, %s units", async (which) => {
    const result = (await validator()).safeParse(json(text, which === "SI" ? "SI" : carOf(text).units));
    expect(result.error?.issues ?? []).toEqual([]);
  });

  it("tells the engine's numbers, in SI and in the document's units", () => {
    const car = carOf(text);
    const made = movedOf(car).study;
    const si = json(text, "SI");
    const own = json(text, car.units);
    const inch = car.units === "metric" ? 0.001 : 0.0254;
    expect(si.units).toBe("SI");
    expect(own.units).toBe(car.units);
    for (const direction of ["bump", "droop"] as const) {
      const { stop, limits } = made.travel[direction];
      expect(si.travel[direction].stop.travel).toBeCloseTo(stop.travel, 11);
      expect(own.travel[direction].stop.travel * inch).toBeCloseTo(stop.travel, 11);
      expect(si.travel[direction].limits.map(({ id }: { id: string }) => id)).toEqual(limits.map(({ id }) => id));
    }
    expect(si.findings.map(({ code }: { code: string }) => code)).toEqual(made.findings.map(({ code }) => code));
    expect(si.assumed).toHaveLength(made.car.assumed.length);
    expect(si.cycle.quantities.map(({ id }: { id: string }) => id)).toEqual(made.quantities.map(({ id }) => id));
    for (const { values } of si.cycle.quantities) expect(values).toHaveLength(si.cycle.travels.length);
  });
});

interface Node {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node;
  readonly anyOf?: readonly Node[];
}

describe("the published schema", () => {
  it.each<readonly [string, string, string]>([
    ["a missing field", '"armwrightStudy": 1,', ""],
    ["an unknown field", '"armwrightStudy": 1,', '"armwrightStudy": 1, "more": 1,'],
    ["another version", '"armwrightStudy": 1,', '"armwrightStudy": 2,'],
    ["a word for a number", '"total": ', '"total": "14 in", "was": '],
    ["a number that is none", '"pastAtRide": false', '"pastAtRide": null'],
    ["an unknown gravity", '"gravity": "must"', '"gravity": "awful"'],
  ])("does not let %s pass", async (_, sound, spoilt) => {
    const { out } = await told(["study", CAR, "--json"], { files: { [CAR]: unprotected() } });
    expect(out).toContain(sound);
    const schema = await validator();
    expect(schema.safeParse(JSON.parse(out)).success).toBe(true);
    expect(schema.safeParse(JSON.parse(out.replace(sound, spoilt))).success).toBe(false);
  });

  it("says of every field what it means", async () => {
    const silent: string[] = [];
    const walk = (node: Node, path: string): void => {
      for (const [name, field] of Object.entries(node.properties ?? {})) {
        const isPlain = /^[xyz]$/.test(name) || path.endsWith("unitNames");
        if (!field.description && !isPlain) silent.push(`${path}.${name}`);
        walk(field, `${path}.${name}`);
      }
      if (node.items) walk(node.items, `${path}[]`);
      for (const form of node.anyOf ?? []) walk(form, path);
    };
    const schema = await published();
    walk(schema, "");
    expect(silent).toEqual([]);
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  });
});
