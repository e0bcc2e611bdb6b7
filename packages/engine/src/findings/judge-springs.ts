import { USUAL_PRELOAD } from "../springs/spring-choice.ts";
import { type SpringStudy, springNeed, studySprings } from "../springs/spring-study.ts";
import { bandOf } from "../springs/use-band.ts";
import { formatNumber } from "../units/format.ts";
import { type Finding, type FindingValue, length } from "./finding.ts";
import type { Judged } from "./judge.ts";

const INCH = 0.0254;
/** Off the drawn ride height by more than this is worth a word, m: ours; scales and springs are good to about that much. */
const RIDE_HEIGHT = INCH / 4;
/** Less than this, m, does not count: half of a sixteenth. */
const SAME = INCH / 32;

const PRACTICE = "common practice";
const SOLVED = "your document and the solved motion";

export function judgeSprings(study: Judged): Finding[] {
  const { shock } = study.car;
  const need = springNeed(study.car);
  if (!shock) return [];
  if (!shock.springs) {
    return [{ code: "springs-missing", gravity: "note", place: "shock.springs", source: "your document", values: {} }];
  }
  if (need) {
    return [
      {
        code: "springs-need-weights",
        gravity: "note",
        place: need === "corner-weight" ? "weights.corner" : "weights.unsprung",
        source: "your document",
        values: {},
      },
    ];
  }
  const made = studySprings(study);
  if (!made) return [];
  return [
    ...judgeFit(made, shock.longest),
    ...judgeBind(made),
    ...judgeLoose(made),
    ...judgeRest(made),
    ...judgeRates(made, study),
  ];
}

const frequency = (value: number): FindingValue => ({ value, dimension: "frequency" });
const rate = (value: number): FindingValue => ({ value, dimension: "rate" });

/** Springs that are longer together than the shock is, eye to eye, are not on it. */
function judgeFit({ springs: { main, tender, preload } }: SpringStudy, longest: number): Finding[] {
  const together = main.freeLength + (tender?.freeLength ?? 0) - preload;
  if (together <= longest) return [];
  return [
    {
      code: "springs-do-not-fit",
      gravity: "must",
      place: "shock.springs",
      source: "your document",
      values: { together: length(together), shock: length(longest) },
    },
  ];
}

/** A spring that has become solid is the stop; the tender may, once the main one goes on alone by its stop. */
function judgeBind({ positions, stops, shockSpring }: SpringStudy): Finding[] {
  const { springs } = positions[2]!.state;
  return springs.members.flatMap(({ name, leftToSolid }) => {
    if (leftToSolid > 1e-9) return [];
    const beyond = springs.isSolid ? solidBy(shockSpring, positions[2]!.state.shockLength) : 0;
    return [
      {
        code: "coil-bind-before-stop" as const,
        gravity: "must" as const,
        place: `shock.springs.${name}`,
        travel: stops.bump,
        source: SOLVED,
        values: { spring: name, beyond: length(beyond), travel: length(stops.bump) },
      },
    ];
  });
}

/** How much shorter the shock is at the stop than the solid springs let it be, m. */
const solidBy = ({ stack }: SpringStudy["shockSpring"], shockLength: number): number =>
  stack.longest + stack.preload - stack.stretches[stack.stretches.length - 1]!.from - shockLength;

function judgeLoose({ looseAtDroop, stops, springs }: SpringStudy): Finding[] {
  if (looseAtDroop <= SAME) return [];
  return [
    {
      code: "spring-loose-at-droop",
      gravity: "mind",
      place: "shock.springs.preload",
      travel: stops.droop,
      source: SOLVED,
      values: {
        gap: length(looseAtDroop),
        turns: formatNumber(looseAtDroop / springs.collarPitch, 1),
        travel: length(stops.droop),
      },
    },
  ];
}

function judgeRest({ rest, preloadForDesign, springs }: SpringStudy): Finding[] {
  const common = { place: "shock.springs", travel: rest.travel } as const;
  if (rest.on !== "springs") {
    return [
      {
        ...common,
        code: "car-sits-on-its-stop",
        gravity: "must",
        source: SOLVED,
        values: { end: rest.on === "bump-stop" ? "bump" : "droop", travel: length(Math.abs(rest.travel)) },
      },
    ];
  }
  if (Math.abs(rest.travel) <= RIDE_HEIGHT) return [];
  const isWrong = preloadForDesign === null || preloadForDesign < 0 || preloadForDesign > USUAL_PRELOAD.most;
  const turns = preloadForDesign === null ? 0 : (preloadForDesign - springs.preload) / springs.collarPitch;
  return [
    {
      ...common,
      code: "ride-height-off",
      gravity: "mind",
      source: PRACTICE,
      values: {
        off: length(Math.abs(rest.travel)),
        way: rest.travel > 0 ? "lower" : "higher",
        isWrong: isWrong ? "yes" : "no",
        preload: length(preloadForDesign ?? 0),
        most: length(USUAL_PRELOAD.most),
        want: rest.travel > 0 ? "stiffer" : "softer",
        turns: formatNumber(Math.abs(turns), 1),
        wind: turns > 0 ? "down" : "back up",
      },
    },
  ];
}

function judgeRates(made: SpringStudy, { car }: Judged): Finding[] {
  const { springs, rest, crossover } = made;
  const findings: Finding[] = [];
  const band = bandOf(car.targets.use);
  const ride = made.frequency.ride;
  if (rest.on === "springs" && ride !== null && (ride < band.from - LEAST_HERTZ || ride > band.to + LEAST_HERTZ)) {
    findings.push({
      code: "ride-frequency",
      gravity: "mind",
      place: "shock.springs",
      travel: rest.travel,
      source: PRACTICE,
      values: {
        frequency: frequency(ride),
        from: frequency(band.from),
        to: frequency(band.to),
        use: car.targets.use ?? "off-road",
        want: ride < band.from ? "Stiffer" : "Softer",
      },
    });
  }
  const { main, tender } = springs;
  if (tender && tender.rate > main.rate) {
    findings.push({
      code: "main-softer-than-tender",
      gravity: "mind",
      place: "shock.springs.main.rate",
      source: PRACTICE,
      values: { main: rate(main.rate), tender: rate(tender.rate) },
    });
  }
  const past = crossover ? rest.state.shockLength - crossover.shockLength : 0;
  if (crossover && past <= SAME) {
    findings.push({
      code: "crossover-at-ride",
      gravity: "mind",
      place: "shock.springs.crossoverAt",
      travel: rest.travel,
      source: PRACTICE,
      values: {
        before: length(-past),
        from: length(INCH),
        to: length(3 * INCH),
        by: crossover.by === "stop" ? "The slider is at its stop" : "The tender is solid",
      },
    });
  }
  return findings;
}

/** Half of the last digit that is shown, Hz. */
const LEAST_HERTZ = 0.005;
