import { type Cycle, type Quantity, rowAt, type Study, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare, markTravel } from "../text/say.ts";
import { type Column, type Row, table } from "../text/table.ts";
import { widthOf } from "../text/width.ts";
import { hang } from "../text/wrap.ts";

/** Columns with their heads, in the order of what gives way last where the page is too narrow for all. */
const SHOWN: Readonly<Record<string, readonly [string, string]>> = {
  camber: ["", "camber"],
  toe: ["", "toe"],
  shockLength: ["", "shock"],
  motionRatio: ["", "MR"],
  innerJoint: ["inner", "joint"],
  outerJoint: ["outer", "joint"],
  plunge: ["", "plunge"],
  halfTrackChange: ["half", "track"],
  wheelbaseChange: ["wheel", "base"],
  slipEngagement: ["", "spline"],
  groundClearance: ["", "belly"],
  speedRipple: ["", "ripple"],
};

/** The wheel moved through its travel, highest first, in as many columns as the page holds. */
export function cycleLines(study: Study, cycle: Cycle, page: Page): readonly string[] {
  const order = Array.from(cycle.travels.keys()).sort((a, b) => cycle.travels[b]! - cycle.travels[a]!);
  const wanted = Object.keys(SHOWN).flatMap((id) => study.quantities.find((quantity) => quantity.id === id) ?? []);
  const chosen = (count: number) => {
    const first = new Set(wanted.slice(0, count));
    return study.quantities.filter((quantity) => first.has(quantity));
  };
  const unpainted = { ...page, bold: (text: string) => text };
  let count = wanted.length;
  while (
    count > 0 &&
    !tableOf(study, cycle, order, chosen(count), unpainted).every((line) => widthOf(line) <= page.width)
  ) {
    count -= 1;
  }
  return [
    ...tableOf(study, cycle, order, chosen(count), page),
    ...outsideLines(cycle, page),
    ...hang("", MORE, page.width),
  ];
}

const MORE = "MR: shock movement for wheel movement. Toe is this wheel's, + is in. Every quantity: --csv or --json.";

function tableOf(
  study: Study,
  cycle: Cycle,
  order: readonly number[],
  quantities: readonly Quantity[],
  page: Page,
): readonly string[] {
  const columns: readonly Column[] = [
    { head: ["travel", unitOf("length", page.units)], align: "mark" },
    ...quantities.map(
      ({ id, dimension }): Column => ({
        head: [...(SHOWN[id] ?? []), unitOf(dimension, page.units)],
        align: dimension === "length" ? "mark" : "right",
      }),
    ),
    { head: [""], align: "left" },
  ];
  const rows = order.map((i): Row => {
    const travel = cycle.travels[i]!;
    const row = rowAt(cycle, i);
    const name = nameOf(travel, study);
    const cells = [
      markTravel(travel, page.units),
      ...quantities.map((q) => bare(q.read(row, study.corner), q.dimension, page.units, q.signed)),
      name,
    ];
    return name === "" ? { cells } : { cells, paint: page.bold };
  });
  return table(columns, rows, page.width);
}

function nameOf(travel: number, { travel: { bump, droop } }: Study): string {
  const near = (other: number) => Math.abs(travel - other) < 1e-6;
  if (near(0)) return "ride";
  if (near(bump.stop.travel)) return "bump";
  return near(droop.stop.travel) ? "droop" : "";
}

function outsideLines({ outside }: Cycle, page: Page): readonly string[] {
  if (outside.length === 0) return [];
  const named = outside.map((travel) => markTravel(travel, page.units)).join(", ");
  return hang("", `The linkage does not reach ${named}.`, page.width).map(page.red);
}
