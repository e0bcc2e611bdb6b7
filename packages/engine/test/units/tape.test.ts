import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatLength, INCH, parseLength } from "../../src/units/index.ts";

/** Two ways of adding up the same inches differ by rounding only, m. */
const ROUNDING = 1e-15;

describe("lengths as a tape is read, in an inch document", () => {
  const cases: readonly (readonly [number | string, number])[] = [
    [12.1875, 12.1875],
    [-3, -3],
    ["12 3/16", 12.1875],
    ["12-3/16", 12.1875],
    ["12 - 3/16", 12.1875],
    ["3/16", 0.1875],
    ["-3 1/8", -3.125],
    ["- 3 1/8", -3.125],
    ["−3 1/8", -3.125],
    ["+3 1/8", 3.125],
    ["-0", 0],
    ["12 3⁄16", 12.1875],
    ["12½", 12.5],
    ["12 ¾ in", 12.75],
    ["1' 4-1/2\"", 16.5],
    ["1' 4 1/2", 16.5],
    ["1'-4 1/2\"", 16.5],
    ["1′ 4½″", 16.5],
    ["1’ 4-1/2”", 16.5],
    ["1 ft 4 in", 16],
    ["2'", 24],
    ["-1' 6", -18],
    ["14.375", 14.375],
    ["14.375 in", 14.375],
    ['14.375"', 14.375],
    ["14.375''", 14.375],
    [".5 inch", 0.5],
    ["  12   3/16  ", 12.1875],
    ["12\u00a03/16", 12.1875],
    ["5/64", 5 / 64],
    ["31/32 IN", 31 / 32],
    ["310mm", 310 / 25.4],
    ["31 cm", 310 / 25.4],
    ["0.31 m", 310 / 25.4],
    ["-310 mm", -310 / 25.4],
  ];
  test.each(cases)("%j", (typed, inches) => {
    const parsed = parseLength(typed, "inch-pound");
    expect(parsed.ok).toBe(true);
    expect(Math.abs((parsed.ok ? parsed.metres : Number.NaN) - inches * INCH)).toBeLessThanOrEqual(ROUNDING);
  });
});

describe("lengths in a metric document", () => {
  const cases: readonly (readonly [number | string, number])[] = [
    [310, 0.31],
    ["310", 0.31],
    ["310.5", 0.3105],
    ["310 mm", 0.31],
    ["31 cm", 0.31],
    ["12 3/16 in", 12.1875 * INCH],
    ["1' 4-1/2\"", 16.5 * INCH],
    ["1' 4-1/2", 16.5 * INCH],
    ['12"', 12 * INCH],
  ];
  test.each(cases)("%j", (typed, metres) => {
    const parsed = parseLength(typed, "metric");
    expect(Math.abs((parsed.ok ? parsed.metres : Number.NaN) - metres)).toBeLessThanOrEqual(ROUNDING);
  });
});

describe("what is not a length, and what was probably meant", () => {
  const cases: readonly (readonly [number | string, "inch-pound" | "metric", string | undefined])[] = [
    ["12 3/17", "inch-pound", "12 3/16 or 12.19"],
    ["-12 3/17", "inch-pound", "-12 3/16 or -12.19"],
    ["12 17/16", "inch-pound", "13 1/16 or 13.06"],
    ["1/3", "inch-pound", "5/16 or 0.31"],
    ["1' 14", "inch-pound", "26"],
    ["12 3/16", "metric", "12 3/16 in or 309.5"],
    ["310,5", "metric", "310.5"],
    ["310,5 mm", "metric", "310.5 mm"],
    ["12 3/0", "inch-pound", undefined],
    ["12 3 16", "inch-pound", undefined],
    ["12/3/16", "inch-pound", undefined],
    ["about 12", "inch-pound", undefined],
    ["12 lb", "inch-pound", undefined],
    ["", "inch-pound", undefined],
    ["-", "inch-pound", undefined],
    ["--3", "inch-pound", undefined],
    ["1e3", "inch-pound", undefined],
    [Number.NaN, "inch-pound", undefined],
    [Number.POSITIVE_INFINITY, "metric", undefined],
    ["9".repeat(400), "inch-pound", undefined],
  ];
  test.each(cases)("%j in a %s document", (typed, system, suggestion) => {
    const parsed = parseLength(typed, system);
    expect(parsed.ok).toBe(false);
    expect(parsed.ok ? undefined : parsed.suggestion).toBe(suggestion);
  });
});

test("every mark that is shown is read back as the same mark", () => {
  const denominator = fc.constantFrom(2, 4, 8, 16, 32, 64) as fc.Arbitrary<2 | 4 | 8 | 16 | 32 | 64>;
  fc.assert(
    fc.property(fc.integer({ min: -20000, max: 20000 }), denominator, (parts, bottom) => {
      const metres = (parts / bottom) * INCH;
      const parsed = parseLength(formatLength(metres, "inch-pound", { denominator: bottom }), "inch-pound");
      expect(parsed.ok && Math.abs(parsed.metres - metres) <= ROUNDING * 1000).toBe(true);
    }),
  );
});

test("no text makes it throw, and what it reads is a finite number", () => {
  const marks = fc.string({ unit: fc.constantFrom(..."0123456789 .,/-'\"½inmcft−⁄′″x"), maxLength: 14 });
  fc.assert(
    fc.property(
      fc.oneof(marks, fc.string()),
      fc.constantFrom("inch-pound" as const, "metric" as const),
      (text, system) => {
        const parsed = parseLength(text, system);
        if (parsed.ok) expect(Number.isFinite(parsed.metres)).toBe(true);
        else if (parsed.suggestion !== undefined) {
          // A suggestion is itself readable, each of its alternatives.
          for (const each of parsed.suggestion.split(" or "))
            expect([each, parseLength(each, system).ok]).toEqual([each, true]);
        }
      },
    ),
    { numRuns: 2000 },
  );
});
