import { parseLength } from "@armwright/engine";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  EMPTY_READING,
  type KeyedReading,
  keyDigit,
  keyFeet,
  keyMinus,
  keySixteenths,
  readingOf,
  readingText,
  rubOut,
} from "../../src/form/keypad-reading.ts";

const keyed = (...keys: ((reading: KeyedReading) => KeyedReading)[]): string =>
  readingText(keys.reduce((reading, key) => key(reading), EMPTY_READING));
const digit = (d: string) => (reading: KeyedReading) => keyDigit(reading, d);
const part = (count: number) => (reading: KeyedReading) => keySixteenths(reading, count);

describe("the tape keypad", () => {
  test.each([
    [keyed(digit("3"), digit("5"), part(1)), "35 1/16"],
    [keyed(part(8)), "1/2"],
    [keyed(digit("0"), digit("7")), "7"],
    [keyed(digit("1"), keyFeet, digit("4"), part(8)), "1' 4 1/2\""],
    [keyed(digit("6"), keyFeet), "6' 0\""],
    [keyed(digit("2"), part(12), keyMinus), "-2 3/4"],
    [keyed(digit("2"), part(12), rubOut), "2"],
    [keyed(digit("2"), rubOut), ""],
    [keyed(digit("1"), digit("2"), digit("3"), digit("4")), "123"],
  ])("%s", (found, wanted) => expect(found).toBe(wanted));

  test("whatever stands on a sixteenth comes back the same", () => {
    fc.assert(
      fc.property(fc.integer({ min: -16 * 400, max: 16 * 400 }), (sixteenths) => {
        const metres = (sixteenths / 16) * 0.0254;
        const parsed = parseLength(readingText(readingOf(metres)), "inch-pound");
        expect(parsed.ok && parsed.metres).toBeCloseTo(metres, 12);
      }),
      { seed: 7 },
    );
  });
});
