import {
  type BumpStopProposal,
  bumpStopAt,
  DEGREE,
  type Dimension,
  formatNumber,
  formatValue,
  type NoProposal,
  type StopsProposal,
  type StopsStudy,
  type StrapProposal,
  type Study,
  sayFinding,
  springNeed,
  USUAL_STOPS,
  unitOf,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { bare, counted, markTravel, sayAmount } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { GRAVITY } from "./findings.ts";

/**
 * What strap and bump stop do, what they have to take, and how they would be set for the travel aimed at. `after`: the study
 * of the car with them set so; null where nothing is proposed.
 */
export function stopsLines(
  study: Study,
  stops: StopsStudy,
  proposal: StopsProposal,
  after: Study | null,
  page: Page,
): readonly string[] {
  return [
    ...hang("", study.car.name, page.width).map(page.bold),
    ...section(page, "Strap", strapLines(study, stops, page)),
    ...section(page, "Bump stop", bumpStopLines(study, stops, page)),
    ...section(page, "To set them for the travel aimed at", proposalLines(proposal, knowsSnatch(study, stops), page)),
    ...section(page, "Findings on the stops as they are now", findingLines(study, page)),
    ...(after ? section(page, "Findings on the stops once set so", findingLines(after, page)) : []),
    ...section(page, "What this rests on", basisLines(stops, page)),
  ];
}

/** The snatch is reckoned with where its speed is given or follows from springs and weights. */
const knowsSnatch = ({ car }: Study, { wish }: StopsStudy): boolean =>
  car.chassis.unsprungMass !== undefined && (wish.snatchSpeed !== undefined || springNeed(car) === null);

const say = (value: number, dimension: Dimension, page: Page): string => formatValue(value, dimension, page.units);
const degrees = (angle: number): string => `${formatNumber(angle / DEGREE, 0)} deg`;
const at = (travel: number, page: Page): string =>
  `${markTravel(travel, page.units)} ${unitOf("length", page.units)} of travel`;

/** `3/4 in of wheel travel before the outer U-joint angle`, or after it. */
function marginWords(margin: number, label: string, page: Page): string {
  const amount = `${sayAmount(margin, "length", page.units)} of wheel travel`;
  return margin >= 0 ? `${amount} before ${label}` : `${amount} TOO LATE: ${label} comes first`;
}

function strapLines({ car }: Study, { strap }: StopsStudy, page: Page): readonly string[] {
  const line = (text: string) => hang("", text, page.width);
  if (!strap) return line("None in the document.");
  const { taut, hardLimit, margin, shaftLeft, snatch } = strap;
  if (!taut) return line("It never comes taut: it is too long.");
  const limit = hardLimit && margin !== null ? `, ${marginWords(margin, hardLimit.label, page)}` : "";
  const lines = [
    ...line(`Taut at ${at(taut.travel, page)}${limit}.`),
    ...line(
      `${say(strap.strap.length, "length", page)} long; ${say(Math.max(0, strap.slackAtRide), "length", page)} slack at ride. Taut, it pulls ${degrees(taut.offPath)} across its mount's path and stretches ${formatNumber(Math.abs(taut.ratio), 2)} for each of wheel travel.`,
    ),
    ...(shaftLeft === null
      ? []
      : line(
          `Shaft left in the shock then: ${say(shaftLeft, "length", page)} (common practice: ${say(USUAL_STOPS.shaftAtDroop, "length", page)} to twice that).`,
        )),
  ];
  if (!snatch) {
    lines.push(...line("Weights and springs are not all in the document: what snatches at it cannot be told."));
  } else {
    const end = hardLimit && snatch.margin !== null ? `, ${marginWords(snatch.margin, hardLimit.label, page)}` : "";
    lines.push(
      ...line(
        `Snatch: the wheel comes at ${say(snatch.speed, "speed", page)} with ${say(snatch.energy, "energy", page)}; the strap pulls ${say(snatch.force, "force", page)} and stretches ${say(snatch.stretch, "length", page)}, to ${at(snatch.travel, page)}${end}.`,
      ),
    );
  }
  if (strap.holes !== null) lines.push(...line(holeWords(strap.holes, "let it out", "take it in", "tail")));
  if (car.assumed.some(({ path }) => path.startsWith("strap.stretch")))
    lines.push(...line("Its stretch is assumed: 7.5 % under 2 000 lb (common practice: 5 to 10 % under a snatch)."));
  return lines;
}

function holeWords(holes: number, out: string, back: string, what: string): string {
  if (holes === 0) return `The hole in use of its ${what} is the right one.`;
  return `Holes of its ${what}: ${holes > 0 ? out : back} by ${Math.abs(holes)}.`;
}

function bumpStopLines({ car }: Study, { bumpStop }: StopsStudy, page: Page): readonly string[] {
  const line = (text: string) => hang("", text, page.width);
  if (!bumpStop) return line("None in the document.");
  const { touched, solid, hardLimit, margin, lever, shaftLeft, law, drop, takes, push } = bumpStop;
  if (!touched) return line("The wheel never comes to it.");
  const limit = hardLimit && margin !== null ? `, ${marginWords(margin, hardLimit.label, page)}` : "";
  const where = lever === null ? "" : `, ${say(lever, "length", page)} out on the arm from its hinge`;
  const lines = [
    ...line(
      `Touched at ${at(touched.travel, page)}${where}, ${degrees(touched.offPath)} off square (common practice: up to 10).`,
    ),
    ...line(solid ? `Solid at ${at(solid.travel, page)}${limit}.` : "The wheel does not squeeze it solid."),
    ...(shaftLeft === null
      ? []
      : line(
          `Shaft left in the shock then: ${say(shaftLeft, "length", page)} (common practice: ${say(USUAL_STOPS.shaftAtBump, "length", page)} to twice that).`,
        )),
    ...forceTable(bumpStop, page),
  ];
  const range =
    law.kind === "rubber"
      ? ` Rubber of one hardness differs: ${say(takes.soft, "energy", page)} and ${say(push.soft, "force", page)} to ${say(takes.stiff, "energy", page)} and ${say(push.stiff, "force", page)}.`
      : "";
  lines.push(
    ...line(
      `Until solid it takes ${say(takes.energy, "energy", page)} and then pushes ${say(push.solid, "force", page)}.${range}`,
    ),
  );
  if (drop) {
    lines.push(
      ...line(
        `Flat drop: ${say(drop.arrives, "energy", page)} arrive as it is touched, at ${say(drop.speedAtTouch, "speed", page)}. ${
          drop.left > 0
            ? `IT GOES SOLID with ${say(drop.left, "energy", page)} left over: about ${say(drop.force, "force", page)} on the arm there`
            : `The wheel stops at ${at(drop.travel, page)}: ${say(drop.force, "force", page)} on the arm, ${say(drop.atWheel, "force", page)} at the wheel`
        }. It is good for a drop of ${say(drop.mostHeight, "length", page)}.`,
      ),
    );
  } else lines.push(...line("Weights and springs are not all in the document: what arrives at it cannot be told."));
  if (bumpStop.holes !== null)
    lines.push(...line(holeWords(bumpStop.holes, "slide it toward the arm", "slide it away from the arm", "collar")));
  if (car.assumed.some(({ path }) => /^bumpStop\.(rubber|gas)/.test(path)))
    lines.push(...line("Part of its force is assumed: press it in a vice with a scale and enter it as measured."));
  return lines;
}

function forceTable({ law, touched, solid }: NonNullable<StopsStudy["bumpStop"]>, page: Page): readonly string[] {
  const first = Math.abs(touched?.ratio ?? 0);
  const last = Math.abs(solid?.ratio ?? first);
  return table(
    [
      { head: ["squeezed", unitOf("length", page.units)], align: "mark" },
      { head: ["push", unitOf("force", page.units)], align: "right" },
      { head: ["at wheel", unitOf("force", page.units)], align: "right" },
      { head: ["taken", unitOf("energy", page.units)], align: "right" },
    ],
    [0.25, 0.5, 0.75, 1].map((share) => {
      const { force, energy } = bumpStopAt(law, share * law.stroke);
      return {
        cells: [
          bare(share * law.stroke, "length", page.units),
          bare(force, "force", page.units),
          bare(force * (first + share * (last - first)), "force", page.units),
          bare(energy, "energy", page.units),
        ],
      };
    }),
    page.width,
  );
}

const REFUSED = {
  "no-arm": "this linkage has no arm to put it on: enter its mounts, then ask again",
  "no-room": "no length of it ends the travel before a hard limit; move its mounts or free the limit",
} as const;

function proposalLines(
  { strap, bumpStop, operations }: StopsProposal,
  knowsSnatch: boolean,
  page: Page,
): readonly string[] {
  const line = (text: string) => hang("", text, page.width);
  const less = (part: StrapProposal | BumpStopProposal) =>
    part.because === null ? "" : ` (less than aimed at: ${part.because})`;
  const holes = (part: StrapProposal | BumpStopProposal, words: readonly [string, string]) =>
    part.holes === null || part.holes === 0
      ? ""
      : `, ${counted(Math.abs(part.holes), "hole")} ${part.holes > 0 ? words[0] : words[1]}`;
  const one = <Part extends StrapProposal | BumpStopProposal>(
    name: string,
    part: Part | NoProposal,
    words: (part: Part) => string,
  ) => line("refused" in part ? `${name}: ${REFUSED[part.refused]}.` : words(part));
  return [
    ...one(
      "Strap",
      strap,
      (part) =>
        `Strap: ${say(part.length, "length", page)} hole to hole${holes(part, ["longer", "shorter"])}, taut at ${at(part.taut, page)}${less(part)}.`,
    ),
    ...one(
      "Bump stop",
      bumpStop,
      (part) =>
        `Bump stop: ${say(part.reach, "length", page)} to its face, solid at ${at(part.at, page)}${less(part)}${holes(part, ["toward the arm", "away from it"])}.`,
    ),
    ...("refused" in strap || knowsSnatch
      ? []
      : line(
          "The strap's stretch is NOT counted in, since weights or springs are missing: make it 1/2 to 1 in shorter (common practice) and tape it again.",
        )),
    ...operations.flatMap(({ path, value }) => jsonLines(`${path}: `, value, page.width)),
    ...line(
      "--apply FILE writes these. Places are found without a look at what is in the way: see that there is frame to weld to, and study the car again.",
    ),
  ];
}

/** JSON as it can be copied: on one line, or with a field to a line where that is too long; never broken inside a value. */
function jsonLines(lead: string, value: unknown, width: number): readonly string[] {
  const line = `  ${lead}${JSON.stringify(value)}`;
  if (line.length <= width) return [line];
  if (typeof value !== "object" || value === null) return [line];
  const fields = Object.entries(value).map(([name, field]) => `    ${JSON.stringify(name)}: ${JSON.stringify(field)}`);
  const last = fields.length - 1;
  return [`  ${lead}{`, ...fields.map((field, i) => (i < last ? `${field},` : field)), "  }"];
}

function findingLines({ findings }: Study, page: Page): readonly string[] {
  const own = findings.filter(({ place }) => /^(strap|bumpStop|stops)/.test(place));
  if (own.length === 0) return ["Nothing to mind."];
  return own.flatMap((finding) => {
    const { sentence, remedy } = sayFinding(finding, page.units);
    return [...hang(`${GRAVITY[finding.gravity]}  `, sentence, page.width), ...hang("      ", remedy, page.width)];
  });
}

function basisLines({ wish }: StopsStudy, page: Page): readonly string[] {
  const line = (text: string) => hang("", text, page.width);
  const damped =
    wish.dampingBump === 0
      ? "dampers left out"
      : `dampers at ${formatNumber(wish.dampingBump, 2)} of critical in bump and ${formatNumber(wish.dampingRebound, 2)} in rebound (common practice), level over the travel`;
  return [
    ...line(
      `Drop: the car falls flat ${say(wish.dropHeight, "length", page)}, wheels hanging, onto rigid ground; ${damped}; tyre and wheel weight left out.`,
    ),
    ...line(
      "Snatch: the wheel falls away from a body that stands still, from where the car sits, driven by springs and its weight; the body's own flight and the drag of the shaft are left out.",
    ),
    ...line(
      "Gas and rubber are taken cold and new. A rule book or a licensed engineer decides what the frame must bear.",
    ),
    ...line("Never reach between arm and stop; springs out and the car on stands before the stops are set."),
  ];
}

/** In SI: m, N, J, rad. */
export const stopsJson = (stops: StopsStudy, proposal: StopsProposal): string =>
  `${JSON.stringify({ armwrightStops: 1, units: "SI", ...stops, proposal }, null, 2)}\n`;
