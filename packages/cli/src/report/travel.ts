import { type DirectionReport, formatLength, INCH, type LimitReport, type Study, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { markTravel, sayAmount } from "../text/say.ts";
import { type Column, layTable, type Row } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { changeFirst } from "./change-first.ts";

/** The heart: what stops the wheel, in order, per direction, with what the chosen stop leaves to each limit. */
export function travelLines({ travel, findings }: Pick<Study, "travel" | "findings">, page: Page): readonly string[] {
  return [
    page.bold(totalTravel(travel, page)),
    ...directionsLines([travel.bump, travel.droop], (report) => changeFirst(report, findings, page), page),
  ];
}

/** The sum is that of the two figures shown, so that it can be checked in the head. */
function totalTravel({ bump, droop }: Study["travel"], { units }: Page): string {
  const step = units === "metric" ? 0.0005 : INCH / 16;
  const shown = [bump, droop].map(({ stop }) => Math.round(Math.abs(stop.travel) / step) * step);
  const [up = 0, down = 0] = shown;
  const mark = (length: number) => formatLength(length, units);
  return `total travel: ${mark(up)} bump + ${mark(down)} droop = ${mark(up + down)} ${unitOf("length", units)}`;
}

/** Protected limits beyond this many rows are told in a few lines. */
const MOST_ROWS = 6;

interface Ordered {
  readonly limit: LimitReport;
  readonly order: number;
  readonly report: DirectionReport;
}

function directionsLines(
  reports: readonly DirectionReport[],
  advice: (report: DirectionReport) => readonly string[],
  page: Page,
): readonly string[] {
  const ordered = reports.flatMap((report) =>
    report.limits.map((limit, index) => ({ limit, order: index + 1, report })),
  );
  const shown = ordered.filter((each) => each.order <= MOST_ROWS || !each.limit.isProtected || isStop(each));
  const length = unitOf("length", page.units);
  const columns: readonly Column[] = [
    { head: ["", ""], align: "right" },
    { head: ["", "in order outward"], align: "left", gives: true },
    { head: ["travel", length], align: "mark" },
    { head: ["past stop", length], align: "mark" },
    { head: ["left", "at the stop"], align: "left", gives: true },
    { head: ["", ""], align: "left", gives: true },
  ];
  // Laid together, so that both directions stand under one alignment.
  const laid = layTable(
    columns,
    shown.map((each) => limitRow(each, page)),
    page.width,
  );
  return reports.flatMap((report) => [
    "",
    ...verdict(report, page),
    ...advice(report),
    ...laid.head,
    ...laid.rows.filter((_, row) => shown[row]!.report === report).flat(),
    ...farther(
      ordered.filter((each) => each.report === report && !shown.includes(each)).map(({ limit }) => limit),
      page,
    ),
  ]);
}

function limitRow(each: Ordered, page: Page): Row {
  const { limit, order, report } = each;
  const stop = isStop(each);
  const cells = [
    String(order),
    limit.label,
    limit.pastAtRide ? "at ride" : markTravel(limit.travel, page.units),
    // A stop that is meant to be met on the way is not too soon.
    stop || (limit.nature === "made" && limit.travelLeft < 1e-9) ? "" : markTravel(limit.travelLeft, page.units),
    // What is left of a made stop is its own business, and of the linkage the travel told already.
    stop || limit.nature === "made" || limit.code === "linkage" ? "" : sayLeft(limit, page),
    standing(each),
  ];
  if (isOpen(each)) return { cells, paint: (line) => page.bold(page.red(line)) };
  return stop || limit === report.first ? { cells, paint: page.bold } : { cells };
}

/** What is left of it with the wheel at the stop, in its own unit. */
export function sayLeft(limit: LimitReport, { units }: Pick<Page, "units">): string {
  const amount = sayAmount(limit.spare, limit.dimension, units);
  return limit.spare < 0 ? `${amount} too far` : `${amount} ${limit.spareWord}`;
}

/** Whether this is the very limit that the builder chose to end the travel. */
const isStop = ({ limit, report: { stop } }: Pick<Ordered, "limit" | "report">): boolean =>
  stop.works && stop.by === STOPPED_BY[limit.code] && Math.abs(limit.travelLeft) < 1e-9;

const STOPPED_BY: Partial<Record<LimitReport["code"], DirectionReport["stop"]["by"]>> = {
  "bump-stop-solid": "bump-stop",
  strap: "strap",
  "shock-shortest": "shock",
  "shock-longest": "shock",
};

/** A hard limit that nothing keeps the wheel from. */
export const isOpen = (each: Pick<Ordered, "limit" | "report">): boolean =>
  each.limit.nature === "hard" && !each.limit.isProtected && !isStop(each);

function standing(each: Ordered): string {
  const { limit, report } = each;
  if (isStop(each)) return "YOUR STOP";
  if (limit.nature === "made") return "";
  if (limit.pastAtRide) return "PAST AT RIDE HEIGHT";
  const lead = limit === report.first ? "first, " : "";
  if (!limit.isProtected) return `${lead}NOT PROTECTED`;
  // An aim is no part: nothing holds the wheel there.
  return report.stop.by === "travel" ? `${lead}past your aim` : `${lead}protected`;
}

const STOP_NAME = { "bump-stop": "bump stop", strap: "strap", shock: "shock itself" } as const;

/** One direction in a sentence or two: where it ends, by what, and what comes first. */
function verdict(report: DirectionReport, page: Page): readonly string[] {
  const { direction, stop, first, limits } = report;
  const say = (length: number) => sayAmount(length, "length", page.units);
  const way = direction === "bump" ? "BUMP" : "DROOP";
  const place = (travel: number) =>
    travel === 0 ? "at ride height" : `${say(travel)} ${direction === "bump" ? "up" : "down"}`;
  const open = limits.filter((limit) => isOpen({ limit, report }));
  const firstOpen = open[0];
  const loud = (line: string) => page.bold(page.red(line));
  const lines = (text: string, paint: (line: string) => string) => hang("", text, page.width).map(paint);
  const ending = (): readonly string[] => {
    if (stop.by === "travel") {
      const where = stop.works ? `${place(stop.travel)}, where you aim at` : place(stop.travel);
      return lines(`${way} ends ${where}. No part is entered that stops the wheel there.`, page.bold);
    }
    if (stop.works) return lines(`${way} ends at the ${STOP_NAME[stop.by]}, ${place(stop.travel)}.`, page.bold);
    return lines(`${way}: the chosen ${STOP_NAME[stop.by]} NEVER STOPS THE WHEEL.`, loud);
  };
  const next = (): readonly string[] => {
    if (firstOpen) {
      const more = open.length > 1 ? `, and ${open.length - 1} more` : "";
      const where = firstOpen.pastAtRide ? "past already at ride height" : place(firstOpen.travel);
      const early = firstOpen.travelLeft < 0 && !firstOpen.pastAtRide ? `, ${say(firstOpen.travelLeft)} too soon` : "";
      return lines(`NOT PROTECTED: ${firstOpen.label}, ${where}${early}${more}.`, loud);
    }
    if (!first || isStop({ limit: first, report })) return [];
    const left = first.code === "linkage" ? "" : `, ${sayLeft(first, page)} left`;
    return lines(`The first hard limit is ${first.label}: ${say(first.travelLeft)} farther${left}.`, page.bold);
  };
  return [...ending(), ...next()];
}

/** Named one by one, nearest first, up to this many. */
const MOST_NAMED = 4;

function farther(rest: readonly LimitReport[], page: Page): readonly string[] {
  if (rest.length === 0) return [];
  const name = ({ label, travel }: LimitReport) => `${label} ${markTravel(travel, page.units)}`;
  const cut = rest.length > MOST_NAMED + 1;
  const named = cut ? rest.slice(0, MOST_NAMED) : rest;
  const last = rest.at(-1);
  const more = cut && last ? `; ${rest.length - MOST_NAMED} more, the last ${name(last)}` : "";
  return hang("   ", `and ${rest.length} farther out: ${named.map(name).join("; ")}${more}.`, page.width);
}
