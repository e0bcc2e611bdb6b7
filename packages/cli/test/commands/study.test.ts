import { study } from "@armwright/engine";
import { type FieldValue, readCarDocument, simplestDocument, writeCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { hArm, SAMPLES, textWith, unprotected } from "../documents.ts";
import { told } from "../fake-io.ts";

const CAR = "my.car.json";
const studyOf = (text: string, words: readonly string[] = [], columns = 96) =>
  told(["study", CAR, ...words], { files: { [CAR]: text }, columns });

/** What may stand in no output: no number, a thing without a name, a signed zero. */
const NONSENSE = /\b(NaN|Infinity|undefined|null)\b|\[object|(?<![\d/.])-0(\.0+)?(?![\d./])/;

describe.each(SAMPLES)("study of $name", ({ text }) => {
  it.each([76, 240])("reads well on %i columns", async (columns) => {
    const { code, out, err } = await studyOf(text, [], columns);
    expect(code).toBe(0);
    expect(err).toBe("");
    expect(out).not.toMatch(NONSENSE);
    const widest = Math.max(...out.split("\n").map((line) => [...line].length));
    expect(widest).toBeLessThanOrEqual(Math.min(100, columns));
    expect(out).not.toMatch(/ $/m);
    for (const title of ["WHAT STOPS THE", "FINDINGS", "THE CYCLE", "BOTH WHEELS", "ASSUMED"]) {
      expect(out).toMatch(new RegExp(`^${title}`, "m"));
    }
  });

  it("tells every limit of the engine's in order, and its sum adds up as shown", async () => {
    const reading = readCarDocument(text);
    if (!reading.ok) throw new Error("the sample does not read");
    const { travel } = study(reading.car);
    const { out } = await studyOf(text, [], 100);
    const heart = out.slice(out.indexOf("WHAT STOPS"), out.indexOf("\nFINDINGS")).replace(/\s+/g, " ");
    for (const { limits } of [travel.bump, travel.droop]) {
      for (const { label } of limits.slice(0, 6)) expect(heart).toContain(label.slice(0, 20));
    }
    const [, up, down, sum] =
      /total travel: ([\d /.]+) bump \+ ([\d /.]+) droop = ([\d /.]+) (?:in|mm) /.exec(heart) ?? [];
    expect(asNumber(up!) + asNumber(down!)).toBe(asNumber(sum!));
    const step = reading.car.units === "metric" ? 0.5 : 1 / 16;
    const unit = reading.car.units === "metric" ? 0.001 : 0.0254;
    expect(Math.abs(asNumber(up!) - travel.bump.stop.travel / unit)).toBeLessThanOrEqual(step / 2 + 1e-9);
  });
});

/** `12 3/16` as a number. */
const asNumber = (mark: string): number =>
  mark
    .split(" ")
    .map((part) => part.split("/").map(Number))
    .reduce((sum, [top = 0, bottom = 1]) => sum + top / bottom, 0);

describe("what stops the wheel", () => {
  it("shouts what no stop keeps the wheel from, and marks the stop", async () => {
    const { out } = await studyOf(unprotected());
    expect(out).toMatch(/^NOT PROTECTED: inner U-joint angle, .* up, .* too soon(, and \d more)?\.$/m);
    expect(out).toMatch(/^2 +inner U-joint angle +\+7 3\/16 +-[\d /]+ +\d\.\d deg too far +first, NOT PROTECTED$/m);
    expect(out).toMatch(/^\d +bump stop solid +\+7 [\d/]+ +YOUR STOP$/m);
    expect(out).toMatch(/^\d +shock shortest .* protected$/m);
    expect(out).toMatch(/^MUST {2}The inner U-joint reaches the end of its angle/m);
  });

  it("says that an aim is no stop", async () => {
    const { out } = await studyOf(writeCarDocument(simplestDocument("h-arm", "inch-pound")));
    expect(out).toContain("No part is entered that stops the wheel there.");
    expect(out).toContain("first, past your aim");
    expect(out).not.toContain("protected");
  });

  it("says that a chosen strap never works", async () => {
    const { out } = await studyOf(textWith(hArm(), { "strap.length": 60 }));
    expect(out).toContain("DROOP: the chosen strap NEVER STOPS THE WHEEL.");
    expect(out).toContain("NOT PROTECTED: shock longest");
  });

  it("tells both sides where the right one is given its own", async () => {
    const right = { upper: { x: -4, y: -17, z: 32 }, lower: { x: -4, y: -24, z: 12.5, on: "lower-arm" } };
    const { out } = await studyOf(textWith(hArm(), { "right.shock": { ...right, shortest: 15.25, longest: 24 } }));
    expect(out).toContain("\nWHAT STOPS THE LEFT WHEEL\n");
    expect(out).toContain("\nWHAT STOPS THE RIGHT WHEEL\n");
    expect(out.slice(out.indexOf("FINDINGS, RIGHT"))).toMatch(/^MUST {2}The shock is at its longest/m);
  });
});

/** Designs that no one would build, but that someone may well type: a study has to tell, not to fall over. */
const POOR: Readonly<Record<string, Readonly<Record<string, FieldValue>>>> = {
  "a strap that is taut at ride": { "strap.length": 10 },
  "a bump stop that is solid at ride": { "bumpStop.reach": 20, "bumpStop.solid": 19 },
  both: { "strap.length": 10, "bumpStop.reach": 20, "bumpStop.solid": 19 },
  "a shock that is too short at ride": { "shock.longest": 18 },
  "a keep-out in the tyre": {
    "keepOuts[0]": {
      shape: "tube",
      name: "post",
      from: { x: 0, y: 36, z: 0 },
      to: { x: 0, y: 36, z: 30 },
      diameter: 2,
    },
  },
  "a joint that is bent too far at ride": { "driveshaft.output.point.z": 30 },
  "a spline that is out at ride": { "driveshaft.slip.engagement": 1 },
  "travels beyond the linkage": { stops: { bump: 40, droop: 40 }, strap: undefined, bumpStop: undefined },
};

describe.each(Object.entries(POOR))("%s", (_, changes) => {
  it.each([[[]], [["--json"]], [["--csv"]]])("is told, %j", async (words) => {
    const { code, out, err } = await studyOf(textWith(hArm(), changes), words);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    if (words.length === 0) {
      expect(out).not.toMatch(NONSENSE);
      expect(out).toMatch(/NOT PROTECTED|PAST AT RIDE|ends at the \w+( \w+)?, at ride height/);
    } else {
      expect(out).not.toMatch(/NaN|Infinity|undefined/);
    }
  });
});

describe("the travels of the cycle", () => {
  it("are every inch between the stops where nothing is asked", async () => {
    const { out } = await studyOf(unprotected(), ["--csv", "--si"]);
    const travels = out
      .split("\r\n")
      .slice(1, -1)
      .map((line) => Number(line.split(",")[0]) / 0.0254);
    const inner = travels.slice(1, -1);
    expect(inner).toEqual(inner.map((travel) => expect.closeTo(Math.round(travel), 9)));
    expect(travels).toEqual([...travels].sort((a, b) => a - b));
    expect(inner).toContain(0);
  });

  it("are those asked for, and the unreachable is told", async () => {
    const { code, out } = await studyOf(writeCarDocument(hArm()), ["--at", "3, 0, -4 1/2, 90"]);
    const cycle = out.slice(out.indexOf("THE CYCLE"), out.indexOf("CLEARANCES"));
    expect(code).toBe(0);
    expect(cycle).toMatch(/^\+3 .*\n {0,1}0 .* ride\n-4 1\/2 /m);
    expect(cycle).toContain("The linkage does not reach +90.");
  });

  it("takes a first travel in droop", async () => {
    const { out } = await studyOf(writeCarDocument(hArm()), ["--csv", "--at", "-4"]);
    expect(out.split("\r\n")[1]).toMatch(/^-4,/);
  });

  it("are N from stop to stop", async () => {
    const { out } = await studyOf(writeCarDocument(hArm()), ["--csv", "--stations", "5"]);
    expect(out.split("\r\n")).toHaveLength(1 + 5 + 1);
  });

  it.each<readonly [readonly string[], RegExp]>([
    [["--at", "3 1/7"], /^--at: "3 1\/7" is not a travel: write 3 1\/8 or 3\.1/],
    [["--at", "3,,4"], /^--at: "" is not a travel: write "3, 0, -4 1\/2"/],
    [["--stations", "1"], /^--stations: "1" is not a whole number from 2 to 1001\.$/],
    [["--stations", "1e3"], /^--stations/],
    [["--at", "3", "--stations", "4"], /keep one\.$/],
  ])("refuses %j", async (words, sentence) => {
    const { code, out, err } = await studyOf(writeCarDocument(hArm()), words);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err.trimEnd()).toMatch(sentence);
  });
});

describe("where it goes", () => {
  it("writes to a file, plainly also from a colour terminal", async () => {
    const world = { files: { [CAR]: unprotected() }, colour: true };
    const { out, err, files } = await told(["study", CAR, "--out", "study.txt"], world);
    expect(out).toBe("");
    expect(err).toBe("Wrote study.txt.\n");
    expect(files.get("study.txt")).toBe((await studyOf(unprotected())).out);
  });

  it("never writes over the car document", async () => {
    const { code, err, files } = await studyOf(unprotected(), ["--json", "--out", CAR]);
    expect(code).toBe(2);
    expect(err).toBe(`${CAR} is the car document itself: name another file for --out.\n`);
    expect(files.get(CAR)).toBe(unprotected());
  });

  it("emphasises on a colour terminal without changing a word", async () => {
    const { out } = await told(["study", CAR], { files: { [CAR]: unprotected() }, colour: true });
    const escapes = out.split("\u001b[").slice(1);
    expect(escapes.length).toBeGreaterThan(10);
    for (const code of escapes) expect(code).toMatch(/^(0|1|31)m/);
    const withoutColour = escapes.reduce(
      (text, code) => text + code.slice(code.indexOf("m") + 1),
      out.split("\u001b[")[0]!,
    );
    expect(withoutColour).toBe((await studyOf(unprotected())).out);
  });

  it("lets no control character of a document through", async () => {
    const { out } = await studyOf(textWith(hArm(), { name: "red \u001b[31m car\u0007", datum: "a\nb" }));
    expect(out).toMatch(/^red \[31m car\n/);
    expect([...out].filter((letter) => letter < " " && letter !== "\n")).toEqual([]);
  });

  it("computes nothing from a faulty document", async () => {
    const { code, out, err, files } = await studyOf(textWith(hArm(), { "shock.longest": "12 3/17" }), ["--out", "x"]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/^my\.car\.json:\d+:\d+: shock\.longest: "12 3\/17" is not a length: write /);
    expect(files.has("x")).toBe(false);
  });
});
