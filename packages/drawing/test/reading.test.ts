import { readFileSync } from "node:fs";
import { formatLength, type SurveyReading, study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { drawPoints } from "../src/draw-points.ts";
import { drawReading } from "../src/draw-reading.ts";
import type { LinePrimitive, Primitive, Spot } from "../src/primitive.ts";

const text = readFileSync(new URL("../../../examples/brittlebush.car.json", import.meta.url), "utf8");
const reading = readCarDocument(text);
if (!reading.ok || !reading.car.survey) throw new Error("the example has a survey");
const { survey, result } = reading.car.survey;
const made = study(reading.car);

const flat = (parts: readonly Primitive[]): readonly Primitive[] =>
  parts.flatMap((part) => (part.shape === "group" ? flat(part.parts) : [part]));
const tapeOf = (parts: readonly Primitive[]): readonly Spot[] => {
  const line = flat(parts).find((part): part is LinePrimitive => part.shape === "line" && part.meaning === "tape");
  return (line?.path ?? []).flatMap((step) => (step.to === "close" ? [] : [step.at]));
};
const wordsOf = (parts: readonly Primitive[]): readonly string[] =>
  flat(parts).flatMap((part) => (part.shape === "text" ? [part.text] : []));
const draw = (of: SurveyReading, words = "") =>
  drawReading({ study: made, points: result.points, reading: of, text: words }, 360, 220);

describe("a reading drawn on the car", () => {
  test.each(survey.readings.map((each, index) => [`${index + 1}: ${each.kind}`, each] as const))(
    "%s has both its ends on the sheet, its names, and nothing without a number",
    (_, each) => {
      const drawing = draw(each, formatLength(0.3, "inch-pound"));
      const ends = tapeOf(drawing.parts);
      expect(ends).toHaveLength(2);
      for (const { x, y } of ends) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(360);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(220);
      }
      const names = survey.points.map(({ name }) => name);
      expect(wordsOf(drawing.parts).filter((words) => names.includes(words)).length).toBeGreaterThan(0);
      expect(JSON.stringify(drawing)).not.toMatch(/null|NaN/);
    },
  );

  test("a tape is seen in the view in which it is longest, to scale", () => {
    const along = survey.readings.find(({ kind }) => kind === "tape");
    if (along?.kind !== "tape") throw new Error("the example has tapes");
    // From the front of a frame tube to its rear: along the car, so not from behind.
    const drawing = draw(along);
    expect(drawing.view).not.toBe("from behind");
    const [a, b] = tapeOf(drawing.parts);
    const [from, to] = [result.points[along.from]!.at, result.points[along.to]!.at];
    const long = Math.hypot(from.x - to.x, from.y - to.y, from.z - to.z);
    expect(Math.hypot(a!.x - b!.x, a!.y - b!.y) / drawing.sheet.scale / long).toBeGreaterThan(0.99);
  });

  test("without a car the points are drawn alone", () => {
    const drawing = drawReading(
      { study: null, points: result.points, reading: survey.readings[30]!, text: "" },
      360,
      220,
    );
    expect(tapeOf(drawing.parts)).toHaveLength(2);
  });
});

test("points to be chosen from: all on the sheet, those in hand named before others", () => {
  for (const view of ["from behind", "from above", "from the left"] as const) {
    const drawing = drawPoints({ study: made, points: result.points, held: ["hub face"], view }, 360, 300);
    expect(drawing.handles).toHaveLength(result.points.length);
    for (const { at } of drawing.handles) {
      expect(at.x).toBeGreaterThan(0);
      expect(at.x).toBeLessThan(360);
      expect(at.y).toBeGreaterThan(0);
      expect(at.y).toBeLessThan(300);
    }
    expect(wordsOf(drawing.parts)).toContain("hub face");
  }
});
