import type { ChosenStop, Dimension } from "../car/car.ts";
import type { ClearancePair } from "../clearance/pairs.ts";
import type { Corner } from "../cycle/corner.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { type Direction, findLimits, type MetLimit, type Walk, walkOutward } from "./find-limits.ts";
import { type Limit, type LimitCode, type Look, limitsOf } from "./limit.ts";

/** What stops the wheel, both ways, and what the builder's own stops leave to it. */
export interface TravelReport {
  readonly bump: DirectionReport;
  readonly droop: DirectionReport;
  /** Least gap of every pair of things that could meet, between the two stops. */
  readonly clearances: readonly ClearanceReport[];
}

export interface DirectionReport {
  readonly direction: Direction;
  readonly stop: ResolvedStop;
  /** Every limit that the wheel would meet, in order outward; the linkage's own end last but where another lies at it. */
  readonly limits: readonly LimitReport[];
  /** The first hard one, or none. */
  readonly first: LimitReport | null;
}

/** Where the travel ends by the builder's choice. */
export interface ResolvedStop {
  readonly by: ChosenStop["by"];
  /** What was chosen, where a strap or bump stop that is there ends the travel sooner. */
  readonly insteadOf?: ChosenStop["by"];
  /** m, negative in droop. */
  readonly travel: number;
  /** False where the part chosen never stops the wheel; `travel` is then where it is stopped instead. */
  readonly works: boolean;
}

export interface LimitReport {
  readonly id: string;
  readonly code: LimitCode;
  readonly label: string;
  readonly nature: "hard" | "made";
  readonly place: string;
  /** m, negative in droop. */
  readonly travel: number;
  readonly pastAtRide: boolean;
  /** Wheel travel from the chosen stop to this limit, m; negative where the limit comes first. */
  readonly travelLeft: number;
  /** What is left of it with the wheel at the chosen stop; at ride height where it is past there already. */
  readonly spare: number;
  readonly dimension: Dimension;
  readonly spareWord: string;
  /** Beyond the chosen stop, so that the stop keeps the wheel from it. */
  readonly isProtected: boolean;
}

export interface ClearanceReport {
  readonly id: string;
  readonly label: string;
  readonly place: string;
  readonly wanted: number;
  readonly wantedFrom: "document" | "common practice";
  readonly leastGap: number;
  /** Travel at which it is least, m, and the place on the car. */
  readonly travel: number;
  readonly at: Vec3;
  readonly gapAtRide: number;
}

/** No farther than this from ride height is looked, m. */
const FARTHEST = 1;

/**
 * The whole report. With `beyond` (m), things that could meet are looked for no farther than that past the chosen stops:
 * for the steps of a drag.
 */
export function reportTravel(corner: Corner, beyond = Number.POSITIVE_INFINITY): TravelReport {
  const limits = limitsOf(corner);
  const walks = { bump: walkOutward(corner, "bump", FARTHEST), droop: walkOutward(corner, "droop", FARTHEST) };
  const bump = reportDirection(corner, walks.bump, limits, beyond);
  const droop = reportDirection(corner, walks.droop, limits, beyond);
  return { bump, droop, clearances: reportClearances(walks, limits, bump.stop.travel, droop.stop.travel) };
}

function reportDirection(corner: Corner, walk: Walk, limits: readonly Limit[], beyond: number): DirectionReport {
  const own = limits.filter((limit) => !isForOther(limit, walk.direction));
  const single = findLimits(
    walk,
    own.filter(({ pair }) => !pair),
  );
  const meeting = findLimits(
    walk,
    own.filter(({ pair }) => pair),
    Math.abs(resolveStop(corner, walk, single).travel) + beyond,
  );
  const met = [...single, ...meeting].sort((a, b) => Math.abs(a.travel) - Math.abs(b.travel));
  const stop = resolveStop(corner, walk, met);
  const atStop = walk.at(stop.travel);
  const sign = walk.direction === "bump" ? 1 : -1;
  const reports = met.map(({ limit, travel, pastAtRide }): LimitReport => {
    const travelLeft = sign * (travel - stop.travel);
    return {
      id: limit.id,
      code: limit.code,
      label: limit.label,
      nature: limit.nature,
      place: limit.place,
      travel,
      pastAtRide,
      travelLeft,
      // What is past already is told as it stands now.
      spare: limit.spare(pastAtRide ? walk.looks[0]! : atStop),
      dimension: limit.dimension,
      spareWord: limit.spareWord,
      isProtected: travelLeft > 0,
    };
  });
  reports.push(...linkageReports(corner, walk.direction, stop.travel));
  reports.sort((a, b) => Math.abs(a.travel) - Math.abs(b.travel));
  return {
    direction: walk.direction,
    stop,
    limits: reports,
    first: reports.find(({ nature }) => nature === "hard") ?? null,
  };
}

/** A strap that is taut or a bump stop that is met the wrong way round ends no travel there: it is told the right way. */
const isForOther = ({ code }: Limit, direction: Direction): boolean =>
  direction === "bump" ? code === "strap" : code === "bump-stop-touched" || code === "bump-stop-solid";

