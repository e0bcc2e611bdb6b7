import type { Cycle, Study } from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { adjusterLines } from "./adjusters.ts";
import { assumedLines } from "./assumed.ts";
import { axleLines } from "./axle.ts";
import { clearanceLines } from "./clearances.ts";
import { cycleLines } from "./cycle-table.ts";
import { findingLines } from "./findings.ts";
import { heading } from "./heading.ts";
import { travelLines } from "./travel.ts";

/** A car's study for a terminal, the heart first. `right`: the right wheel's own, where it is not a mirror image. */
export function studyReport(study: Study, cycle: Cycle, right: Study | null, page: Page): string {
  const lines = [
    ...heading(study, page),
    ...section(page, right ? "What stops the left wheel" : "What stops the wheel", travelLines(study, page)),
    ...(right ? section(page, "What stops the right wheel", travelLines(right, page)) : []),
    ...section(page, right ? "Findings, left wheel" : "Findings", findingLines(study, page)),
    ...(right ? section(page, "Findings, right wheel", findingLines(right, page)) : []),
    ...section(page, "The cycle", cycleLines(study, cycle, page)),
    ...section(page, "Clearances", clearanceLines(study, page)),
    ...section(page, "Both wheels", axleLines(study, page)),
    ...section(page, "Adjusters", adjusterLines(study, page)),
    ...section(page, "Assumed", assumedLines(study, page)),
  ];
  return `${lines.join("\n")}\n`;
}
