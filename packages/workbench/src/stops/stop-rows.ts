import type { DirectionReport, LimitReport, Study, UnitSystem } from "@armwright/engine";
import { tapeEnds } from "../store/travel.ts";
import { shown, shownLength, shownTravel } from "../words/shown.ts";

/** A line of what stops the wheel. */
export interface StopRow {
  readonly key: string;
  readonly kind: "chosen" | "limit";
  readonly label: string;
  /** On its pennant: counted from the first to bite, as on the tape; `!` where it is past at ride height already. */
  readonly order: string;
  readonly isFirst: boolean;
  readonly at: string;
  readonly travel: number;
  /** Wheel travel from the chosen stop to this limit. */
  readonly spare: string;
  /** What that is in the limit's own measure. */
  readonly whichIs: string;
  readonly place: string;
  /** So far beyond the stop that the tape does not show it. */
  readonly isFar: boolean;
  /** Comes before the chosen stop, so that it stops the wheel. */
  readonly bitesFirst: boolean;
}

export const CHOSEN_NAMES: Readonly<Record<DirectionReport["stop"]["by"], Readonly<Record<"bump" | "droop", string>>>> =
  {
    "bump-stop": { bump: "bump stop solid", droop: "bump stop" },
    strap: { bump: "strap", droop: "strap" },
    shock: { bump: "shock closed", droop: "shock open" },
    travel: { bump: "travel aimed at", droop: "travel aimed at" },
  };

/** The place in the document that a chosen stop rests on. */
export function placeOfStop(by: DirectionReport["stop"]["by"], direction: "bump" | "droop"): string {
  if (by === "bump-stop") return "bumpStop.solid";
  if (by === "strap") return "strap.length";
  if (by === "shock") return direction === "bump" ? "shock.shortest" : "shock.longest";
  return `stops.${direction}`;
}

/** The chosen stop, then everything that would stop the wheel, in order outward; parts made to stop it are the stop itself. */
export function stopRows(study: Study, direction: "bump" | "droop", units: UnitSystem): readonly StopRow[] {
  const report = study.travel[direction];
  const { stop } = report;
  const limits = report.limits.filter((limit) => limit.nature === "hard" && !isTheStop(limit, report));
  const ends = tapeEnds(study);
  const pastAtRide = limits.filter((limit) => limit.pastAtRide).length;
  const rows = limits.map(
    (limit, index): StopRow => ({
      key: limit.id,
      kind: "limit",
      label: limit.label,
      order: limit.pastAtRide ? "!" : String(index + 1 - pastAtRide),
      isFirst: index === pastAtRide || limit.pastAtRide,
      at: limit.pastAtRide ? "at ride" : shownTravel(limit.travel, units),
      travel: limit.travel,
      spare: shownLength(limit.travelLeft, units),
      whichIs: whichIs(limit, units),
      place: limit.place,
      bitesFirst: !limit.isProtected,
      isFar: limit.travel < ends.droop || limit.travel > ends.bump,
    }),
  );
  const chosen: StopRow = {
    key: "chosen",
    kind: "chosen",
    label: CHOSEN_NAMES[stop.by][direction],
    order: "",
    isFirst: false,
    at: shownTravel(stop.travel, units),
    travel: stop.travel,
    spare: "",
    whichIs: stop.works ? "chosen" : "chosen, but never reached",
    place: placeOfStop(stop.by, direction),
    bitesFirst: false,
    isFar: false,
  };
  return [chosen, ...rows];
}

const isTheStop = (limit: LimitReport, report: DirectionReport): boolean =>
  report.stop.by === "shock" && (limit.code === "shock-shortest" || limit.code === "shock-longest");

function whichIs(limit: LimitReport, units: UnitSystem): string {
  if (limit.pastAtRide) return "already past";
  const size =
    limit.dimension === "length"
      ? shownLength(Math.abs(limit.spare), units)
      : shown(Math.abs(limit.spare), limit.dimension, units);
  return limit.isProtected ? `${size} ${limit.spareWord}` : `${size} too far`;
}
