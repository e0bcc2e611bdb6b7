import { describe, expect, it } from "vitest";
import { readCarValue } from "../../src/document/index.ts";
import { study } from "../../src/study/study.ts";
import { exampleDocument } from "../example-documents.ts";

const STOPS = ["strap-stretches-past", "strap-across", "bump-stop-off-square", "bump-stop-overrun"];

describe("judged while the hand moves", () => {
  it("leaves out only what strap and bump stop have to take", () => {
    const reading = readCarValue(exampleDocument("saltbush"));
    if (!reading.ok) throw new Error("the demo car does not read");
    const codes = (beyondStops?: number): string[] =>
      study(reading.car, beyondStops === undefined ? {} : { beyondStops }).findings.map(({ code }) => code);
    const resting = codes();
    expect(resting).toContain("strap-stretches-past");
    expect(codes(0.05)).toEqual(resting.filter((code) => !STOPS.includes(code)));
  });
});
