import { type Car, turnEffects, turnsFor } from "@armwright/engine";
import { startingDocument, writeCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { carOf, hArm, SAMPLES, textWith, threaded } from "../documents.ts";
import { told } from "../fake-io.ts";

const CAR = "my.car.json";
const turns = (text: string, ...words: string[]) => told(["turns", CAR, ...words], { files: { [CAR]: text } });
const DEGREE = Math.PI / 180;

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
  expect(out).toMatch(/^upper link +1\/8 \(0\.125\) +\+0\.\d\d /m);
  expect(out).toMatch(/^lower arm, outer front end +1\/16 \(0\.063\) /m);
  expect(out).toContain("** camber held by so many turns, along with each, of: upper link.");
});

it("heads the effects as slopes to begin with, and says why they have hundredths", async () => {
  const { out } = await turns(threaded());
  expect(out).toMatch(/^longer, per turn, .*\nto begin with /m);
  expect(out.replace(/\s+/g, " ")).toContain("To 0.01 deg, because half a turn often moves less than 0.1.");
  const camber = turnEffects(carOf(threaded()))[0]?.perTurn?.camber ?? Number.NaN;
  expect(out).toContain(` +${(camber / DEGREE).toFixed(2)} `);
});

it("says that turns cannot be counted where no thread is given", async () => {
  const { out } = await turns(textWith(hArm(), { rodEnds: undefined }), "--camber", "-1");
  expect(out).toContain("* its thread is not given");
  expect(out).toContain("no thread given");
});

it.each([
  ["--toe-at-tyre", "tyre", (car: Car) => 2 * car.wheel.freeRadius],
  ["--toe-at-rim", "rim", (car: Car) => car.wheel.rimDiameter],
] as const)("tells the engine's turns to a wanted camber and %s", async (option, where, across) => {
  const car = carOf(threaded());
  const toe = Math.asin(0.0254 / 16 / across(car));
  const result = turnsFor(car, { camber: -1 * DEGREE, toe });
  const { out } = await turns(threaded(), "--camber", "-1", option, "1/16");
  const text = out.replace(/\s+/g, " ");
  expect(text).toContain(`Wanted: camber -1 deg and toe 1/16 at the ${where}.`);
  expect(text).toContain(`Exactly so: camber -1.0 deg, toe +${(toe / DEGREE).toFixed(1)} deg: `);
  expect(text).toMatch(new RegExp(`Exactly so: [^.]*\\.0 deg.*\\+1/16 in \\(\\+0\\.06\\) at the ${where}`));
  for (const { label, turns: count } of result.turns) {
    const sign = count! > 0 ? "+" : "-";
    expect(out).toContain(label);
    expect(out).toContain(` ${sign}${Math.abs(count!).toFixed(2)} `);
  }
});

it("tells toe at the rim and at the tyre apart", async () => {
  const { out } = await turns(textWith(hArm(), { "wheel.toe": 0.5 }));
  // sin 0.5 deg is 0.008727: on a 15 in rim 0.131 in, on a 33 in tyre 0.288 in.
  expect(out.replace(/\s+/g, " ")).toContain("toe +0.5 deg: +1/8 in (+0.13) at the rim, +9/32 in (+0.29) at the tyre.");
});

it("holds camber", async () => {
  const { out } = await turns(threaded(), "--toe", "0.2", "--hold-camber");
  expect(out).toContain("Wanted: camber as it is and toe 0.2 deg.");
  expect(out).toContain("Exactly so: camber -0.5 deg, toe +0.2 deg: ");
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
