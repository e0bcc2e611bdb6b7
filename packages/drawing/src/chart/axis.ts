import { type Dimension, fromUnit, toUnit, type UnitSystem } from "@armwright/engine";
import { widthOf } from "../text-size.ts";
import { reading } from "../words.ts";

/** A chart's axis across: its ends in SI, and the marks that carry a number. */
export interface Axis {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
}

/** Parts of an inch as a tape has them, then whole ones. */
const INCH_STEPS = [1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 6, 12, 24, 48, 120];
/** A narrower span than this (in the document's unit) is only rounding: nothing is drawn larger. */
const LEAST_SPAN: Partial<Record<Dimension, number>> = { angle: 0.5, ratio: 0.1, percent: 5 };
const LEAST_LENGTH: Readonly<Record<UnitSystem, number>> = { "inch-pound": 1 / 4, metric: 6 };

/** An axis for values (SI) that is `width` sheet units long, its numbers set as labels and not touching. */
export function axisFor(
  values: readonly number[],
  dimension: Dimension,
  system: UnitSystem,
  width: number,
  pen: number,
): Axis {
  const inUnit = values.filter(Number.isFinite).map((value) => toUnit(value, dimension, system));
  const [from, to] = spanOf(inUnit, dimension, system);
  const pad = (to - from) * 0.08;
  const low = from - pad;
  const high = to + pad;
  const marks = stepsFor(dimension, system, (high - low) / 8).map((step) =>
    ticksOf(low, high, step, dimension, system),
  );
  const room = (ticks: Ticks): boolean => fit(ticks, low, high, width, pen);
  // All marks of the finest step that has room; else the outer two of the coarsest; else the one that there is.
  const ticks =
    marks.find((all) => all.length > 1 && room(all)) ??
    marks
      .map((all) => [all[0], all[all.length - 1]].filter((tick) => tick !== undefined))
      .findLast((ends, index) => marks[index]!.length > 1 && room(ends)) ??
    marks.find((all) => all.length === 1 && room(all)) ??
    [];
  return toSi({ low, high, ticks }, dimension, system);
}

/** Ends of the values; where a few run far away (an instant centre passing infinity), those of the most. */
function spanOf(values: readonly number[], dimension: Dimension, system: UnitSystem): readonly [number, number] {
  const least = dimension === "length" ? LEAST_LENGTH[system] : (LEAST_SPAN[dimension] ?? 1e-6);
  if (values.length === 0) return [-least / 2, least / 2];
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))]!;
  let [from, to] = [at(0), at(1)];
  const most = at(0.85) - at(0.15);
  if (to - from > 12 * most && most > 0) {
    from = Math.max(from, at(0.15) - 2 * most);
    to = Math.min(to, at(0.85) + 2 * most);
  }
  if (to - from >= least) return [from, to];
  const middle = (from + to) / 2;
  return [middle - least / 2, middle + least / 2];
}

/** Round steps, the finest first: at least `least` apart. */
function stepsFor(dimension: Dimension, system: UnitSystem, least: number): readonly number[] {
  if (dimension === "length" && system === "inch-pound") {
    const found = INCH_STEPS.filter((step) => step >= least);
    if (found.length > 0) return found;
  }
  const power = 10 ** Math.floor(Math.log10(Math.max(least, 1e-9)));
  return [1, 2, 5, 10, 20, 50, 100, 200, 500].map((factor) => factor * power).filter((step) => step >= least);
}

type Ticks = readonly { readonly value: number; readonly text: string }[];

function ticksOf(low: number, high: number, step: number, dimension: Dimension, system: UnitSystem): Ticks {
  const from = Math.ceil(low / step - 1e-9);
  const to = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => {
    const value = (from + i) * step;
    return { value, text: tickText(value, step, dimension, system) };
  });
}

/** Only as many decimals as the step has; thirty-seconds where sixteenths would not do. */
function tickText(value: number, step: number, dimension: Dimension, system: UnitSystem): string {
  if (dimension === "length" && system === "inch-pound")
    return reading(fromUnit(value, "length", system), "length", system);
  const decimals = Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9)));
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `\u2212${text}` : text;
}

const PAST = 4;

/** Where the middle of a mark's number stands, sheet units from the frame's left edge: under its mark, but hardly past the frame. */
export function numberPlace(
  { value, text }: Ticks[number],
  { low, high }: { readonly low: number; readonly high: number },
  width: number,
  pen: number,
): number {
  const half = Math.min(width, widthOf(text, "label", pen)) / 2 - PAST * pen;
  return Math.min(width - half, Math.max(half, ((value - low) / (high - low)) * width));
}

function fit(ticks: Ticks, low: number, high: number, width: number, pen: number): boolean {
  let last = Number.NEGATIVE_INFINITY;
  return ticks.every((tick) => {
    const half = widthOf(tick.text, "label", pen) / 2;
    const x = numberPlace(tick, { low, high }, width, pen);
    const free = x - half >= last;
    last = x + half + 5 * pen;
    return free;
  });
}

const toSi = ({ low, high, ticks }: Axis, dimension: Dimension, system: UnitSystem): Axis => ({
  low: fromUnit(low, dimension, system),
  high: fromUnit(high, dimension, system),
  ticks: ticks.map(({ value, text }) => ({ value: fromUnit(value, dimension, system), text })),
});
