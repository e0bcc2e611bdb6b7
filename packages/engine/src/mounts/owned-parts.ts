import type { Car, Strap } from "../car/car.ts";
import { makeCorner, solveAt } from "../cycle/corner.ts";
import { ROW } from "../cycle/row.ts";
import { reportTravel } from "../limits/travel-report.ts";
import { anyFits, findMounts } from "./find-mounts.ts";
import { movedOut } from "./moved-out.ts";
import type { Proposal } from "./proposal.ts";
import type { MountRequest, ShockOption } from "./request.ts";
import { makeSearch } from "./search.ts";

/** What the builder has: shocks, in the request; straps by their lengths hole to hole, m; the half shaft is the car's. */
export interface OwnedParts {
  readonly straps?: readonly number[];
  /** Wheel travel to be left between a stop and the first hard limit, m. */
  readonly margin?: number;
}

/** Common practice, no source: straps stretch and stops are squeezed. */
export const USUAL_MARGIN = 0.5 * 0.0254;

/** One end of the travel: where it may end, and what would stop the wheel there first. */
export interface TravelEnd {
  /** m, droop negative: the first hard limit less the margin, or where the strap is taut. */
  readonly travel: number;
  /** The first hard limit, in words, and its travel; null where none is met. */
  readonly limit: { readonly label: string; readonly travel: number } | null;
}

export interface Window {
  readonly droop: TravelEnd;
  readonly bump: TravelEnd;
  /** The strap that ends droop: the longest that is taut in time; null where none is given or none is short enough. */
  readonly strap: { readonly length: number; readonly travel: number } | null;
}

/** A part of the window for which a shock has a place. */
export interface Reach {
  readonly kept: "even" | "bump" | "droop";
  readonly droop: number;
  readonly bump: number;
  /** Share of the window's travel that is given up: this much opens a place, the next tried that opens none. */
  readonly givenUp: number;
  readonly notBy: number;
  readonly proposal: Proposal;
}

export interface ShockReach {
  readonly shock: ShockOption;
  /** Most wheel travel first; empty where no place is found for half the travel either. */
  readonly reaches: readonly Reach[];
}

export interface TrackEnd {
  /** Wheel moved out by this on its side, m. */
  readonly out: number;
  readonly track: number;
  /** What stops it from going on; null where the search's end was reached. */
  readonly limit: string | null;
}

export interface OwnedAnswer {
  readonly window: Window;
  readonly shocks: readonly ShockReach[];
  /** Narrowest and widest track at which the half shaft still allows `travel`; null where the car has no half shaft. */
  readonly track: {
    readonly travel: { readonly droop: number; readonly bump: number };
    readonly least: TrackEnd;
    readonly most: TrackEnd;
  } | null;
}

/** Hard limits of a half shaft. */
const SHAFT = /^(inner|outer)-joint$|^slip-/;

/**
 * What travel, track and mounts the parts at hand allow, each searched for and bracketed: the window between the first hard
 * limits (without any shock), for each shock the largest part of the window that has a place by the true search, and how far
 * the wheel ends may be moved out or in before the half shaft's joints or spline no longer allow the travel of the first shock
 * (or of the window). `request` gives zones, requirements and reserves; its travel and the lower end of its window for the
 * stroke used are not asked for. Throws RangeError as findMounts does.
 */
export function withOwnedParts(car: Car, request: MountRequest, parts: OwnedParts = {}): OwnedAnswer {
  const window = travelWindow(car, parts);
  const { strokeUsed } = request.requirements;
  const asked: MountRequest = {
    ...request,
    requirements: { ...request.requirements, strokeUsed: { ...strokeUsed, least: 0 } },
  };
  const shocks = request.shocks
    .map((shock) => ({ shock, reaches: reachesOf(car, { ...asked, shocks: [shock] }, window) }))
    .sort((a, b) => mostOf(b.reaches) - mostOf(a.reaches));
  const first = shocks[0]?.reaches[0];
  const travel = first ?? { droop: window.droop.travel, bump: window.bump.travel };
  const track = car.driveshaft ? trackRange(car, { droop: travel.droop, bump: travel.bump }) : null;
  return { window, shocks, track };
}

const mostOf = (reaches: readonly Reach[]): number => (reaches[0] ? reaches[0].bump - reaches[0].droop : 0);

/** Between the first hard limits, no shock counted. */
export function travelWindow(car: Car, { straps, margin = USUAL_MARGIN }: OwnedParts = {}): Window {
  const { shock: _, strap, bumpStop: __, ...bare } = car;
  const corner = makeCorner(bare);
  const { bump, droop } = reportTravel(corner);
  const range = corner.mechanism.range;
  const end = (direction: "bump" | "droop"): TravelEnd => {
    const { first } = direction === "bump" ? bump : droop;
    const sign = direction === "bump" ? 1 : -1;
    const at = Math.abs(first?.travel ?? range[direction].travel);
    return {
      travel: sign * Math.max(0, at - margin),
      limit: first ? { label: first.label, travel: first.travel } : null,
    };
  };
  const lower = end("droop");
  const held = strap ? strapFor(bare, strap, straps ?? [strap.length], lower.travel) : null;
  return { droop: held ? { ...lower, travel: held.travel } : lower, bump: end("bump"), strap: held };
}

const HALVINGS = 40;

