import { type Primitive, spot, text } from "@armwright/drawing";
import { describe, expect, test } from "vitest";
import { type Block, flow } from "../../src/paper/flow.ts";

const ROOM = { x: 17, y: 22, width: 180, height: 230 };

const wordsOf = (parts: readonly Primitive[]): readonly string[] =>
  parts.flatMap((part) => (part.shape === "text" ? [part.text] : []));

const rows = (count: number): Block => ({
  kind: "table",
  columns: [
    { head: "name", share: 1 },
    { head: "blank", share: 1 },
  ],
  rows: Array.from({ length: count }, (_, i) => [`row ${i}`, ""]),
});

describe("blocks on sheets", () => {
  test("no row is lost: what finds no room goes on to the next sheet under its head, in order", () => {
    const sheets = flow([{ kind: "words", words: "before" }, rows(90), { kind: "words", words: "after" }], ROOM);
    expect(sheets.length).toBeGreaterThan(1);
    const all = sheets.flatMap(wordsOf);
    expect(all.filter((words) => words.startsWith("row"))).toEqual(Array.from({ length: 90 }, (_, i) => `row ${i}`));
    for (const sheet of sheets) expect(wordsOf(sheet)).toContain("name");
    expect(all.at(-1)).toBe("after");
  });

  test("a head does not stand alone at a sheet's foot", () => {
    for (let count = 1; count < 40; count += 1) {
      for (const sheet of flow([rows(count), { kind: "head", words: "HEAD" }, rows(3)], ROOM)) {
        if (wordsOf(sheet).includes("HEAD")) expect(wordsOf(sheet).at(-1)).not.toBe("HEAD");
      }
    }
  });

  test("views share what the rest leaves of the sheet, and take one of their own where that is too little", () => {
    const heights: number[] = [];
    const view = (share: number): Block => ({
      kind: "view",
      share,
      least: 50,
      draw: ({ x, y, height }) => {
        heights.push(height);
        return [text("title", spot(x, y), "view")];
      },
    });
    const floorOf = (count: number): number => {
      heights.length = 0;
      return flow([view(2), view(1), rows(count)], ROOM).length;
    };
    expect(floorOf(3)).toBe(1);
    expect(heights[0]! / heights[1]!).toBeCloseTo(2, 9);
    const [few] = heights;
    expect(floorOf(24)).toBe(2);
    expect(heights[0]!).toBeGreaterThan(few!);
    expect(heights[0]! + heights[1]!).toBeLessThan(ROOM.height);
    expect(heights[0]! + heights[1]!).toBeGreaterThan(ROOM.height - 10);
  });
});
