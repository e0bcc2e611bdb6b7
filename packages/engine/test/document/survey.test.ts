import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  carJsonSchema,
  readCarDocument,
  readCarValue,
  sayFault,
  setField,
  writeCarDocument,
} from "../../src/document/index.ts";
import { sayFinding, saySuspicion, study } from "../../src/index.ts";

const text = readFileSync(new URL("../../../../examples/brittlebush.car.json", import.meta.url), "utf8");
const INCH = 0.0254;

const readGood = (source: string) => {
  const reading = readCarDocument(source);
  if (!reading.ok) throw new Error(reading.faults.map(sayFault).join("\n"));
  return reading;
};

/** The reading that is an inch short, and the document with what the tape really shows. */
const WRONG = readGood(text).car.survey!.result.suspicions[0]!.reading;
const mended = (): string => {
  const { document } = readGood(text);
  return writeCarDocument(setField(document, ["survey", "readings", WRONG, "reads"], "18 3/4"));
};

describe("a car given by readings", () => {
  it("is written back byte for byte: computed coordinates are left out", () => {
    expect(writeCarDocument(readGood(text).document)).toBe(text);
    expect(text).toContain('"hubFace": { "surveyed": "hub face" }');
  });

  it("places its points, and names the slip", () => {
    const { car } = readGood(text);
    const { survey, result } = car.survey!;
    expect(result.suspicions).toHaveLength(1);
    expect(saySuspicion(survey, result.suspicions[0]!, "inch-pound")).toBe(
      "gearbox flange to left frame tube, front: reads 17 3/4, the others say 18 3/4",
    );
    expect(result.suspicions[0]!.causes).toContainEqual({ kind: "slip", by: -INCH });
    expect(car.wheel.hubFace.y / INCH).toBeCloseTo(35.6, 0);
    const said = study(car).findings.map((finding) => sayFinding(finding, "inch-pound").sentence);
    expect(said.some((sentence) => sentence.includes("the others say 18 3/4"))).toBe(true);
  });

  it("with the slip mended is a sound car: nothing must be mended, and the points hardly move", () => {
    const before = readGood(text).car;
    const { car } = readGood(mended());
    expect(car.survey!.result.suspicions).toEqual([]);
    expect(car.survey!.result.agreement!.isMisfit).toBe(false);
    expect(study(car).findings.filter(({ gravity }) => gravity === "must")).toEqual([]);
    for (const [i, { at }] of car.survey!.result.points.entries()) {
      const old = before.survey!.result.points[i]!.at;
      expect(Math.hypot(at.x - old.x, at.y - old.y, at.z - old.z)).toBeLessThan(INCH / 16);
    }
  });

  it("passes over coordinates typed beside the name: the survey decides", () => {
    const { document } = readGood(text);
    const dragged = readCarValue(setField(document, "wheel.hubFace.y", 30));
    expect(dragged.ok && dragged.car.wheel.hubFace).toEqual(readGood(text).car.wheel.hubFace);
  });

  it("mixes with typed points", () => {
    const { document } = readGood(text);
    const mixed = readCarValue(setField(document, "shock.upper", { x: -4, y: 17, z: 32 }));
    expect(mixed.ok && mixed.car.shock!.upper.point.x / INCH).toBeCloseTo(-4, 9);
  });
});

describe("faults", () => {
  const faultsOf = (path: string, value: Parameters<typeof setField>[2]): readonly string[] => {
    const reading = readCarValue(setField(JSON.parse(text), path, value));
    return reading.ok ? [] : reading.faults.map(sayFault);
  };

  it("a name that the survey does not have, and nothing else", () => {
    expect(faultsOf("wheel.hubFace", { surveyed: "hub fase" })).toEqual([
      'wheel.hubFace.surveyed: "hub fase" is not known here: did you mean hub face?',
    ]);
  });

  it("a reading to an unknown point: only the reading is told, not every point that waits for it", () => {
    expect(faultsOf("survey.readings[0].point", "left frame tube, frunt")).toEqual([
      'survey.readings[0].point: "left frame tube, frunt" is not known here: did you mean left frame tube, front?',
    ]);
  });

  it("a reading that is no length", () => {
    const faults = faultsOf("survey.readings[0].reads", "10 3/7");
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(/^survey\.readings\[0\]\.reads: "10 3\/7" is not a length/);
  });

  it("a tape from a point to itself, two points of one name", () => {
    expect(
      faultsOf("survey.points[1].name", "left frame tube, front").some((each) => each.includes("already the name")),
    ).toBe(true);
    const tape = { kind: "tape", from: "hub face", to: "hub face", reads: 3 };
    expect(faultsOf("survey.readings[0]", tape)[0]).toContain("same point");
  });

  it("no survey at all", () => {
    const { survey: _, ...bare } = JSON.parse(text);
    const reading = readCarValue(bare);
    expect(reading.ok).toBe(false);
  });
});

it("the JSON Schema takes a point by coordinates or by name", () => {
  const schema = JSON.parse(JSON.stringify(carJsonSchema()));
  const { hubFace } = schema.properties.wheel.properties;
  expect(Object.keys(hubFace.properties)).toEqual(["surveyed", "x", "y", "z", "plusMinus"]);
  expect(hubFace.required).toBeUndefined();
});
