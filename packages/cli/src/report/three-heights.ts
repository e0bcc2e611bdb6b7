import {
  formatLength,
  formatNumber,
  type Quantity,
  quantitiesOf,
  type Study,
  solveAt,
  unitOf,
} from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare } from "../text/say.ts";
import { type Column, type Row, table } from "../text/table.ts";

/** What a tape reads, by the quantity's name; the others are told as they are. */
const TAPE: readonly (readonly [id: string, label: string])[] = [
  ["wheelZ", "hub centre over the ground of ride height"],
  ["shockLength", "shock, eye to eye"],
  ["shaftLength", "shaft, joint to joint"],
  ["strapSpan", "strap, hole to hole"],
  ["bumpStopSpan", "bump stop, base to landing place"],
];

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

interface Height {
  readonly name: string;
  readonly travel: number;
  readonly row: Float64Array;
}

/** What tape and angle finder read, and the rest of the numbers, at full droop, ride height and full bump. */
export function threeHeightLines(study: Study, page: Page): readonly string[] {
  const heights = heightsOf(study);
  if (heights.length === 0) return [];
  const quantities = quantitiesOf(study.corner);
  const find = (id: string) => quantities.find((quantity) => quantity.id === id);
  const rows: Row[] = [];
  const add = (label: string, values: readonly (number | null)[], quantity: Pick<Quantity, "dimension" | "signed">) => {
    const unit = unitOf(quantity.dimension, page.units);
    rows.push({ cells: [label, ...values.map((value) => shown(value, quantity, page)), unit] });
  };
  for (const [id, label] of TAPE) {
    const spans = spanOf(id, study, heights);
    if (spans) add(label, spans, { dimension: "length", signed: false });
    const quantity = find(id);
    if (quantity) add(label, read(quantity, study, heights), { ...quantity, signed: false });
  }
  for (const id of REST) {
    const quantity = find(id);
    if (quantity) add(quantity.label, read(quantity, study, heights), quantity);
  }
  for (const [index, end] of study.car.rodEnds.entries()) {
    const quantity = quantities.find(({ id }) => id === `rodEnd:${study.car.rodEnds[index]!.pivot}`);
    if (!quantity) continue;
    const limit = end.misalignmentLimit;
    const most = limit === undefined ? "no limit given" : `may tilt ${formatNumber(limit / DEGREE, 1)}`;
    add(`${quantity.label} (${most})`, read(quantity, study, heights), quantity);
  }
  const columns: readonly Column[] = [
    { head: ["", "what it reads"], align: "left", gives: true },
    ...heights.map(({ name, travel }) => ({
      head: [name, formatLength(travel, page.units, { sign: true })],
      align: "mark" as const,
    })),
    { head: ["", ""], align: "left" },
  ];
  return table(columns, rows, page.width);
}

const DEGREE = Math.PI / 180;

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

const read = (quantity: Quantity, { corner }: Study, heights: readonly Height[]): readonly (number | null)[] =>
  heights.map(({ row }) => quantity.read(row, corner));

/** Distances that the study keeps as what is left of them. */
function spanOf(id: string, study: Study, heights: readonly Height[]): readonly (number | null)[] | null {
  const { strap, bumpStop } = study.car;
  const of = (name: string, from: (value: number) => number) => {
    const quantity = quantitiesOf(study.corner).find((each) => each.id === name);
    return quantity ? read(quantity, study, heights).map((value) => (value === null ? null : from(value))) : null;
  };
  if (id === "strapSpan" && strap) return of("strapSlack", (slack) => strap.length - slack);
  if (id === "bumpStopSpan" && bumpStop) return of("bumpStopGap", (gap) => gap + bumpStop.reach);
  return null;
}

const shown = (
  value: number | null,
  { dimension, signed }: Pick<Quantity, "dimension" | "signed">,
  page: Page,
): string => (value === null ? "none" : bare(value, dimension, page.units, signed));
