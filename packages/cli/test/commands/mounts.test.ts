import { readFileSync } from "node:fs";
import { study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";

const read = (name: string): string => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const CAR = "my.car.json";
const SHELF = "shocks.json";
const BARE = "bare.car.json";
const TANK = "tank.car.json";
const files = {
  [CAR]: read("saltbush.car.json"),
  [BARE]: read("saltbush-bare.car.json"),
  [TANK]: read("saltbush-tank.car.json"),
  [SHELF]: read("shocks.shelf.json"),
};
const mounts = (...words: string[]) => told(["mounts", CAR, "--step", "1", ...words], { files });

it("tells places for the car's own shock, within the page", async () => {
  const { code, out, err } = await mounts();
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toContain("WHERE THE SHOCK CAN GO");
  expect(out).not.toMatch(/NaN|undefined/);
  expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(96);
});

it("writes a car whose shock then stops nothing", async () => {
  const told = await mounts("--shelf", SHELF, "--shock", "ten", "--apply", "mounted.car.json");
  expect(told.code).toBe(0);
  const reading = readCarDocument(told.files.get("mounted.car.json")!);
  if (!reading.ok) throw new Error("what was written does not read");
  const { travel } = study(reading.car);
  const shockIn = ({ limits }: (typeof travel)["bump"]) =>
    limits.filter(({ code }) => code.startsWith("shock")).map(({ code, isProtected }) => ({ code, isProtected }));
  expect(shockIn(travel.bump)).toEqual([{ code: "shock-shortest", isProtected: true }]);
  expect(shockIn(travel.droop)).toEqual([{ code: "shock-longest", isProtected: true }]);
});

it("reads a shelf in CSV", async () => {
  const csv = "name,shortest,longest,bodyDiameter\nold ten,15 1/4,25 1/4,2";
  const { code, out } = await told(["mounts", CAR, "--step", "1", "--shelf", "shelf.csv"], {
    files: { ...files, "shelf.csv": csv },
  });
  expect(code).toBe(0);
  expect(out).toContain("old ten: upper");
});

it("says what would open a place where a zone leaves none", async () => {
  const zone = ["--upper", "box 4,14,24 8,20,27 1/2"];
  const { code, out } = await mounts(...zone);
  expect(code).toBe(1);
  expect(out).toContain("SMALLEST SINGLE CHANGE");
  const [, less = ""] = /^1 {2}(\d+ \d+\/\d+) in less travel in bump$/m.exec(out) ?? [];
  expect(less).toBe("1 1/4");
  // Asked for with that much less, and a sixteenth, a place is there; with a quarter more it is not.
  const reading = readCarDocument(files[CAR]);
  if (!reading.ok) throw new Error("the demo car does not read");
  const full = study(reading.car).travel.bump.stop.travel / 0.0254;
  const withLess = async (inches: number) => {
    const told = await mounts(...zone, "--bump", String(full - inches));
    return /, (\d+) fit/.exec(told.out)?.[1];
  };
  expect(Number(await withLess(1.25 + 1 / 32))).toBeGreaterThan(0);
  expect(Number(await withLess(1.25 - 1 / 16))).toBe(0);
});

it("finds only what its windows allow, and refuses windows that are none", async () => {
  const best = async (...words: string[]) => JSON.parse((await mounts("--json", ...words)).out).best;
  const wide = await best();
  const narrow = await best("--stroke", "70-80 %", "--ratio", "0.5 to 0.6", "--droop", "7");
  expect(wide.some(({ strokeUsed }: { strokeUsed: number }) => strokeUsed > 0.8)).toBe(true);
  expect(narrow.length).toBeGreaterThan(0);
  for (const { strokeUsed, motionRatio } of narrow) {
    expect(strokeUsed).toBeLessThanOrEqual(0.8);
    expect(strokeUsed).toBeGreaterThanOrEqual(0.7);
    expect(motionRatio).toBeLessThanOrEqual(0.6);
  }
});

it("gives JSON in SI", async () => {
  const { out } = await mounts("--json");
  const { best, units } = JSON.parse(out);
  expect(units).toBe("SI");
  expect(best[0].upper.z).toBeGreaterThan(0.5);
});

it.each([
  [["--shock", "ten"], "add --shelf FILE"],
  [["--shelf", SHELF, "--shock", "twelv"], "did you mean twelve?"],
  [["--upper-tube", "no such"], "the tubes are lower frame rail"],
  [["--upper", "box 1,2 3"], "is not a box"],
  [["--lower", "lowerArm.middle"], "lowerArm.front"],
  [["--apply", CAR], "name another file"],
  [["--stroke", "92-80"], "is not a window such as 80-92 %"],
  [["--ratio", "half"], "is not a window such as 0.55-0.8"],
  [["--droop", "-8"], "is not a length above zero"],
] as const)("refuses %j with what would be right", async (words, said) => {
  const { code, err } = await mounts(...words);
  expect(code).toBe(2);
  expect(err).toContain(said);
});

/** What a car that was written is judged to be, beyond what is not entered yet: strap and bump stop. */
function judged(text: string | undefined): { readonly gap: number; readonly codes: readonly string[] } {
  const reading = readCarDocument(text ?? "");
  if (!reading.ok) throw new Error("what was written does not read");
  const { travel, findings } = study(reading.car);
  const gaps = travel.clearances
    .filter(({ id }) => id.includes("shock"))
    .map(({ leastGap, wanted }) => leastGap - wanted);
  return {
    gap: Math.min(...gaps),
    codes: findings.filter(({ gravity }) => gravity !== "note").map(({ code }) => code),
  };
}

/** A tape mark off by half a sixteenth in three directions at either mount, m. */
const TAPE = 0.0254 / 16;

it("puts a shock into a car without one; only strap and bump stop are still missing", async () => {
  const { code, files: written } = await told(
    ["mounts", BARE, "--step", "1", "--shelf", SHELF, "--apply", "mounted.car.json"],
    { files },
  );
  expect(code).toBe(0);
  const { gap, codes } = judged(written.get("mounted.car.json"));
  expect(gap).toBeGreaterThan(0);
  expect(codes).toEqual(["no-part-stops-the-wheel", "no-part-stops-the-wheel"]);
});

describe("where the fuel tank blocks every place", () => {
  const tank = (...words: string[]) => told(["mounts", TANK, "--step", "1/2", "--shelf", SHELF, ...words], { files });

  it("says by how much to lower or notch it, and what is written then works", async () => {
    const { code, out } = await tank();
    expect(code).toBe(1);
    expect(out).toContain("0 fit");
    const changes = [...out.matchAll(/^(\d) {2}(fuel tank [^\n]*)/gm)].map(([, number, words]) => ({ number, words }));
    expect(changes.map(({ words }) => words)).toEqual([
      expect.stringContaining("nearer by"),
      expect.stringContaining("lower by"),
    ]);
    for (const { number } of changes) {
      const applied = await tank("--open", number!, "--apply", "opened.car.json");
      expect(applied).toMatchObject({ code: 0 });
      const { gap, codes } = judged(applied.files.get("opened.car.json"));
      expect(gap).toBeGreaterThan(-TAPE);
      expect(codes).toEqual(["no-part-stops-the-wheel", "no-part-stops-the-wheel"]);
    }
  }, 240_000);

  it.each([
    [["--open", "2"], "add --apply FILE"],
    [["--open", "99", "--apply", "x.car.json"], "is not one of the"],
  ] as const)("refuses %j", { timeout: 120_000 }, async (words, said) => {
    const { code, err } = await tank(...words);
    expect(code).toBe(2);
    expect(err).toContain(said);
  });
});

describe("with what is at hand", () => {
  it("tells travel, shocks and track, within the page", async () => {
    const { code, out, err } = await mounts("--shelf", SHELF, "--with-what-i-have", "--straps", "22, 23, 25");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/the strap of\s+23 hole to hole/);
    expect(out).toMatch(/the track may be from 72 1\/4 [\s\S]*to\s+74/);
    expect(out).not.toMatch(/NaN|undefined/);
    expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(96);
  });

  it("gives JSON in SI", async () => {
    const { out } = await mounts("--with-what-i-have", "--json");
    const { units, window, track } = JSON.parse(out);
    expect(units).toBe("SI");
    expect(window.bump.travel).toBeGreaterThan(0);
    expect(track.most.track).toBeGreaterThan(track.least.track);
  });
});

it.each([
  [["--frame", "no such"], "the tubes are lower frame rail"],
  [["--wrench", "big"], "is not a length"],
  [["--with-what-i-have", "--apply", "x.car.json"], "leave --apply out"],
] as const)("refuses %j with what would be right", async (words, said) => {
  const { code, err } = await mounts(...words);
  expect(code).toBe(2);
  expect(err).toContain(said);
});

it("counts the wrench among what rules places out, until none is asked for", async () => {
  const asked = await mounts("--wrench", "14", "--json");
  const none = await mounts("--wrench", "none", "--json");
  expect(JSON.parse(asked.out).killedBy.wrench).toBeGreaterThan(0);
  expect(JSON.parse(none.out).killedBy.wrench).toBe(0);
});
