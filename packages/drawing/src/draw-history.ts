import type { Dimension, UnitSystem } from "@armwright/engine";
import { type Axis, axisFor } from "./chart/axis.ts";
import { circle, polyline, rectangle, spot } from "./path.ts";
import type { Box, Primitive, Spot } from "./primitive.ts";
import { area, line, stroke, text } from "./sketch.ts";
import { headUnit } from "./words.ts";

/** One quantity over time, SI. */
export interface HistoryStrip {
  readonly id: string;
  readonly label: string;
  readonly dimension: Dimension;
  /** Written in place of the dimension's own unit, e.g. `g`. */
  readonly unit?: string;
  readonly values: Float64Array;
  /** Levels that matter: what stops the wheel, what it carries at rest. */
  readonly levels?: readonly HistoryLevel[];
  /** At the right of its head, e.g. `most 3,810 lb`. */
  readonly most: string;
}

export interface HistoryLevel {
  readonly value: number;
  readonly label: string;
  readonly isStop?: boolean;
}

export interface HistoryChart {
  readonly parts: readonly Primitive[];
  readonly height: number;
  /** Left and right end of the time axis on the sheet, and the times there, s. */
  readonly from: { readonly x: number; readonly time: number };
  readonly to: { readonly x: number; readonly time: number };
  readonly strips: readonly StripPlace[];
}

export interface StripPlace {
  readonly id: string;
  readonly frame: Box;
  /** Values at the frame's foot and at its top, SI. */
  readonly low: number;
  readonly high: number;
}

const GUTTER = 52;
const HEAD = 21;
const FRAME = 58;
const GAP = 9;
const FOOT = 36;
const RIGHT = 8;

/** Histories over one another on one time axis, as on a chart recorder: each with its unit, its most and its levels. */
export function drawHistory(
  time: Float64Array,
  strips: readonly HistoryStrip[],
  width: number,
  units: UnitSystem,
): HistoryChart {
  const first = time[0] ?? 0;
  const last = Math.max(first + 1e-6, time[time.length - 1] ?? 1);
  const left = GUTTER;
  const right = width - RIGHT;
  const across = (t: number): number => left + ((t - first) / (last - first)) * (right - left);
  const seconds = axisFor([first, (first + last) / 2, last], "ratio", units, right - left, 1);
  const ticks = seconds.ticks.filter(({ value }) => value >= first - 1e-9 && value <= last + 1e-9);
  const parts: Primitive[] = [];
  const places = strips.map((strip, index): StripPlace => {
    const frame: Box = { x: left, y: index * (HEAD + FRAME + GAP) + HEAD, width: right - left, height: FRAME };
    const { low, high } = drawStrip(parts, strip, frame, { time, across, ticks, units });
    return { id: strip.id, frame, low, high };
  });
  const bottom = strips.length * (HEAD + FRAME + GAP) - GAP;
  for (const { value, text: words } of ticks)
    parts.push(text("chart", spot(across(value), bottom + 17), words, { anchor: "middle" }));
  parts.push(text("chart", spot(right, bottom + 32), "seconds", { anchor: "end" }));
  return { parts, height: bottom + FOOT, from: { x: left, time: first }, to: { x: right, time: last }, strips: places };
}

interface Ground {
  readonly time: Float64Array;
  readonly across: (time: number) => number;
  readonly ticks: readonly { readonly value: number }[];
  readonly units: UnitSystem;
}

