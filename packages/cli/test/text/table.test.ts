import { expect, it } from "vitest";
import { shortened } from "../../src/text/plain.ts";
import { table } from "../../src/text/table.ts";
import { widthOf } from "../../src/text/width.ts";
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

it("breaks no word while another column can give way", () => {
  const lines = table(
    [
      { head: ["a"], align: "left", gives: true },
      { head: ["b"], align: "left", gives: true },
    ],
    [{ cells: ["wheel.rimInsideDiameter", "a text of many words that can be broken anywhere it likes to be"] }],
    40,
  );
  expect(lines[1]).toMatch(/^wheel\.rimInsideDiameter {2}/);
  expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(40);
});

it("counts wide letters as two and marks on letters as none", () => {
  expect(widthOf("漢字")).toBe(4);
  expect(widthOf("한글ｶﾅ")).toBe(6);
  expect(widthOf("e\u0301½—")).toBe(3);
  expect(widthOf("\u{1f697}")).toBe(2);
  expect(wrap("漢字漢字", 5)).toEqual(["漢字", "漢字"]);
  const lines = table(columns("left"), rows("漢字", "abcd"), 80);
  expect(lines.slice(1)).toEqual(["漢字  .", "abcd  ."]);
});

it("keeps a number with its unit", () => {
  expect(wrap("it is 3 1/2 in up", 11)).toEqual(["it is", "3 1/2 in up"]);
  expect(wrap("a gap of 5 mm", 12)).toEqual(["a gap of", "5 mm"]);
  expect(wrap("in 3 into", 6)).toEqual(["in 3", "into"]);
});

it("shortens at a word", () => {
  expect(shortened("short", 10)).toBe("short");
  expect(shortened("a rather long text", 12)).toBe("a rather…");
  expect(shortened("unbreakableword", 8)).toBe("unbreak…");
});

it("wraps words, and breaks those longer than a line", () => {
  expect(wrap("one two three", 7)).toEqual(["one two", "three"]);
  expect(wrap("abcdefghij k", 4)).toEqual(["abcd", "efgh", "ij k"]);
  expect(wrap("it ends at -14 3/4, or so", 14)).toEqual(["it ends at", "-14 3/4, or so"]);
  expect(wrap("", 4)).toEqual([""]);
  expect(hang("Mind  ", "one two three", 13)).toEqual(["Mind  one two", "      three"]);
});
