import { describe, expect, test } from "vitest";
import { buyList } from "../../src/buy/buy-list.ts";
import { study } from "../../src/study/study.ts";
import { carOfDocument, exampleCar, exampleDocument } from "../example-documents.ts";

const lineOf = (car: Parameters<typeof study>[0], part: string) =>
  buyList(study(car)).find((line) => line.part === part)!;

describe("what is safe to buy", () => {
  test("wheels come first, springs last", () => {
    const parts = buyList(study(exampleCar("saltbush"))).map(({ part }) => part);
    expect(parts[0]).toBe("tyre and wheel");
    expect(parts.at(-1)).toBe("springs");
    expect(parts.indexOf("half shaft")).toBeGreaterThan(parts.indexOf("shock"));
  });

  test("a finding on the spline holds the half shaft back, and only what depends on it", () => {
    const car = exampleCar("saltbush");
    const shaft = lineOf(car, "half shaft");
    expect(shaft.isSettled).toBe(false);
    expect(shaft.findings.map(({ code }) => code)).toContain("limit-close");
    expect(lineOf(car, "strap").findings.map(({ code }) => code)).not.toContain("limit-close");
  });

  test("springs wait for the scales", () => {
    const document = exampleDocument("saltbush");
    const { weights: _, ...without } = document;
    const springs = lineOf(carOfDocument(without), "springs");
    expect(springs.missing).toEqual(["weights.corner", "weights.unsprung"]);
    expect(springs.isSettled).toBe(false);
  });

  test("a tyre whose shoulder was assumed is not settled; named where", () => {
    const tyre = lineOf(exampleCar("catclaw"), "tyre and wheel");
    expect(tyre.assumed).toEqual(["wheel.shoulderRadius"]);
  });
});