function drawStrip(parts: Primitive[], strip: HistoryStrip, frame: Box, ground: Ground) {
  const { label, dimension, values, levels = [], most, id, unit } = strip;
  const { time, across, ticks, units } = ground;
  const { least, greatest, at } = endsOf(values);
  const all = [least, greatest, 0, ...levels.map(({ value }) => value)];
  const [from, to] = [Math.min(...all), Math.max(...all)];
  const axis = axisFor([from, (from + to) / 2, to], dimension, units, frame.height * 2.4, 1);
  const up = (value: number): number =>
    frame.y + frame.height - ((value - axis.low) / (axis.high - axis.low)) * frame.height;
  const end = frame.x + frame.width;
  const inUnit = unit ?? headUnit(dimension, units);
  parts.push(text("chart", spot(frame.x, frame.y - 6), `${label}, ${inUnit}`, { ink: "ink", bold: true }));
  parts.push(text("chart", spot(end, frame.y - 6), most, { anchor: "end" }));
  for (const { value } of ticks)
    parts.push(stroke("chart", spot(across(value), frame.y), spot(across(value), frame.y + frame.height), GRID));
  for (const { value, text: words } of wideApart(axis, frame.height)) {
    parts.push(
      stroke("chart", spot(frame.x, up(value)), spot(end, up(value)), Math.abs(value) < 1e-12 ? ZERO : GRID),
      text("chart", spot(frame.x - 6, up(value) + 5), words, { anchor: "end" }),
    );
  }
  parts.push(
    area("chart", rectangle(frame.x, frame.y, frame.width, frame.height), {
      fill: "none",
      ink: "grid-0",
      weight: "thin",
    }),
  );
  for (const { value, isStop, label: words } of levels) {
    parts.push(
      stroke("chart", spot(frame.x, up(value)), spot(end, up(value)), {
        ink: isStop ? "stop" : "pencil",
        weight: isStop ? "visible" : "thin",
        dash: isStop ? "solid" : "short",
        meaning: words,
      }),
    );
  }
  parts.push(
    line("chart", polyline(thinned(time, values, across, up, frame.width)), { weight: "visible", meaning: id }),
    area("chart", circle(spot(across(time[at] ?? 0), up(values[at] ?? 0)), 3.6), { weight: "visible", fill: "paper" }),
  );
  for (const { value, isStop, label: words } of levels) {
    const isHigh = up(value) < frame.y + frame.height / 2;
    parts.push(
      text("chart", spot(end - 4, up(value) + (isHigh ? 14 : -4)), words, {
        anchor: "end",
        ink: isStop ? "stop" : "ink-2",
        halo: "paper",
      }),
    );
  }
  return axis;
}

/** Level numbers need this much height each, px. */
const LINE = 15;

/** Every second or third tick where all of them would touch; the one at nothing is always among them. */
function wideApart({ ticks, low, high }: Axis, height: number): Axis["ticks"] {
  const [first, second] = ticks;
  if (!first || !second) return ticks;
  const step = second.value - first.value;
  const every = Math.max(1, Math.ceil((LINE * (high - low)) / (step * height)));
  return ticks.filter(({ value }) => Math.round(value / step) % every === 0);
}

const GRID = { ink: "grid", weight: "thin" } as const;
const ZERO = { ink: "grid-0", weight: "ghost" } as const;

/** Least and greatest, and where the larger of them in size is. */
function endsOf(values: Float64Array) {
  let least = 0;
  let greatest = 0;
  let at = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    if (value < least) least = value;
    if (value > greatest) greatest = value;
    if (Math.abs(value) > Math.abs(values[at]!)) at = i;
  }
  return { least, greatest, at };
}

/** One px of the sheet at a time: its first, least, greatest and last value, so that no spike is lost. */
function thinned(
  time: Float64Array,
  values: Float64Array,
  across: (time: number) => number,
  up: (value: number) => number,
  width: number,
): readonly Spot[] {
  if (values.length <= 2 * width) return Array.from(values, (value, i) => spot(across(time[i]!), up(value)));
  const spots: Spot[] = [];
  let i = 0;
  while (i < values.length) {
    const pixel = Math.floor(across(time[i]!));
    let [low, high, next] = [i, i, i];
    for (; next < values.length && Math.floor(across(time[next]!)) === pixel; next += 1) {
      if (values[next]! < values[low]!) low = next;
      if (values[next]! > values[high]!) high = next;
    }
    const kept = [...new Set([i, Math.min(low, high), Math.max(low, high), next - 1])];
    for (const each of kept) spots.push(spot(across(time[each]!), up(values[each]!)));
    i = next;
  }
  return spots;
}
