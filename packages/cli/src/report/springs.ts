import {
  bandOf,
  formatLength,
  formatNumber,
  formatValue,
  gapFromCrossover,
  INCH,
  LEFT_TO_SOLID,
  type SpringPosition,
  type SpringStudy,
  type Study,
  sayFinding,
  shaftForces,
  USUAL_RATIOS,
  unitOf,
  WEIGHT_ERROR,
  type WeightEffect,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { bare, markTravel } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { GRAVITY } from "./findings.ts";

/** Where the car sits, what the springs do at full droop, ride and full bump, and what there is to mind. */
export function springLines(study: Study, springs: SpringStudy, page: Page): readonly string[] {
  return [
    ...section(page, "Where the car sits", restLines(study, springs, page)),
    ...section(page, "Force and rate", positionLines(springs, page)),
    ...section(page, "Crossover and room", roomLines(springs, page)),
    ...section(page, "Damping to aim at", dampingLines(springs, page)),
    ...section(page, "Findings on the springs", findingLines(study, page)),
    ...section(page, "Before you touch a spring", cautionLines(page)),
  ];
}

const show = (value: number, dimension: Parameters<typeof formatValue>[1], { units }: Page): string =>
  formatValue(value, dimension, units);

function restLines({ car }: Study, made: SpringStudy, page: Page): readonly string[] {
  const { rest, left, sagShare, frequency, springs } = made;
  const say = (text: string) => hang("", text, page.width);
  const band = bandOf(car.targets.use);
  const off = Math.abs(rest.travel);
  const drawn =
    formatLength(off, page.units) === "0"
      ? "as drawn"
      : `${show(off, "length", page)} ${rest.travel > 0 ? "lower" : "higher"} than drawn`;
  const sits = {
    springs: `The car sits ${drawn}: shock ${show(rest.state.shockLength, "length", page)} eye to eye.`,
    "bump-stop": "THE SPRINGS DO NOT CARRY THE CAR: it sits on the bump stop.",
    "droop-stop": "THE SPRINGS LIFT THE WHEEL TO FULL DROOP: no droop travel is left.",
  };
  return [
    ...say(sits[rest.on]),
    ...say(
      `Left from there: ${show(left.bump, "length", page)} bump, ${show(left.droop, "length", page)} droop; the weight takes up ${show(sagShare, "percent", page)} of the travel.`,
    ),
    ...say(
      `Ride frequency ${frequency.ride === null ? "none, the springs are solid" : show(frequency.ride, "frequency", page)}${frequency.beyondCrossover === null ? "" : `, past crossover ${show(frequency.beyondCrossover, "frequency", page)}`}${car.wheel.tyreRate === undefined ? ", the tyre taken as rigid" : ", on the tyre's own rate"}. Common practice for ${car.targets.use ?? "off-road"} use: ${formatNumber(band.from, 1)} to ${formatNumber(band.to, 1)} Hz.`,
    ),
    ...say(
      `Sprung weight ${show(made.sprungMass, "mass", page)}; preload ${show(springs.preload, "length", page)}, ${formatNumber(springs.preload / springs.collarPitch, 1)} turns of the collar.`,
    ),
    ...say(designLine(made, page)),
    ...(made.weightError ? say(weightLine(made.weightError, page)) : []),
  ];
}

/** Scales and the guess of what is not sprung are never exact. */
function weightLine({ heavier, lighter }: NonNullable<SpringStudy["weightError"]>, page: Page): string {
  const one = ({ lower, turns }: WeightEffect): string =>
    `it sits ${show(Math.abs(lower), "length", page)} ${lower > 0 ? "lower" : "higher"} (${formatNumber(Math.abs(turns), 1)} turns ${turns > 0 ? "down" : "back up"} mend it)`;
  const share = formatNumber(100 * WEIGHT_ERROR, 0);
  return `With ${share} % more sprung weight ${one(heavier)}; with ${share} % less ${one(lighter)}.`;
}

function designLine({ preloadForDesign, springs }: SpringStudy, page: Page): string {
  if (preloadForDesign === null) return "No preload brings it to the drawn height: these are the wrong springs.";
  const turns = (preloadForDesign - springs.preload) / springs.collarPitch;
  const wind =
    Math.abs(turns) < 0.05 ? "as it is" : `${formatNumber(Math.abs(turns), 1)} turns ${turns > 0 ? "down" : "back up"}`;
  return `To sit exactly as drawn: preload ${show(preloadForDesign, "length", page)} (${wind}).`;
}

const NAMES: Record<SpringPosition["name"], string> = { droop: "full droop", ride: "where it sits", bump: "full bump" };

function positionLines({ positions }: SpringStudy, page: Page): readonly string[] {
  const { units } = page;
  const head = (dimension: Parameters<typeof unitOf>[0]) => unitOf(dimension, units);
  return [
    ...table(
      [
        { head: ["", ""], align: "left" },
        { head: ["travel", head("length")], align: "mark" },
        { head: ["shock", head("length")], align: "mark" },
        { head: ["motion", "ratio"], align: "right" },
        { head: ["springs", head("force")], align: "right" },
        { head: ["gas", head("force")], align: "right" },
        { head: ["at wheel", head("force")], align: "right" },
        { head: ["shock rate", head("rate")], align: "right" },
        { head: ["wheel rate", head("rate")], align: "right" },
        { head: ["", "Hz"], align: "right" },
      ],
      positions.map(({ name, state, frequency }) => ({
        cells: [
          NAMES[name],
          markTravel(state.travel, units),
          formatLength(state.shockLength, units),
          formatNumber(state.motionRatio, 2),
          `${state.springs.isSolid ? "over " : ""}${bare(state.springs.force, "force", units)}`,
          bare(state.gasForce, "force", units),
          `${state.springs.isSolid ? "over " : ""}${bare(state.wheelForce, "force", units)}`,
          state.springs.isSolid ? "solid" : bare(state.shockRate, "rate", units),
          state.springs.isSolid ? "solid" : bare(state.wheelRate, "rate", units),
          frequency !== null && frequency > 0 ? formatNumber(frequency, 2) : "",
        ],
        ...(name === "ride" && { paint: page.bold }),
      })),
      page.width,
    ),
    ...hang(
      "",
      "Motion ratio: shock ÷ wheel, at that place. Wheel rate: shock rate × ratio² + force × its change.",
      page.width,
    ),
  ];
}

function roomLines(made: SpringStudy, page: Page): readonly string[] {
  const { crossover, springs, rest, positions, looseAtDroop, shockSpring } = made;
  const say = (text: string) => hang("", text, page.width);
  const lines: string[] = [];
  const { main, tender } = springs;
  if (crossover && tender) {
    const past = rest.state.shockLength - crossover.shockLength;
    const gap = gapFromCrossover(shockSpring.longest, crossover.shockLength, main.rate, tender.rate);
    const where =
      crossover.travel === null
        ? "outside the travel"
        : `at ${markTravel(crossover.travel, page.units)} ${unitOf("length", page.units)} of travel`;
    lines.push(
      ...say(
        `Crossover ${where}: shock ${show(crossover.shockLength, "length", page)}, ${show(Math.abs(past), "length", page)} of shock ${past > 0 ? "past ride" : "BEFORE ride"}; ${crossover.by === "stop" ? "the slider meets its stop" : "THE TENDER GOES SOLID"}.`,
      ),
    );
    if (crossover.by === "stop") {
      lines.push(...say(`Set the stop ${show(gap, "length", page)} from the slider with the shock fully open.`));
    }
  } else if (tender) lines.push(...say("Both springs work together over the whole travel: there is no crossover."));
  for (const { name, length, leftToSolid } of positions[2]!.state.springs.members) {
    const short = leftToSolid < LEFT_TO_SOLID ? ` Common practice leaves ${show(LEFT_TO_SOLID, "length", page)}.` : "";
    lines.push(
      ...say(
        `${name === "main" ? "Main" : "Tender"} spring at full bump: ${show(length, "length", page)} long, ${show(Math.max(0, leftToSolid), "length", page)} left before coil lies on coil.${short}`,
      ),
    );
  }
  lines.push(
    ...say(
      looseAtDroop > 0
        ? `At full droop the springs are LOOSE by ${show(looseAtDroop, "length", page)}.`
        : "At full droop the springs are held.",
    ),
  );
  return lines;
}

const INCHES_A_SECOND = [2, 5, 10, 20].map((speed) => speed * INCH);
const METRES_A_SECOND = [0.05, 0.1, 0.25, 0.5];

function dampingLines({ positions }: SpringStudy, page: Page): readonly string[] {
  const { units } = page;
  const damping = positions[1]!.damping;
  if (!damping) return [];
  const speeds = units === "metric" ? METRES_A_SECOND : INCHES_A_SECOND;
  const all = positions.flatMap((each) =>
    each.damping ? [`${NAMES[each.name]} ${show(each.damping.atShock, "damping", page)}`] : [],
  );
  return [
    ...hang("", `Critical at the shock: ${all.join(", ")}.`, page.width),
    ...table(
      [
        { head: [`shaft speed, ${unitOf("speed", units)}`], align: "right" },
        { head: [`bump, ${unitOf("force", units)}`], align: "right" },
        { head: [`rebound, ${unitOf("force", units)}`], align: "right" },
      ],
      shaftForces(damping, USUAL_RATIOS, speeds).map(({ speed, bump, rebound }) => ({
        cells: [bare(speed, "speed", units), bare(bump, "force", units), bare(rebound, "force", units)],
      })),
      page.width,
    ),
    ...hang(
      "",
      `Where the car sits: bump ${formatNumber(USUAL_RATIOS.bump, 2)} of critical, rebound ${formatNumber(USUAL_RATIOS.rebound, 2)} (common practice: 0.2 to 0.4, 0.4 to 0.7); shocks flatten above the slow speeds.`,
      page.width,
    ),
  ];
}

function findingLines({ findings }: Study, page: Page): readonly string[] {
  const own = findings.filter(({ place }) => place.startsWith("shock.springs"));
  if (own.length === 0) return ["Nothing to mind."];
  return own.flatMap((finding) => {
    const { sentence, remedy } = sayFinding(finding, page.units);
    return [...hang(`${GRAVITY[finding.gravity]}  `, sentence, page.width), ...hang("      ", remedy, page.width)];
  });
}

const cautionLines = (page: Page): readonly string[] => [
  ...hang(
    "",
    "A squeezed spring kills: shock fully open and the wheel hanging before the collar is turned off; no impact driver on it.",
    page.width,
  ),
  ...hang(
    "",
    "Let the gas down through its valve, face away, before a shock is opened; only nitrogen goes back in.",
    page.width,
  ),
  ...hang(
    "",
    "Rates are good to 2 to 5 % (common practice), scales seldom better: set the height on the car, then weigh again.",
    page.width,
  ),
];
