import { formatLength, NO_VALUE, type Study, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare, markTravel } from "../text/say.ts";
import { type Column, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

const LEGEND = "Camber is to the ground. Body lean is + to the right. Roll centre is above the ground.";
const MOTION = { heave: "together", roll: "roll", "one-wheel": "left alone" } as const;

/** Both wheels: together, in roll, one alone. */
export function axleLines({ axle }: Pick<Study, "axle">, page: Page): readonly string[] {
  const length = unitOf("length", page.units);
  const columns: readonly Column[] = [
    { head: [""], align: "left" },
    { head: ["left", "travel", length], align: "mark" },
    { head: ["right", "travel", length], align: "mark" },
    { head: ["left", "camber", "deg"], align: "right" },
    { head: ["right", "camber", "deg"], align: "right" },
    { head: ["body", "lean", "deg"], align: "right" },
    { head: ["track", length], align: "mark" },
    { head: ["roll", "centre", length], align: "mark" },
  ];
  const rows = axle.map(({ motion, leftTravel, rightTravel, position }, index) => ({
    cells: [
      axle[index - 1]?.motion === motion ? "" : MOTION[motion],
      markTravel(leftTravel, page.units),
      markTravel(rightTravel, page.units),
      ...(position
        ? [
            bare(position.left.camberToGround, "angle", page.units, true),
            bare(position.right.camberToGround, "angle", page.units, true),
            bare(position.bodyRoll, "angle", page.units, true),
            formatLength(position.trackWidth, page.units),
            position.rollCentre ? markTravel(position.rollCentre.height, page.units) : NO_VALUE,
          ]
        : [NO_VALUE, NO_VALUE, NO_VALUE, NO_VALUE, NO_VALUE]),
    ],
  }));
  return [...table(columns, rows, page.width), ...hang("", LEGEND, page.width)];
}
