import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cutPlan, type Piece } from "../../src/cut/cut-plan.ts";

const piecesOf = (lengths: readonly number[]): Piece[] => lengths.map((length, i) => ({ name: `p${i}`, length }));

/** Fewest bars by trying every way to share the pieces out. */
function bruteForce(lengths: readonly number[], stock: number, kerf: number): number {
  let fewest = lengths.length;
  const used: number[] = [];
  const place = (index: number): void => {
    if (used.length >= fewest && index < lengths.length) return;
    if (index === lengths.length) {
      fewest = Math.min(fewest, used.length);
      return;
    }
    const need = lengths[index]! + kerf;
    for (let bar = 0; bar < used.length; bar += 1) {
      if (used[bar]! + need > stock + kerf + 1e-9) continue;
      used[bar] = used[bar]! + need;
      place(index + 1);
      used[bar] = used[bar]! - need;
    }
    used.push(need);
    place(index + 1);
    used.pop();
  };
  place(0);
  return fewest;
}

describe("nesting pieces into bars", () => {
  test("first fit is not always best: three bars where it would take four", () => {
    // Longest first into the first bar that takes it: 5+5, 4+4+3, 3+3+3, 3 on bars of 11. But 5+3+3, 5+3+3, 4+4+3 fill them.
    const plan = cutPlan(piecesOf([5, 5, 4, 4, 3, 3, 3, 3, 3]), 11, 0);
    expect(plan.bars).toHaveLength(3);
    expect(plan.isFewest).toBe(true);
  });

  test("the saw's width counts between pieces, not after the last that ends with the bar", () => {
    expect(cutPlan(piecesOf([1, 1, 1]), 3.2, 0.1).bars).toHaveLength(1);
    expect(cutPlan(piecesOf([1, 1, 1]), 3.19, 0.1).bars).toHaveLength(2);
  });

  test("a piece longer than a bar is named, not lost", () => {
    const plan = cutPlan(piecesOf([2, 7, 3]), 6, 0.003);
    expect(plan.tooLong.map(({ length }) => length)).toEqual([7]);
    expect(plan.bars).toHaveLength(1);
  });

  test("as few bars as trying everything; every piece once; no bar overfull", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 }), (sixteenths) => {
        const lengths = sixteenths.map((n) => n / 16);
        const plan = cutPlan(piecesOf(lengths), 4, 1 / 8);
        expect(plan.bars).toHaveLength(bruteForce(lengths, 4, 1 / 8));
        expect(plan.isFewest).toBe(true);
        expect(plan.bars.flatMap(({ pieces }) => pieces.map(({ name }) => name)).sort()).toEqual(
          piecesOf(lengths)
            .map(({ name }) => name)
            .sort(),
        );
        for (const { pieces, offcut } of plan.bars) {
          const used = pieces.reduce((sum, { length }) => sum + length, 0) + (pieces.length - 1) / 8;
          expect(used).toBeLessThanOrEqual(4 + 1e-9);
          expect(offcut).toBeCloseTo(Math.max(0, 4 - used - 1 / 8), 9);
        }
      }),
      { numRuns: 300 },
    );
  });

  test("many pieces: an answer in any case, and said whether it is proven", () => {
    const lengths = Array.from({ length: 60 }, (_, i) => 0.3 + ((i * 37) % 53) / 60);
    const plan = cutPlan(piecesOf(lengths), 6, 0.003);
    const needs = lengths.reduce((sum, length) => sum + length + 0.003, 0);
    expect(plan.bars.length).toBeGreaterThanOrEqual(Math.ceil(needs / 6.003));
    expect(plan.bars.length).toBeLessThanOrEqual(Math.ceil((needs / 6.003) * 1.25));
    expect(plan.bars.flatMap(({ pieces }) => pieces)).toHaveLength(60);
  });
});
