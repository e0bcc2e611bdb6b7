import type { Dimension } from "../car/car.ts";
import type { LimitCertainty } from "../certainty/limit-certainty.ts";
import type { Direction } from "../limits/find-limits.ts";
import type { LimitCode } from "../limits/limit.ts";
import type { DirectionReport, LimitReport } from "../limits/travel-report.ts";
import { contactAt } from "./contact.ts";
import { type Finding, type FindingValue, length } from "./finding.ts";
import type { Judged } from "./judge.ts";
import { isUncertain } from "./judge-certainty.ts";
import { STOP_NAME } from "./stop-name.ts";

const INCH = 0.0254;
const DEGREE = Math.PI / 180;

/** Left at the chosen stop, by kind of limit: common practice of the trade, no published source. */
const WANTED_AT_STOP: Partial<Record<LimitCode, number>> = {
  "shock-longest": 0.5 * INCH,
  "shock-shortest": 0.25 * INCH,
  "inner-joint": 2 * DEGREE,
  "outer-joint": 2 * DEGREE,
  "slip-bottoms": 0.125 * INCH,
  "slip-engagement": 0.125 * INCH,
  "rod-end": 2 * DEGREE,
};

/** Less short of a figure than this reads as that figure: half of the last digit shown. */
const READS_THE_SAME: Partial<Record<Dimension, number>> = { length: INCH / 32, angle: 0.05 * DEGREE };

/** Differences of dimensions below this are not worth a word, m: half of a sixteenth. */
const SAME = INCH / 32;

/** `near`: how sure the near limits are; none while the hand moves something. */
export function judgeTravel(study: Judged, near: readonly LimitCertainty[] = []): Finding[] {
  const { bump, droop } = study.travel;
  const up = judgeDirection(study, bump, near);
  // What is already past at ride height is met at once in both directions, and told once.
  const told = new Set(up.filter(({ code }) => code === "past-at-ride").map(({ values }) => values["limit"]));
  const down = judgeDirection(study, droop, near).filter(
    ({ code, values }) => code !== "past-at-ride" || !told.has(values["limit"]),
  );
  const judged = [...up, ...down];
  const short = (["bump", "droop"] as const).flatMap((direction) => shockShort(study, direction, judged) ?? []);
  // Told as one thing: that the stop should come sooner for the shock and later for the travel helps nobody.
  const isTold = ({ code, place, values }: Finding): boolean =>
    (code === "limit-close" || code === "travel-short") &&
    short.some((each) => each.values["way"] === values["way"] && (code === "travel-short" || each.place === place));
  return [...judged, ...judgeClearances(study), ...short, ...judgeTargets(study)].filter((each) => !isTold(each));
}

/** Where the travel aimed at is not reached and the shock's own length is what stands against more of it. */
function shockShort({ car, travel }: Judged, direction: Direction, judged: readonly Finding[]): Finding | null {
  const { stop, limits } = travel[direction];
  const wanted = car.targets[direction];
  const got = Math.abs(stop.travel);
  if (wanted === undefined || got >= wanted - SAME) return null;
  const code = direction === "bump" ? "shock-shortest" : "shock-longest";
  const shock = limits.find((limit) => limit.code === code && !limit.pastAtRide);
  if (!shock) return null;
  const isClose = judged.some(
    ({ code, place, values }) => code === "limit-close" && place === shock.place && values["way"] === direction,
  );
  if (!isClose && Math.abs(shock.travel) >= wanted - SAME) return null;
  return {
    code: "shock-short-for-travel",
    gravity: "mind",
    place: shock.place,
    travel: stop.travel,
    source: "target in your document; common practice for the shaft left over",
    values: {
      way: direction,
      end: length(Math.abs(shock.travel)),
      wanted: length(wanted),
      got: length(got),
      reserve: length(WANTED_AT_STOP[code] ?? 0),
    },
  };
}

