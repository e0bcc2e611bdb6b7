import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readShockShelf } from "../../src/mounts/shock-shelf.ts";
import { DEGREE, INCH } from "../../src/units/convert.ts";

test("the example shelf reads, as on a tape", () => {
  const reading = readShockShelf(
    readFileSync(new URL("../../../../examples/shocks.shelf.json", import.meta.url), "utf8"),
    "shocks.shelf.json",
    "metric",
  );
  if (!reading.ok) throw new Error(reading.words);
  expect(reading.shelf.shocks).toHaveLength(4);
  expect(reading.shelf.shocks[1]).toEqual({
    name: "ten",
    shortest: expect.closeTo(15.25 * INCH, 12),
    longest: expect.closeTo(25.25 * INCH, 12),
    bodyDiameter: expect.closeTo(2 * INCH, 12),
    springDiameter: expect.closeTo(3.125 * INCH, 12),
    eyeWidth: expect.closeTo(1.5 * INCH, 12),
    misalignmentLimit: expect.closeTo(17 * DEGREE, 12),
  });
});

test("CSV has the same names in its first line, in the car's own unit", () => {
  const text =
    "name,shortest,longest,bodyDiameter,springDiameter\nlong one,511,867,64,\nshort one,13 3/8 in,543,50,80\n";
  const reading = readShockShelf(text, "mine.csv", "metric");
  if (!reading.ok) throw new Error(reading.words);
  expect(reading.shelf.shocks.map(({ name, longest, springDiameter }) => [name, longest, springDiameter])).toEqual([
    ["long one", expect.closeTo(0.867, 12), 0],
    ["short one", expect.closeTo(0.543, 12), expect.closeTo(0.08, 12)],
  ]);
});

test.each([
  ["{", "not JSON"],
  ['{"shocks": 3}', 'list called "shocks"'],
  ['{"units": "cubits", "shocks": []}', "inch-pound or metric"],
  ["name,shortest\n", "holds no shock"],
  ["name,shortest,longest,bodyDiameter\na,15,,2", "longest is missing"],
  ["name,shortest,longest,bodyDiameter\na,15,14,2", "longest has to be more than shortest"],
  ["name,shortest,longest,bodyDiameter\na,a lot,14,2", "is not a length"],
  ["name,shortest,longest,bodyDiameter\na,10,14,2\na,11,15,2", "two shocks called a"],
  [
    "name,shortest,longest,bodyDiameter,misalignment\na,10,14,2,20",
    "shock 1.misalignment: there is no such field here",
  ],
  ["[1]", 'write { "shocks"'],
  ["name,shortest,longest,bodyDiameter,misalignmentLimit\na,10,14,2,95", "not an angle"],
])("what is wrong with %j is said", (text, words) => {
  const reading = readShockShelf(text, "mine.csv", "inch-pound");
  expect(reading.ok).toBe(false);
  expect(reading.ok ? "" : reading.words).toContain(words);
});
