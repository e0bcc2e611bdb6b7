import { formatNumber, formatValue, studyStrength } from "@armwright/engine";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import type { Makings, Sheet } from "./sheet.ts";

/** Rows that one sheet takes; the weakest come first. */
const MOST = 16;

/** The weakest parts with their load cases and what the factors rest on; none where no load is known. */
export function strengthSheets({ study, room }: Makings): readonly Sheet[] {
  const found = studyStrength(study);
  if (!found) return [];
  const { units } = study.car;
  const intro = paragraph(
    "A screen, no approval. Each factor holds for its load case only: common practice, in g of one wheel's weight on the scale, acting on stiff parts without slop. Arms are reckoned as welded frames with shock and stop on plain tube unless you drew your own, and held against the strength beside a weld.",
    room.x,
    room.y,
    room.width,
    { ink: "ink-2" },
  );
  const set = table(
    [
      { head: "factor", share: 9, align: "end", bold: true },
      { head: "part", share: 37 },
      { head: "in the case", share: 24 },
      { head: "has to bear", share: 15, align: "end" },
      { head: "may bear", share: 15, align: "end" },
    ],
    found.checks
      .slice(0, MOST)
      .map(({ factor, label, where, loadCase, demand, allowable, dimension }) => [
        factor === null ? "—" : formatNumber(factor, 2),
        where === "" ? label : `${label}, ${where}`,
        loadCase ?? "not loaded by these cases",
        factor === null ? "" : formatValue(demand, dimension, units),
        formatValue(allowable, dimension, units),
      ]),
    { left: room.x, top: intro.bottom + 2, width: room.width, floor: room.y + room.height - 40 },
    { isForm: true, size: "label", rowHeight: 8 },
  );
  const missing =
    found.notEntered.length > 0 ? `Not judged, because not entered: ${found.notEntered.join("; ")}. ` : "";
  const foot = paragraph(
    `${missing}Not covered: quality of welds, impact, corrosion, fit and slop, the chassis the tabs stand on, rule books and road law. A licensed engineer decides. Test slowly, inspect, look for cracks.`,
    room.x,
    set.bottom + 3,
    room.width,
  );
  return [
    {
      id: "strength",
      title: "Strength, weakest first",
      note: "left side; read the assumptions",
      parts: [...intro.parts, ...set.parts, ...foot.parts],
    },
  ];
}
