import {
  type Car,
  formatLength,
  formatNumber,
  type OwnedAnswer,
  type Reach,
  USUAL_MARGIN,
  unitOf,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { markTravel } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

/** What the parts at hand allow: travel, shocks, track. */
export function ownedLines(car: Car, { window, shocks, track }: OwnedAnswer, page: Page): readonly string[] {
  const { units } = page;
  const length = unitOf("length", units);
  const at = (metres: number): string => formatLength(metres, units);
  const say = (text: string) => hang("", text, page.width);
  const ends = [window.bump, window.droop].map((end, i) => {
    const name = i === 0 ? "Bump" : "Droop";
    const hard = end.limit
      ? `the first hard limit is ${end.limit.label}, ${markTravel(end.limit.travel, units)}`
      : "nothing hard is met";
    const strap = i === 1 && window.strap ? `; the strap of ${at(window.strap.length)} hole to hole is taut there` : "";
    return `${name} may end at ${markTravel(end.travel, units)}: ${hard}${strap}.`;
  });
  return [
    ...hang("", car.name, page.width).map(page.bold),
    ...section(page, "What half shaft, strap and body allow", [
      ...ends.flatMap((line) => hang("- ", line, page.width)),
      ...(car.strap || !window.droop.limit
        ? []
        : say("No strap is entered: its mounts are needed to tell for which droop a length is.")),
    ]),
    ...section(page, "What travel each shock allows, most first", shockLines(shocks, page)),
    ...section(page, "How far the wheel can be moved with this half shaft", trackLines(track, page)),
    "",
    ...say(
      `Lengths in ${length}, travel at the wheel centre. Stops end ${at(USUAL_MARGIN)} before a hard limit (common practice). Any share of the stroke may be used. Track: hub, outer pivots and outer joint moved out together, the shaft's pieces as they are; a search on a grid: a finer one may find a little more.`,
    ),
  ];
}

const KEPT: Record<Reach["kept"], string> = {
  even: "both ends",
  bump: "droop only",
  droop: "bump only",
};

function shockLines(shocks: OwnedAnswer["shocks"], page: Page): readonly string[] {
  const { units } = page;
  const length = unitOf("length", units);
  const at = (metres: number): string => formatLength(metres, units);
  const rows = shocks.flatMap(({ shock, reaches }) =>
    reaches.map((reach) => ({
      cells: [
        shock.name,
        markTravel(reach.bump, units),
        markTravel(reach.droop, units),
        at(reach.bump - reach.droop),
        reach.givenUp === 0 ? "nothing" : KEPT[reach.kept],
        formatNumber(100 * reach.proposal.strokeUsed, 0),
        `${at(reach.proposal.upper.x)}, ${at(reach.proposal.upper.y)}, ${at(reach.proposal.upper.z)}`,
        `${at(reach.proposal.lower.point.x)}, ${at(reach.proposal.lower.point.y)}, ${at(reach.proposal.lower.point.z)}`,
      ],
    })),
  );
  const none = shocks.filter(({ reaches }) => reaches.length === 0).map(({ shock }) => shock.name);
  return [
    ...(rows.length === 0
      ? []
      : table(
          [
            { head: ["shock", ""], align: "left" },
            { head: ["bump", length], align: "mark" },
            { head: ["droop", length], align: "mark" },
            { head: ["total", length], align: "mark" },
            { head: ["given up", "at"], align: "left" },
            { head: ["stroke", "used %"], align: "right" },
            { head: ["upper mount", "forward, out, up"], align: "left", gives: true },
            { head: ["lower mount", "forward, out, up"], align: "left", gives: true },
          ],
          rows,
          page.width,
        )),
    ...(none.length === 0 ? [] : hang("", `No place, for half of the travel either: ${none.join(", ")}.`, page.width)),
  ];
}

function trackLines(track: OwnedAnswer["track"], page: Page): readonly string[] {
  const { units } = page;
  if (!track) return hang("", "No half shaft is entered.", page.width);
  const at = (metres: number): string => formatLength(metres, units);
  const end = ({ track: width, out, limit }: typeof track.least): string =>
    `${at(width)} (${markTravel(out, units)} a side${limit ? `, then ${limit}` : ", as far as was looked"})`;
  return hang(
    "",
    `With ${markTravel(track.travel.bump, units)} and ${markTravel(track.travel.droop, units)} of travel the track may be from ${end(track.least)} to ${end(track.most)}.`,
    page.width,
  );
}

/** In SI: m, rad. */
export const ownedJson = (answer: OwnedAnswer): string => `${JSON.stringify({ units: "SI", ...answer }, null, 2)}\n`;
