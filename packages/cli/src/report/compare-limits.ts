import { formatLength, type Study, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { counted, markTravel } from "../text/say.ts";
import { type Column, type Row, table } from "../text/table.ts";
import type { Comparison } from "./compare.ts";
import { isOpen } from "./travel.ts";

type LimitDifference = Comparison["limits"][number];

/** Limits that moved and are kept from in both cars are shown up to this many a direction, nearest first. */
const MOST_ROWS = 6;

/** Limits that are met elsewhere, or that a stop newly keeps or no longer keeps the wheel from. */
export function limitLines({ limits }: Comparison, a: Study, b: Study, page: Page): readonly string[] {
  const told = (["bump", "droop"] as const).flatMap((direction) => {
    const rows = limits
      .filter((limit) => limit.direction === direction)
      .sort((one, other) => nearest(one) - nearest(other))
      .map((limit) => ({ limit, inA: isOpenIn(a, limit), inB: isOpenIn(b, limit) }))
      .filter(({ limit, inA, inB }) => inA || inB || hasMoved(limit, page));
    const shown = rows.filter(({ inA, inB }, index) => inA || inB || index < MOST_ROWS);
    return shown.map((row, index) => ({ ...row, rest: index === shown.length - 1 ? rows.length - shown.length : 0 }));
  });
  if (told.length === 0) return ["The same limits at the same travels."];
  const length = unitOf("length", page.units);
  const columns: readonly Column[] = [
    { head: ["", ""], align: "left" },
    { head: ["", "in order outward"], align: "left", gives: true },
    { head: ["A", length], align: "mark" },
    { head: ["B", length], align: "mark" },
    { head: ["B less A", length], align: "mark" },
    { head: ["", ""], align: "left" },
  ];
  const rows = told.flatMap(({ limit, inA, inB, rest }): Row[] => [
    limitRow({ ...limit, label: labelOf(limit, a, b) }, inA, inB, page),
    ...(rest > 0 ? [{ cells: ["", `and ${counted(rest, "limit")} farther out`] }] : []),
  ]);
  return table(columns, rows, page.width);
}

const nearest = ({ a, b }: LimitDifference): number =>
  Math.min(...[a, b].map((travel) => (travel === null ? Number.POSITIVE_INFINITY : Math.abs(travel))));

/** As each car calls it, where the two have other names for one limit. */
function labelOf({ direction, id, label }: LimitDifference, a: Study, b: Study): string {
  const [inA, inB] = [a, b].map(({ travel }) => travel[direction].limits.find((each) => each.id === id)?.label);
  return inA !== undefined && inB !== undefined && inA !== inB ? `A: ${inA}; B: ${inB}` : label;
}

function isOpenIn({ travel }: Study, { direction, id }: LimitDifference): boolean {
  const report = travel[direction];
  const limit = report.limits.find((each) => each.id === id);
  return limit !== undefined && isOpen({ limit, report });
}

/** As far as is shown. */
const hasMoved = ({ a, b }: LimitDifference, { units }: Page): boolean =>
  a === null || b === null ? a !== b : formatLength(b - a, units) !== "0";

function limitRow({ direction, label, a, b }: LimitDifference, inA: boolean, inB: boolean, page: Page): Row {
  const mark = (travel: number | null) => (travel === null ? "not met" : markTravel(travel, page.units));
  const standing = inB ? `${inA ? "still" : "newly"} NOT PROTECTED` : inA ? "now protected" : "";
  const difference = a === null || b === null ? "" : mark(b - a);
  const cells = [direction, label, mark(a), mark(b), difference, standing];
  return inB ? { cells, paint: (line) => page.bold(page.red(line)) } : { cells };
}
