import {
  type Dimension,
  formatLength,
  formatNumber,
  formatValue,
  INCH,
  NO_VALUE,
  type UnitSystem,
  unitOf,
} from "@armwright/engine";

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

/** A small length as a tape reads it, to 1/32 in with the decimal beside it, or to 0.5 mm; with its unit: `+1/32 in (0.03)`. */
export function sayTape(metres: number, units: UnitSystem, sign = false): string {
  const mark = formatLength(metres, units, { denominator: 32, sign });
  const unit = unitOf("length", units);
  return units === "metric" || mark === "0"
    ? `${mark} ${unit}`
    : `${mark} ${unit} (${formatNumber(inches(metres), 2, sign)})`;
}

/**
 * What a turn of thread moves, for a column that names the unit: the nearest tape mark with thousandths of an inch beside
 * it, since a thread is finer than a tape; hundredths of a millimetre.
 */
export function threadMark(metres: number, units: UnitSystem, sign = false): string {
  if (units === "metric") return formatNumber(metres * 1000, 2, sign);
  const mark = formatLength(metres, units, { denominator: 32, sign });
  return `${mark} (${formatNumber(inches(metres), 3, sign)})`;
}

const inches = (metres: number): number => metres / INCH;

/** A value without its unit, for a column whose head names it. */
export function bare(value: number | null, dimension: Dimension, units: UnitSystem, sign = false): string {
  if (value === null || !Number.isFinite(value)) return NO_VALUE;
  const symbol = unitOf(dimension, units);
  const text = formatValue(value, dimension, units, { sign });
  return symbol !== "" && text.endsWith(symbol) ? text.slice(0, -symbol.length).trimEnd() : text;
}

/** Values of one kind side by side, all to as many decimals: a percent under ten brings its tenths to the others. */
export function bareRow(
  values: readonly (number | null)[],
  dimension: Dimension,
  units: UnitSystem,
  sign: boolean,
): readonly string[] {
  const isFine =
    dimension === "percent" && values.some((value) => value !== null && value !== 0 && Math.abs(value) < 0.1);
  return values.map((value) =>
    isFine && value !== null ? formatNumber(100 * value, 1, sign) : bare(value, dimension, units, sign),
  );
}

/** `1 limit`, `3 limits`. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
