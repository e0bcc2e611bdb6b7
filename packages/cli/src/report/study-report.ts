import { type Cycle, type Study, sayFinding } from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { adjusterLines } from "./adjusters.ts";
import { assumedLines } from "./assumed.ts";
import { axleLines } from "./axle.ts";
import { clearanceLines } from "./clearances.ts";
import { cycleLines } from "./cycle-table.ts";
import { findingLines } from "./findings.ts";
import { heading } from "./heading.ts";
import { threeHeightLines } from "./three-heights.ts";
import { travelLines } from "./travel.ts";

/** The right wheel's own study and cycle, where it is not a mirror image of the left. */
export interface RightSide {
  readonly study: Study;
  readonly cycle: Cycle;
}

/** A car's study for a terminal, the heart first. */
export function studyReport(study: Study, cycle: Cycle, right: RightSide | null, page: Page): string {
  const side = (title: string) => (right ? `${title}, left wheel` : title);
  const lines = [
    ...heading(study, page),
    ...section(page, right ? "What stops the left wheel" : "What stops the wheel", travelLines(study, page)),
    ...(right ? section(page, "What stops the right wheel", travelLines(right.study, page)) : []),
    ...section(page, side("Findings"), findingLines(study, page)),
    ...(right ? section(page, "Findings, right wheel only", findingLines(notIn(study, right.study), page)) : []),
    ...ofOneWheel(side, study, cycle, page),
    ...(right ? ofOneWheel((title) => `${title}, right wheel`, right.study, right.cycle, page) : []),
    ...section(page, "Both wheels", axleLines(study, page)),
    ...section(page, "Assumed", assumedLines(study, page)),
  ];
  return `${lines.join("\n")}\n`;
}

const ofOneWheel = (title: (text: string) => string, study: Study, cycle: Cycle, page: Page): readonly string[] => [
  ...section(page, title("The cycle"), cycleLines(study, cycle, page)),
  ...section(page, title("At full droop, ride height, full bump"), threeHeightLines(study, page)),
  ...section(page, title("Clearances"), clearanceLines(study, page)),
  ...section(page, title("Adjusters"), adjusterLines(study, page)),
];

/** What is found on the right and said nowhere for the left. */
function notIn(left: Study, { findings, car }: Study): Pick<Study, "findings"> {
  const said = new Set(left.findings.map((finding) => sayFinding(finding, car.units).sentence));
  return { findings: findings.filter((finding) => !said.has(sayFinding(finding, car.units).sentence)) };
}
