import { unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare, markTravel } from "../text/say.ts";
import { type Column, table } from "../text/table.ts";
import type { Comparison } from "./compare.ts";

/** An instant centre farther than this, m, is as good as none: its place tells nothing. */
const FAR = 100;

/** Where each quantity differs most; those that look the same are left out. */
export function quantityLines({ quantities }: Comparison, page: Page): readonly string[] {
  const rows = quantities.flatMap(({ label, dimension, signed, at, a, b, rideA, rideB }) => {
    const say = (value: number | null, sign = signed) => bare(value, dimension, page.units, sign);
    const difference = say(b - a, true);
    const isFar = dimension === "length" && Math.abs(b - a) > FAR;
    if (/^0(\.0+)?$/.test(difference) || isFar) return [];
    const unit = unitOf(dimension, page.units);
    const name = unit === "" ? label : `${label}, ${unit}`;
    return [{ cells: [name, say(rideA), say(rideB), markTravel(at, page.units), say(a), say(b), difference] }];
  });
  if (rows.length === 0) return ["Nothing that could be seen."];
  const columns: readonly Column[] = [
    { head: ["", ""], align: "left", gives: true },
    { head: ["at ride", "A"], align: "mark" },
    { head: ["", "B"], align: "mark" },
    { head: ["most apart", `at, ${unitOf("length", page.units)}`], align: "mark" },
    { head: ["", "A"], align: "mark" },
    { head: ["", "B"], align: "mark" },
    { head: ["", "B less A"], align: "mark" },
  ];
  return table(columns, rows, page.width);
}