/** The linkage's own end, and before it the first place where two members fall into line, if there is one. */
function linkageReports(corner: Corner, direction: Direction, stop: number): LimitReport[] {
  const { travel, toggles } = corner.mechanism.range[direction];
  const report = (label: string, at: number): LimitReport => {
    const travelLeft = Math.abs(at) - Math.abs(stop);
    return {
      id: "linkage",
      code: "linkage",
      label,
      nature: "hard",
      place: "linkage",
      travel: at,
      pastAtRide: false,
      travelLeft,
      spare: travelLeft,
      dimension: "length",
      spareWord: "of travel",
      isProtected: travelLeft > 0,
    };
  };
  const toggle = toggles[0];
  return [
    ...(toggle === undefined ? [] : [{ ...report("linkage falls into line", toggle), id: "linkage-toggle" }]),
    report("linkage at full stretch", travel),
  ];
}

/** The chosen stop; or a part made to stop the wheel, whether chosen or not, where that comes sooner. */
function resolveStop(corner: Corner, walk: Walk, met: readonly MetLimit[]): ResolvedStop {
  const chosen = chosenStop(corner, walk.direction, met);
  const part = PART[walk.direction];
  const made = met.find(({ limit }) => limit.code === stopCode(part, walk.direction));
  if (!made || chosen.by === part || Math.abs(made.travel) >= Math.abs(chosen.travel)) return chosen;
  return { by: part, insteadOf: chosen.by, travel: made.travel, works: true };
}

/** The part made to end each direction. */
const PART = { bump: "bump-stop", droop: "strap" } as const;

function chosenStop(corner: Corner, direction: Direction, met: readonly MetLimit[]): ResolvedStop {
  const chosen = corner.car.stops[direction];
  const end = corner.mechanism.range[direction].travel * (1 - 1e-6);
  if (chosen.by === "travel") {
    const wanted = direction === "bump" ? chosen.travel : -chosen.travel;
    const works = Math.abs(wanted) <= Math.abs(end);
    return { by: "travel", travel: works ? wanted : end, works };
  }
  const found = met.find(({ limit }) => limit.code === stopCode(chosen.by, direction));
  if (found) return { by: chosen.by, travel: found.travel, works: true };
  const first = met.find(({ limit }) => limit.nature === "hard");
  return { by: chosen.by, travel: first?.travel ?? end, works: false };
}

function stopCode(by: "bump-stop" | "strap" | "shock", direction: Direction): LimitCode {
  if (by === "bump-stop") return "bump-stop-solid";
  if (by === "strap") return "strap";
  return direction === "bump" ? "shock-shortest" : "shock-longest";
}

function reportClearances(
  walks: { readonly bump: Walk; readonly droop: Walk },
  limits: readonly Limit[],
  bump: number,
  droop: number,
): ClearanceReport[] {
  const ride = walks.bump.looks[0]!;
  const down = walks.droop.looks.filter(({ travel }) => travel < 0 && travel > droop);
  const up = walks.bump.looks.filter(({ travel }) => travel > 0 && travel < bump);
  const ways = [
    [...down, walks.droop.at(droop)],
    [...up, walks.bump.at(bump)],
  ];
  return limits.flatMap(({ pair }) => {
    if (!pair) return [];
    const atRide = { look: ride, ...pair.measure(ride.solids()) };
    const least = ways.reduce((best, way) => leastGap(pair, atRide, way, best), atRide);
    const { id, label, place, wanted, wantedFrom } = pair;
    return [
      {
        id,
        label,
        place,
        wanted,
        wantedFrom,
        leastGap: least.gap,
        travel: least.look.travel,
        at: least.at,
        gapAtRide: atRide.gap,
      },
    ];
  });
}

interface GapAt {
  readonly look: Look;
  readonly gap: number;
  readonly at: Vec3;
}

/** Gaps that agree to this, m, are the same: one that stays is told at ride height. */
const SAME_GAP = 1e-6;
/** Speeds between two stations are taken to be no more than this times those at their ends. */
const SPEED_MARGIN = 1.25;

/** The least gap along one way from ride height; stations at which it cannot be less than the least so far are passed over. */
function leastGap(pair: ClearancePair, ride: GapAt, way: readonly Look[], soFar: GapAt): GapAt {
  const last = way[way.length - 1]!;
  const measured = (look: Look): GapAt => ({ look, ...pair.measure(look.solids()) });
  const lower = (a: GapAt, b: GapAt): GapAt => (b.gap < a.gap - SAME_GAP ? b : a);
  // The end first: there it is mostly least, and the more can be passed over.
  let best = lower(soFar, measured(last));
  let gap = ride.gap;
  let before = ride.look;
  for (const look of way) {
    const fastest = Math.max(pair.fastest(before.state), pair.fastest(look.state));
    gap -= Math.abs(look.travel - before.travel) * SPEED_MARGIN * fastest;
    before = look;
    if (gap > best.gap || look === last) continue;
    const here = measured(look);
    best = lower(best, here);
    gap = here.gap;
  }
  return best;
}
