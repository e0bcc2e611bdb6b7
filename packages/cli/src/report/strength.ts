import {
  type Car,
  formatNumber,
  formatTube,
  formatValue,
  type PartCheck,
  type StrengthStudy,
  sayCheck,
  sayCheckCase,
  sayHelp,
  type TubeAlternative,
  unitOf,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { bare, markTravel, sayTape } from "../text/say.ts";
import { type Column, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { massWords } from "./mass-words.ts";
import { helpLines } from "./strength-help.ts";

/** Whether the parts hold: weakest first, alternatives, what was not judged, what this is not. */
export function strengthLines(car: Car, found: StrengthStudy, part: string | undefined, page: Page): readonly string[] {
  const checks =
    part === undefined
      ? found.checks
      : found.checks.filter(({ part: of, label }) => holds(of, part) || holds(label, part));
  return [
    page.bold(car.name),
    ...section(
      page,
      "Weakest first",
      checks.length > 0 ? checkLines(found, checks, page) : ["No part of that name was judged."],
    ),
    ...section(page, "What would make it hold", helpLines(found, page)),
    ...section(page, "What another size would buy", alternativeLines(found.alternatives, page)),
    ...section(page, "What it costs the wheel", giveLines(car, found, page)),
    ...section(page, "What swings most", fatigueLines(found, page)),
    ...section(page, "Mass of each, tubes alone", massLines(found, page)),
    ...section(
      page,
      "Not judged: not entered",
      found.notEntered.length > 0 ? hang("", `${found.notEntered.join("; ")}.`, page.width) : [],
    ),
    ...section(
      page,
      "What these factors are not",
      NOT.flatMap((line) => hang("- ", line, page.width)),
    ),
  ];
}

const holds = (text: string, part: string): boolean => text.toLowerCase().includes(part.toLowerCase());

const NOT: readonly string[] = [
  'A factor is as good as its load case: common practice, in g, yours to change under "loads". Real blows can be harder: npx armwright land.',
  'Arms are reckoned as welded frames; where you drew none, one is made from the car\'s points, with gusset and second tube where you gave them. Draw yours under "strength", "frames".',
  "Along a hinge line either rod end is taken to bear the whole force: statics cannot tell their shares.",
  "Beside a weld a tube is held against its strength as welded, not as bought.",
  "Not covered: quality of welds, impact, corrosion, fit and slop, the chassis the tabs stand on, rule books and road law.",
  "A screen, no approval: a licensed engineer decides. Test slowly, inspect, look for cracks.",
];

const WEAK = 1;

function checkLines({ cases }: StrengthStudy, checks: readonly PartCheck[], page: Page): readonly string[] {
  const columns: readonly Column[] = [
    { head: ["", "factor"], align: "right" },
    { head: ["", "part, and what is asked of it"], align: "left", gives: true },
    { head: ["", "in the case"], align: "left", gives: true },
    { head: ["", "has to bear"], align: "right" },
    { head: ["", "may bear"], align: "right" },
  ];
  const rows = checks.map((check) => {
    const { factor, label, where, demand, allowable, dimension, check: code } = check;
    const cells = [
      factor === null ? "–" : formatNumber(factor, 2),
      `${label}${where === "" ? "" : `, ${where}`}: ${sayCheck(code)}`,
      sayCheckCase(check, cases),
      factor === null ? "" : formatValue(demand, dimension, page.units),
      formatValue(allowable, dimension, page.units),
    ];
    return factor !== null && factor < WEAK ? { cells, paint: (line: string) => page.bold(page.red(line)) } : { cells };
  });
  const weak = checks.filter(({ factor }) => factor !== null && factor < WEAK);
  const help = [...new Set(weak.map(({ check }) => check))].map((code) => `${sayCheck(code)}: ${sayHelp(code)}.`);
  return [
    ...table(columns, rows, page.width),
    ...(help.length > 0 ? ["", ...hang("", "What would help, where the factor is under 1:", page.width)] : []),
    ...help.flatMap((line) => hang("- ", line, page.width)),
  ];
}

function alternativeLines(alternatives: readonly TubeAlternative[], page: Page): readonly string[] {
  return table(
    [
      { head: ["", "arm"], align: "left", gives: true },
      { head: ["all main", "tubes"], align: "left" },
      { head: ["tubes of", "the arm"], align: "right" },
      { head: ["weakest", "factor"], align: "right" },
      { head: ["", ""], align: "left" },
    ],
    alternatives.map(({ arm, size, mass, factor, isPresent }) => ({
      cells: [
        arm.replace("-", " "),
        formatTube(size, page.units),
        massWords(mass, page.units),
        factor === null ? "–" : formatNumber(factor, 2),
        isPresent ? "as it is" : "",
      ],
      ...(isPresent ? { paint: page.bold } : {}),
    })),
    page.width,
  );
}

/** Toe as a tape reads it across the tyre of this wheel, and camber. */
function giveLines({ wheel }: Car, { give }: StrengthStudy, page: Page): readonly string[] {
  const { units } = page;
  return [
    ...table(
      [
        { head: ["", "case"], align: "left", gives: true },
        { head: ["travel", unitOf("length", units)], align: "mark" },
        { head: ["", "toe across the tyre"], align: "left" },
        { head: ["camber", "deg"], align: "right" },
      ],
      give.map(({ loadCase, travel, toe, camber }) => ({
        cells: [
          loadCase,
          markTravel(travel, units),
          sayTape(2 * wheel.freeRadius * Math.sin(toe), units, true),
          bare(camber, "angle", units, true),
        ],
      })),
      page.width,
    ),
    ...hang(
      "",
      "By bent arms and stretched links alone, + is toe-in and the top leaning out. Spindle, rod ends, tabs and chassis give too: the car's own give is more.",
      page.width,
    ),
  ];
}

function fatigueLines({ arms }: StrengthStudy, page: Page): readonly string[] {
  return arms.flatMap(({ fatigue }) => {
    if (!fatigue) return [];
    const { label, where, loadCase, range, repeats } = fatigue;
    const life =
      repeats === null
        ? "no crack is to be reckoned with at that"
        : `a crack has to be reckoned with after ${countWords(repeats)} such blows`;
    return hang(
      "",
      `${label}${where === "" ? "" : `, ${where}`}: ${formatValue(range, "stress", page.units)} from hanging free to ${loadCase}; ${life} (welded attachment, EN 1993-1-9 detail class 71, from memory). How often it comes is unknown.`,
      page.width,
    );
  });
}

/** A count of blows as far as it is known: to a power of ten. */
function countWords(count: number): string {
  if (count < 10) return "a few";
  if (count < 100) return "some dozens of";
  if (count < 1000) return "some hundreds of";
  if (count < 1e4) return "some thousands of";
  if (count < 1e5) return "some tens of thousands of";
  return count < 1e6 ? "some hundreds of thousands of" : "a million or more";
}

const massLines = ({ masses }: StrengthStudy, page: Page): readonly string[] =>
  hang("", masses.map(({ label, mass }) => `${label} ${massWords(mass, page.units)}`).join("; "), page.width);
