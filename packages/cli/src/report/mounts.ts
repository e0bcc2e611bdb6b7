import { type Car, formatLength, formatNumber, type MountsFound, type Opening, unitOf } from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { counted, sayAmount } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { entryLines } from "./mounts-entry.ts";

const KILLED: Readonly<Record<keyof MountsFound["killedBy"], string>> = {
  "too-long-at-droop": "longer than the shock at full droop",
  "too-short-at-bump": "shorter than the shock at full bump",
  "stroke-used": "stroke used outside its window",
  "turns-back": "shock turns back on the way",
  "motion-ratio": "motion ratio at ride height",
  "motion-ratio-falls": "motion ratio falls toward bump",
  lean: "leans too far",
  "eye-misalignment": "eye tilts too far on its bolt",
  "off-square": "too far off square at full bump",
  clearance: "something in the way",
  wrench: "no room for a wrench at a bolt",
};

export function mountsLines(car: Car, found: MountsFound, openings: readonly Opening[], page: Page): readonly string[] {
  const say = (text: string) => hang("", text, page.width);
  const length = unitOf("length", page.units);
  return [
    ...hang("", car.name, page.width).map(page.bold),
    ...say(
      `${counted(found.tested, "place")} tried, ${found.feasible.count} fit, on a grid of ${formatLength(found.search.request.step, page.units)} ${length}.`,
    ),
    ...section(page, "Where the shock can go, best first", entryLines(found.best, page)),
    ...section(page, "What rules the others out", killedLines(found, page)),
    ...(found.best.length > 0
      ? []
      : section(page, "Smallest single change that opens a place", openingLines(openings, page))),
  ];
}

function killedLines({ killedBy, inTheWay }: MountsFound, page: Page): readonly string[] {
  const rows = (Object.keys(KILLED) as (keyof typeof KILLED)[])
    .filter((code) => killedBy[code] > 0)
    .map((code) => ({ cells: [KILLED[code], String(killedBy[code])] }));
  const ways = inTheWay
    .filter(({ count }) => count > 0)
    .map(({ label, count }) => ({ cells: [`  ${label}`, String(count)] }));
  return table(
    [
      { head: ["the first that each fails"], align: "left", gives: true },
      { head: ["places"], align: "right" },
    ],
    [...rows, ...ways],
    page.width,
  );
}

function openingLines(openings: readonly Opening[], page: Page): readonly string[] {
  if (openings.length === 0) return hang("", "No single change within reach opens a place.", page.width);
  return [
    ...openings.flatMap((opening, i) => hang(`${i + 1}  `, openingSentence(opening, page), page.width)),
    ...hang(
      "",
      "Each found on the same grid: a finer one may need less. --open N with --apply FILE writes the car with a keep-out lowered or notched so, and a quarter of an inch more, and the shock in its place.",
      page.width,
    ),
  ];
}

function openingSentence({ change, by, notch }: Opening, page: Page): string {
  const amount = sayAmount(by, "length", page.units);
  switch (change.kind) {
    case "longer-shock":
      return `a shock with ${amount} more stroke, that much longer closed and twice that open`;
    case "shorter-shock":
      return `a shock with ${amount} less stroke, that much shorter closed and twice that open`;
    case "less-bump":
      return `${amount} less travel in bump`;
    case "less-droop":
      return `${amount} less travel in droop`;
    case "wider-stroke-window":
      return `a window of the stroke used wider by ${formatNumber(100 * by, 1)} % at either end`;
    case "shorter-wrench":
      return `a socket and ratchet shorter by ${amount} at the bolts`;
    case "lower-keep-out":
      return `${change.keepOut} lower by ${amount}`;
    case "notch-keep-out": {
      const size = notch && [notch.to.x - notch.from.x, notch.to.y - notch.from.y, notch.to.z - notch.from.z];
      const box = size
        ? `; with its clearance kept that is a notch of ${size.map((each) => formatLength(each, page.units)).join(" by ")} ${unitOf("length", page.units)} (along it, across it, up)${faceWords(notch)}`
        : "";
      return `${change.keepOut} nearer by ${amount} than its clearance${box}`;
    }
  }
}

const faceWords = (notch: Opening["notch"]): string =>
  notch?.outline ? `, cut from its ${notch.outline.face} face` : "";

/** In SI: m, rad. */
export function mountsJson(found: MountsFound, openings: readonly Opening[]): string {
  const { tested, killedBy, inTheWay, feasible, best } = found;
  return `${JSON.stringify({ units: "SI", tested, killedBy, inTheWay, feasible: feasible.count, best, openings }, null, 2)}\n`;
}
