import { formatLength, NO_VALUE, type Study, unitOf } from "@armwright/engine";
import { axleRows } from "../axle-rows.ts";
import type { Page } from "../text/page.ts";
import { bare, markTravel } from "../text/say.ts";
import { type Column, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

const LEGEND = "Camber is to the ground. Body lean is + to the right. Roll centre is above the ground.";

function nameOf({ motion, rightTravel }: AxleRow): string {
  if (motion === "one-wheel") return rightTravel === 0 ? "left alone" : "right alone";
  return motion === "heave" ? "together" : "roll";
}

type AxleRow = Study["axle"][number];

/** Both wheels: together, in roll, one alone. `right`: that wheel's own study where it is no mirror image. */
export function axleLines(left: Study, right: Study | null, page: Page): readonly string[] {
  const axle = axleRows(left, right);
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
  const names = axle.map(nameOf);
  const rows = axle.map(({ leftTravel, rightTravel, position }, index) => ({
    cells: [
      names[index - 1] === names[index] ? "" : names[index]!,
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
