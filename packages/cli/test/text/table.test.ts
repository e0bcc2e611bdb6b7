import { expect, it } from "vitest";
import { table } from "../../src/text/table.ts";
import { hang, wrap } from "../../src/text/wrap.ts";

const rows = (...cells: string[]) => cells.map((cell) => ({ cells: [cell, "."] }));
const columns = (align: "left" | "right" | "mark") =>
  [
    { head: ["in"], align },
    { head: [""], align: "left" },
  ] as const;

it("ends whole inches and begins fractions at one place", () => {
  expect(table(columns("mark"), rows("+5 3/4", "-12", "-3/8", "0", "+10 11/16", "at ride"), 80).slice(1)).toEqual([
    " +5 3/4    .",
    "-12        .",
    "   -3/8    .",
    "  0        .",
    "+10 11/16  .",
    "  at ride  .",
  ]);
});

it("begins decimals at one place", () => {
  expect(table(columns("mark"), rows("+214", "-62.5", "0"), 80).slice(1)).toEqual([
    "+214    .",
    " -62.5  .",
    "   0    .",
  ]);
});

it("breaks the column that gives and keeps within the width", () => {
  const lines = table(
    [
      { head: ["what"], align: "left", gives: true },
      { head: ["at"], align: "right" },
    ],
    [{ cells: ["a long name of a limit that does not fit", "12"] }],
    24,
  );
  expect(lines).toEqual(["what                  at", "a long name of a      12", "limit that does not", "fit"]);
});

it("wraps words, and breaks those longer than a line", () => {
  expect(wrap("one two three", 7)).toEqual(["one two", "three"]);
  expect(wrap("abcdefghij k", 4)).toEqual(["abcd", "efgh", "ij k"]);
  expect(wrap("it ends at -14 3/4, or so", 14)).toEqual(["it ends at", "-14 3/4, or so"]);
  expect(wrap("", 4)).toEqual([""]);
  expect(hang("Mind  ", "one two three", 13)).toEqual(["Mind  one two", "      three"]);
});
