import { readdirSync, readFileSync } from "node:fs";
import { boxOfText, drawChart, type Primitive, type TextPrimitive } from "@armwright/drawing";
import { type Study, study, type UnitSystem } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { expect, test } from "vitest";
import { CHART_TITLES } from "../../src/board/chart-titles.ts";
import { CHART_GAP, CHART_WIDTH, HEAD_GAP, layBoard, NUMERALS } from "../../src/board/layout.ts";
import { shownIn } from "../../src/board/shown-in.ts";
import { chartIds } from "../../src/sheet/chart-ids.ts";
import { STEPS } from "../../src/steps/steps.ts";
import { tapeEnds } from "../../src/store/travel.ts";

const EXAMPLES = new URL("../../../../examples/", import.meta.url);
const CARS = readdirSync(EXAMPLES).filter((file) => file.endsWith(".car.json"));

const textsOf = (parts: readonly Primitive[]): readonly TextPrimitive[] =>
  parts.flatMap((part) => (part.shape === "text" ? [part] : part.shape === "group" ? textsOf(part.parts) : []));

/** Words of different charts, or of one, that lie over one another. */
function overlaps(made: Study, ids: readonly string[]): readonly string[] {
  const { droop, bump } = tapeEnds(made);
  const range = { lowest: droop, highest: bump };
  const { scale } = layBoard(made, { width: 1240, height: 600 }, ids.length, range);
  const texts = ids.flatMap((id, index) => {
    const rect = { x: NUMERALS + index * (CHART_WIDTH + CHART_GAP), y: 0, width: CHART_WIDTH, height: 600 };
    const title = CHART_TITLES[id];
    const room = CHART_WIDTH + CHART_GAP - HEAD_GAP;
    const numerals = index === 0;
    const options = { scale, travel: scale.highest, room, numerals, ...(title !== undefined && { title }) };
    return textsOf(drawChart(made, id.split("+"), rect, options).parts);
  });
  expect(texts.length).toBeGreaterThan(4 * ids.length);
  const boxes = texts.map((part) => ({ words: part.text, ...boxOfText(part, scale.pen) }));
  return boxes.flatMap((a, index) =>
    boxes.slice(index + 1).flatMap((b) => {
      const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      const up = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      // Boxes are generous upward; across, less than 3 px between two numbers reads as one.
      return across > -3 && up > 3 ? [`${a.words} / ${b.words}`] : [];
    }),
  );
}

test.each(CARS.flatMap((car) => (["inch-pound", "metric"] as const).map((units) => [car, units] as const)))(
  "heads and numbers of the charts stand apart: %s in %s, at every step",
  (file: string, units: UnitSystem) => {
    const reading = readCarDocument(readFileSync(new URL(file, EXAMPLES), "utf8"));
    if (!reading.ok) throw new Error(`${file} cannot be read`);
    const made = shownIn(study(reading.car), units);
    const found = STEPS.flatMap(({ id }) => overlaps(made, chartIds(made, id, null)).map((words) => `${id}: ${words}`));
    expect(found).toEqual([]);
  },
);
