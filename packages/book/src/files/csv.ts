import { type Dimension, formatLength, toUnit, type UnitSystem, unitOf } from "@armwright/engine";

/** Rows as CSV after RFC 4180. */
export const csvText = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map(cell).join(",")}\r\n`).join("");

const cell = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/** A value as a plain number of the document's unit, to twelve figures. */
export const numberCell = (value: number, dimension: Dimension, units: UnitSystem): string =>
  String(Number(toUnit(value, dimension, units).toPrecision(12)));

/** The same as a tape reads it, to 1/32 in: distances of a jig are worth splitting a sixteenth. */
export const tapeCell = (value: number, units: UnitSystem): string => formatLength(value, units, { denominator: 32 });

/** `forward [in]` */
export const headCell = (name: string, dimension: Dimension, units: UnitSystem): string =>
  unitOf(dimension, units) === "" ? name : `${name} [${unitOf(dimension, units)}]`;
