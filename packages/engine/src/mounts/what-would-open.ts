import type { KeepOut } from "../car/car.ts";
import { keepOutSolid, movingSolids } from "../clearance/moving-solids.ts";
import { separation } from "../clearance/separation.ts";
import { type Corner, makeCorner } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { addScaled, UP } from "../geometry/vec3.ts";
import { offMarks } from "../units/marks.ts";
import { anyFits, findMounts } from "./find-mounts.ts";
import { movementOf } from "./movement.ts";
import { type Notch, notchFor } from "./notch.ts";
import type { Proposal } from "./proposal.ts";
import { DEFAULT_GRID_STATIONS, KILL, type MountRequest, type ShockOption, shockRadius } from "./request.ts";
import { makeSink, type Sink, scanLower } from "./scan.ts";
import { makeSearch, type Search } from "./search.ts";

/** One thing that could be given up. */
export type Change =
  /** Every shock with this much more (or less) stroke: its closed length changes by as much, its open length by twice that. */
  | { readonly kind: "longer-shock" | "shorter-shock" }
  | { readonly kind: "less-bump" | "less-droop" }
  /** At either end, a share of the stroke. */
  | { readonly kind: "wider-stroke-window" }
  /** A shorter socket and ratchet at both bolts. */
  | { readonly kind: "shorter-wrench" }
  /** The whole keep-out moved down, as far as arms, links, shaft and tyre keep off it over the whole travel. */
  | { readonly kind: "lower-keep-out"; readonly keepOut: string }
  /** The shock may come this much nearer to the keep-out than its clearance: into it, once that is used up. */
  | { readonly kind: "notch-keep-out"; readonly keepOut: string };

export interface Opening {
  readonly change: Change;
  /** Smallest that opens a place, m (a share for the window); on this grid: a finer one may need less. */
  readonly by: number;
  /** Largest tried that opens none. */
  readonly notBy: number;
  /** The best place then. */
  readonly proposal: Proposal;
  readonly notch?: Notch;
}

const INCH = 0.0254;
const COARSE = 12;
/** Found to this, m; the window to a tenth of a percent. */
const FINE = INCH / 32;
const FINE_WINDOW = 0.001;

/**
 * For each thing that could be given up, the smallest change by itself that opens a place: the first of twelve even steps
 * that does, then halved toward the step before, each by the true search on the same grid. What opens nothing within its
 * reach is left out. Least share of its reach first. Empty where the request is met as it is.
 */
export function whatWouldOpen(corner: Corner, request: MountRequest): readonly Opening[] {
  const search = makeSearch(corner, request);
  const sink = makeSink(search);
  for (let part = 0; part < request.shocks.length * search.lower.length; part += 1) {
    const shock = Math.floor(part / search.lower.length);
    if (scanLower(search, shock, part % search.lower.length, sink, true)) return [];
  }
  return changesOf(request, blockers(search, sink))
    .flatMap(({ change, reach }) => {
      const opening = smallest(corner, request, change, reach);
      return opening ? [{ opening, share: opening.by / reach }] : [];
    })
    .sort((a, b) => a.share - b.share)
    .map(({ opening }) => opening);
}

/**
 * Keep-outs whose change alone can open a place: a candidate that it opens fails on nothing else, so that this keep-out was the
 * first in its way, or in its wrench's.
 */
function blockers({ corner, obstacles }: Search, { inTheWay, killed }: Sink): readonly KeepOut[] {
  if (killed[KILL.wrench]! > 0) return corner.car.keepOuts;
  return corner.car.keepOuts.filter(({ name }) => obstacles.some(({ id }, i) => id === name && inTheWay[i]! > 0));
}

function changesOf(
  { shocks, travel, requirements: { wrench } }: MountRequest,
  keepOuts: readonly KeepOut[],
): readonly { change: Change; reach: number }[] {
  const widest = Math.max(...shocks.map(shockRadius));
  return [
    { change: { kind: "longer-shock" }, reach: 4 * INCH },
    { change: { kind: "shorter-shock" }, reach: 4 * INCH },
    { change: { kind: "less-bump" }, reach: 0.6 * travel.bump },
    { change: { kind: "less-droop" }, reach: -0.6 * travel.droop },
    { change: { kind: "wider-stroke-window" }, reach: 0.3 },
    ...(wrench ? [{ change: { kind: "shorter-wrench" } as const, reach: wrench.length }] : []),
    ...keepOuts.flatMap(({ name, clearance }) => [
      { change: { kind: "lower-keep-out", keepOut: name } as const, reach: 8 * INCH },
      // Up to the shock's middle line at its skin: how much deeper it is, is not told by distances of cores.
      { change: { kind: "notch-keep-out", keepOut: name } as const, reach: clearance + 0.99 * widest },
    ]),
  ];
}

