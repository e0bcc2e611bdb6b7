import { compareStudies } from "@armwright/engine";
import { startingDocument, writeCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import type { Io } from "../../src/io.ts";
import { compareReport } from "../../src/report/compare.ts";
import { fieldDifferences } from "../../src/report/field-differences.ts";
import { pageFor } from "../../src/text/page.ts";
import { widthOf } from "../../src/text/width.ts";
import { carOf, hArm, movedOf, SAMPLES, textWith, unprotected } from "../documents.ts";
import { told } from "../fake-io.ts";

const compare = (a: string, b: string) =>
  told(["compare", "a.json", "b.json"], { files: { "a.json": a, "b.json": b } });
const part = (out: string, title: string) => out.slice(out.indexOf(`\n${title}`)).split("\n\n")[0]!;

it("finds nothing between a car and itself", async () => {
  const { code, out } = await compare(unprotected(), unprotected());
  expect(code).toBe(0);
  expect(part(out, "WHAT CAME INTO TROUBLE")).toContain("Nothing.");
  expect(part(out, "WHAT DIFFERS")).toContain("Nothing.");
  expect(part(out, "WHAT THE WHEEL DOES")).toContain("Nothing that could be seen.");
  expect(part(out, "WHAT STOPS")).toContain("still NOT PROTECTED");
});

it("tells the fields that differ and what came into trouble", async () => {
  const { out } = await compare(writeCarDocument(hArm()), unprotected());
  expect(part(out, "WHAT DIFFERS")).toMatch(/\ndriveshaft\.inner\.angleLimit {2}28 {2}20\n.*\nshock\.longest +25 +24$/);
  expect(part(out, "WHAT CAME INTO TROUBLE")).toMatch(/^new {3}MUST {2}The shock is at its longest/m);
  expect(part(out, "WHAT STOPS")).toMatch(/^bump +inner U-joint angle .* newly NOT PROTECTED$/m);
  const back = await compare(unprotected(), writeCarDocument(hArm()));
  expect(part(back.out, "WHAT CAME INTO TROUBLE")).toMatch(/^gone {2}MUST {2}The shock is at its longest/m);
  expect(part(back.out, "WHAT STOPS")).toMatch(/^bump +inner U-joint angle .* now protected$/m);
});

it("tells where a moved mount changes the results", async () => {
  const { out } = await compare(writeCarDocument(hArm()), textWith(hArm(), { "shock.lower.y": 26 }));
  expect(part(out, "WHAT THE WHEEL DOES")).toMatch(/^motion ratio \(shock per wheel\) /m);
  expect(part(out, "WHAT STOPS")).toMatch(/shock shortest/);
});

it("weighs two kinds by what has to be made", async () => {
  const { out } = await compare(writeCarDocument(hArm()), writeCarDocument(startingDocument("five-link", "metric")));
  expect(out).toContain("Results are in A's units; fields are as each document has them.");
  const made = out.slice(out.indexOf("WHAT HAS TO BE MADE"));
  expect(made).toMatch(/^links +1 +5$/m);
  expect(made).toMatch(/^rod ends +6 +10$/m);
  expect(made).toContain("B wants in a jig (common practice):\n  - spindle: five tabs");
});

describe("any two cars", () => {
  const side = (text: string) => ({ name: "x.json", document: JSON.parse(text), study: movedOf(carOf(text)).study });
  const compared = (a: string, b: string, width: number): string => {
    const sides = { a: side(a), b: side(b) };
    const page = pageFor({ columns: width, colour: { out: false, err: false } } as Io, sides.a.study.car.units);
    return compareReport({ ...sides, comparison: compareStudies(sides.a.study, sides.b.study) }, page);
  };

  it.each(SAMPLES)("the first against $name: within the page, no nonsense, no broken word", ({ text }) => {
    for (const width of [76, 100]) {
      const out = compared(SAMPLES[0]!.text, text, width);
      expect(out).not.toMatch(/NaN|Infinity|undefined|\[object|(?<![\d/.])-0(\.0+)?(?![\d./])/);
      expect(Math.max(...out.split("\n").map(widthOf))).toBeLessThanOrEqual(width);
      const shown = fieldDifferences(JSON.parse(SAMPLES[0]!.text), JSON.parse(text)).slice(0, 40);
      for (const { path } of shown) for (const word of path.split(" ")) expect(out).toContain(word);
    }
  });

  it("labels a limit by each car where their names differ", () => {
    const [a, b] = [hArm(), { ...hArm() }].map((document, i) =>
      textWith(document, { "driveshaft.inner.kind": i === 0 ? "u-joint" : "constant-velocity" }),
    ) as [string, string];
    expect(compared(a, textWith(JSON.parse(b), { "driveshaft.inner.angleLimit": 24 }), 100)).toMatch(
      /^bump +A: inner U-joint angle; B: inner CV joint angle /m,
    );
  });

  it("shortens long texts, and says of a section only that it is given", () => {
    const long = "the chalk line that was drawn across the slab on the day when the car came in, plumbed down";
    const { shock: _, ...without } = hArm();
    const out = compared(writeCarDocument(without), textWith(hArm(), { datum: long }), 100);
    expect(out).toMatch(/^datum +middle of the .* the chalk line /m);
    expect(out.match(/…/g)).toHaveLength(2);
    expect(out).not.toContain("came in");
    expect(out).toMatch(/^shock +- +given$/m);
    expect(out).not.toMatch(/[{}]/);
  });

  it("writes the percents of a row to as many decimals", () => {
    const out = compared(SAMPLES.at(-1)!.text, SAMPLES.find(({ name }) => name === "catclaw.car.json")!.text, 100);
    const row = /^anti-squat +% +(.*)$/m.exec(out)?.[1] ?? "";
    // The travel is a tape mark and has none.
    expect(row.split(/ +/).filter((cell) => /^[+-]?\d+\.\d$/.test(cell)).length).toBeGreaterThanOrEqual(5);
  });
});

it("tells the faults of both documents", async () => {
  const { code, err } = await compare("{}", "[]");
  expect(code).toBe(2);
  expect(err).toMatch(/^a\.json:1:1: .*\n.*\nb\.json:1:1: /);
});
