import { describe, expect, it, test } from "vitest";
import { readCarValue, sayFault, simplestDocument, startingDocument } from "../../src/document/index.ts";
import { parseLength, sayFinding, study, turnEffects } from "../../src/index.ts";
import { KINDS, SYSTEMS } from "./typed-documents.ts";

const CASES = KINDS.flatMap((kind) => SYSTEMS.map((system) => ({ kind, system })));

describe.each(CASES)("the starting $kind car, $system", ({ kind, system }) => {
  const document = startingDocument(kind, system);
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(reading.faults.map(sayFault).join("\n"));
  const made = study(reading.car);

  it("has nothing that must be changed and nothing to mind", () => {
    expect(reading.warnings).toEqual([]);
    const grave = made.findings.filter(({ gravity }) => gravity !== "note");
    expect(grave.map((finding) => sayFinding(finding, system).sentence)).toEqual([]);
  });

  it("is stopped by its own parts, with every hard limit beyond them", () => {
    const { bump, droop } = made.travel;
    expect([bump.stop.by, droop.stop.by]).toEqual(["bump-stop", "strap"]);
    for (const { limits } of [bump, droop]) {
      for (const { nature, isProtected, label } of limits) expect(nature === "made" || isProtected, label).toBe(true);
    }
  });

  it("meets each of its targets", () => {
    const { bump, droop, clearanceAtFullBump, trackWidth, wheelbase } = reading.car.targets;
    const { travel, corner } = made;
    expect(travel.bump.stop.travel).toBeGreaterThanOrEqual(bump!);
    expect(-travel.droop.stop.travel).toBeGreaterThanOrEqual(droop!);
    const belly = travel.bump.limits.find(({ code }) => code === "underbody");
    expect(belly!.spare).toBeGreaterThanOrEqual(clearanceAtFullBump!);
    // A sixteenth: what a tape tells.
    expect(Math.abs(2 * corner.attitude.designContact.y - trackWidth!)).toBeLessThan(0.0254 / 16);
    expect(reading.car.chassis.wheelbase).toBe(wheelbase);
  });

  it("has thread, hand and misalignment limit on every rod end, so that turns can be counted", () => {
    for (const { pivot, pitch, misalignmentLimit } of reading.car.rodEnds) {
      expect(pitch, pivot).toBeGreaterThan(0);
      expect(misalignmentLimit, pivot).toBeGreaterThan(0);
      expect(document.rodEnds?.[pivot]?.hand, pivot).toMatch(/^(left|right)$/);
    }
    const effects = turnEffects(reading.car);
    expect(effects.length).toBeGreaterThan(0);
    for (const { perTurn, advance, adjuster } of effects) {
      // A turnbuckle of opposite hands moves by both pitches; all threads of a starting car are alike.
      const ends = adjuster.action === "turnbuckle" ? 2 : 1;
      expect(advance, adjuster.id).toBeCloseTo(ends * reading.car.rodEnds[0]!.pitch!, 12);
      expect(perTurn, adjuster.id).not.toBeNull();
    }
  });

  it("has only lengths that stand on a tape", () => {
    const off: string[] = [];
    const walk = (value: unknown, path: string): void => {
      if (typeof value === "object" && value !== null) {
        for (const [name, each] of Object.entries(value)) walk(each, `${path}.${name}`);
        return;
      }
      if (typeof value !== "number" && !/^-?\d/.test(String(value))) return;
      if (/thread|camber|angleLimit|misalignmentLimit|weights|armwright/.test(path)) return;
      const length = parseLength(value as number | string, system);
      const marks = length.ok ? length.metres / (system === "metric" ? 0.001 : 0.0254 / 16) : Number.NaN;
      if (!(Math.abs(marks - Math.round(marks)) < 1e-6)) off.push(`${path}: ${String(value)}`);
    };
    walk(document, "");
    expect(off).toEqual([]);
  });
});

test.each(CASES)("the simplest $kind car, $system, reads and has nothing that must be changed", ({ kind, system }) => {
  const reading = readCarValue(simplestDocument(kind, system));
  if (!reading.ok) throw new Error(reading.faults.map(sayFault).join("\n"));
  expect(study(reading.car).findings.filter(({ gravity }) => gravity === "must")).toEqual([]);
});
