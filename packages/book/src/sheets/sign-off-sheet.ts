import { type Primitive, spot, stroke, text } from "@armwright/drawing";
import { paragraph } from "../paper/words.ts";
import { CAUTIONS } from "./cautions.ts";
import type { Makings, Sheet } from "./sheet.ts";

const CHECKS: readonly string[] = [
  "All jig distances measured, left and right, and written in",
  "Cycle cards filled in, left and right, springs off",
  "Nothing touched and nothing bound from full droop to full bump, steering and brake hoses too",
  "Strap tight before the shock is open; bump stop solid before it is closed",
  "Spline still in at both ends, end float at every height",
  "Welded out; distances measured again after cooling",
  "Every bolt torqued and marked; jam nuts tight; safety washers where a rod end could come off",
  "Height, camber and toe set and written in",
  "Looked for cracks, bolts torqued anew after the first slow run",
];

/** What has to be true before the car drives, and who says so. */
export function signOffSheets({ room }: Makings): readonly Sheet[] {
  const parts: Primitive[] = [];
  let top = room.y;
  for (const check of CHECKS) {
    const block = paragraph(check, room.x, top, room.width - 62, { size: "text" });
    const line = Math.max(block.bottom, top + 8);
    parts.push(
      ...block.parts,
      text("form", spot(room.x + room.width - 58, line - 2), "date, name", { ink: "ink-2" }),
      stroke("form", spot(room.x + room.width - 38, line - 1), spot(room.x + room.width, line - 1), { weight: "thin" }),
    );
    top = line + 4;
  }
  top += 4;
  for (const who of [
    "Built by",
    "Checked by another pair of eyes",
    "Welds looked at by",
    "Engineer, where law or rule book asks for one",
  ]) {
    parts.push(
      text("form", spot(room.x, top + 8), who, { size: "text", ink: "ink" }),
      stroke("form", spot(room.x + 92, top + 9), spot(room.x + room.width, top + 9), { weight: "thin" }),
    );
    top += 13;
  }
  top += 4;
  for (const caution of CAUTIONS) {
    const block = paragraph(caution, room.x, top, room.width);
    parts.push(...block.parts);
    top = block.bottom;
  }
  return [{ id: "sign-off", title: "Sign-off", note: "keep with the car", parts }];
}
