import { rowAt } from "@armwright/engine";
import type { MovedStudy } from "../json/cycle-form.ts";
import { numberOut, type OutUnits, unitName } from "../units-out.ts";

/**
 * The cycle as CSV after RFC 4180: a head of ids with units, a row a travel; a value that does not exist is left empty.
 * With a right wheel of its own a first column `side` tells whose row it is: `left` rows first.
 */
export function cycleCsv(left: MovedStudy, right: MovedStudy | null, units: OutUnits): string {
  const quantities = new Map(
    [left, ...(right ? [right] : [])].flatMap(({ study }) => study.quantities.map((q) => [q.id, q])),
  );
  const head = [
    ...(right ? ["side"] : []),
    named("travel", unitName("length", units)),
    ...[...quantities.values()].map(({ id, dimension }) => named(id, unitName(dimension, units))),
  ];
  const ids = [...quantities.keys()];
  const rows = right
    ? [
        ...rowsOf(left, ids, units).map((row) => ["left", ...row]),
        ...rowsOf(right, ids, units).map((row) => ["right", ...row]),
      ]
    : rowsOf(left, ids, units);
  return [head, ...rows].map((line) => `${line.map(field).join(",")}\r\n`).join("");
}

function rowsOf({ study, cycle }: MovedStudy, ids: readonly string[], units: OutUnits): readonly (readonly string[])[] {
  const own = new Map(study.quantities.map((quantity) => [quantity.id, quantity]));
  return Array.from(cycle.travels, (travel, i) => {
    const row = rowAt(cycle, i);
    const values = ids.map((id) => {
      const quantity = own.get(id);
      const value = quantity?.read(row, study.corner) ?? null;
      return !quantity || value === null || !Number.isFinite(value)
        ? ""
        : String(numberOut(value, quantity.dimension, units));
    });
    return [String(numberOut(travel, "length", units)), ...values];
  });
}

const named = (id: string, unit: string): string => (unit === "" ? id : `${id} [${unit}]`);

const field = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
