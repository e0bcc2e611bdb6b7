import { readFileSync } from "node:fs";
import { study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { expect, it } from "vitest";
import { told } from "../fake-io.ts";

const read = (name: string): string => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const CAR = "my.car.json";
const SHELF = "shocks.json";
const files = { [CAR]: read("saltbush.car.json"), [SHELF]: read("shocks.shelf.json") };
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
  for (const { limits } of [travel.bump, travel.droop])
    for (const limit of limits) if (/shock/.test(limit.label)) expect(limit.isProtected).toBe(true);
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
  const { code, out } = await mounts("--upper", "box 4,14,24 8,20,27 1/2");
  expect(code).toBe(1);
  expect(out).toContain("SMALLEST SINGLE CHANGE");
  expect(out).toMatch(/less stroke|less travel|No single change/);
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
] as const)("refuses %j with what would be right", async (words, said) => {
  const { code, err } = await mounts(...words);
  expect(code).toBe(2);
  expect(err).toContain(said);
});
