import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";

const read = (name: string) => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const asBuilt = (document: unknown, ...words: string[]) =>
  told(["asbuilt", "my.car.json", ...words], { files: { "my.car.json": JSON.stringify(document) } });

type Reading = Readonly<Record<string, string | number>>;
const withLog = (name: string, readings: readonly Reading[]) => ({ ...JSON.parse(read(name)), asBuilt: { readings } });

describe("as built, before anything is read", () => {
  it("says what to read, in the document's units", async () => {
    const inches = await asBuilt(JSON.parse(read("saltbush.car.json")));
    expect(inches.code).toBe(0);
    expect(inches.out).toMatch(/^shock, eye to eye .*19 13\/16 ± 1\/8/m);
    expect(inches.out).toMatch(/^shock, upper +6 1\/4 ± 1\/8 +17 ± 1\/8 +31 1\/2 ± 1\/16$/m);
    expect(inches.out).toContain("welded places ± 1/16 in (common practice)");
    const metric = await asBuilt(JSON.parse(read("juniper.car.json")));
    expect(metric.out).toContain("welded places ± 1.5 mm (common practice)");
    expect(metric.out).not.toMatch(/\d in\b|\d\/\d|NaN|undefined/);
  });
});

describe("as built, with a log", () => {
  // The shock's upper eye welded in 3/8 in high: every length of the shock reads long.
  const high: readonly Reading[] = [
    ["-8", "24 13/16"],
    ["-4", "22 9/16"],
    [0, "20 3/16"],
    [3, "18 3/8"],
    [6, "16 9/16"],
  ].map(([at, reads]) => ({ what: "shock", at: at!, reads: reads! }));

  it("refuses to choose among causes that the readings cannot tell apart, and writes the one chosen", async () => {
    const refused = await asBuilt(withLog("saltbush.car.json", high), "--apply", "built.car.json");
    expect(refused.out).toContain("One of these, and the readings cannot say which:");
    expect(refused.code).not.toBe(0);
    expect(refused.err).toMatch(/cannot tell \d+ causes apart: choose one of those numbered above with --cause/);
    const none = await asBuilt(withLog("saltbush.car.json", high), "--apply", "built.car.json", "--cause", "99");
    expect(none.err).toContain("--cause: 99 is none of the causes told");
    const chosen = await asBuilt(withLog("saltbush.car.json", high), "--apply", "built.car.json", "--cause", "1");
    expect(chosen.code).toBe(0);
    expect(chosen.err).toMatch(
      /^Wrote built.car.json: the car as built, shock, (upper|lower) is [\d/]+ in (high|low)\. The plan is as it was/,
    );
  });

  it("one more reading, of the place itself, tells them apart", async () => {
    const place = { what: "height", of: "shock, upper", at: 0, reads: "31 7/8" };
    const { out, code } = await asBuilt(withLog("saltbush.car.json", [...high, place]), "--apply", "built.car.json");
    expect(out).toMatch(/^Likeliest {2}shock, upper is 1?1?\/?\d.*high/m);
    expect(code).toBe(0);
  });

  it("tells turns to the planned camber", async () => {
    const log = [-8, -4, 0, 3, 6].map((at, i) => ({ what: "camber", at, degrees: [0.7, 0.6, 0.5, 0.3, 0.1][i]! }));
    const { out } = await asBuilt(withLog("saltbush.car.json", log));
    expect(out).toMatch(/^At ride height, by all readings: camber \+0\.[3-5] ± 0\.\d deg \(plan -0\.5\)/m);
    expect(out).toMatch(/^Turn {2}upper link: [\d.]+ turns? shorter\.$/m);
  });
});
