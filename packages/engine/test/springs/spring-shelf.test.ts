import { expect, it } from "vitest";
import { readSpringShelf } from "../../src/springs/spring-shelf.ts";

const INCH = 0.0254;
const POUND_PER_INCH = 175.126835;

it("reads a list as JSON and as CSV alike, lengths as on a tape", () => {
  const json =
    '{"units":"inch-pound","springs":[{"name":"long","rate":250,"freeLength":"14","solidLength":"5 7/8"},{"rate":300,"freeLength":12}]}';
  const csv = "name,rate,freeLength,solidLength\nlong,250,14,5 7/8\n,300,12,\n";
  for (const text of [json, csv]) {
    const reading = readSpringShelf(text, "mine", "inch-pound");
    if (!reading.ok) throw new Error(reading.words);
    const [long, short] = reading.shelf.springs;
    expect(long!.name).toBe("long");
    expect(long!.rate / POUND_PER_INCH).toBeCloseTo(250, 4);
    expect(long!.freeLength / INCH).toBeCloseTo(14, 9);
    expect(long!.solidLength / INCH).toBeCloseTo(5.875, 9);
    // A spring without its own figure: the share that is assumed, from memory.
    expect(short!.solidLength / short!.freeLength).toBeCloseTo(0.42, 9);
  }
});

it.each([
  ["rate,freeLength\n250,", "mine: springs[0].freeLength: missing"],
  ["rate,freeLength,colour\n250,14,red", "springs[0].colour: there is no such field here"],
  ["rate,freeLength\n", "mine holds no spring"],
  ["{", "mine: not JSON"],
])("tells where %j is wrong", (text, words) => {
  const reading = readSpringShelf(text, "mine", "inch-pound");
  expect(reading.ok ? "" : reading.words).toContain(words);
});