/** The longest strap, on the car's strap mounts, that is taut before `deepest` (m, negative). */
function strapFor(car: Car, strap: Strap, lengths: readonly number[], deepest: number): Window["strap"] {
  const tautAt = (length: number): number | null => {
    const corner = makeCorner({ ...car, strap: { ...strap, length } });
    const slack = (travel: number): number => solveAt(corner, travel)?.row[ROW.strapSlack] ?? Number.NaN;
    if (!(slack(0) > 0) || !(slack(deepest) <= 0)) return null;
    let [holds, taut] = [0, deepest];
    for (let i = 0; i < HALVINGS; i += 1) {
      const middle = 0.5 * (holds + taut);
      if (slack(middle) > 0) holds = middle;
      else taut = middle;
    }
    return taut;
  };
  const found = lengths.flatMap((length) => {
    const travel = tautAt(length);
    return travel === null ? [] : [{ length, travel }];
  });
  return found.sort((a, b) => a.travel - b.travel)[0] ?? null;
}

/** Even steps down to half of the window, then halved to a thirty-second of an inch. */
const STEPS = 10;
const LEAST_SHARE = 0.5;
const FINE = 0.0254 / 32;

function reachesOf(car: Car, request: MountRequest, window: Window): readonly Reach[] {
  const { shock: _, strap: __, bumpStop: ___, ...bare } = car;
  const corner = makeCorner(bare);
  const [droop, bump] = [window.droop.travel, window.bump.travel];
  if (!(droop < 0 && bump > 0)) return [];
  const travelFor = (kept: Reach["kept"], givenUp: number) => ({
    droop: kept === "droop" ? droop : droop * (1 - givenUp),
    bump: kept === "bump" ? bump : bump * (1 - givenUp),
  });
  const fits = (kept: Reach["kept"], givenUp: number): boolean =>
    anyFits(makeSearch(corner, { ...request, travel: travelFor(kept, givenUp) }));
  const reach = (kept: Reach["kept"]): readonly Reach[] => {
    let notBy = 0;
    let by = -1;
    for (let i = 0; i <= STEPS && by < 0; i += 1) {
      const tried = ((1 - LEAST_SHARE) * i) / STEPS;
      if (fits(kept, tried)) by = tried;
      else notBy = tried;
    }
    if (by < 0) return [];
    while (by > 0 && (by - notBy) * (bump - droop) > FINE) {
      const middle = 0.5 * (by + notBy);
      if (fits(kept, middle)) by = middle;
      else notBy = middle;
    }
    const travel = travelFor(kept, by);
    const proposal = findMounts(corner, { ...request, travel, shortList: 1 }).best[0];
    return proposal ? [{ kept, ...travel, givenUp: by, notBy: by === 0 ? 0 : notBy, proposal }] : [];
  };
  const even = reach("even");
  if (even[0]?.givenUp === 0) return even;
  const all = [...even, ...reach("bump"), ...reach("droop")];
  return all.sort((a, b) => b.bump - b.droop - (a.bump - a.droop));
}

/** The wheel ends are moved no farther than this, m a side. */
const FARTHEST = 12 * 0.0254;

/** How far the wheel ends may be moved with the same half shaft, so that it allows the travel. */
export function trackRange(
  car: Car,
  travel: { readonly droop: number; readonly bump: number },
): NonNullable<OwnedAnswer["track"]> {
  /** The shaft's limit that is met within the travel, if one is; or why the wheel cannot be there. */
  const stoppedBy = (out: number): string | null => {
    try {
      const corner = makeCorner(movedOut({ ...car, underbody: [], keepOuts: [] }, out));
      for (const report of [reportTravel(corner, 0).bump, reportTravel(corner, 0).droop]) {
        const most = Math.abs(report.direction === "bump" ? travel.bump : travel.droop);
        const met = report.limits.find(
          ({ code, travel: at, pastAtRide }) =>
            (SHAFT.test(code) || code === "linkage") && (pastAtRide || Math.abs(at) < most - 1e-6),
        );
        if (met) return met.label;
      }
      return null;
    } catch (error) {
      if (error instanceof RangeError) return "linkage";
      throw error;
    }
  };
  const trackAt = (out: number): number => 2 * (contactOf(car) + out);
  const end = (sign: number): TrackEnd => {
    const atNow = stoppedBy(0);
    if (atNow !== null) return { out: 0, track: trackAt(0), limit: atNow };
    let holds = 0;
    let breaks = Number.NaN;
    for (let i = 1; i <= 24 && Number.isNaN(breaks); i += 1) {
      const tried = (sign * FARTHEST * i) / 24;
      if (stoppedBy(tried) === null) holds = tried;
      else breaks = tried;
    }
    if (Number.isNaN(breaks)) return { out: holds, track: trackAt(holds), limit: null };
    while (Math.abs(breaks - holds) > FINE / 8) {
      const middle = 0.5 * (holds + breaks);
      if (stoppedBy(middle) === null) holds = middle;
      else breaks = middle;
    }
    return { out: holds, track: trackAt(holds), limit: stoppedBy(breaks) };
  };
  return { travel, least: end(-1), most: end(1) };
}

/** Of the contact point in the design position, out from the centreline, m. */
function contactOf(car: Car): number {
  const { shock: _, ...bare } = car;
  return solveAt(makeCorner(bare), 0)!.row[ROW.contactY]!;
}
