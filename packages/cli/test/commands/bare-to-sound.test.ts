import { readFileSync } from "node:fs";
import { study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { expect, it } from "vitest";
import { told } from "../fake-io.ts";

const read = (name: string): string => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const BARE = "bare.car.json";
const SHOCKS = "shocks.json";
const SPRINGS = "springs.json";
const OUT = "out.car.json";
const shelves = { [SHOCKS]: read("shocks.shelf.json"), [SPRINGS]: read("springs.shelf.json") };

async function applied(car: string, command: string, ...words: string[]): Promise<string> {
  const { code, err, files } = await told([command, BARE, ...words, "--apply", OUT], {
    files: { ...shelves, [BARE]: car },
  });
  expect(code, err).toBe(0);
  return files.get(OUT)!;
}

it("leads from a car without shock, springs, strap and bump stop to one with nothing left to mend", async () => {
  const mounted = await applied(read("saltbush-bare.car.json"), "mounts", "--shelf", SHOCKS);
  const sprung = await applied(mounted, "springs", "--shelf", SPRINGS);
  const stopped = await applied(sprung, "stops");
  const reading = readCarDocument(stopped);
  if (!reading.ok) throw new Error("what was written does not read");
  const { car } = reading;
  expect(car.shock?.springs?.tender && car.strap && car.bumpStop).toBeTruthy();
  const made = study(car);
  const { bump, droop } = made.travel;
  expect([bump.stop.by, bump.stop.works, droop.stop.by, droop.stop.works]).toEqual(["bump-stop", true, "strap", true]);
  expect(made.findings.filter(({ gravity }) => gravity !== "note").map(({ code }) => code)).toEqual([]);
});

it("refuses to write springs without a shelf, over the car itself, or where none fits", async () => {
  const mounted = await applied(read("saltbush-bare.car.json"), "mounts", "--shelf", SHOCKS);
  const springs = (...words: string[]) =>
    told(["springs", BARE, ...words], {
      files: {
        ...shelves,
        [BARE]: mounted,
        "soft.json": '{"units":"inch-pound","springs":[{"rate":20,"freeLength":8}]}',
      },
    });
  for (const [words, says] of [
    [["--apply", OUT], "shelf"],
    [["--shelf", SPRINGS, "--apply", BARE], "is the car document itself"],
    [["--shelf", "soft.json", "--apply", OUT], "nothing is written"],
  ] as const) {
    const { code, err, files } = await springs(...words);
    expect(code).not.toBe(0);
    expect(err).toContain(says);
    expect(files.get(OUT)).toBeUndefined();
  }
});
