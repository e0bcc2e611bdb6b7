import { type Cycle, rowAt, type Study } from "@armwright/engine";
import { numberOut, type OutUnits, unitName } from "../units-out.ts";

/** The cycle as CSV after RFC 4180: a head of ids with units, a row a travel; a value that does not exist is left empty. */
export function cycleCsv({ quantities, corner }: Study, cycle: Cycle, units: OutUnits): string {
  const head = [
    named("travel", unitName("length", units)),
    ...quantities.map(({ id, dimension }) => named(id, unitName(dimension, units))),
  ];
  const rows = Array.from(cycle.travels, (travel, i) => {
    const row = rowAt(cycle, i);
    const values = quantities.map(({ read, dimension }) => {
      const value = read(row, corner);
      return value === null || !Number.isFinite(value) ? "" : String(numberOut(value, dimension, units));
    });
    return [String(numberOut(travel, "length", units)), ...values];
  });
  return [head, ...rows].map((line) => `${line.map(field).join(",")}\r\n`).join("");
}

const named = (id: string, unit: string): string => (unit === "" ? id : `${id} [${unit}]`);

const field = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
