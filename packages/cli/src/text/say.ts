import { type Dimension, formatLength, formatValue, NO_VALUE, type UnitSystem, unitOf } from "@armwright/engine";

/** A value with its unit that is not nothing, though it rounds to it: `under 1/16 in`. */
export function sayAmount(value: number, dimension: Dimension, units: UnitSystem): string {
  const text = formatValue(Math.abs(value), dimension, units);
  if (value === 0 || !/^0(\.0+)?( |$)/.test(text)) return text;
  return `under ${SMALLEST[units][dimension] ?? text}`;
}

const SMALLEST: Record<UnitSystem, Partial<Record<Dimension, string>>> = {
  "inch-pound": { length: "1/16 in", angle: "0.1 deg" },
  metric: { length: "0.5 mm", angle: "0.1 deg" },
};

/** A travel with its sign, without its unit: `+5 3/4`, `-9`, `0`. */
export const markTravel = (travel: number, units: UnitSystem): string => formatLength(travel, units, { sign: true });

/** A value without its unit, for a column whose head names it. */
export function bare(value: number | null, dimension: Dimension, units: UnitSystem, sign = false): string {
  if (value === null || !Number.isFinite(value)) return NO_VALUE;
  const symbol = unitOf(dimension, units);
  const text = formatValue(value, dimension, units, { sign });
  return symbol !== "" && text.endsWith(symbol) ? text.slice(0, -symbol.length).trimEnd() : text;
}

/** `1 limit`, `3 limits`. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
