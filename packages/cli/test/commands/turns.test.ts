import { turnEffects, turnsFor } from "@armwright/engine";
import { readCarDocument, startingDocument, writeCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { hArm, SAMPLES, textWith, threaded } from "../documents.ts";
import { told } from "../fake-io.ts";

const CAR = "my.car.json";
const turns = (text: string, ...words: string[]) => told(["turns", CAR, ...words], { files: { [CAR]: text } });
const DEGREE = Math.PI / 180;

function carOf(text: string) {
  const reading = readCarDocument(text);
  if (!reading.ok) throw new Error("the sample does not read");
  return reading.car;
}

describe.each(SAMPLES)("turns of $name", ({ text }) => {
  it("tells every adjuster, within the page", async () => {
    const { code, out, err } = await turns(text);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).not.toMatch(/NaN|undefined|(?<![\d/.])-0(\.0+)?(?![\d./])/);
    expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(96);
    for (const { adjuster } of turnEffects(carOf(text))) expect(out).toContain(adjuster.label);
  });
});

it("counts a turnbuckle with opposite hands as two pitches a turn", async () => {
  const { out } = await turns(threaded());
  expect(out).toMatch(/^upper link +0\.125 +\+0\.\d\d /m);
  expect(out).toMatch(/^lower arm, outer front end +0\.063 /m);
  expect(out).toContain("** camber is held by turning along: upper link.");
});

it("says that turns cannot be counted where no thread is given", async () => {
  const { out } = await turns(textWith(hArm(), { rodEnds: undefined }), "--camber", "-1");
  expect(out).toContain("* its thread is not given");
  expect(out).toContain("no thread given");
});

it("tells the engine's turns to a wanted camber and toe at the rim", async () => {
  const car = carOf(threaded());
  const toe = Math.asin(0.0254 / 16 / (2 * car.wheel.freeRadius));
  const result = turnsFor(car, { camber: -1 * DEGREE, toe });
  const { out } = await turns(threaded(), "--camber", "-1", "--toe-at-tyre", "1/16");
  expect(out).toContain("Exactly so: camber -1.00 deg, toe +0.11 deg (+1/16 in across the tyre, + is in).");
  for (const { label, turns: count } of result.turns) {
    const sign = count! > 0 ? "+" : "-";
    expect(out).toContain(label);
    expect(out).toContain(` ${sign}${Math.abs(count!).toFixed(2)} `);
  }
});

it("holds camber", async () => {
  const { out } = await turns(threaded(), "--toe", "0.2", "--hold-camber");
  expect(out).toContain("Exactly so: camber -0.50 deg, toe +0.20 deg");
});

it("says so where a setting is out of reach", async () => {
  const { out } = await turns(writeCarDocument(startingDocument("trailing-arm", "metric")), "--camber", "19");
  expect(out).toMatch(/NOT REACHED|Nothing on this linkage sets/);
});

it.each<readonly [readonly string[], RegExp]>([
  [["--camber", "much"], /^--camber: "much" is not an angle/],
  [["--camber", "45"], /beyond 20/],
  [["--toe-at-rim", "1/17"], /^--toe-at-rim: "1\/17" is not a length/],
  [["--toe-at-rim", "40"], /beyond 20 degrees/],
  [["--toe", "1", "--toe-at-rim", "1"], /keep one\.$/],
  [["--camber", "1", "--hold-camber"], /keep one\.$/],
  [["--hold-camber"], /goes with --toe, --toe-at-rim or --toe-at-tyre\.$/],
])("refuses %j", async (words, sentence) => {
  const { code, out, err } = await turns(threaded(), ...words);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err.trimEnd()).toMatch(sentence);
});
