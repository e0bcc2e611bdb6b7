import { readFileSync } from "node:fs";
import { readCarDocument } from "@armwright/engine/document";
import { expect, it } from "vitest";
import { told } from "../fake-io.ts";

const read = (name: string): string => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const CAR = "my.car.json";
const files = { [CAR]: read("saltbush.car.json"), "metric.car.json": read("juniper.car.json") };
const solve = (...words: string[]) => told(["solve", CAR, ...words], { files });

it("lists what can be asked", async () => {
  const { code, out, err } = await solve();
  expect({ code, err }).toEqual({ code: 0, err: "" });
  for (const id of [
    "constant-camber",
    "camber-at-two",
    "least-toe",
    "least-plunge",
    "shaft-slip",
    "shortest-wheelbase",
    "ride-height",
  ])
    expect(out).toContain(`\n${id}\n`);
  expect(out).not.toContain("Not for this car");
});

it("tells what to change, what it does and what it was asked with, within the page", async () => {
  const { code, out } = await solve("constant-camber");
  expect(code).toBe(0);
  for (const part of ["REACHED", "linkage.upperLink.inner.z", "WHAT IT DOES", "first in the way, bump", "ASKED WITH"])
    expect(out).toContain(part);
  expect(out).not.toMatch(/NaN|undefined|null/);
  expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(96);
});

it("writes a car that gives the answer it told", async () => {
  const { code, files: after, err } = await solve("least-toe", "--apply", "better.car.json");
  expect({ code, err }).toEqual({ code: 0, err: "Wrote better.car.json with the answer.\n" });
  const text = after.get("better.car.json")!;
  expect(readCarDocument(text).ok).toBe(true);
  const again = await told(["solve", "better.car.json", "least-toe", "--json"], { files: { "better.car.json": text } });
  const first = JSON.parse((await solve("least-toe", "--json")).out);
  // The new car's own stops lie elsewhere, so that the travel is not quite the same.
  expect(JSON.parse(again.out).aim.before).toBeLessThan(first.aim.before / 10);
});

it("writes nothing where there is nothing to change", async () => {
  const {
    code,
    files: after,
    err,
  } = await solve("constant-camber", "--with", "in-out=0, up-down=0", "--apply", "x.json");
  expect(code).toBe(1);
  expect(after.has("x.json")).toBe(false);
  expect(err).toContain("nothing to change");
});

it("moves the right side's own shock along with a metric car", async () => {
  const { out } = await told(["solve", "metric.car.json", "shortest-wheelbase"], { files });
  expect(out).toContain("right.shock.upper.x");
  expect(out).toMatch(/tyre to bulkhead behind the seats/);
});

it("says how much spline is needed where no shaft's length does it", async () => {
  const { out } = await solve("shaft-slip", "--with", "spline=2");
  expect(out).toContain("NOT REACHED");
  expect(out.replace(/\s+/g, " ")).toContain("2 3/8 in is needed");
});

it.each([
  [["constant-cambr"], "did you mean constant-camber?"],
  [["constant-camber", "--with", "pont=3"], "did you mean point?"],
  [["constant-camber", "--with", "up-down"], "is not NAME=VALUE"],
  [["constant-camber", "--with", "up-down=abc"], "is no value in in"],
  [["constant-camber", "--with", "up-down=99"], "more than can be"],
  [["constant-camber", "--with", "up-down=1, up-down=2"], "given twice"],
  [["constant-camber", "--with", "from=3, to=3"], "the same travel"],
  [["constant-camber", "--with", "point=upperLink.iner"], "did you mean upperLink.inner?"],
  [["constant-camber", "--apply", CAR], "name another file"],
  [["--with", "in-out=1"], "goes with a question"],
] as const)("refuses %j with what would be right", async (words, said) => {
  const { code, err } = await solve(...words);
  expect(code).toBe(2);
  expect(err).toContain(said);
});

it("says what a simple car lacks", async () => {
  const simple = (await told(["new", "--kind", "trailing-arm", "--simple"])).out;
  const { code, err } = await told(["solve", "-", "least-plunge"], { input: simple });
  expect(code).toBe(2);
  expect(err).toContain("no half shaft");
});
