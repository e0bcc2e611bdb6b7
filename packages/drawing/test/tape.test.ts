import type { LimitReport, Study } from "@armwright/engine";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxOfText, drawTape, heightOf, tapeScale, travelAt } from "../src/index.ts";
import { numerals, takenHeights } from "../src/tape/blade.ts";
import { FLAG_PITCH, fanned, flagsOf, placeFlags } from "../src/tape/flags.ts";
import { graduationOf, marksBetween } from "../src/tape/scale.ts";
import { CASES, overlapOf, startingStudy, textsOf, travelsOf } from "./cars.ts";

const RECT = { x: 0, y: 0, width: 400, height: 600 };

/** A study whose bump limits are `count` hard ones, all at one travel. */
function crowded(study: Study, count: number, travel: number): Study {
  const pattern = study.travel.bump.limits.find(({ nature }) => nature === "hard")!;
  const limits = Array.from(
    { length: count },
    (_, i): LimitReport => ({
      ...pattern,
      id: `limit-${i}`,
      label: `a limit with a long name, number ${i + 1}`,
      travel,
    }),
  );
  return { ...study, travel: { ...study.travel, bump: { ...study.travel.bump, limits, first: limits[0]! } } };
}

describe("flags", () => {
  test("twelve limits at one travel keep their pitch, their order and their room", () => {
    for (const at of [0.02, 0.19, 0.205, 0.23]) {
      const study = crowded(startingStudy("h-arm", "inch-pound"), 12, at);
      const scale = tapeScale(study, RECT);
      const placed = placeFlags(flagsOf(study, scale), scale, RECT, {});
      expect(placed.filter(({ flag }) => flag.kind === "hard" && flag.travel > 0)).toHaveLength(12);
      placed.forEach((one, i) => {
        expect(one.box.y).toBeGreaterThanOrEqual(RECT.y - 1);
        expect(one.box.y + one.box.height).toBeLessThanOrEqual(RECT.y + RECT.height + 1);
        const next = placed[i + 1];
        if (!next) return;
        expect(next.height - one.height).toBeGreaterThanOrEqual(FLAG_PITCH - 1e-9);
        expect(next.flag.travel).toBeLessThanOrEqual(one.flag.travel);
        expect(overlapOf(one.box, next.box)).toBeLessThan(1e-6);
      });
      // Of the twelve, the first to bite stands nearest to ride height.
      const orders = placed.filter(({ flag }) => flag.kind === "hard" && flag.travel > 0).map(({ flag }) => flag.order);
      expect(orders).toEqual([12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1]);
    }
  });

  test("no two words on a crowded tape overlap", () => {
    const study = crowded(startingStudy("h-arm", "inch-pound"), 12, 0.205);
    const boxes = textsOf(drawTape(study, 0.1, RECT)).map((text) => ({ text: text.text, box: boxOfText(text, 1) }));
    boxes.forEach((a, i) => {
      // A fraction's box is taller than what is drawn; rows are 21 px, words at most that.
      for (const b of boxes.slice(i + 1)) expect(overlapOf(a.box, b.box), `${a.text} / ${b.text}`).toBeLessThan(1e-6);
    });
  });

  test("a short tape leaves out the limits farthest beyond, never the stops", () => {
    const study = crowded(startingStudy("h-arm", "inch-pound"), 30, 0.205);
    const rect = { ...RECT, height: 200 };
    const scale = tapeScale(study, rect);
    const placed = placeFlags(flagsOf(study, scale), scale, rect, {});
    expect(placed.length).toBeLessThanOrEqual(10);
    expect(placed.filter(({ flag }) => flag.kind === "stop")).toHaveLength(2);
    expect(placed.some(({ flag }) => flag.order === 1)).toBe(true);
  });

  test("rows are in order, a pitch apart, within their bounds, and stay put where nothing crowds", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { maxLength: 20 }), (heights) => {
        const wanted = [...heights].sort((a, b) => a - b);
        const rows = fanned(wanted, 21, 0, 500);
        rows.forEach((row, i) => {
          expect(row).toBeGreaterThanOrEqual(-1e-9);
          expect(row).toBeLessThanOrEqual(500 + 1e-9);
          if (i > 0) expect(row - rows[i - 1]!).toBeGreaterThanOrEqual(21 - 1e-9);
        });
      }),
      { seed: 3, numRuns: 300 },
    );
    expect(fanned([10, 100, 200], 21, 0, 500)).toEqual([10, 100, 200]);
    // Two at one place share the shift evenly: the least sum of squares.
    expect(fanned([100, 100], 21, 0, 500)).toEqual([89.5, 110.5]);
  });
});

describe("blade", () => {
  for (const { kind, system } of CASES) {
    test(`numerals never lie under a line or a block: ${kind}, ${system}`, () => {
      const study = startingStudy(kind, system);
      const scale = tapeScale(study, RECT);
      const flags = flagsOf(study, scale);
      for (const travel of travelsOf(study)) {
        const taken = takenHeights(scale, flags, travel);
        const shown = numerals(study, scale, flags, travel);
        expect(shown.length).toBeGreaterThan(3);
        for (const numeral of shown) {
          const box = boxOfText(numeral, 1);
          for (const [from, to] of taken) expect(box.y + box.height <= from || box.y >= to, numeral.text).toBe(true);
          expect(box.x).toBeGreaterThan(scale.blade.x);
          expect(box.x + box.width).toBeLessThan(scale.blade.x + scale.blade.width);
        }
      }
    });
  }

  test("height and travel are each other's inverse, zero at ride height", () => {
    const study = startingStudy("five-link", "metric");
    const scale = tapeScale(study, RECT);
    for (const travel of [-0.1, 0, 0.0254, 0.2])
      expect(travelAt(scale, heightOf(scale, travel))).toBeCloseTo(travel, 12);
    const { handles, sheet } = drawTape(study, 0, RECT);
    expect(sheet.origin.y).toBeCloseTo(heightOf(scale, 0), 9);
    expect(handles.find(({ path }) => path === "travel")?.at.y).toBeCloseTo(heightOf(scale, 0), 9);
    expect(handles.find(({ path }) => path === "stops.bump")?.at.y).toBeCloseTo(
      heightOf(scale, study.travel.bump.stop.travel),
      9,
    );
  });

  test("marks: eighths at 28 px an inch, sixteenths when larger, millimetres by fives and ones", () => {
    const inch = 0.0254;
    const steps = (px: number, system: "inch-pound" | "metric"): number[] => [...graduationOf(px / inch, system).steps];
    expect(steps(28, "inch-pound").map((step) => step / inch)).toEqual([1, 1 / 2, 1 / 4, 1 / 8]);
    expect(steps(56, "inch-pound").map((step) => step / inch)).toEqual([1, 1 / 2, 1 / 4, 1 / 8, 1 / 16]);
    expect(steps(12, "inch-pound").map((step) => step / inch)).toEqual([2, 1, 1 / 2]);
    expect(steps(28, "metric").map((step) => Math.round(step * 1000))).toEqual([20, 10, 5]);
    expect(steps(90, "metric").map((step) => Math.round(step * 1000))).toEqual([10, 5, 1]);
    const marks = marksBetween({ steps: [inch, inch / 2, inch / 4] }, -inch, inch);
    expect(marks.map(({ rank }) => rank)).toEqual([0, 2, 1, 2, 0, 2, 1, 2, 0]);
  });
});
