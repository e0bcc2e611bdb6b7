import { describe, expect, test } from "vitest";
import { axisFor } from "../src/chart/axis.ts";
import { chartCycle, drawChart, heightOf, tapeScale } from "../src/index.ts";
import { flat, startingStudy, textsOf } from "./cars.ts";

const RECT = { x: 0, y: 0, width: 400, height: 600 };
const DEGREE = Math.PI / 180;

describe("axis", () => {
  test("inches are marked as a tape is, millimetres by round numbers, and numbers do not touch", () => {
    // Kept within a narrow frame, three numbers would touch.
    const narrow = axisFor([-0.011, 0.012], "length", "inch-pound", 56, 1);
    expect(narrow.ticks.map(({ text }) => text)).toEqual(["\u22121/2", "1/2"]);
    const inches = axisFor([-0.011, 0.012], "length", "inch-pound", 68, 1);
    expect(inches.ticks.map(({ text }) => text)).toEqual(["\u22121/2", "0", "1/2"]);
    for (const { value, text } of inches.ticks) {
      expect((value / 0.0254) * 16).toBeCloseTo(Math.round((value / 0.0254) * 16), 9);
      expect(text).not.toMatch(/\./);
    }
    const metric = axisFor([-0.011, 0.012], "length", "metric", 56, 1);
    expect(metric.ticks.map(({ text }) => text)).toEqual(["\u221210", "10"]);
    expect(axisFor([-0.011, 0.012], "length", "metric", 80, 1).ticks.map(({ text }) => text)).toEqual([
      "\u221210",
      "0",
      "10",
    ]);
    expect(axisFor([0, 26 * DEGREE], "angle", "metric", 56, 1).ticks.map(({ text }) => text)).toEqual(["0", "20"]);
  });

  test("values that hardly change are not blown up; a few that run away do not flatten the rest", () => {
    const still = axisFor([0.1 * DEGREE, 0.1001 * DEGREE], "angle", "metric", 56, 1);
    expect((still.high - still.low) / DEGREE).toBeGreaterThanOrEqual(0.5);
    const steady = Array.from({ length: 40 }, (_, i) => 1 + i / 100);
    const wild = axisFor([...steady, 5000, -9000], "length", "metric", 56, 1);
    expect(wild.high - wild.low).toBeLessThan(4);
  });

  test("no values at all still give an axis", () => {
    const empty = axisFor([], "ratio", "metric", 56, 1);
    expect(empty.high).toBeGreaterThan(empty.low);
  });
});

describe("chart", () => {
  const study = startingStudy("h-arm", "inch-pound");
  const scale = tapeScale(study, RECT);
  const cycle = chartCycle(study, scale);
  const rect = { x: 500, y: 0, width: 56, height: 600 };

  test("is bolted to the tape: same top, same bottom, zero at the same height", () => {
    const chart = drawChart(study, ["camber"], rect, { scale, travel: 0, cycle });
    expect(chart.frame).toEqual({ x: 500, y: scale.top, width: 56, height: scale.bottom - scale.top });
    expect(chart.sheet.origin.y).toBeCloseTo(heightOf(scale, 0), 12);
  });

  test("a joint's own limit is a red upright, and the curve is ringed where the study says it bites", () => {
    const chart = drawChart(study, ["outerJoint", "innerJoint"], rect, { scale, travel: 0, cycle });
    const rings = flat(chart.parts).filter((part) => part.shape === "area" && part.ink === "stop");
    const heights = rings.map((ring) => (ring.shape === "area" && ring.path[0]?.to === "move" ? ring.path[0].at.y : 0));
    const bites = [...study.travel.bump.limits, ...study.travel.droop.limits]
      .filter(({ id, travel }) => /^(inner|outer)-joint$/.test(id) && travel < scale.highest && travel > scale.lowest)
      .map(({ travel }) => heightOf(scale, travel));
    expect(bites.length).toBeGreaterThan(0);
    // The chart's own stations are some 4 mm apart and joined by straight lines: a px is enough.
    for (const bite of bites) expect(Math.min(...heights.map((height) => Math.abs(height - bite)))).toBeLessThan(1);
    const upright = flat(chart.parts).find((part) => part.shape === "line" && part.ink === "stop");
    const limit = study.car.driveshaft?.outer.angleLimit ?? 0;
    const x = chart.frame.x + ((limit - chart.low) / (chart.high - chart.low)) * chart.frame.width;
    expect(upright?.shape === "line" && upright.path[0]?.to === "move" && upright.path[0].at.x).toBeCloseTo(x, 9);
  });

  test("a second study is laid over in pencil, and unknown quantities are left out", () => {
    const other = startingStudy("double-a-arm", "inch-pound");
    const chart = drawChart(study, ["camber"], rect, { scale, travel: 0, cycle, over: { study: other } });
    expect(
      flat(chart.parts).some((part) => part.shape === "line" && part.ink === "pencil" && part.meaning === "camber"),
    ).toBe(true);
    const none = drawChart(study, ["no such quantity"], rect, { scale, travel: 0, cycle });
    expect(flat(none.parts).some((part) => part.meaning === "no such quantity")).toBe(false);
  });

  test("the head tells the reading now with its unit", () => {
    const words = textsOf(drawChart(study, ["shockLength"], { ...rect, width: 90 }, { scale, travel: 0, cycle })).map(
      ({ text }) => text,
    );
    expect(words).toContain("20 11/16");
    expect(words).toContain("in");
  });
});
