import { type Dimension, formatLength, formatNumber, fromUnit, toUnit, type UnitSystem } from "@armwright/engine";

/** A line of the graph paper: where it lies (SI) and what stands beside it. */
export interface Tick {
  readonly value: number;
  readonly text: string;
}

/** Round values between two ends, no more than `most`, zero among them where it lies between. */
export function ticksOf(a: number, b: number, dimension: Dimension, units: UnitSystem, most: number): readonly Tick[] {
  const from = toUnit(Math.min(a, b), dimension, units);
  const to = toUnit(Math.max(a, b), dimension, units);
  if (!(to > from)) return [];
  const isTape = dimension === "length" && units === "inch-pound";
  const step = isTape && to - from < most ? tapeStep((to - from) / most) : roundStep((to - from) / most);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const value = (first + i) * step;
    const metres = fromUnit(value, dimension, units);
    return { value: metres, text: isTape ? formatLength(metres, units) : formatNumber(value, decimals) };
  });
}

/** 1, 2 or 5 times a power of ten, no less than asked for. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5].find((share) => share * power >= least * (1 - 1e-9)) ?? 10) * power;
}

/** A half, a quarter … of an inch. */
const tapeStep = (least: number): number => [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1].find((step) => step >= least - 1e-9) ?? 1;

/** An end for an axis that begins at `from`: a little past the greatest value, never at the beginning. */
export const roomAbove = (values: readonly number[], from = 0): number =>
  Math.max(from, ...values) + 0.08 * (Math.max(from, ...values) - from) || from + 1;
