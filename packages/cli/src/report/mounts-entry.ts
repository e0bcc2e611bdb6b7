import { DEGREE, formatLength, formatNumber, type Proposal, type TapeTo, unitOf } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { bare, sayAmount } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

/** The short list: what is given for what, side by side, then for each what the tape has to read. */
export function entryLines(best: readonly Proposal[], page: Page): readonly string[] {
  if (best.length === 0) return [];
  const length = unitOf("length", page.units);
  return [
    ...tradeOffs(best, page),
    "",
    ...best.flatMap((each, i) => tapeLines(each, i, page)),
    "",
    ...hang(
      "",
      `Lengths in ${length}. Motion ratio: shock shortening over wheel travel, at that position.`,
      page.width,
    ),
    ...hang("", loadWords(best, page), page.width),
    ...hang(
      "",
      "Off by: how far both mounts may be off at once before anything asked for breaks. Eyes are taken to turn on bolts along the arm's hinge line; a socket goes on each bolt from one side, at ride height or full droop (common practice).",
      page.width,
    ),
  ];
}

function tradeOffs(best: readonly Proposal[], page: Page): readonly string[] {
  const { units } = page;
  const length = unitOf("length", units);
  return table(
    [
      { head: ["", ""], align: "right" },
      { head: ["shock", ""], align: "left", gives: true },
      { head: ["stroke", "used %"], align: "right" },
      { head: ["MR", "ride"], align: "right" },
      { head: ["MR rises", "to bump"], align: "right" },
      { head: ["least gap", length], align: "mark" },
      { head: ["mount load", `bump ${unitOf("force", units)}`], align: "right" },
      { head: ["to frame", length], align: "mark" },
      { head: ["off by", length], align: "mark" },
    ],
    best.map((each, i) => ({
      cells: [
        String(i + 1),
        each.shock.name,
        formatNumber(100 * each.strokeUsed, 0),
        formatNumber(each.motionRatio, 2),
        formatNumber(each.progression, 2, true),
        each.nearest ? formatLength(each.nearest.gap, units) : "",
        each.mountLoad ? bare(each.mountLoad.atBump, "force", units) : "",
        each.loadPath ? formatLength(each.loadPath.length, units) : "",
        formatLength(each.slack, units),
      ],
    })),
    page.width,
  );
}

function tapeLines(each: Proposal, index: number, page: Page): readonly string[] {
  const at = (metres: number): string => formatLength(metres, page.units);
  const mount = ({ forward, out, up }: Proposal["tape"]["upper"]) =>
    `${at(forward)} forward, ${at(out)} out, ${at(up)} up`;
  const to = (readings: readonly TapeTo[]): string =>
    readings.map(({ label, distance }) => `${at(distance)} to ${label}`).join(", ");
  const near = each.nearest ? ` Nearest is ${each.nearest.label}.` : "";
  const frame = each.loadPath ? ` Nearest tube of the frame is ${each.loadPath.tube}.` : "";
  return [
    `${each.shock.name}: upper ${mount(each.tape.upper)}; lower ${mount(each.tape.lower)} (${each.lower.on}).`,
    `Tape, upper: ${to(each.tapeTo.upper)}.`,
    `Tape, lower: ${to(each.tapeTo.lower)}.`,
    `Eye to eye ${at(each.atDroop)} at droop, ${at(each.atRide)} at ride, ${at(each.atBump)} at bump.`,
    `Leans ${formatNumber(each.lean / DEGREE, 0)} deg; ${formatNumber(each.offSquare / DEGREE, 0)} deg off square at bump; either mount may be off by ${sayAmount(each.slack, "length", page.units)}.${near}${frame}`,
  ].flatMap((line, n) => hang(n === 0 ? `${index + 1}  ` : "   ", line, page.width));
}

function loadWords(best: readonly Proposal[], { units }: Page): string {
  const load = best.find(({ mountLoad }) => mountLoad)?.mountLoad;
  if (!load) return "No mount load: enter weights.corner and weights.unsprung.";
  const from =
    load.from === "springs"
      ? "from the car's own springs and gas"
      : `from the sprung weight and a spring rate assumed for ${formatNumber(load.frequency!, 2)} Hz (common practice for the use)`;
  const only = `springs and gas only, not the damper, not a bump stop on its own mounts, not a landing`;
  return `Mount load: along the shock at full bump, in ${unitOf("force", units)}, ${from}; ${only}. It is no load case for strength.`;
}