function judgeDirection(study: Judged, report: DirectionReport, near: readonly LimitCertainty[]): Finding[] {
  const { direction, stop } = report;
  const certaintyOf = ({ id }: LimitReport): LimitCertainty | undefined =>
    near.find((each) => each.direction === direction && each.limit.id === id);
  const findings: Finding[] = [];
  const way = direction;
  if (!stop.works) {
    findings.push({
      code: "stop-does-not-work",
      gravity: "must",
      place: `stops.${direction}`,
      travel: stop.travel,
      source: "your document and the solved motion",
      values: {
        stop: STOP_NAME[stop.by],
        way,
        first: report.first?.label ?? "",
        code: report.first?.code ?? "linkage",
        travel: length(Math.abs(stop.travel)),
      },
    });
  }
  if (stop.insteadOf !== undefined) {
    findings.push({
      code: "another-part-stops-first",
      gravity: "mind",
      place: `stops.${direction}`,
      travel: stop.travel,
      source: "your document and the solved motion",
      values: {
        way,
        stop: STOP_NAME[stop.by],
        chosen: STOP_NAME[stop.insteadOf],
        travel: length(Math.abs(stop.travel)),
      },
    });
  }
  if (stop.by === "travel") {
    findings.push({
      code: "no-part-stops-the-wheel",
      gravity: "mind",
      place: `stops.${direction}`,
      travel: stop.travel,
      source: "common practice: shock and joints are never the stop",
      values: { way, travel: length(Math.abs(stop.travel)), part: direction === "bump" ? "bump stop" : "strap" },
    });
  }
  if (stop.by === "shock") {
    findings.push({
      code: "shock-is-the-stop",
      gravity: "mind",
      place: `stops.${direction}`,
      travel: stop.travel,
      source: "common practice: the shock is never the stop",
      values: { way, part: direction === "bump" ? "bump stop" : "strap" },
    });
  }
  for (const limit of report.limits) {
    if (limit.pastAtRide && (limit.code === "strap" || limit.code === "bump-stop-solid")) {
      findings.push(stopPastAtRide(limit));
    }
    if (limit.nature === "made" || isTheStop(limit, report)) continue;
    // Where the chosen stop never works, what stops the wheel instead is already told with it.
    if (!stop.works && limit === report.first) continue;
    if (limit.pastAtRide) findings.push(pastAtRide(study, limit));
    // Nearer to the stop than a tape can tell is at the stop, not before it.
    else if (limit.travelLeft < -SAME) findings.push(beforeStop(limit, report, certaintyOf(limit)?.sd));
    else {
      const certainty = certaintyOf(limit);
      // That it may come before the stop says more than that it comes close.
      if (certainty && isUncertain(certainty)) continue;
      const wanted = WANTED_AT_STOP[limit.code] ?? (limit.isProtected ? undefined : 0);
      if (wanted !== undefined && limit.spare < wanted - (READS_THE_SAME[limit.dimension] ?? 0)) {
        findings.push(close(limit, report, wanted));
      }
    }
  }
  if (direction === "bump") {
    const touched = report.limits.find(({ code }) => code === "bump-stop-touched");
    const isSolid = report.limits.some(({ code, pastAtRide }) => code === "bump-stop-solid" && pastAtRide);
    if (touched?.pastAtRide && !isSolid) {
      findings.push({
        code: "bump-stop-touched-at-ride",
        gravity: "mind",
        place: "bumpStop.reach",
        travel: 0,
        source: "solved motion; common practice for where it should land",
        values: { from: length(2 * INCH), to: length(4 * INCH) },
      });
    }
  }
  return findings;
}

/** A stop chosen to be the shock is not also before itself. */
const isTheStop = (limit: LimitReport, report: DirectionReport): boolean =>
  report.stop.by === "shock" && (limit.code === "shock-shortest" || limit.code === "shock-longest");

const ofDimension = (value: number, dimension: Dimension): FindingValue => ({ value, dimension });

function stopPastAtRide(limit: LimitReport): Finding {
  return {
    code: "stop-past-at-ride",
    gravity: "must",
    place: limit.place,
    travel: 0,
    source: "solved position at ride height",
    values: { part: limit.code === "strap" ? "strap" : "bump stop", over: length(-limit.spare) },
  };
}

function pastAtRide(study: Judged, limit: LimitReport): Finding {
  const spot = contactAt(study, limit.id);
  return {
    code: "past-at-ride",
    gravity: "must",
    place: limit.place,
    travel: 0,
    ...(spot && { at: spot }),
    source: "solved position at ride height",
    values: { limit: limit.label, code: limit.code },
  };
}

