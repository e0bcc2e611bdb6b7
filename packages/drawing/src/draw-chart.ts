import {
  type Cycle,
  type Dimension,
  moveThrough,
  type Quantity,
  type Study,
  solveAt,
  stations,
} from "@armwright/engine";
import { axisFor } from "./chart/axis.ts";
import { bites, curveLines, curvesOf, type Place } from "./chart/curves.ts";
import { foot, gridLines, head, markerLine, stopLines } from "./chart/frame.ts";
import { limitsOfQuantity } from "./chart/limit-lines.ts";
import type { ChartOptions } from "./chart/options.ts";
import { circle, polyline, rectangle, spot } from "./path.ts";
import type { Box, Drawing, Primitive } from "./primitive.ts";
import { area, group, patch, stroke } from "./sketch.ts";
import { outOfReachBoxes } from "./tape/blade.ts";
import { heightOf, type TapeScale } from "./tape/scale.ts";

/** A chart, and where its quantity falls across it: x = frame.x + (value − low)/(high − low)·frame.width, SI. */
export interface Chart extends Drawing {
  readonly frame: Box;
  readonly low: number;
  readonly high: number;
}

const STATIONS = 73;

/** The wheel moved through all of the tape, for any number of charts. */
export function chartCycle(study: Study, scale: TapeScale): Cycle {
  const { droop, bump } = study.range;
  const inside = 1 - 1e-6;
  const lowest = Math.max(scale.lowest, droop.travel * inside);
  const highest = Math.min(scale.highest, bump.travel * inside);
  return moveThrough(study.corner, stations(lowest, highest, STATIONS));
}

/**
 * One narrow chart of one or two quantities of a kind: travel upward on the tape's scale, the quantity across. `rect` gives
 * its left edge, width and top; the frame is as high as the tape's blade, the head stands above it.
 * Quantities that the car does not have are left out; with none left the chart is an empty frame.
 */
export function drawChart(study: Study, quantityIds: readonly string[], rect: Box, options: ChartOptions): Chart {
  const { scale } = options;
  const { pen } = scale;
  const quantities = quantityIds
    .flatMap((id) => study.quantities.find((quantity) => quantity.id === id) ?? [])
    .slice(0, 2);
  const dimension: Dimension = quantities[0]?.dimension ?? "ratio";
  const frame: Box = { x: rect.x, y: scale.top, width: rect.width, height: scale.bottom - scale.top };
  const curves = curvesOf(study, quantities, options.cycle ?? chartCycle(study, scale));
  const { over } = options;
  const second = over ? curvesOf(over.study, quantities, over.cycle ?? chartCycle(over.study, scale)) : [];
  const values = [...curves, ...second].flatMap(({ points }) => points.flatMap(({ value }) => value ?? []));
  const limits = nearLimits(study, quantities, values);
  const axis = axisFor([...values, ...limits], dimension, study.car.units, frame.width, pen);
  const place: Place = (travel, value) =>
    spot(frame.x + ((value - axis.low) / (axis.high - axis.low)) * frame.width, heightOf(scale, travel));
  const inFrame: Primitive[] = [
    ...outOfReachBoxes(study, scale, frame.x, frame.width).map(({ x, y, width, height }) =>
      patch("chart", rectangle(x, y, width, height), { fill: "none", hatch: "out-of-reach" }),
    ),
    ...uncertainBand(options.between ?? [], place),
    ...stopLines(study, scale, frame, options.held),
    ...second.flatMap((curve) => curveLines(curve, place, { ink: "pencil", weight: "visible", dash: "short" })),
    ...curves.flatMap((curve, index) =>
      curveLines(curve, place, index === 0 ? { weight: "curve" } : { weight: "visible", dash: "short" }),
    ),
    ...limits.map((value) => stroke("chart", place(scale.highest, value), place(scale.lowest, value), { ink: "stop" })),
  ];
  const parts: Primitive[] = [
    ...gridLines(study, scale, frame, axis, options),
    group("chart", inFrame, { clip: frame }),
    area("chart", rectangle(frame.x, frame.y, frame.width, frame.height), {
      fill: "none",
      ink: "grid-0",
      weight: "thin",
    }),
    ...markerLine(scale, frame, options.travel),
    ...bites(curves, limits, place, pen),
    ...dots(study, quantities, options.travel, frame, place, pen),
    ...head(study, quantities, frame, options, pen),
    ...foot(axis, frame, pen),
  ];
  const name = quantities.map(({ label }) => label).join(" and ");
  return {
    sheet: {
      width: rect.x + rect.width,
      height: scale.bottom + 24 * pen,
      scale: scale.scale,
      origin: spot(frame.x, heightOf(scale, 0)),
      pen,
    },
    parts: [group("chart", parts, { meaning: quantities.map(({ id }) => id).join(" "), label: `${name} over travel` })],
    handles: [],
    frame,
    low: axis.low,
    high: axis.high,
  };
}

/** What measuring and building leave open about a curve. */
function uncertainBand(between: NonNullable<ChartOptions["between"]>, place: Place): Primitive[] {
  const known = between.flatMap(({ travel, low, high }) =>
    low === null || high === null ? [] : [{ travel, low, high }],
  );
  if (known.length < 2) return [];
  const outline = [
    ...known.map(({ travel, low }) => place(travel, low)),
    ...known.map(({ travel, high }) => place(travel, high)).reverse(),
  ];
  return [patch("chart", polyline(outline, true), { fill: "none", hatch: "uncertain", meaning: "uncertain" })];
}

/** Limits that lie near enough to the curves to be drawn without squeezing them. */
function nearLimits(study: Study, quantities: readonly Quantity[], values: readonly number[]): number[] {
  const limits = quantities.flatMap(({ id }) => limitsOfQuantity(study.car, id));
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = Math.max((high - low) * 0.6, Math.abs(high) * 0.02);
  const near = limits.filter((limit) => limit >= low - room && limit <= high + room);
  return [...new Set(near)];
}

/** Where the wheel is now: a filled dot on the first curve, an open one on the second. */
function dots(
  study: Study,
  quantities: readonly Quantity[],
  travel: number,
  frame: Box,
  place: Place,
  pen: number,
): Primitive[] {
  const row = solveAt(study.corner, travel)?.row;
  if (!row) return [];
  return quantities
    .flatMap(({ id, read }, index): Primitive[] => {
      const value = read(row, study.corner);
      if (value === null || !Number.isFinite(value)) return [];
      const at = place(travel, value);
      if (at.x < frame.x || at.x > frame.x + frame.width || at.y < frame.y || at.y > frame.y + frame.height) return [];
      const style = index === 0 ? ({ fill: "ink", ink: "paper" } as const) : ({ fill: "paper", ink: "ink" } as const);
      return [area("chart", circle(at, 3.8 * pen), { ...style, weight: "visible", meaning: id })];
    })
    .reverse();
}
