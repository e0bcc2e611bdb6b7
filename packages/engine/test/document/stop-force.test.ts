import { describe, expect, it } from "vitest";
import { readCarValue } from "../../src/document/index.ts";
import { carOfDocument, exampleDocument } from "../example-documents.ts";

const withStop = (more: object) => {
  const document = exampleDocument("saltbush");
  return { ...document, bumpStop: { ...document.bumpStop!, ...more } };
};
const faultsOf = (document: unknown) => {
  const reading = readCarValue(document);
  return reading.ok ? [] : reading.faults.map(({ code, path }) => [code, path].flat().join(" "));
};

describe("force of stop and strap in the document", () => {
  it("assumes the usual pad and stretch, and says so", () => {
    const { assumed, bumpStop, strap } = carOfDocument(exampleDocument("saltbush"));
    const paths = assumed.map(({ path }) => path);
    expect(paths).toEqual(
      expect.arrayContaining(["bumpStop.rubber.diameter", "bumpStop.rubber.hardness", "strap.stretch"]),
    );
    expect(bumpStop?.law?.kind).toBe("rubber");
    expect(strap?.stretch).toHaveLength(1);
  });

  it("reads a gas stop, a measured one and a strap's readings in its units, in whatever order they stand", () => {
    const gas = carOfDocument(withStop({ gas: { pressure: 100, rodDiameter: 1 } }));
    expect(gas.bumpStop?.law).toMatchObject({ kind: "gas", pressure: expect.closeTo(100 * 6894.757293168361, 3) });
    expect(gas.assumed.map(({ path }) => path)).toContain("bumpStop.gas.volume");
    const measured = [
      { squeeze: "1 1/2", force: 2000 },
      { squeeze: 1, force: "500 lb" },
    ];
    expect(carOfDocument(withStop({ measured })).bumpStop?.law).toMatchObject({
      kind: "table",
      points: [{ at: 0.0254 }, { at: expect.closeTo(0.0381, 12) }],
    });
    const document = exampleDocument("saltbush");
    const stretch = [{ percent: 8, force: 2500 }];
    const car = carOfDocument({ ...document, strap: { ...document.strap!, stretch, holeSpacing: "3/4" } });
    expect(car.strap?.stretch?.[0]?.at).toBeCloseTo(0.08, 12);
    expect(car.strap?.holeSpacing).toBeCloseTo(0.01905, 12);
  });

  it("refuses two laws at once and a rod that leaves its gas no room", () => {
    expect(faultsOf(withStop({ gas: {}, rubber: {} })).join()).toContain("both-given");
    expect(faultsOf(withStop({ gas: { volume: 1, rodDiameter: 1 } })).join()).toContain("gas-too-small");
    expect(faultsOf(withStop({ rubber: { hardness: 99 } }))).toHaveLength(1);
  });
});
