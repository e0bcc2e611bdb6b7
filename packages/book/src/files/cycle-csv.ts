import { rowAt, type Study } from "@armwright/engine";
import { csvText, headCell, numberCell } from "./csv.ts";

/** The cycle from full droop to full bump: a row a travel, a column a quantity; a value that does not exist is left empty. */
export function cycleCsv({ cycle, quantities, corner, car }: Study): string {
  const { units } = car;
  const head = [
    headCell("travel", "length", units),
    ...quantities.map((each) => headCell(each.id, each.dimension, units)),
  ];
  const rows = Array.from(cycle.travels, (travel, index) => {
    const row = rowAt(cycle, index);
    return [
      numberCell(travel, "length", units),
      ...quantities.map((quantity) => {
        const value = quantity.read(row, corner);
        return value === null || !Number.isFinite(value) ? "" : numberCell(value, quantity.dimension, units);
      }),
    ];
  });
  return csvText([head, ...rows]);
}
