import type { Dimension, UnitSystem } from "../car/car.ts";
import { unitOf } from "../units/convert.ts";
import { formatValue } from "../units/format.ts";
import type { Typical } from "./assumed.ts";
import type { FieldFacts } from "./fields.ts";

/** All that is known of a field in a few sentences. */
export function describeField(facts: FieldFacts): string {
  const { meaning, dimension, typical, assumed } = facts;
  const parts = [meaning];
  if (dimension !== undefined) parts.push(`Unit: ${sayUnit(dimension)}.`);
  if (dimension !== undefined && typical) parts.push(`Typically ${sayTypical(typical, dimension)}.`);
  if (assumed) parts.push(`Left out: ${assumed.words} (${assumed.because}).`);
  return parts.filter((part) => part !== "").join(" ");
}

/** `in or mm`, or one unit where both systems share it. */
export function sayUnit(dimension: Dimension): string {
  const inch = unitOf(dimension, "inch-pound");
  const metric = unitOf(dimension, "metric");
  return inch === metric ? inch : `${inch} or ${metric}`;
}

/** `12 to 19 in (305 to 483 mm)`. */
export function sayTypical({ from, to }: Typical, dimension: Dimension): string {
  const inch = `${bare(from, dimension, "inch-pound")} to ${formatValue(to, dimension, "inch-pound")}`;
  if (unitOf(dimension, "inch-pound") === unitOf(dimension, "metric")) return inch;
  // Lengths to whole millimetres; the others are rounded where they are shown.
  const rounded = (value: number) => (dimension === "length" ? Math.round(value * 1000) / 1000 : value);
  const low = bare(rounded(from), dimension, "metric");
  return `${inch} (${low} to ${formatValue(rounded(to), dimension, "metric")})`;
}

const bare = (value: number, dimension: Dimension, system: UnitSystem): string => {
  const text = formatValue(value, dimension, system);
  const symbol = unitOf(dimension, system);
  return symbol !== "" && text.endsWith(symbol) ? text.slice(0, -symbol.length).trimEnd() : text;
};
