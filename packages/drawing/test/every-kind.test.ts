import { describe, expect, test } from "vitest";
import {
  chartCycle,
  drawChart,
  drawLeft,
  drawRear,
  drawTape,
  drawTop,
  fitLeft,
  fitRear,
  fitTop,
  svgText,
  tapeScale,
} from "../src/index.ts";
import { badNumbers, CASES, positionAt, simplestStudy, startingStudy, travelsOf } from "./cars.ts";

const RECT = { x: 0, y: 0, width: 398, height: 600 };

for (const { kind, system } of CASES) {
  for (const [name, make] of [
    ["starting car", startingStudy],
    ["car with nothing that may be left out", simplestStudy],
  ] as const) {
    describe(`${kind}, ${system}, ${name}`, () => {
      const study = make(kind, system);
      const travels = travelsOf(study);

      test("all three views are finite at every position, and the same twice", () => {
        for (const travel of travels) {
          const position = positionAt(study, travel);
          const draw = () => [
            drawRear(study, position, fitRear(study, 620, 560)),
            drawTop(study, position, fitTop(study, 190, 150)),
            drawLeft(study, position, fitLeft(study, 190, 150)),
            drawTop(study, position, fitTop(study, 400, 400), { detail: "full" }),
          ];
          const drawings = draw();
          expect(drawings.flatMap((drawing) => badNumbers(drawing))).toEqual([]);
          for (const drawing of drawings) expect(svgText(drawing)).not.toMatch(/NaN|undefined|Infinity/);
          expect(draw()).toEqual(drawings);
        }
      });

      test("tape and a chart of every quantity are finite", () => {
        const scale = tapeScale(study, RECT);
        const cycle = chartCycle(study, scale);
        for (const travel of travels) expect(badNumbers(drawTape(study, travel, RECT))).toEqual([]);
        for (const { id } of study.quantities) {
          const chart = drawChart(study, [id], { x: 0, y: 0, width: 56, height: 600 }, { scale, travel: 0, cycle });
          expect(badNumbers(chart), id).toEqual([]);
          expect(chart.high).toBeGreaterThan(chart.low);
        }
      });
    });
  }
}
