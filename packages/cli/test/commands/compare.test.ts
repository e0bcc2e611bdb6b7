import { startingDocument, writeCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { hArm, SAMPLES, textWith, unprotected } from "../documents.ts";
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
  it.each(SAMPLES)("the first against $name: within the page, no nonsense", async ({ text }) => {
    const { code, out, err } = await compare(SAMPLES[0]!.text, text);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).not.toMatch(/NaN|Infinity|undefined|\[object|(?<![\d/.])-0(\.0+)?(?![\d./])/);
    expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(100);
  });
});

it("tells the faults of both documents", async () => {
  const { code, err } = await compare("{}", "[]");
  expect(code).toBe(2);
  expect(err).toMatch(/^a\.json:1:1: .*\n.*\nb\.json:1:1: /);
});
