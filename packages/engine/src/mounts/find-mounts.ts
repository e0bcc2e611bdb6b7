import type { Corner } from "../cycle/corner.ts";
import { distance } from "../geometry/vec3.ts";
import { type Judged, judgeMounts } from "./candidate.ts";
import type { Feasible } from "./feasible.ts";
import { upperAt } from "./grid.ts";
import { type Proposal, proposalOf } from "./proposal.ts";
import { spreadBest } from "./rank.ts";
import { refine } from "./refine.ts";
import {
  DEFAULT_SHORT_LIST,
  DEFAULT_SPREAD,
  type MountRequest,
  REQUIREMENTS,
  type RequirementCode,
} from "./request.ts";
import { startSearch } from "./run-search.ts";
import { makeSink, SCORES, scanLower } from "./scan.ts";
import { makeSearch, type Search } from "./search.ts";

/** What one part of a search found; plain arrays, so that it can be posted from a worker. */
export interface MountsPart {
  /** Candidates judged: one upper and one lower mount with one shock, over the whole travel; rows skipped at one stroke count. */
  readonly tested: number;
  /** In the order of REQUIREMENTS; each candidate counts once, for the first that it fails. */
  readonly killed: Float64Array;
  /** Those killed by a clearance, by the obstacle that was met first; in the order of `obstacles`. */
  readonly inTheWay: Float64Array;
  readonly feasible: Feasible;
}

export interface MountsFound {
  readonly tested: number;
  readonly killedBy: Readonly<Record<RequirementCode, number>>;
  readonly inTheWay: readonly { readonly id: string; readonly label: string; readonly count: number }[];
  readonly feasible: Feasible;
  /** Best first, each truly another; refined from the grid. */
  readonly best: readonly Proposal[];
  readonly search: Search;
}

/** Told how much is done, 0…1. */
export type Progress = (done: number) => void;

/**
 * Every place of the grid where a shock can go. Throws RangeError where a zone names what the car has not, or the linkage
 * does not reach the travel.
 */
export function findMounts(corner: Corner, request: MountRequest, onProgress?: Progress): MountsFound {
  return mergeParts(corner, request, [findMountsPart(corner, request, 0, 1, onProgress)]);
}

/** Part `part` of `parts` equal ones, by lower mounts taken in turn; as findMounts, for workers. */
export function findMountsPart(
  corner: Corner,
  request: MountRequest,
  part: number,
  parts: number,
  onProgress?: Progress,
): MountsPart {
  const run = startSearch(corner, request, part, parts);
  while (run.next()) onProgress?.(run.done() / run.slices);
  return run.part();
}

/** Whether anything fits at all; stops at the first. */
export function anyFits(search: Search): boolean {
  const sink = makeSink(search);
  return search.request.shocks.some((_, shock) =>
    search.lower.some((__, lower) => scanLower(search, shock, lower, sink, true)),
  );
}

/** Puts the parts of one search together, the same whatever their number, and makes the short list. */
export function mergeParts(corner: Corner, request: MountRequest, parts: readonly MountsPart[]): MountsFound {
  const search = makeSearch(corner, request);
  const feasible = parts.length === 1 ? parts[0]!.feasible : mergeFeasible(parts.map((part) => part.feasible));
  const sum = (of: (part: MountsPart) => number): number => parts.reduce((total, part) => total + of(part), 0);
  const killedBy = Object.fromEntries(REQUIREMENTS.map((code, i) => [code, sum(({ killed }) => killed[i]!)])) as Record<
    RequirementCode,
    number
  >;
  return {
    tested: sum(({ tested }) => tested),
    killedBy,
    inTheWay: search.obstacles.map(({ id, label }, i) => ({ id, label, count: sum(({ inTheWay }) => inTheWay[i]!) })),
    feasible,
    best: shortList(search, feasible),
    search,
  };
}

function mergeFeasible(all: readonly Feasible[]): Feasible {
  const entries = all.flatMap((feasible) => Array.from({ length: feasible.count }, (_, i) => ({ feasible, i })));
  entries.sort(
    (a, b) =>
      a.feasible.shock[a.i]! - b.feasible.shock[b.i]! ||
      a.feasible.lower[a.i]! - b.feasible.lower[b.i]! ||
      a.feasible.upper[a.i]! - b.feasible.upper[b.i]!,
  );
  const width = SCORES.length;
  const scores = new Float64Array(width * entries.length);
  entries.forEach(({ feasible, i }, n) => {
    scores.set(feasible.scores.subarray(width * i, width * (i + 1)), width * n);
  });
  return {
    count: entries.length,
    shock: Uint32Array.from(entries, ({ feasible, i }) => feasible.shock[i]!),
    lower: Uint32Array.from(entries, ({ feasible, i }) => feasible.lower[i]!),
    upper: Uint32Array.from(entries, ({ feasible, i }) => feasible.upper[i]!),
    scores,
  };
}

/** Refined from the grid; what would come too near an earlier entry stays where the grid had it. */
function shortList(search: Search, feasible: Feasible): readonly Proposal[] {
  const { request } = search;
  const spread = request.spread ?? DEFAULT_SPREAD;
  const best: Judged[] = [];
  for (const i of spreadBest(search, feasible, request.shortList ?? DEFAULT_SHORT_LIST, spread)) {
    const shock = request.shocks[feasible.shock[i]!]!;
    const upper = upperAt(search.upper, feasible.upper[i]!);
    const start = judgeMounts(search, shock, upper, search.lower[feasible.lower[i]!]!);
    const better = refine(search, start);
    const isNew = best.every((other) => other.shock !== shock || apart(other, better) >= spread);
    best.push(isNew ? better : start);
  }
  return best.map((judged) => proposalOf(search, judged));
}

const apart = (a: Judged, b: Judged): number => distance(a.upper, b.upper) + distance(a.lower.point, b.lower.point);
