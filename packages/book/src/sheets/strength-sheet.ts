import { formatNumber, formatValue, sayCheckCase, studyStrength } from "@armwright/engine";
import { flowSheets } from "./flow-sheets.ts";
import type { Makings, Sheet } from "./sheet.ts";

/** Rows that one sheet takes; the weakest come first. */
const MOST = 16;

/** The weakest parts with their load cases and what the factors rest on; none where no load is known. */
export function strengthSheets(makings: Makings): readonly Sheet[] {
  const { study } = makings;
  const found = studyStrength(study);
  if (!found) return [];
  const { units } = study.car;
  const missing =
    found.notEntered.length > 0 ? `Not judged, because not entered: ${found.notEntered.join("; ")}. ` : "";
  const shown = found.checks.slice(0, MOST);
  const more = found.checks.length - shown.length;
  return flowSheets(
    { id: "strength", title: "Strength, weakest first", note: "left side; read the assumptions" },
    [
      {
        kind: "words",
        words:
          "A screen, no approval. Each factor holds for its load case only: common practice, in g of one wheel's weight on the scale, acting on stiff parts without slop. Arms are reckoned as welded frames, made from the car's points with your gussets and second tubes unless you drew your own, and held against the strength beside a weld.",
        style: { ink: "ink-2" },
      },
      {
        kind: "table",
        columns: [
          { head: "factor", share: 8, align: "end", bold: true },
          { head: "part", share: 32 },
          { head: "in the case", share: 29 },
          { head: "has to bear", share: 10, align: "end" },
          { head: "may bear", share: 10, align: "end" },
          { head: "that is", share: 28 },
        ],
        rows: shown.map((check) => {
          const { factor, label, where, demand, allowable, dimension, basis } = check;
          return [
            factor === null ? "—" : formatNumber(factor, 2),
            where === "" ? label : `${label}, ${where}`,
            sayCheckCase(check, found.cases),
            factor === null ? "" : formatValue(demand, dimension, units),
            formatValue(allowable, dimension, units),
            basis,
          ];
        }),
        style: { isForm: true, size: "label" },
      },
      {
        kind: "words",
        words: `${more > 0 ? `${more} stronger ones are not shown. ` : ""}${missing}Not covered: quality of welds, impact, corrosion, fit and slop, the chassis the tabs stand on, rule books and road law. A licensed engineer decides. Test slowly, inspect, look for cracks.`,
      },
    ],
    makings,
  );
}
