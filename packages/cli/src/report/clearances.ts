import { formatLength, type Study, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { counted, markTravel, sayAmount } from "../text/say.ts";
import { type Column, type Row, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

type Clearance = Study["travel"]["clearances"][number];

/** Rows shown where all is well; what is short of its wanted gap is shown whatever the count. */
const MOST_ROWS = 8;

/** Least gaps over the travel, tightest against what is wanted first. */
export function clearanceLines({ travel }: Pick<Study, "travel">, page: Page): readonly string[] {
  const sorted = [...travel.clearances].sort((a, b) => a.leastGap - a.wanted - (b.leastGap - b.wanted));
  const shown = sorted.filter((pair, index) => index < MOST_ROWS || isShort(pair));
  if (shown.length === 0) return [];
  const length = unitOf("length", page.units);
  const columns: readonly Column[] = [
    { head: ["", "from, to"], align: "left", gives: true },
    { head: ["least gap", length], align: "mark" },
    { head: ["at travel", length], align: "mark" },
    { head: ["wanted", length], align: "mark" },
    { head: ["at ride", length], align: "mark" },
    { head: ["", ""], align: "left" },
  ];
  const rest = sorted.slice(shown.length);
  const least = rest.reduce((gap, pair) => Math.min(gap, pair.leastGap), Number.POSITIVE_INFINITY);
  return [
    ...table(
      columns,
      shown.map((pair) => clearanceRow(pair, page)),
      page.width,
    ),
    ...(rest.length === 0
      ? []
      : hang(
          "",
          `${counted(rest.length, "more pair")} with ${sayAmount(least, "length", page.units)} or more.`,
          page.width,
        )),
  ];
}

const isShort = ({ leastGap, wanted }: Clearance): boolean => leastGap < wanted - 1e-6;

function clearanceRow(pair: Clearance, page: Page): Row {
  const short = isShort(pair);
  const cells = [
    pair.label,
    formatLength(pair.leastGap, page.units),
    markTravel(pair.travel, page.units),
    formatLength(pair.wanted, page.units),
    formatLength(pair.gapAtRide, page.units),
    pair.leastGap <= 0 ? "TOUCHES" : short ? "short" : "",
  ];
  return short ? { cells, paint: pair.leastGap <= 0 ? (line) => page.bold(page.red(line)) : page.bold } : { cells };
}
