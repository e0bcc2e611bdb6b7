import { type FieldValue, simplestDocument, writeCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import type { Io } from "../../src/io.ts";
import { assumedLines } from "../../src/report/assumed.ts";
import { studyReport } from "../../src/report/study-report.ts";
import { pageFor } from "../../src/text/page.ts";
import { widthOf } from "../../src/text/width.ts";
import { carOf, hArm, movedOf, SAMPLES, textWith, unprotected } from "../documents.ts";
import { told } from "../fake-io.ts";

const CAR = "my.car.json";
const studyOf = (text: string, words: readonly string[] = [], columns = 96) =>
  told(["study", CAR, ...words], { files: { [CAR]: text }, columns });

/** What may stand in no output: no number, a thing without a name, a signed zero. */
const NONSENSE = /\b(NaN|Infinity|undefined|null)\b|\[object|(?<![\d/.])-0(\.0+)?(?![\d./])/;

/** What a page must not show, whatever the car. */
function expectReadable(out: string, widest: number): void {
  expect(out).not.toMatch(NONSENSE);
  expect(Math.max(...out.split("\n").map(widthOf))).toBeLessThanOrEqual(widest);
  expect(out).not.toMatch(/ $/m);
  for (const title of ["WHAT STOPS THE", "FINDINGS", "THE CYCLE", "WHAT THE TAPE READS", "BOTH WHEELS", "ASSUMED"]) {
    expect(out).toMatch(new RegExp(`^${title}`, "m"));
  }
}

describe.each(SAMPLES)("study of $name", ({ text }) => {
  it("reads well on the narrowest page", () => {
    const car = carOf(text);
    const { study, cycle } = movedOf(car);
    const io = { columns: 40, colour: { out: false, err: false } } as Io;
    expectReadable(studyReport(study, cycle, null, pageFor(io, car.units)), 76);
  });

  it("reads well on a wide page, tells every limit of the engine's in order, and its sum adds up as shown", async () => {
    const car = carOf(text);
    const { travel } = movedOf(car).study;
    const { code, out, err } = await studyOf(text, [], 240);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expectReadable(out, 100);
    // The left wheel, where the right one is its own.
    const heart = out.split(/^(?=WHAT STOPS|FINDINGS)/m)[1] ?? "";
    const [ofBump = "", ofDroop = ""] = heart.split(/^(?=DROOP)/m);
    for (const [part, { limits }] of [
      [ofBump, travel.bump],
      [ofDroop, travel.droop],
    ] as const) {
      const rows = [...part.matchAll(/^ ?(\d+) {2}(\S+(?: \S+)*)/gm)];
      expect(rows.length).toBeGreaterThanOrEqual(Math.min(6, limits.length));
      // A long name may go on in the next line.
      for (const [, order, name] of rows) expect(limits[Number(order) - 1]!.label.startsWith(name!), name).toBe(true);
    }
    const [, up, down, sum] =
      /total travel: ([\d /.]+) bump \+ ([\d /.]+) droop = ([\d /.]+) (?:in|mm)$/m.exec(heart) ?? [];
    expect(asNumber(up!) + asNumber(down!)).toBe(asNumber(sum!));
    const step = car.units === "metric" ? 0.5 : 1 / 16;
    const unit = car.units === "metric" ? 0.001 : 0.0254;
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

  it("says in each direction what to change first, or that nothing stops the wheel before the stop", async () => {
    const adviceIn = async (text: string) => {
      const lines = (await studyOf(text, [], 100)).out.replace(/\n {14}(?=\S)/g, " ").split("\n");
      return lines.filter((line) => line.startsWith("Change first: ")).map((line) => line.slice(14));
    };
    const nothing = "nothing stops the wheel before your stop.";
    expect(await adviceIn(writeCarDocument(hArm()))).toEqual([nothing, nothing]);
    const [bump, droop] = await adviceIn(unprotected());
    expect(bump).toMatch(/^The inner U-joint reaches the end of its angle .* into bump, .* Stop the wheel sooner,/);
    expect(droop).toMatch(/^The shock is at its longest .* into droop, .* Shorten the strap,/);
    const tight = await adviceIn(textWith(hArm(), { "strap.length": 10, "bumpStop.reach": 20, "bumpStop.solid": 19 }));
    expect(tight[0]).toMatch(/^The bump stop would be squeezed/);
    expect(tight[1]).toMatch(/^The strap is .* too short/);
    const aim = await adviceIn(writeCarDocument(simplestDocument("h-arm", "inch-pound")));
    expect(aim[0]).toMatch(/^No bump stop is entered/);
    expect(aim[1]).toMatch(/^No strap is entered/);
  });

  it("leaves empty how far a stop that is meant to be met on the way comes before the end", async () => {
    expect((await studyOf(writeCarDocument(hArm()), [], 100)).out).toMatch(/^1 {2}bump stop touched +\+4 9\/16$/m);
  });
});

describe("what the tape reads", () => {
  it("gives back strap and shock lengths, hub heights and bump stop of the document at its stops", async () => {
    const { out } = await studyOf(writeCarDocument(hArm()), [], 100);
    const row = (name: string) => {
      const line = out.split("\n").find((each) => each.startsWith(name)) ?? "";
      return [...line.slice(name.length).matchAll(/\(([\d.]+)\)/g)].map(([, decimal]) => Number(decimal));
    };
    const { study } = movedOf(carOf(writeCarDocument(hArm())));
    const { bump, droop } = study.travel;
    // The strap is taut at full droop, the bump stop solid at full bump: 18 in and 1 in in the document.
    expect(row("strap, hole to hole")[0]).toBe(18);
    expect(row("bump stop, base to landing place")[2]).toBe(1);
    const hub = row("hub centre over the floor *");
    const height = study.corner.wheelCentre.z;
    [droop.stop.travel, 0, bump.stop.travel].forEach((travel, i) => {
      expect(hub[i]).toBeCloseTo((height + travel) / 0.0254, 2);
    });
    // Upper and lower eye at ride: (-4 1/2, 17, 32) and (-4 1/2, 24, 12 1/2).
    expect(row("shock, eye to eye")[1]).toBeCloseTo(Math.hypot(7, 19.5), 2);
    expect(row("half shaft, joint to joint")[1]).toBeCloseTo(Math.hypot(19, 0.5), 2);
  });

  it("tells every rod end's tilt, its limit and what is left", async () => {
    const { out } = await studyOf(textWith(hArm(), { "linkage.upperLink.inner.x": 3 }), [], 100);
    const rods = out.slice(out.indexOf("\nROD ENDS"), out.indexOf("\nCLEARANCES"));
    for (const { pivot } of carOf(writeCarDocument(hArm())).rodEnds) {
      expect(rods).toContain(
        pivot
          .replace(/([A-Z])/g, " $1")
          .toLowerCase()
          .replace(".", ", "),
      );
    }
    const [, most, limit, left] = /^upper link, outer .* (\S+) +(\S+) +(\S+)$/m.exec(rods) ?? [];
    expect(Number(limit)).toBe(14);
    expect(Number(most)).toBeGreaterThan(0);
    expect(Number(left)).toBeCloseTo(14 - Number(most), 1);
  });
});

describe("a right side of its own", () => {
  const upper = { x: -4, y: -17, z: 32 };
  const lower = { x: -4, y: -24, z: 12.5, on: "lower-arm" };
  const text = textWith(hArm(), { "right.shock": { upper, lower, shortest: 15.25, longest: 24 } });

  it("is told in full, and what is the same only once", async () => {
    const { out } = await studyOf(text);
    expect(out).toContain("\nWHAT STOPS THE WHEEL, LEFT WHEEL\n");
    expect(out).toContain("\nWHAT STOPS THE WHEEL, RIGHT WHEEL\n");
    expect(out.slice(out.indexOf("FINDINGS, RIGHT"))).toMatch(/^MUST {2}The shock is at its longest/m);
    expect(out.match(/This is geometry only/g)).toHaveLength(1);
    expect(out).toMatch(/^\d more findings?, the same as on the left\.$/m);
    expect(out).toContain("\nADJUSTERS, RIGHT WHEEL\nThe same as on the left.\n");
    expect(out).toMatch(/^CLEARANCES, RIGHT WHEEL\n.*\n.*\n.*tyre sidewall/m);
    expect(out).toMatch(/^right alone +0 +-6 3\/16 /m);
  });

  it("has a column of its own in the CSV, and only then", async () => {
    const { out } = await studyOf(text, ["--csv", "--at", "-2, 0"]);
    const rows = out.trimEnd().split("\r\n");
    expect(rows[0]).toMatch(/^side,travel \[in\],/);
    expect(rows.slice(1).map((row) => row.split(",").slice(0, 2).join(" "))).toEqual([
      "left -2",
      "left 0",
      "right -2",
      "right 0",
    ]);
    expect((await studyOf(writeCarDocument(hArm()), ["--csv", "--at", "0"])).out).toMatch(/^travel \[in\],/);
  });

  it("goes by its own stops where no travels are asked for", async () => {
    const short = textWith(hArm(), {
      "right.strap": { upper: { x: 6, y: -17, z: 25 }, lower: { x: 6, y: -24, z: 12.25, on: "lower-arm" }, length: 17 },
    });
    const { cycle, right } = await jsonOf(short);
    expect(right.cycle.travels[0]).toBe(right.travel.droop.stop.travel);
    expect(right.cycle.travels[0]).toBeGreaterThan(cycle.travels[0]);
    for (const member of ["travel", "range", "findings", "cycle", "adjusters", "assumed"])
      expect(right).toHaveProperty(member);
  });
});

const jsonOf = async (text: string) => JSON.parse((await studyOf(text, ["--json"])).out);

describe("what was assumed", () => {
  it.each(SAMPLES)("is told in words for $name", ({ text }) => {
    const car = carOf(text);
    const io = { columns: 100, colour: { out: false, err: false } } as Io;
    const lines = assumedLines([movedOf(car).study], pageFor(io, car.units))
      .join("\n")
      .replace(/\n(?= {3})/g, "");
    for (const line of lines.split("\n").filter((each) => each !== "")) {
      const [, what, path] = /^(.*?): .*\(([^()]*)\)$/.exec(line) ?? [];
      // The words are no path, and the path is the document's.
      expect(what ?? line).not.toMatch(/[[\]…_]|[a-z][A-Z]/);
      expect(car.assumed.map((each) => each.path.replace(/\[[^\]]*\]/g, "[…]"))).toContain(
        path?.replace(/\[[^\]]*\]/g, "[…]"),
      );
    }
  });

  it("counts what several parts share", async () => {
    const { out } = await studyOf(writeCarDocument(hArm()), [], 100);
    expect(out).toContain("\nWhich part holds the bolt, 3 rod ends: spindle\n");
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