function beforeStop(limit: LimitReport, report: DirectionReport, sd: number | undefined): Finding {
  return {
    code: "limit-before-stop",
    gravity: "must",
    place: limit.place,
    travel: limit.travel,
    source: "solved motion",
    values: {
      limit: limit.label,
      code: limit.code,
      way: report.direction,
      stop: STOP_NAME[report.stop.by],
      part: MADE_PART[report.direction],
      travel: length(Math.abs(limit.travel)),
      before: length(-limit.travelLeft),
      ...(sd !== undefined && { plusMinus: length(2 * sd) }),
      over: ofDimension(Math.abs(limit.spare), limit.dimension),
    },
  };
}

const MADE_PART: Record<Direction, string> = { bump: "bump stop", droop: "strap" };

function close(limit: LimitReport, report: DirectionReport, wanted: number): Finding {
  return {
    code: "limit-close",
    gravity: "mind",
    place: limit.place,
    travel: report.stop.travel,
    source: "common practice",
    values: {
      limit: limit.label,
      way: report.direction,
      stop: STOP_NAME[report.stop.by],
      spare: ofDimension(limit.spare, limit.dimension),
      spareWord: limit.spareWord,
      wanted: ofDimension(wanted, limit.dimension),
    },
  };
}

/** Gaps that stay open, but are less than wanted. A pair that touches before the stop is a limit, and told as such. */
function judgeClearances({ travel }: Judged): Finding[] {
  return travel.clearances
    .filter(({ leastGap, wanted }) => leastGap > 0 && leastGap < wanted - 1e-6)
    .map((pair) => ({
      code: "clearance-short",
      gravity: "mind",
      place: pair.place,
      travel: pair.travel,
      at: pair.at,
      source: pair.wantedFrom === "document" ? "clearance wanted in your document" : "common practice",
      values: {
        pair: pair.label,
        gap: length(pair.leastGap),
        wanted: length(pair.wanted),
        travel: length(pair.travel),
        more: length(pair.wanted - pair.leastGap),
      },
    }));
}

function judgeTargets({ car, corner, travel }: Judged): Finding[] {
  const findings: Finding[] = [];
  const { targets } = car;
  for (const direction of ["bump", "droop"] as const) {
    const wanted = targets[direction];
    const got = Math.abs(travel[direction].stop.travel);
    if (wanted === undefined || got >= wanted - SAME) continue;
    findings.push({
      code: "travel-short",
      gravity: "mind",
      place: `targets.${direction}`,
      travel: travel[direction].stop.travel,
      source: "target in your document",
      values: { way: direction, got: length(got), wanted: length(wanted), short: length(wanted - got) },
    });
  }
  const clearance = travel.bump.limits.find(({ code }) => code === "underbody")?.spare ?? null;
  if (
    targets.clearanceAtFullBump !== undefined &&
    clearance !== null &&
    clearance < targets.clearanceAtFullBump - SAME
  ) {
    findings.push({
      code: "ground-clearance-short",
      gravity: "mind",
      place: "targets.clearanceAtFullBump",
      travel: travel.bump.stop.travel,
      source: "target in your document",
      values: { got: length(clearance), wanted: length(targets.clearanceAtFullBump) },
    });
  }
  const ground = corner.attitude.designContact.z;
  if (Math.abs(ground) > 2 * SAME) {
    findings.push({
      code: "wheel-off-the-ground",
      gravity: "mind",
      place: "wheel.hubFace.z",
      travel: 0,
      source: "your document: heights count from the ground at ride height",
      values: {
        off: length(Math.abs(ground)),
        way: ground > 0 ? "above" : "below",
        hub: length(corner.wheelCentre.z),
        loaded: length(car.wheel.loadedRadius),
      },
    });
  }
  const track = 2 * corner.attitude.designContact.y;
  if (targets.trackWidth !== undefined && Math.abs(track - targets.trackWidth) > 2 * SAME) {
    findings.push({
      code: "track-differs",
      gravity: "mind",
      place: "targets.trackWidth",
      source: "target in your document",
      values: {
        got: length(track),
        wanted: length(targets.trackWidth),
        each: length(Math.abs(targets.trackWidth - track) / 2),
        move: track < targets.trackWidth ? "out" : "in",
      },
    });
  }
  const { wheelbase } = car.chassis;
  if (targets.wheelbase !== undefined && Math.abs(wheelbase - targets.wheelbase) > SAME) {
    findings.push({
      code: "wheelbase-differs",
      gravity: "mind",
      place: "targets.wheelbase",
      source: "target in your document",
      values: { got: length(wheelbase), wanted: length(targets.wheelbase) },
    });
  }
  return findings;
}
