import { study } from "@armwright/engine";
import { readCarValue, startingDocument } from "@armwright/engine/document";
import { expect, test } from "vitest";
import { cycleHeights, nextHeight } from "../../src/phone/cycle-heights.ts";

const reading = readCarValue(startingDocument("h-arm", "inch-pound"));
if (!reading.ok) throw new Error("the starting car cannot be read");
const made = study(reading.car);

test("heights go from full droop to full bump, on whole inches between", () => {
  const heights = cycleHeights(made, "inch-pound");
  expect(heights[0]).toBe(made.travel.droop.stop.travel);
  expect(heights.at(-1)).toBe(made.travel.bump.stop.travel);
  expect(heights).toContain(0);
  for (const height of heights.slice(1, -1)) expect(height / 0.0254).toBeCloseTo(Math.round(height / 0.0254), 9);
});

test("the next height is found from anywhere", () => {
  const heights = [-0.1, -0.05, 0, 0.05];
  expect(nextHeight(heights, 0.01, 1)).toBe(0.05);
  expect(nextHeight(heights, 0.01, -1)).toBe(0);
  expect(nextHeight(heights, 0.05, 1)).toBe(0.05);
});
