import type { Primitive } from "@armwright/drawing";
import { distance, rowAt, unitOf } from "@armwright/engine";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import { lengthsIn, type Makings, type Sheet, said, tape } from "./sheet.ts";

/** Half shaft; then shock, strap and bump stop: what each must measure, at ride and at both ends of the travel. */
export function shaftAndMountsSheets(makings: Makings): readonly Sheet[] {
  const { shaft, mounts } = sections(makings);
  return [
    ...sheetOf("shaft", "Half shaft", [shaft], makings),
    ...sheetOf("mounts", "Shock, strap, bump stop", mounts, makings),
  ];
}

function sheetOf(id: string, title: string, all: readonly Section[], makings: Makings): Sheet[] {
  const { room } = makings;
  const parts: Primitive[] = [];
  let top = room.y;
  for (const section of all.filter(({ rows }) => rows.length > 0)) {
    const head = paragraph(section.title, room.x, top, room.width, { size: "reading", bold: true });
    const list = table(
      [
        { head: "", share: 58 },
        { head: "must read", share: 24, align: "end", bold: true },
        { head: "as built", share: 18 },
      ],
      section.rows.map(([label, value]) => [label!, value!, ""]),
      { left: room.x, top: head.bottom, width: room.width, floor: room.y + room.height },
      { isForm: true, size: "text" },
    );
    const words = paragraph(section.note, room.x, list.bottom + 1, room.width, { ink: "ink-2" });
    parts.push(...head.parts, ...list.parts, ...words.parts);
    top = words.bottom + 3;
  }
  return parts.length === 0 ? [] : [{ id, title, note: lengthsIn(makings), parts }];
}

interface Section {
  readonly title: string;
  readonly rows: readonly (readonly string[])[];
  readonly note: string;
}

function sections(makings: Makings): { readonly shaft: Section; readonly mounts: readonly Section[] } {
  const { car } = makings.study;
  const mark = (metres: number): string => `${tape(makings, metres)} ${unitOf("length", car.units)}`;
  return {
    shaft: {
      title: "Half shaft, make 2",
      rows: shaftRows(makings),
      note: "Yokes at both ends of the shaft in one plane. Slide it through by hand at full droop and full bump before it is welded.",
    },
    mounts: [
      {
        title: "Shock, one a side",
        rows: car.shock
          ? [
              ["eye to eye, fully closed", mark(car.shock.shortest)],
              ["eye to eye, fully open", mark(car.shock.longest)],
              ["eye to eye at ride height", mark(distance(car.shock.upper.point, car.shock.lower.point))],
              ...ends(makings, "shockLength", "eye to eye"),
              ["widest, to keep clear round", mark(car.shock.diameter)],
            ]
          : [],
        note: "Both eyes' bolts parallel at ride height; a little side float, not clamped.",
      },
      {
        title: "Strap, one a side",
        rows: car.strap
          ? [["hole to hole, pulled tight", mark(car.strap.length)], ...ends(makings, "strapSlack", "slack")]
          : [],
        note: "Tabs first, then tape mount to mount at full droop; it stretches: measure again after the first runs. Never on the shock's bolt.",
      },
      {
        title: "Bump stop, one a side",
        rows: car.bumpStop
          ? [
              ["foot to free face", mark(car.bumpStop.reach)],
              ["foot to face, squeezed solid", mark(car.bumpStop.solid)],
              ...ends(makings, "bumpStopGap", "gap to the strike plate"),
            ]
          : [],
        note: "Strike plate flat and square to the stop where it first touches, never on bare tube.",
      },
    ],
  };
}

function shaftRows(makings: Makings): string[][] {
  const { driveshaft, units } = makings.study.car;
  if (!driveshaft) return [];
  const mark = (metres: number): string => `${tape(makings, metres)} ${unitOf("length", units)}`;
  return [
    ["joint centre to joint centre at ride height", mark(distance(driveshaft.outer.centre, driveshaft.inner.centre))],
    ...ends(makings, "shaftLength", "joint to joint"),
    ...(driveshaft.slip ? [["spline in at ride height", mark(driveshaft.slip.engagement)]] : []),
    ...ends(makings, "slipEngagement", "spline in"),
    ["tube", mark(driveshaft.diameter)],
    ...ends(makings, "innerJoint", "inner joint bends"),
    ...ends(makings, "outerJoint", "outer joint bends"),
  ];
}

/** A quantity at full droop and full bump. */
function ends(makings: Makings, id: string, label: string): string[][] {
  const { study } = makings;
  const quantity = study.quantities.find((each) => each.id === id);
  if (!quantity) return [];
  const { cycle, corner } = study;
  const at = (index: number): number | null => quantity.read(rowAt(cycle, index), corner);
  return [
    [`${label} at full droop`, said(makings, at(0), quantity.dimension)],
    [`${label} at full bump`, said(makings, at(cycle.travels.length - 1), quantity.dimension)],
  ];
}
