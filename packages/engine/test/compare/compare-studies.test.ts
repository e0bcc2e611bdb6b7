import { describe, expect, it } from "vitest";
import { compareStudies } from "../../src/compare/compare-studies.ts";
import { type CarDocument, readCarValue, setField, startingDocument } from "../../src/document/index.ts";
import { study } from "../../src/study/study.ts";

const studyOf = (document: CarDocument) => {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error("does not read");
  return study(reading.car);
};

describe("comparing two studies", () => {
  const plain = startingDocument("h-arm", "inch-pound");

  it("of one car finds no difference", () => {
    const { limits, quantities, findings, stops } = compareStudies(studyOf(plain), studyOf(plain));
    expect(limits.length).toBeGreaterThan(10);
    for (const { a, b } of [...limits, ...quantities, ...stops]) expect(a).toBe(b);
    expect(findings).toEqual({ appeared: [], gone: [] });
  });

  it("tells what a shorter strap does: the stop comes sooner, the limits stay", () => {
    const shorter = setField(plain, "strap.length", Number(plain.strap!.length) - 1);
    const { stops, limits } = compareStudies(studyOf(plain), studyOf(shorter));
    const droop = stops.find(({ direction }) => direction === "droop")!;
    expect(droop.b).toBeGreaterThan(droop.a);
    for (const limit of limits.filter(({ id }) => id !== "strap")) expect(limit.a).toBe(limit.b);
  });

  it("tells what came newly into trouble, and what went", () => {
    const tight = setField(plain, "driveshaft.outer.angleLimit", 12);
    const there = compareStudies(studyOf(plain), studyOf(tight)).findings;
    expect(there.appeared.map(({ code, place }) => [code, place])).toContainEqual([
      "limit-before-stop",
      "driveshaft.outer.angleLimit",
    ]);
    const back = compareStudies(studyOf(tight), studyOf(plain)).findings;
    expect(back.gone).toEqual(there.appeared);
  });

  it("counts what has to be made for either kind", () => {
    const { parts } = compareStudies(studyOf(plain), studyOf(startingDocument("five-link", "inch-pound")));
    expect(parts.a).toMatchObject({ arms: 1, links: 1, rodEnds: 6, uJoints: 2, chassisPivots: 3 });
    expect(parts.b).toMatchObject({ arms: 0, links: 5, rodEnds: 10, uJoints: 0, chassisPivots: 5 });
    expect(parts.b.jigged.length).toBeGreaterThan(0);
  });
});
