import { unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare, bareRow, markTravel } from "../text/say.ts";
import { type Column, table } from "../text/table.ts";
import type { Comparison } from "./compare.ts";

/** An instant centre farther than this, m, is as good as none: its place tells nothing. */
const FAR = 100;

/** On a page narrower than this the last column, which follows from the two before it, makes way for the names, and units join them. */
const NARROW = 92;

/** Where each quantity differs most; those that look the same are left out. */
export function quantityLines({ quantities }: Comparison, page: Page): readonly string[] {
  const isNarrow = page.width < NARROW;
  const rows = quantities.flatMap(({ label, dimension, signed, at, a, b, rideA, rideB }) => {
    const difference = bare(b - a, dimension, page.units, true);
    const isFar = dimension === "length" && Math.abs(b - a) > FAR;
    if (/^0(\.0+)?$/.test(difference) || isFar) return [];
    const shown = bareRow([rideA, rideB, a, b, b - a], dimension, page.units, signed);
    const [atRideA = "", atRideB = "", mostA = "", mostB = "", less = ""] = shown;
    const apart = signed || b < a ? less : `+${less}`;
    const unit = unitOf(dimension, page.units);
    const where = markTravel(at, page.units);
    if (isNarrow)
      return [{ cells: [unit === "" ? label : `${label}, ${unit}`, atRideA, atRideB, where, mostA, mostB] }];
    return [{ cells: [label, unit, atRideA, atRideB, where, mostA, mostB, apart] }];
  });
  if (rows.length === 0) return ["Nothing that could be seen."];
  const columns: readonly Column[] = [
    { head: ["", ""], align: "left", gives: true },
    ...(isNarrow ? [] : [{ head: ["", ""], align: "left" } as const]),
    { head: ["at ride", "A"], align: "mark" },
    { head: ["", "B"], align: "mark" },
    { head: ["most apart", `at, ${unitOf("length", page.units)}`], align: "mark" },
    { head: ["", "A"], align: "mark" },
    { head: ["", "B"], align: "mark" },
    ...(isNarrow ? [] : [{ head: ["", "B less A"], align: "mark" } as const]),
  ];
  return table(columns, rows, page.width);
}
