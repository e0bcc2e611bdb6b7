import { type Cycle, type Study, sayFinding } from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { counted } from "../text/say.ts";
import { hang } from "../text/wrap.ts";
import { adjusterLines } from "./adjusters.ts";
import { assumedLines } from "./assumed.ts";
import { axleLines } from "./axle.ts";
import { certaintyLines, limitCertaintyLines, matterLines } from "./certainty.ts";
import { clearanceLines } from "./clearances.ts";
import { cycleLines } from "./cycle-table.ts";
import { findingLines } from "./findings.ts";
import { heading } from "./heading.ts";
import { rodEndLines, tapeLines, threeHeightLines } from "./three-heights.ts";
import { travelLines } from "./travel.ts";

/** The right wheel's own study and cycle, where it is not a mirror image of the left. */
export interface RightSide {
  readonly study: Study;
  readonly cycle: Cycle;
}

/** A car's study for a terminal, the heart first. */
export function studyReport(study: Study, cycle: Cycle, right: RightSide | null, page: Page): string {
  const left = { study, cycle };
  /** One section, or one a side; a right wheel that comes out as the left one is told in a line. */
  const both = (title: string, lines: (side: RightSide) => readonly string[]): readonly string[] => {
    if (!right) return section(page, title, lines(left));
    const [ofLeft, ofRight] = [lines(left), lines(right)];
    const isSame = ofLeft.length > 0 && ofLeft.join("\n") === ofRight.join("\n");
    return [
      ...section(page, `${title}, left wheel`, ofLeft),
      ...section(page, `${title}, right wheel`, isSame ? ["The same as on the left."] : ofRight),
    ];
  };
  const lines = [
    ...heading(study, page),
    ...both("What stops the wheel", (side) => travelLines(side.study, page)),
    ...section(page, right ? "Findings, left wheel" : "Findings", findingLines(study, page)),
    ...(right ? section(page, "Findings, right wheel", onlyRight(study, right.study, page)) : []),
    ...both("The cycle", (side) => cycleLines(side.study, side.cycle, page)),
    ...both("What the tape reads", (side) => tapeLines(side.study, page)),
    ...both("At droop, ride and bump", (side) => threeHeightLines(side.study, page)),
    ...both("How sure these are", (side) => certaintyLines(side.study, page)),
    ...both("How sure your stops come first", (side) => limitCertaintyLines(side.study.certainty.limits, page)),
    ...both("Where to be careful", (side) => matterLines(side.study, page)),
    ...both("Rod ends", (side) => rodEndLines(side.study, page)),
    ...both("Clearances", (side) => clearanceLines(side.study, page)),
    ...both("Adjusters", (side) => adjusterLines(side.study, page)),
    ...section(page, "Both wheels", axleLines(study, right?.study ?? null, page)),
    ...section(page, "Assumed", assumedLines(right ? [study, right.study] : [study], page)),
  ];
  return `${lines.join("\n")}\n`;
}

/** What is found on the right and said nowhere for the left. */
function onlyRight(left: Study, right: Study, page: Page): readonly string[] {
  const said = new Set(left.findings.map((finding) => sayFinding(finding, page.units).sentence));
  const own = right.findings.filter((finding) => !said.has(sayFinding(finding, page.units).sentence));
  const again = right.findings.length - own.length;
  return [
    ...findingLines({ findings: own }, page),
    ...(again > 0
      ? hang("", `${counted(again, own.length > 0 ? "more finding" : "finding")}, the same as on the left.`, page.width)
      : []),
  ];
}