function smallest(corner: Corner, request: MountRequest, change: Change, reach: number): Opening | null {
  const opens = (by: number): boolean => {
    const changed = withChange(corner, request, change, by);
    if (changed === null) return false;
    if (change.kind === "lower-keep-out" && !staysClear(corner, changed.corner, request, change.keepOut)) return false;
    return anyFits(makeSearch(changed.corner, changed.request));
  };
  let notBy = 0;
  let by = Number.NaN;
  for (let i = 1; i <= COARSE && Number.isNaN(by); i += 1) {
    const tried = (reach * i) / COARSE;
    if (opens(tried)) by = tried;
    else notBy = tried;
  }
  if (Number.isNaN(by)) return null;
  const fine = change.kind === "wider-stroke-window" ? FINE_WINDOW : FINE;
  while (by - notBy > fine) {
    const middle = 0.5 * (by + notBy);
    if (opens(middle)) by = middle;
    else notBy = middle;
  }
  const changed = withChange(corner, request, change, by);
  const proposal = changed && findMounts(changed.corner, { ...changed.request, shortList: 1 }).best[0];
  if (!changed || !proposal) return null;
  return { change, by, notBy, proposal, ...withNotch(corner, request, change, proposal) };
}

/** The notch for a place, wherever in it a tape sets the mounts. */
function withNotch(corner: Corner, request: MountRequest, change: Change, proposal: Proposal): Pick<Opening, "notch"> {
  if (change.kind !== "notch-keep-out") return {};
  const keepOut = corner.car.keepOuts.find(({ name }) => name === change.keepOut)!;
  const notch = notchFor(makeSearch(corner, request), proposal, keepOut, offMarks(corner.car.units));
  return notch ? { notch } : {};
}

/**
 * The same change with `more` of it (m), so that a tape can be met: the best place then, and the notch for it. Null where that
 * much of it opens nothing.
 */
export function openingWith(
  corner: Corner,
  request: MountRequest,
  { change, by }: Opening,
  more: number,
): Opening | null {
  const changed = withChange(corner, request, change, by + more);
  const proposal = changed && findMounts(changed.corner, { ...changed.request, shortList: 1 }).best[0];
  if (!proposal) return null;
  return { change, by: by + more, notBy: by, proposal, ...withNotch(corner, request, change, proposal) };
}

/** Whether everything that moves keeps its clearance from the changed keep-out, or what it had where that was less. */
function staysClear(before: Corner, after: Corner, { travel, stations: asked }: MountRequest, name: string): boolean {
  const [old, now] = [before, after].map(({ car }) => keepOutSolid(car.keepOuts.find((each) => each.name === name)!));
  const { clearance } = before.car.keepOuts.find((each) => each.name === name)!;
  const { states } = movementOf(before, travel.droop, travel.bump, asked ?? DEFAULT_GRID_STATIONS);
  return states.every((state) => {
    const { members, tyre, shaft } = movingSolids(before, positionOf(before, state));
    return [...members, tyre, ...(shaft ? [shaft] : [])].every((part) => {
      const gap = separation(part, now!).distance;
      return gap >= clearance || gap >= separation(part, old!).distance;
    });
  });
}

/** Corner and request with a change made; null where it makes no sense (a shock without stroke). */
export function withChange(
  corner: Corner,
  request: MountRequest,
  change: Change,
  by: number,
): { readonly corner: Corner; readonly request: MountRequest } | null {
  const { travel, requirements } = request;
  switch (change.kind) {
    case "longer-shock":
    case "shorter-shock": {
      const more = change.kind === "longer-shock" ? by : -by;
      const shocks = request.shocks.map((shock) => ({
        ...shock,
        shortest: shock.shortest + more,
        longest: shock.longest + 2 * more,
      }));
      return shocks.every(isShock) ? { corner, request: { ...request, shocks } } : null;
    }
    case "less-bump":
      return { corner, request: { ...request, travel: { ...travel, bump: travel.bump - by } } };
    case "less-droop":
      return { corner, request: { ...request, travel: { ...travel, droop: travel.droop + by } } };
    case "wider-stroke-window": {
      const { least, most } = requirements.strokeUsed;
      const strokeUsed = { least: Math.max(0, least - by), most: Math.min(1, most + by) };
      return { corner, request: { ...request, requirements: { ...requirements, strokeUsed } } };
    }
    case "shorter-wrench": {
      const { wrench } = requirements;
      if (!wrench) return { corner, request };
      const shorter = { ...wrench, length: Math.max(0, wrench.length - by) };
      return { corner, request: { ...request, requirements: { ...requirements, wrench: shorter } } };
    }
    case "lower-keep-out":
      return { corner: withKeepOut(corner, change.keepOut, (each) => lowered(each, by)), request };
    case "notch-keep-out":
      return {
        corner: withKeepOut(corner, change.keepOut, (each) => ({ ...each, clearance: each.clearance - by })),
        request,
      };
  }
}

const isShock = ({ shortest, longest }: ShockOption): boolean => shortest > 0 && longest > shortest;

const withKeepOut = ({ car }: Corner, name: string, change: (keepOut: KeepOut) => KeepOut): Corner =>
  makeCorner({ ...car, keepOuts: car.keepOuts.map((each) => (each.name === name ? change(each) : each)) });

function lowered(keepOut: KeepOut, by: number): KeepOut {
  switch (keepOut.shape) {
    case "box":
      return { ...keepOut, centre: addScaled(keepOut.centre, UP, -by) };
    case "tube":
      return { ...keepOut, from: addScaled(keepOut.from, UP, -by), to: addScaled(keepOut.to, UP, -by) };
    case "half-space":
      return { ...keepOut, point: addScaled(keepOut.point, UP, -by) };
  }
}
