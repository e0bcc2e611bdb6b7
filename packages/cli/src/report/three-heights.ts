import {
  DEGREE,
  formatLength,
  formatNumber,
  type Quantity,
  rowAt,
  type Study,
  solveAt,
  unitOf,
} from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare, bareRow } from "../text/say.ts";
import { type Column, type Row, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

/** A line of the table: what is read, where each height's value comes from. */
interface Reading {
  readonly label: string;
  readonly dimension: Quantity["dimension"];
  readonly signed: boolean;
  readonly values: readonly (number | null)[];
}

interface Height {
  readonly name: string;
  readonly travel: number;
  readonly row: Float64Array;
}

/** Lengths that a tape reads at full droop, ride height and full bump, so that each stop and limit can be checked. */
export function tapeLines(study: Study, page: Page): readonly string[] {
  const { strap, bumpStop } = study.car;
  const heights = heightsOf(study);
  const of = (id: string, label: string, from = (value: number) => value): readonly Reading[] => {
    const quantity = study.quantities.find((each) => each.id === id);
    if (!quantity) return [];
    const values = readAt(quantity, study, heights).map((value) => (value === null ? null : from(value)));
    return [{ label, dimension: "length", signed: false, values }];
  };
  const readings = [
    ...of("wheelZ", "hub centre over the floor *"),
    ...of("shockLength", "shock, eye to eye"),
    ...of("shaftLength", "half shaft, joint to joint"),
    ...(strap ? of("strapSlack", "strap, hole to hole", (slack) => strap.length - slack) : []),
    ...(bumpStop ? of("bumpStopGap", "bump stop, base to landing place", (gap) => gap + bumpStop.reach) : []),
  ];
  if (heights.length === 0 || readings.length === 0) return [];
  const show = (value: number | null) => (value === null ? "none" : formatLength(value, page.units, { decimal: true }));
  const columns = heightColumns(heights, "right", page);
  const rows = readings.map(({ label, values }) => ({ cells: [label, ...values.map(show)] }));
  const unit = unitOf("length", page.units);
  return [
    ...table([{ head: ["", unit], align: "left", gives: true }, ...columns], rows, page.width),
    ...hang("* ", "the body held at ride height, as on stands.", page.width),
  ];
}

const REST: readonly string[] = [
  "slipEngagement",
  "strapSlack",
  "bumpStopGap",
  "groundClearance",
  "shockToArm",
  "shockLean",
  "motionRatioSlope",
  "speedRipple",
  "rippleAngle",
  "rollCentre",
  "instantCentreOut",
  "instantCentreUp",
  "sideSwingArm",
  "sideSwingAngle",
  "antiSquat",
  "antiLift",
];

/** The numbers that the cycle table has no room for, at the three heights. */
export function threeHeightLines(study: Study, page: Page): readonly string[] {
  const heights = heightsOf(study);
  if (heights.length === 0) return [];
  const rows = REST.flatMap((id): Row[] => {
    const quantity = study.quantities.find((each) => each.id === id);
    if (!quantity) return [];
    const { label, dimension, signed } = quantity;
    const values = bareRow(readAt(quantity, study, heights), dimension, page.units, signed);
    return [{ cells: [label, ...values, unitOf(dimension, page.units)] }];
  });
  const columns: readonly Column[] = [
    { head: ["", ""], align: "left", gives: true },
    ...heightColumns(heights, "mark", page),
    { head: ["", ""], align: "left" },
  ];
  return table(columns, rows, page.width);
}

/** How far every rod end tilts at the three heights, and what the most of it leaves of its limit. */
export function rodEndLines(study: Study, page: Page): readonly string[] {
  const heights = heightsOf(study);
  const rows = study.car.rodEnds.flatMap(({ pivot, misalignmentLimit: limit }): Row[] => {
    const quantity = study.quantities.find(({ id }) => id === `rodEnd:${pivot}`);
    if (!quantity) return [];
    const values = readAt(quantity, study, heights);
    const most = Math.max(0, ...[...values, ...overTravel(quantity, study)].map((value) => value ?? 0));
    const left = limit === undefined ? "" : formatNumber((limit - most) / DEGREE, 1);
    const cells = [
      quantity.label.replace(/^rod end, /, ""),
      ...values.map((value) => bare(value, "angle", page.units)),
      bare(most, "angle", page.units),
      limit === undefined ? "not given" : bare(limit, "angle", page.units),
      left,
    ];
    return [limit !== undefined && most > limit ? { cells, paint: (line) => page.bold(page.red(line)) } : { cells }];
  });
  if (heights.length === 0 || rows.length === 0) return [];
  const columns: readonly Column[] = [
    { head: ["tilt, deg", "rod end at"], align: "left", gives: true },
    ...heightColumns(heights, "right", page),
    { head: ["", "most"], align: "right" },
    { head: ["", "limit"], align: "right" },
    { head: ["least", "left"], align: "right" },
  ];
  return table(columns, rows, page.width);
}

function heightsOf({ corner, travel }: Study): readonly Height[] {
  return (
    [
      ["droop", travel.droop.stop.travel],
      ["ride", 0],
      ["bump", travel.bump.stop.travel],
    ] as const
  ).flatMap(([name, at]) => {
    const solved = solveAt(corner, at);
    return solved ? [{ name, travel: at, row: solved.row }] : [];
  });
}

const heightColumns = (heights: readonly Height[], align: Column["align"], { units }: Page): readonly Column[] =>
  heights.map(({ name, travel }) => ({ head: [name, formatLength(travel, units, { sign: true })], align }));

const readAt = (quantity: Quantity, { corner }: Study, heights: readonly Height[]): readonly (number | null)[] =>
  heights.map(({ row }) => quantity.read(row, corner));

const overTravel = (quantity: Quantity, { corner, cycle }: Study): readonly (number | null)[] =>
  Array.from(cycle.travels, (_, index) => quantity.read(rowAt(cycle, index), corner));
