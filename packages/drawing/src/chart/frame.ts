import { type Quantity, type Study, solveAt } from "@armwright/engine";
import { spot } from "../path.ts";
import type { Box, Primitive } from "../primitive.ts";
import { stroke, text } from "../sketch.ts";
import { heightOf, isOnTape, marksBetween, onBlade, type TapeScale } from "../tape/scale.ts";
import { widthOf } from "../text-size.ts";
import { headUnit, reading } from "../words.ts";
import { type Axis, numberPlace } from "./axis.ts";
import type { ChartOptions } from "./options.ts";

const LINE = 16;

/** Graph paper: the tape's numeral heights and the axis' marks; zero of both heavier. */
export function gridLines(study: Study, scale: TapeScale, frame: Box, axis: Axis, options: ChartOptions): Primitive[] {
  const { pen } = scale;
  const right = frame.x + frame.width;
  const step = scale.graduation.steps[0]!;
  const marks = marksBetween({ steps: [step] }, scale.lowest, scale.highest);
  const x = (value: number): number => frame.x + ((value - axis.low) / (axis.high - axis.low)) * frame.width;
  const zero = Math.abs(step) * 1e-6;
  return [
    ...marks.map(({ travel }) => {
      const y = heightOf(scale, travel);
      const isZero = Math.abs(travel) < zero;
      return stroke("chart", spot(frame.x, y), spot(right, y), {
        ink: isZero ? "grid-0" : "grid",
        weight: isZero ? "ghost" : "thin",
      });
    }),
    ...axis.ticks.map(({ value }) => {
      const isZero = Math.abs(value) < 1e-12;
      return stroke("chart", spot(x(value), frame.y), spot(x(value), frame.y + frame.height), {
        ink: isZero ? "grid-0" : "grid",
        weight: isZero ? "ghost" : "thin",
      });
    }),
    ...(options.numerals
      ? marks
          .filter(({ travel }, index) => Math.abs(travel) < zero || (index > 0 && Math.round(travel / step) % 2 === 0))
          .map(({ travel }) =>
            text(
              "chart",
              spot(frame.x - 7 * pen, heightOf(scale, travel) + 5 * pen),
              reading(travel, "length", study.car.units, true),
              {
                anchor: "end",
              },
            ),
          )
      : []),
  ];
}

/** The chosen stops, level across. */
export function stopLines(study: Study, scale: TapeScale, frame: Box, held: string | undefined): Primitive[] {
  return (["bump", "droop"] as const).flatMap((direction) => {
    const { travel } = study.travel[direction].stop;
    if (!isOnTape(scale, travel)) return [];
    const y = heightOf(scale, travel);
    return [
      stroke("chart", spot(frame.x, y), spot(frame.x + frame.width, y), {
        ink: held === `stops.${direction}` ? "hold" : "ink",
        meaning: `stops.${direction}`,
      }),
    ];
  });
}

/** The wheel now, level across and a little past both edges. */
export function markerLine(scale: TapeScale, frame: Box, travel: number): Primitive[] {
  const y = heightOf(scale, onBlade(scale, travel));
  const over = 3 * scale.pen;
  return [stroke("chart", spot(frame.x - over, y), spot(frame.x + frame.width + over, y))];
}

/**
 * Name in up to two lines; beneath it the reading now with its unit (angles carry their degree themselves). Where the unit
 * does not fit behind the reading it stands under the numbers of the axis.
 */
export function head(
  study: Study,
  quantities: readonly Quantity[],
  frame: Box,
  options: ChartOptions,
  pen: number,
): Primitive[] {
  const system = study.car.units;
  const first = quantities[0];
  if (!first) return [];
  const names = options.title ?? quantities.map(({ short }) => short).join(" / ");
  const unit = first.dimension === "angle" ? "" : headUnit(first.dimension, system);
  const row = solveAt(study.corner, options.travel)?.row ?? null;
  const readings = quantities.map(({ read, dimension, signed }) =>
    reading(row ? read(row, study.corner) : null, dimension, system, signed && dimension === "length"),
  );
  const room = options.room ?? frame.width + 8 * pen;
  const both = readings.join("  ");
  const shown = widthOf(both, "reading", pen) <= room ? both : (readings[0] ?? "");
  const end = widthOf(shown, "reading", pen) + 4 * pen;
  const isBehind = end + widthOf(unit, "label", pen) <= room;
  const lines = wrapped(names, room, pen);
  const base = frame.y - 9 * pen;
  const foot = spot(frame.x + frame.width / 2, frame.y + frame.height + 33 * pen);
  return [
    ...lines.map((words, index) =>
      text("chart", spot(frame.x, base - (19 + LINE * (lines.length - 1 - index)) * pen), words),
    ),
    text("chart", spot(frame.x, base), shown, { size: "reading", bold: true, ink: "ink" }),
    ...(unit === ""
      ? []
      : [isBehind ? text("chart", spot(frame.x + end, base), unit) : text("chart", foot, unit, { anchor: "middle" })]),
  ];
}

/** Words in two lines at most. */
export function wrapped(words: string, width: number, pen: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const last = lines[lines.length - 1];
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && widthOf(joined, "label", pen) <= width) lines[lines.length - 1] = joined;
    else if (lines.length < 2) lines.push(word);
    else lines[1] = `${lines[1]} ${word}`;
  }
  return lines;
}

/** Numbers under the frame; those at the ends hardly reach past its edges. */
export function foot(axis: Axis, frame: Box, pen: number): Primitive[] {
  return axis.ticks.flatMap((tick) => {
    const x = frame.x + ((tick.value - axis.low) / (axis.high - axis.low)) * frame.width;
    const y = frame.y + frame.height;
    const middle = frame.x + numberPlace(tick, axis, frame.width, pen);
    return [
      stroke("chart", spot(x, y), spot(x, y + 4 * pen), { weight: "thin" }),
      text("chart", spot(middle, y + 18 * pen), tick.text, { anchor: "middle" }),
    ];
  });
}
