import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";

const read = (name: string) => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const DEMO = read("saltbush.car.json");
const SHELF = read("springs.shelf.json");
const springs = (files: Record<string, string>, ...words: string[]) =>
  told(["springs", "my.car.json", ...words], { files });
const files = (car: string = DEMO, shelf: string = SHELF) => ({ "my.car.json": car, "my.shelf.json": shelf });

describe("springs of the demo", () => {
  it("tells where the car sits, rates, crossover, room and damping, within the page", async () => {
    const { code, out, err } = await springs(files());
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/The car sits .*: shock 19 [\d/]+ in eye to eye\./);
    expect(out).toMatch(/Ride frequency 0\.9\d Hz, past crossover 1\.\d\d Hz/);
    expect(out).toMatch(/^where it sits /m);
    expect(out).toMatch(/the slider\s+meets its stop/);
    expect(out).toMatch(/With 5 % more sprung weight it sits [\d/]+ in lower \([\d.]+ turns down mend it\)/);
    expect(out).toContain("Nothing to mind.");
    expect(out).toContain("A squeezed spring kills");
    expect(out).not.toContain("FROM THE SHELF");
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
    expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(96);
  });

  it("ranks the sets of a shelf", async () => {
    const { code, out } = await springs(files(), "--shelf", "my.shelf.json", "--use", "desert");
    expect(code).toBe(0);
    expect(out).toContain("3080 sets tried for the drawn ride height, 0.9 to 1.4 Hz");
    expect(out).toMatch(/^1 +\d+ × \d+ /m);
    expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(96);
  });

  it("gives the same as JSON", async () => {
    const { out } = await springs(files(), "--shelf", "my.shelf.json", "--json");
    const made = JSON.parse(out);
    expect(made).toMatchObject({ armwrightSprings: 1, units: "inch-pound", rest: { on: "springs" }, findings: [] });
    expect(Math.abs(made.rest.travel)).toBeLessThan(0.125);
    expect(made.crossover.shockLength).toBeCloseTo(17.75, 9);
    expect(made.positions.map(({ name }: { name: string }) => name)).toEqual(["droop", "ride", "bump"]);
    expect(made.choices.fitting.length).toBeGreaterThan(5);
    expect(JSON.stringify(made)).not.toMatch(/NaN|Infinity/);
  });

  it("measures the frequency by the use that is named", async () => {
    const { out } = await springs(files(), "--use", "trail");
    expect(out).toContain("1.20 Hz to 1.60 Hz is common practice for trail use");
  });

  it("says so where the car sits on its bump stop", async () => {
    const { out } = await springs(files(DEMO.replace('"corner": 720', '"corner": 3000')));
    expect(out).toContain("THE SPRINGS DO NOT CARRY THE CAR");
    expect(out).toContain("MUST  The springs do not carry the car");
  });
});

it("says solid and gives no rate where the springs are solid at full bump, in millimetres too", async () => {
  const solid = DEMO.replace('"solidLength": "4 7/8"', '"solidLength": "7"');
  const { out } = await springs(files(solid));
  expect(out).toMatch(/^full bump .* over \d+ .* solid +solid$/m);
  const json = JSON.parse((await springs(files(solid), "--json")).out);
  expect(json.positions[2]).toMatchObject({ isSolid: true, wheelRate: null, frequency: null });
  const metric = JSON.parse(read("juniper.car.json"));
  metric.shock.springs = { main: { rate: 50, freeLength: 300 }, preload: 20 };
  const told = (await springs(files(JSON.stringify(metric)), "--shelf", "my.shelf.json")).out;
  expect(told).not.toMatch(/\d in\b/);
});

const without = (section: string) => {
  const car = JSON.parse(DEMO);
  if (section === "springs") car.shock.springs = undefined;
  else if (section.startsWith("weights.")) car.weights[section.slice(8)] = undefined;
  else car[section] = undefined;
  return JSON.stringify(car);
};

it.each([
  ["shock", /no shock/],
  ["springs", /no springs/],
  ["weights.corner", /^weights\.corner is missing/],
  ["weights.unsprung", /^weights\.unsprung is missing/],
])("says what is missing: %s", async (section, sentence) => {
  const { code, out, err } = await springs(files(without(section)));
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(sentence);
});

it("refuses weights that leave nothing sprung", async () => {
  const { code, err } = await springs(files(DEMO.replace('"corner": 720', '"corner": 100')));
  expect(code).toBe(2);
  expect(err).toContain("look at the weights");
});

it.each([
  ["{", /not JSON/],
  ["[]", /expected an object/],
  ['{"springs": []}', /units: write/],
  ['{"units": "metric", "springs": []}', /expected a list/],
  ['{"units": "metric", "springs": [{"rate": 40}]}', /springs\[0\]\.freeLength: missing/],
  [
    '{"units": "metric", "springs": [{"rate": "soft", "freeLength": 300}]}',
    /springs\[0\]\.rate: "soft" cannot be read/,
  ],
  ['{"units": "metric", "springs": [{"rate": -4, "freeLength": 300}]}', /has to be more than 0/],
  [
    '{"units": "metric", "springs": [{"rate": 40, "freeLength": 300, "solidLength": 310}]}',
    /less than the free length/,
  ],
  ['{"units": "metric", "springs": [{"rate": 40, "freeLength": 300, "colour": "red"}]}', /there is no such field here/],
])("refuses a shelf that reads %s", async (shelf, sentence) => {
  const { code, out, err } = await springs(files(DEMO, shelf), "--shelf", "my.shelf.json");
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(sentence);
});

it("refuses a use that it does not know", async () => {
  const { code, err } = await springs(files(), "--use", "moon");
  expect(code).toBe(2);
  expect(err).toContain('"moon" is not known: write dune, desert, trail.');
});
